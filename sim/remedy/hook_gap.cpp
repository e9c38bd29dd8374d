#include "sim/remedy/hook_gap.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "sim/clearance/cast.h"
#include "sim/clearance/proof.h"

namespace stowpath {
namespace {

constexpr double kTolerance = 1e-5;  // [m]
constexpr double kHorizon = 1.0;     // [m]
constexpr double kDegree = std::numbers::pi / 180.0;

/// The hooks and the brackets alone.
struct HookStage {
  MoverCast movers;
  TargetCast targets;
  NeedTable needs;
};

HookStage hook_stage(const Model& model, const Move& move) {
  HookStage out{{}, {}, room_needs(model)};
  const MoverCast all = stair_cast(model, move, move.segments.front());
  for (std::size_t i = 0; i < all.movers.size(); ++i) {
    if (all.roles[i].kind != PartKind::hook) continue;
    out.movers.movers.push_back(all.movers[i]);
    out.movers.roles.push_back(all.roles[i]);
  }
  const TargetCast room = room_cast(model, move.state, move.hooked_on);
  std::vector<Target> brackets;
  for (std::size_t i = 0; i < room.roles.size(); ++i) {
    if (room.roles[i].kind == PartKind::bracket) brackets.push_back(room.targets.all()[i]);
  }
  out.targets.targets = TargetSet(std::move(brackets));
  return out;
}

std::optional<HookGap> least_in(const Model& model, int number, const Segment& segment, double horizon) {
  const HookStage on = hook_stage(model, model.moves[static_cast<std::size_t>(number)]);
  const ProofStage stage{model.linkage, segment, kRoom, on.movers.movers, on.targets.targets, on.needs};
  const Least least = least_clearance(stage, kTolerance, horizon);
  if (least.mover < 0) return std::nullopt;
  const PairAt pair = look_at_pair(stage, least.mover, least.target, least.u);
  return HookGap{number, at(model.linkage, segment, least.u), pair.clearance, pair.witness};
}

Scene with_arc(const Scene& scene, double degrees) {
  Scene out = scene;
  out.stair.hooks.wrap = degrees * kDegree;
  out.stair.hooks.tip = 0.0;
  out.stair.hooks.end = HookEnd::square;
  return out;
}

bool clears(const Scene& scene, double degrees, const AssessOptions& options) {
  return !meets_bracket(assess(with_arc(scene, degrees), options).fit);
}

}  // namespace

std::optional<HookGap> least_hook_gap(const Model& model) {
  std::optional<HookGap> out;
  for (int i = 0; i < static_cast<int>(model.moves.size()); ++i) {
    for (const Segment& segment : model.moves[static_cast<std::size_t>(i)].segments) {
      const auto found = least_in(model, i, segment, out ? out->clearance : kHorizon);
      if (found && (!out || found->clearance < out->clearance - 2.0 * kTolerance)) out = found;
    }
  }
  return out;
}

std::optional<HookGap> hook_gap_at(const Model& model, const Configuration& at) {
  const Pose2 X_W = place_sections(model.linkage, at)[0];
  std::optional<HookGap> out;
  for (const StairPart& hook : model.stair) {
    if (hook.kind != PartKind::hook) continue;
    Outline placed;
    placed.place(Outline(hook.outline), X_W);
    for (const RoomPart& bracket : model.room) {
      if (bracket.kind != PartKind::bracket) continue;
      const Separation gap = separation(placed, Outline(bracket.outline));
      if (!out || gap.distance < out->clearance) out = HookGap{-1, at, gap.distance, gap};
    }
  }
  return out;
}

double beside_bracket(const Model& model, double station) {
  double least = std::numeric_limits<double>::infinity();
  for (const StairPart& hook : model.stair) {
    if (hook.kind != PartKind::hook) continue;
    for (const RoomPart& bracket : model.room) {
      if (bracket.kind == PartKind::bracket)
        least = std::min(least, rail_gaps(hook.stations, bracket.stations, {station, station}, false).least);
    }
  }
  return least;
}

bool meets_bracket(const DryFit& fit) {
  return std::any_of(fit.findings.begin(), fit.findings.end(), [](const Finding& f) {
    return f.part_kinds[0] == PartKind::hook && f.part_kinds[1] == PartKind::bracket;
  });
}

std::optional<Trim> trim_that_clears(const Scene& scene, double least, const AssessOptions& options) {
  const Hooks& hooks = scene.stair.hooks;
  int clear = static_cast<int>(std::ceil(least / kDegree - 1e-9));
  int meets = static_cast<int>(std::ceil(hooks.wrap / kDegree - 1e-9));
  if (meets <= clear || !clears(scene, clear, options)) return std::nullopt;
  while (meets - clear > 1) {
    const int middle = clear + (meets - clear) / 2;
    (clears(scene, middle, options) ? clear : meets) = middle;
  }
  const double wrap = clear * kDegree;
  return Trim{wrap, (hooks.wrap - wrap) * (hooks.inside + hooks.depth()) + hooks.tip};
}

}  // namespace stowpath
