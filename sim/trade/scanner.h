#pragma once

#include <string>
#include <string_view>

#include "sim/trade/measure.h"

namespace stowpath {

/// Why a measurement is refused. Thrown within sim/trade only: the parse functions turn it into a Measure.
struct Refusal {
  std::string problem;
  std::string hint;
};

/// A number as written: `3`, `3.5`, `3/8` or `4-3/8`.
struct Amount {
  double value = 0.0;     ///< never negative
  bool decimal = false;   ///< has a decimal point
  bool fraction = false;  ///< has a numerator and a denominator
};

/// Reads a measurement from left to right, after turning typographic marks into plain ones: primes and curly quotes
/// into ' and ", fraction characters into digits and a slash, dashes into -, the degree sign into "deg", letters into
/// lower case.
class Scanner {
 public:
  explicit Scanner(std::string_view text);

  /// -1 if the text starts with a minus, else +1; steps over the sign. Refuses empty text and two signs.
  double sign();
  /// Refuses, naming what stands there instead, if no number starts here. A dash or a space joins a whole number and a
  /// fraction.
  Amount amount();
  /// `ft` or `in` for the marks ', " and '', else the word that stands here, in lower case; empty if there is none.
  std::string unit();
  /// Steps over spaces and at most one dash; true if it met a dash.
  bool separator();
  /// Steps over spaces, then says whether anything is left.
  bool at_end();
  bool at_number() const;
  /// Refuses anything left over.
  void finish();
  /// The text as given, shortened and with unprintable bytes shown as ?, in quotation marks.
  const std::string& quoted() const { return quoted_; }

 private:
  char peek(size_t ahead = 0) const;
  void skip_spaces();
  std::string digits();
  double decimal_value(const std::string& digits_and_point) const;
  double fraction_after(const std::string& numerator);
  bool whole_fraction_follows(size_t& start) const;
  void refuse_comma() const;
  [[noreturn]] void refuse_exponent() const;

  std::string quoted_;
  std::string text_;
  size_t at_ = 0;
};

/// Runs a reader over `text` and catches its refusal. The reader returns the value in SI.
template <class Reader>
Measure measured(std::string_view text, Reader read) {
  try {
    Scanner scan(text);
    return {read(scan) + 0.0, "", ""};  // + 0.0 makes a negative zero positive
  } catch (const Refusal& refusal) {
    return {std::nullopt, refusal.problem, refusal.hint};
  }
}

}  // namespace stowpath
