#pragma once

namespace stowpath {

/// The answer of a proof. Whatever is not proven is undecided, and counts as not clear.
enum class Verdict { clear, interference, undecided };

/// The graver of two: interference before undecided before clear.
constexpr Verdict worse(Verdict a, Verdict b) {
  if (a == Verdict::interference || b == Verdict::interference) return Verdict::interference;
  return a == Verdict::undecided || b == Verdict::undecided ? Verdict::undecided : Verdict::clear;
}

}  // namespace stowpath
