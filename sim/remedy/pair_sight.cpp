#include "sim/remedy/pair_sight.h"

#include <algorithm>
#include <cmath>

#include "sim/clearance/contact_state.h"
#include "sim/clearance/proof.h"

namespace stowpath {
namespace {

constexpr double kFirstStep = 1e-4;  // downhill, of the segment
constexpr double kNear = 1e-6;       // slopes are taken over this much of the segment
constexpr double kAside = 1e-4;      // and at a corner over this much, beyond what the measurements' changes move it by
constexpr double kCorner = 1e-2;     // slopes that differ by more make a corner: curvature times kNear is far less [m]
constexpr double kEnd = 1e-9;        // this near an end is at the end

const TargetSet& no_targets() {
  static const TargetSet none;
  return none;
}

const NeedTable& no_needs() {
  static const NeedTable none;
  return none;
}

/// An end of a stretch that holds the least, going downhill from `u` by doubled steps the one way.
double past_least(const PairView& view, double u, double end) {
  double step = kFirstStep, here = view(u);
  while (u != end) {
    const double next = u < end ? std::min(u + step, end) : std::max(u - step, end);
    const double there = view(next);
    u = next;
    if (there > here) break;
    here = there;
    step *= 2.0;
  }
  return u;
}

double least_within(const PairView& view, double lo, double hi) {
  const double golden = 0.5 * (std::sqrt(5.0) - 1.0);
  double a = hi - golden * (hi - lo), b = lo + golden * (hi - lo), at_a = view(a), at_b = view(b);
  for (int k = 0; k < 50 && hi - lo > 1e-12; ++k) {
    if (at_a <= at_b) {
      hi = b, b = a, at_b = at_a, a = hi - golden * (hi - lo), at_a = view(a);
    } else {
      lo = a, a = b, at_a = at_b, b = lo + golden * (hi - lo), at_b = view(b);
    }
  }
  return 0.5 * (lo + hi);
}

double least_near(const PairView& view, const PairPlace& place) {
  const double u = std::clamp(place.u, place.piece.lo, place.piece.hi);
  const double lo = past_least(view, u, place.piece.lo), hi = past_least(view, u, place.piece.hi);
  double best = least_within(view, lo, hi);
  for (const double other : {u, place.piece.lo, place.piece.hi}) {
    if (view(other) <= view(best)) best = other;
  }
  return best;
}

bool at_cut(double u, const Interval& piece) {
  return (u - piece.lo < kEnd && piece.lo > 0.0) || (piece.hi - u < kEnd && piece.hi < 1.0);
}

}  // namespace

PairView::PairView(const Model& model, const PairPlace& place, Target target)
    : linkage_(model.linkage),
      segment_(
          model.moves.at(static_cast<std::size_t>(place.move)).segments.at(static_cast<std::size_t>(place.segment))),
      base_(place.base),
      mover_(mover_of(model, place)),
      target_(std::move(target)) {
  if (base_ != kRoom) segment_ = riding_along(segment_);
}

double PairView::operator()(double u) const {
  const ProofStage stage{linkage_, segment_, base_, {}, no_targets(), no_needs()};
  return look_at_pair(stage, mover_, target_, u).clearance;
}

double PairView::at_parting(double u) const {
  if (base_ == kRoom) return u;
  const auto hinge = static_cast<std::size_t>(std::min(base_, kMaxSections - 2));
  const auto closed = [&](double v) { return at(linkage_, segment_, v).folds[hinge] < kEndsPart; };
  for (double off = 1e-6; off < 0.5; off *= 2.0) {
    double lo = std::max(0.0, u - off), hi = std::min(1.0, u + off);
    const bool before = closed(lo);
    if (before == closed(hi)) continue;
    for (int k = 0; k < 60; ++k) {
      const double middle = 0.5 * (lo + hi);
      (closed(middle) == before ? lo : hi) = middle;
    }
    return hi;
  }
  return u;
}

double PairSight::mean(const PairView& view) const {
  double sum = 0.0;
  for (const Look& look : looks) sum += look.weight * view(look.at_cut ? view.at_parting(look.u) : look.u);
  return sum;
}

PairSight settle(const PairView& view, const PairPlace& place) {
  const Interval piece = place.piece;
  const double u = least_near(view, place), here = view(u);
  PairSight out{{{u, 1.0, at_cut(u, piece)}}, u, here};
  if (u - piece.lo < kAside || piece.hi - u < kAside) return out;
  if (view(u + kNear) - 2.0 * here + view(u - kNear) < kCorner * kNear) return out;
  const double a = (here - view(u - kAside)) / kAside, b = (view(u + kAside) - here) / kAside;
  if (a < 0.0 && b > 0.0) out.looks = {{u - kAside, b / (b - a)}, {u + kAside, -a / (b - a)}};
  return out;
}

}  // namespace stowpath
