#pragma once

#include <vector>

#include "sim/clearance/cast.h"
#include "sim/clearance/dry_fit.h"
#include "sim/clearance/encounter.h"
#include "sim/clearance/proof.h"

namespace stowpath {

/// What was proven of one move.
struct MoveTrial {
  MoveResult result;
  std::vector<Encounter> encounters;
  IntervalSet not_clear;  ///< a roll's stations that are not proven clear [m]
};

/// The casts that several moves share.
class Trial {
 public:
  Trial(const Model& model, const DryFitOptions& options);

  MoveTrial run(int move);
  const Work& work() const { return work_; }
  const TargetCast& room(ZoneState state, bool hooked_on) const;

 private:
  void let_wander(const Move& move);
  void against_room(const Move& move, const Segment& segment, PairPlace where, MoveTrial& out);
  void against_sections(const Move& move, const Segment& segment, PairPlace where, MoveTrial& out);
  void against_ropes(const Move& move, const Segment& segment, MoveTrial& out);
  void take(const ProofStage& stage, const MoverCast& movers, const TargetCast& targets, const PairPlace& where,
            MoveTrial& out);
  Encounter meet_pair(const ProofStage& stage, const MoverCast& movers, const TargetCast& targets, const Span& span);
  void count(const WalkCounts& counts);
  void block(const ProofStage& stage, const Proof& proof, MoveTrial& out);
  void closest(const ProofStage& stage, const MoverCast& movers, const TargetCast& targets, const PairPlace& where,
               MoveTrial& out);

  const Model& model_;
  DryFitOptions options_;
  std::vector<TargetCast> rooms_;  // by ZoneState, the line off and then on
  NeedTable room_needs_, section_needs_;
  Work work_;
};

}  // namespace stowpath
