#pragma once

#include <vector>

#include "sim/clearance/pair_look.h"
#include "sim/mechanism/model.h"

namespace stowpath {

/// One pair along one segment of one model.
class PairView {
 public:
  PairView(const Model& model, const PairPlace& place, Target target);

  /// Signed clearance at u of the whole segment [m].
  double operator()(double u) const;

  /// Where the hinge between the pair's sections reaches kEndsPart, at which a segment is cut, near u; `u` itself where it
  /// is not.
  double at_parting(double u) const;

 private:
  const Linkage& linkage_;
  Segment segment_;
  int base_;
  Mover mover_;
  Target target_;
};

/// Where to look for how a least clearance changes: a mean over poses.
///
/// At a smooth least, at an end of the segment or at its cut, it is the one pose. At a corner, where two branches cross
/// with slopes a < 0 < b, it is one pose on each side: the crossing's height changes by (b da - a db) / (b - a), da and
/// db being the changes of the branches.
struct PairSight {
  struct Look {
    double u = 0.0;
    double weight = 1.0;
    bool at_cut = false;  ///< the pose goes with the cut, u only says where that is now
  };
  std::vector<Look> looks;
  double u = 0.0;          ///< of the least clearance
  double clearance = 0.0;  ///< there [m]

  double mean(const PairView& view) const;
};

/// Finds the least clearance of a pair near place.u, downhill from there.
PairSight settle(const PairView& view, const PairPlace& place);

}  // namespace stowpath
