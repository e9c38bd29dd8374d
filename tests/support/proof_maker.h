#pragma once

#include <vector>

#include "sim/clearance/proof.h"

namespace stowpath::testing {

/// Owns what a ProofStage refers to, and puts a small one together in a few lines.
struct ProofMaker {
  Linkage linkage{{0.0, 0.0}, 1, {3.0, 3.0, 3.0}, {}, {-1.0, -1.0}};
  Segment segment;
  int base = kRoom;
  Need need{true, false, 0.0, 0.0};  ///< of every pair
  std::vector<Mover> movers;
  std::vector<Target> targets;

  /// One section that swings about the pivot between two leans [rad].
  static ProofMaker swing(double from, double to);

  ProofMaker& margin(double wanted, double play = 0.0);
  ProofMaker& part(const RoundedPolygon& outline, int body = 0, std::vector<Interval> stations = {{-0.25, 0.25}});
  ProofMaker& rope(RopeAnchor a, RopeAnchor b, double radius, std::vector<Interval> stations = {{-0.25, 0.25}});
  ProofMaker& post(const RoundedPolygon& outline, std::vector<Interval> stations = {{-5.0, 5.0}});

  /// Valid until the maker changes or goes.
  ProofStage stage();

  Proof proof(const ProofOptions& options = {});
  Least least(double tolerance = 1e-6, double horizon = 10.0);
  PairAt at(double u, int mover = 0, int target = 0);

 private:
  TargetSet set_;
  NeedTable needs_;
};

/// Interference, undecided or clear as a whole.
Verdict verdict(const Proof& proof);

/// Union of the stretches of u that are not proven clear.
IntervalSet open_stretches(const Proof& proof);

/// The point of a section's datum line at `along` when it leans by `lean`, from the pivot [m].
Vec2 on_arc(double along, double lean);

inline constexpr double kDegree = 0.017453292519943295;
inline constexpr double kInch = 0.0254;

}  // namespace stowpath::testing
