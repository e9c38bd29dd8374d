#include "sim/clearance/live_pose.h"

#include <algorithm>
#include <set>
#include <stdexcept>

#include "sim/clearance/proof.h"

namespace stowpath {
namespace {

constexpr double kHorizon = 1.0;      // clearances beyond this are not told apart [m]
constexpr double kTolerance = 1e-7;   // of a clearance that is shown [m]
constexpr double kTurnStep = 1e-5;    // to which a way's end is known [rad]
constexpr double kRollStep = 1e-5;    // and along the rail [m]

PoseMeeting meeting(const ProofStage& stage, const MoverCast& movers, const TargetCast& targets, int mover, int target,
                    double u) {
  const PairAt pair = look_at_pair(stage, mover, target, u);
  const Role &a = movers.roles[static_cast<std::size_t>(mover)], &b = targets.roles[static_cast<std::size_t>(target)];
  const Need need = stage.need(mover, target);
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

PoseWatch::PoseWatch(const Model& model) : model_(model) {
  for (const bool hooked_on : {false, true})
    for (const ZoneState state : {ZoneState::always, ZoneState::standing, ZoneState::moving, ZoneState::parked})
      rooms_[static_cast<std::size_t>(state) + (hooked_on ? 4U : 0U)] = room_cast(model, state, hooked_on);
  wanted_ = {room_needs(model), section_needs(model, assumed_wander(model))};
  touching_ = {wanted_.room.touching(), wanted_.sections.touching()};
}

/// With touching alone as a fault, what a contact rule lets two things do stays allowed.
void PoseWatch::allow(const ContactState& state, const View& needs, bool room, const TargetCast& targets,
                      MoverCast& movers) const {
  allow_contacts(model_, state, room ? needs.room : needs.sections, targets, movers);
  if (&needs != &touching_) return;
  for (Mover& mover : movers.movers)
    for (PairNeed& pair : mover.pairs) pair.need = touching(pair.need);
}

/// Room first, then section against section.
template <typename Look>
void PoseWatch::each_stage(const Segment& segment, const Move& like, const View& needs, Look look) const {
  const TargetCast& room = rooms_[static_cast<std::size_t>(like.state) + (like.hooked_on ? 4U : 0U)];
  for (const Stretch& stretch : room_stretches(model_, like, segment)) {
    MoverCast stair = stair_cast(model_, like, stretch.segment);
    allow(stretch.state, needs, true, room, stair);
    look(ProofStage{model_.linkage, stretch.segment, kRoom, stair.movers, room.targets, needs.room}, stair, room,
         stretch.piece);
  }
  for (int base = 0; base < model_.linkage.sections; ++base) {
    const TargetCast section = section_cast(model_, like, base);
    for (const Stretch& stretch : section_stretches(model_, like, segment, base)) {
      MoverCast beyond = beyond_cast(model_, like, segment, base);
      allow(stretch.state, needs, false, section, beyond);
      look(ProofStage{model_.linkage, stretch.segment, base, beyond.movers, section.targets, needs.sections}, beyond,
           section, stretch.piece);
    }
  }
}

PoseNews PoseWatch::at(const Configuration& pose, const Move& like) const {
  PoseNews news;
  Segment still;
  still.from = still.to = pose;
  each_stage(still, like, wanted_, [&](const ProofStage& stage, const MoverCast& movers, const TargetCast& targets,
                                       Interval) {
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
  each_stage(way, like, touching_, [&](const ProofStage& stage, const MoverCast& movers, const TargetCast& targets,
                                       Interval piece) {
    const std::set<std::pair<int, int>> before =
        piece.lo == 0.0 ? touching_at_start(stage) : std::set<std::pair<int, int>>{};
    for (const Span& span : prove(stage, fine).spans) {
      const double u = piece.lo + span.open0 * piece.length();
      if (u >= out.u || before.count({span.mover, span.target}) > 0) continue;
      out = {u, meeting(stage, movers, targets, span.mover, span.target, span.open0)};
    }
  });
  return out;
}

}  // namespace stowpath
