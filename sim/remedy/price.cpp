#include "sim/remedy/price.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "sim/hoist/pull.h"
#include "sim/remedy/judge.h"
#include "sim/remedy/narrow.h"

namespace stowpath {
namespace {

constexpr double kFeltLess = 0.001;                   // smaller losses of clearance are not told [m]
constexpr double kStillWide = 0.060;                  // nor are clearances that stay beyond this [m]
constexpr double kFeltPull = 0.02;                    // share of the pull
constexpr double kCoarse = std::numbers::pi / 180.0;  // between poses of the pull [rad]

double served(const Reach& reach) {
  double length = 0.0;
  for (const Interval& stretch : reach.standing) length += std::max(0.0, meet(stretch, reach.span).length());
  return length;
}

std::optional<double> least_of_target(const Assessment& after, const Finding& target, const AssessOptions& options) {
  if (target.kind == FindingKind::build || target.part_kinds[1] == PartKind::zone) return std::nullopt;
  double least = 1.0;
  Finding anywhere = target;
  for (const Move& move : after.model.moves) anywhere.moves.push_back(move.index);
  for (const MoveResult& move : dry_fit(narrowed(after.model, {anywhere}), options.fit).moves)
    if (!move.closest[0].empty()) least = std::min(least, move.at_least);
  return least < 1.0 ? std::optional(least) : std::nullopt;
}

std::optional<Tighter> tightest_loss(const DryFit& before, const DryFit& after) {
  std::optional<Tighter> worst;
  for (std::size_t i = 0; i < std::min(before.moves.size(), after.moves.size()); ++i) {
    const MoveResult &then = before.moves[i], &now = after.moves[i];
    if (now.verdict != Verdict::clear || now.at_least > kStillWide) continue;
    if (then.at_least - now.at_least < kFeltLess) continue;
    if (!worst || now.at_least < worst->after) worst = Tighter{now.kind, now.closest, then.at_least, now.at_least};
  }
  return worst;
}

int troubles(const PullReport& pull) {
  return static_cast<int>(std::count_if(pull.events.begin(), pull.events.end(), [](const PullEvent& e) {
    return e.kind == PullEventKind::cannot_lift || e.kind == PullEventKind::slack_begins ||
           e.kind == PullEventKind::hook_lifts || e.kind == PullEventKind::turns_over;
  }));
}

}  // namespace

LiftSummary lift_summary(const Scene& scene, const Model& model) {
  if (!scene.hoist || !scene.hoist->ceiling_point) return {};
  PullOptions options;
  options.step = kCoarse;
  options.changes = false;
  try {
    const PullReport pull = walk_through(scene, model, options);
    return {pull.peak_raising ? pull.samples[*pull.peak_raising].hand_raising : 0.0, troubles(pull)};
  } catch (const std::invalid_argument&) {
    return {};  // no pull to compare
  }
}

void tell_price(const Assessment& before, const Scene& changed, const Assessment& after, const Finding& target,
                const AssessOptions& options, Remedy& remedy) {
  remedy.verdict = after.fit.verdict;
  for (const Finding& f : before.fit.findings) {
    const bool left = std::any_of(after.fit.findings.begin(), after.fit.findings.end(),
                                  [&](const Finding& now) { return same_matter(f, now); });
    if (!left && f.id != target.id) remedy.cures_also.push_back(f.id);
  }
  remedy.clearance = least_of_target(after, target, options);
  remedy.tighter = tightest_loss(before.fit, after.fit);
  remedy.reach_lost = served(before.fit.reach) - served(after.fit.reach);
  remedy.wrap = changed.stair.hooks.wrap;
  if (after.seat.worst) remedy.arc_left = after.seat.poses[*after.seat.worst].arc_left(after.seat.hook.arc);
}

void tell_pull(const LiftSummary& before, const LiftSummary& after, Remedy& remedy) {
  if (std::abs(after.peak - before.peak) <= kFeltPull * before.peak) return;
  remedy.pull_before = before.peak;
  remedy.pull_after = after.peak;
}

}  // namespace stowpath
