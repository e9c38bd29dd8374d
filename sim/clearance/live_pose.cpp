#include "sim/clearance/live_pose.h"

#include <algorithm>
#include <numbers>
#include <set>
#include <stdexcept>

#include "sim/clearance/proof.h"

namespace stowpath {
namespace {

constexpr double kHorizon = 1.0;      // clearances beyond this are not told apart [m]
constexpr double kTolerance = 1e-7;   // of a clearance that is shown [m]
constexpr double kTurnStep = 1e-5;    // to which a way's end is known [rad]
constexpr double kRollStep = 1e-5;    // and along the rail [m]

bool is_folded(const Segment& s, std::size_t hinge) {
  const double quarter = 0.5 * std::numbers::pi;
  return s.kind == SegmentKind::straight && std::min(s.from.folds[hinge], s.to.folds[hinge]) >= quarter;
}

PoseMeeting meeting(const ProofStage& stage, const MoverCast& movers, const TargetCast& targets, int mover, int target,
                    double u) {
  const PairAt pair = look_at_pair(stage, mover, target, u);
  const Role &a = movers.roles[static_cast<std::size_t>(mover)], &b = targets.roles[static_cast<std::size_t>(target)];
  const Need& need = stage.needs.at(stage.movers[static_cast<std::size_t>(mover)].group, stage.targets[target].group);
  const Pose2 X_WB = snapshot(stage, u).of(kRoom).inverse();
  return {{a.name, b.name},
          {a.kind, b.kind},
          pair.clearance,
          pair.side_view,
          need.margin,
          {pair.witness.distance, X_WB * pair.witness.on_a, X_WB * pair.witness.on_b}};
}

/// Pairs that already touch where a way begins.
std::set<std::pair<int, int>> touching_at_start(const ProofStage& stage) {
  Segment start = stage.segment;
  start.kind = SegmentKind::straight;
  start.to = start.from;
  const ProofStage still{stage.linkage, start, stage.base, stage.movers, stage.targets, stage.needs};
  std::set<std::pair<int, int>> out;
  for (const Span& span : prove(still).spans) out.insert({span.mover, span.target});
  return out;
}

}  // namespace

PoseWatch::PoseWatch(const Model& model)
    : model_(model), wanted_{room_needs(model), section_needs(model, false), section_needs(model, true)} {
  for (const ZoneState state : {ZoneState::always, ZoneState::standing, ZoneState::moving, ZoneState::parked}) {
    rooms_[static_cast<std::size_t>(state)] = room_cast(model, state);
  }
  touching_ = {wanted_.room.touching(), wanted_.straight.touching(), wanted_.folded.touching()};
}

/// Room first, then section against section.
template <typename Look>
void PoseWatch::each_stage(const Segment& segment, const Move& like, const View& needs, Look look) const {
  const MoverCast stair = stair_cast(model_, like, segment.from.station);
  const TargetCast& room = rooms_[static_cast<std::size_t>(like.state)];
  look(ProofStage{model_.linkage, segment, kRoom, stair.movers, room.targets, needs.room}, stair, room);
  for (int base = 0; base + 1 < model_.linkage.sections; ++base) {
    const MoverCast further = further_cast(model_, like, segment.from.station, base);
    const TargetCast section = section_cast(model_, like, base);
    Segment riding = segment;
    riding.stations = {0.0, 0.0};  // both ride on the stair
    const bool folded = is_folded(segment, static_cast<std::size_t>(base));
    look(ProofStage{model_.linkage, riding, base, further.movers, section.targets,
                    folded ? needs.folded : needs.straight},
         further, section);
  }
}

PoseNews PoseWatch::at(const Configuration& pose, const Move& like) const {
  PoseNews news;
  Segment still;
  still.from = still.to = pose;
  each_stage(still, like, wanted_, [&](const ProofStage& stage, const MoverCast& movers, const TargetCast& targets) {
    const double horizon = news.closest ? news.closest->clearance : kHorizon;
    const Least least = least_clearance(stage, kTolerance, horizon);
    if (least.mover >= 0) news.closest = meeting(stage, movers, targets, least.mover, least.target, least.u);
    for (const Span& span : prove(stage).spans) {
      const PoseMeeting met = meeting(stage, movers, targets, span.mover, span.target, 0.5);
      if (met.clearance < met.needed) news.met.push_back(met);
    }
  });
  std::stable_sort(news.met.begin(), news.met.end(), [](const PoseMeeting& a, const PoseMeeting& b) {
    return a.clearance - a.needed < b.clearance - b.needed;
  });
  return news;
}

FreeWay PoseWatch::free_way(const Segment& way, const Move& like) const {
  if (way.over_stations()) throw std::invalid_argument("free way: the segment runs over stretches of stations");
  FreeWay out;
  ProofOptions fine;
  fine.resolution = kTurnStep;
  fine.roll_resolution = kRollStep;
  each_stage(way, like, touching_, [&](const ProofStage& stage, const MoverCast& movers, const TargetCast& targets) {
    const std::set<std::pair<int, int>> before = touching_at_start(stage);
    for (const Span& span : prove(stage, fine).spans) {
      if (span.open0 >= out.u || before.count({span.mover, span.target}) > 0) continue;
      out = {span.open0, meeting(stage, movers, targets, span.mover, span.target, span.open0)};
    }
  });
  return out;
}

}  // namespace stowpath
