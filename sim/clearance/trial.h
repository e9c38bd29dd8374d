#pragma once

#include <vector>

#include "sim/clearance/cast.h"
#include "sim/clearance/dry_fit.h"
#include "sim/clearance/proof.h"

namespace stowpath {

/// A pair that is not proven clear over a stretch of a move.
struct Encounter {
  int move = 0;  ///< which of Model::moves
  int part = 0;  ///< which segment of the move, in order
  Span span;
  Role mover, target;
  Need need;
  Least least;                 ///< the least clearance over the span [m]
  PairAt worst;                ///< the pair there, seen from the base
  PairPlace place;             ///< the same in the model
  Configuration from, to, at;  ///< poses of the span's ends and of the worst; the station of a roll is the worst one
  IntervalSet stations;        ///< of the stair's middle [m]
  std::vector<double> things;  ///< what tells the met things of the room apart: stations of brackets, numbers of others
  std::vector<std::vector<Vec2>> outlines;  ///< of the two at the worst, seen from the room [m]
};

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
  const TargetCast& room(ZoneState state) const { return rooms_[static_cast<std::size_t>(state)]; }

 private:
  void let_wander(const Move& move);
  void against_room(const Move& move, const Segment& segment, PairPlace where, MoveTrial& out);
  void against_sections(const Move& move, const Segment& segment, PairPlace where, MoveTrial& out);
  void take(const ProofStage& stage, const MoverCast& movers, const TargetCast& targets, const PairPlace& where,
            MoveTrial& out);
  Encounter meet_pair(const ProofStage& stage, const MoverCast& movers, const TargetCast& targets, const Span& span);
  void count(const WalkCounts& counts);
  void block(const ProofStage& stage, const Proof& proof, MoveTrial& out);
  void closest(const ProofStage& stage, const MoverCast& movers, const TargetCast& targets, const PairPlace& where,
               MoveTrial& out);

  const Model& model_;
  DryFitOptions options_;
  std::vector<TargetCast> rooms_;  // by ZoneState
  NeedTable room_needs_, straight_needs_, folded_needs_;
  Work work_;
};

}  // namespace stowpath
