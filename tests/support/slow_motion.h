#pragma once

#include "sim/clearance/stage.h"

namespace stowpath::testing {

/// The slow second opinion on a pair's motion: its own kinematics, distances and rail arithmetic, written from the
/// words of the design and sharing nothing with the proofs but the structs that pose the question.
///
/// `Real` is double for searching, long double where an answer hangs on the last nanometre.
template <typename Real>
class SlowMotion {
 public:
  SlowMotion(const ProofStage& stage, int mover, int target);

  /// Signed clearance of the two prisms at u, at the worst station that is meant there [m].
  Real clearance(Real u) const;

  /// A crude bound on how far any point of the mover is displaced between u and v, along the rail included [m].
  Real travel(Real u, Real v) const;

  /// No point of the mover gets farther from any joint, whatever the folds [m].
  Real reach() const { return reach_; }

 private:
  struct Point {
    Real x = 0, y = 0;
  };
  struct Frame {  // a point (along, across) lies at `o` + along * a + across * b
    Point o, a, b;
  };
  struct Pose {
    Frame frame[kMaxSections];
    Real lean[kMaxSections];
  };

  static Point put(const Frame& f, Point p);
  static Point take(const Frame& f, Point p);
  Pose pose(Real u) const;
  Real dragged_lean(Real hinge_up) const;
  Point seen(const Pose& now, int body, Point p) const;
  Real side_view(Real u) const;
  static Real core_distance(const Point* a, int na, const Point* b, int nb);

  const ProofStage& stage_;
  const Mover& mover_;
  const Target& target_;
  Real reach_ = 0;  // pivot to the farthest point of mover or base, whatever the folds [m]
};

/// The least clearance that a search finds over [u0, u1], and where.
struct SlowLeast {
  double clearance = 0.0;  ///< [m]
  double u = 0.0;
};

/// Steps along [u0, u1] no faster than the clearance above `level` allows, and refines every dip: nothing below `level`
/// by more than `grain` stays unseen, since no step crosses more than that without looking.
/// @param enough  the search ends early once a clearance below this was seen [m]
SlowLeast slow_least(const SlowMotion<double>& motion, double u0, double u1, double level, double grain, double enough);

}  // namespace stowpath::testing
