#pragma once

#include <random>
#include <vector>

#include "sim/clearance/proof.h"
#include "tests/reference/prism.h"

namespace stowpath::bench {

/// An upright box in its own frame that stands somewhere, on one or more stretches of stations.
struct BoxPart {
  RoundedPolygon outline;
  Pose2 X_FB;  ///< in the frame of its section, or of the room
  std::vector<Interval> stations;
  int section = 0;
};

/// A stair of two sections on a 9 m rail, all boxes so that FCL may use its fastest shape: 34 moving prisms, and 73
/// fixed ones in 43 outlines unless more are asked for. The procedure rolls 8.4 m, lifts and folds along three straight
/// segments, and rolls back 8.4 m parked. The fixed boxes are drawn at random, and kept where they leave the margin.
struct ReferenceScene {
  static constexpr double kMargin = 0.010;  // [m]

  Linkage linkage;
  std::vector<Segment> procedure;
  std::vector<BoxPart> moving, fixed;
  std::vector<Mover> movers;
  TargetSet targets;
  NeedTable needs;

  /// @param obstacles  fixed prisms; 73 is the reference scene
  explicit ReferenceScene(int obstacles = 73);
  ReferenceScene(const ReferenceScene&) = delete;
  ReferenceScene& operator=(const ReferenceScene&) = delete;

  ProofStage stage(const Segment& segment) const { return {linkage, segment, kRoom, movers, targets, needs}; }
  /// True if every segment is proven clear.
  bool prove_procedure(WalkCounts& counts) const;

 private:
  void draw_fixed(int obstacles);
  bool clear_of(const BoxPart& box, double margin);
  void keep(const BoxPart& box);
};

/// How far anything moves along a segment, at most: what sampling must divide into steps [m].
double greatest_travel(const ReferenceScene& scene, const Segment& segment);

}  // namespace stowpath::bench
