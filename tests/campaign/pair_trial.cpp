#include "tests/campaign/pair_trial.h"

#include <algorithm>
#include <cmath>

#include "tests/support/slow_motion.h"

namespace stowpath::testing {
namespace {

/// What design.md grants the proofs' rounding: an answer may be off by this much of clearance [m].
constexpr double kGuard = 1e-9;

/// Near full stretch a dragged lean hangs on the root of the last place of a height: 1e-16 of height is 1e-8 of turn.
/// Bounds allow for that; what is read off a single pose can be no better [m].
constexpr double kStretched = 1e-7;

class PairTrial {
 public:
  explicit PairTrial(const PairDraw& draw)
      : maker_(draw.maker),
        options_(draw.options),
        grain_(1e-4 * draw.scale),
        pose_guard_(draw.motion == "drag" ? kStretched * std::max(1.0, draw.scale) : kGuard),
        stage_(maker_.stage()),
        slow_(stage_, 0, 0),
        exact_(stage_, 0, 0),
        wanted_(maker_.need.margin + maker_.need.play),
        broken_(maker_.need.margin - maker_.movers[0].excess - maker_.targets[0].excess) {}

  PairAnswer run(bool least_too) {
    const Proof proof = prove(stage_, options_);
    PairAnswer out;
    out.verdict = stowpath::testing::verdict(proof);
    for (const Interval clear : subtract({0.0, 1.0}, open_stretches(proof))) {
      out.false_clear = out.false_clear || !keeps_need(clear);
    }
    for (const Span& span : proof.spans) {
      if (span.verdict == Verdict::interference) {
        out.false_interference = out.false_interference || !breaks_margin(span);
      } else {
        out.unexcused = out.unexcused || !close_call(0.5 * (span.open0 + span.open1));
      }
    }
    out.false_clear = out.false_clear || (least_too && !least_is_right(proof));
    return out;
  }

 private:
  bool below(double u, double level) const { return exact_.clearance(static_cast<long double>(u)) < level; }

  bool keeps_need(Interval clear) const {
    const double lowest = wanted_ - kGuard;
    // At most some 4000 looks, with every dip among them searched to the bottom.
    const double grain = std::max(grain_, slow_.travel(clear.lo, clear.hi) / 4000.0);
    const SlowLeast least = slow_least(slow_, clear.lo, clear.hi, wanted_, grain, lowest);
    return least.clearance >= lowest || !below(least.u, lowest);
  }

  /// Somewhere in the span the reference sees the margin broken, and at both of its refined ends.
  bool breaks_margin(const Span& span) const {
    const double ends = maker_.need.margin + pose_guard_;
    if (!below(span.u0, ends) || !below(span.u1, ends)) return false;
    const double grain = std::min(grain_, slow_.travel(span.open0, span.open1) / 64.0 + 1e-15);
    const SlowLeast least = slow_least(slow_, span.open0, span.open1, broken_, grain, broken_);
    return least.clearance < broken_ || below(least.u, broken_ + kGuard);
  }

  /// Undecided poses have a clearance within twice what a smallest piece can move of margin or need.
  bool close_call(double u) const {
    const double turn = options_.resolution * stage_.linkage.sections;
    const double band = 4.0 * turn * slow_.reach() * (1.0 + turn) + 4.0 * options_.roll_resolution + 4.0 * kGuard;
    const double c = slow_.clearance(u);
    return c > broken_ - band && c < wanted_ + band;
  }

  /// The enclosure of the least clearance holds what the reference sees, and its place shows it.
  bool least_is_right(const Proof& proof) const {
    const Least least = least_of_pair(stage_, 0, 0, 0.0, 1.0, grain_);
    if (std::abs(slow_.clearance(least.u) - least.at_most) > pose_guard_) return false;
    for (int k = 0; k <= 200; ++k) {
      if (slow_.clearance(k / 200.0) < least.at_least - kGuard) return false;
    }
    return stowpath::testing::verdict(proof) != Verdict::interference || least.at_least < wanted_ + kGuard;
  }

  ProofMaker maker_;
  ProofOptions options_;
  double grain_, pose_guard_;
  ProofStage stage_;
  SlowMotion<double> slow_;
  SlowMotion<long double> exact_;
  double wanted_, broken_;
};

}  // namespace

PairAnswer try_pair(const PairDraw& draw, bool least_too) { return PairTrial(draw).run(least_too); }

}  // namespace stowpath::testing
