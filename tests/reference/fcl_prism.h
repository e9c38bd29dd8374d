#pragma once

#include <fcl/fcl.h>

#include "tests/reference/prism.h"

namespace stowpath::testing {

/// Which of FCL's two solvers answers.
using Solver = fcl::GJKSolverType;

/// A prism's outline and stations as a convex polytope about its own frame's origin.
fcl::Convexd fcl_convex(const Prism& prism);

/// A prism whose outline is an upright box in its own frame, as FCL's box. @throws std::invalid_argument if it is not.
fcl::Boxd fcl_box(const Prism& prism);

/// Where the convex polytope stands.
fcl::Transform3d fcl_pose(const Pose2& X_WB);
/// Where the box stands: FCL's boxes are centred.
fcl::Transform3d fcl_box_pose(const Prism& prism);

/// FCL's distance to within its `tolerance`, 0 or less where it says they overlap [m].
double fcl_distance(const fcl::ShapeBased& a, const fcl::Transform3d& X_WA, const fcl::ShapeBased& b,
                    const fcl::Transform3d& X_WB, Solver solver, double tolerance);
bool fcl_overlap(const fcl::ShapeBased& a, const fcl::Transform3d& X_WA, const fcl::ShapeBased& b,
                 const fcl::Transform3d& X_WB, Solver solver);

}  // namespace stowpath::testing
