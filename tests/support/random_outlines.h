#pragma once

#include <random>

#include "sim/geometry/rounded_polygon.h"

namespace stowpath::testing {

double uniform(std::mt19937& random, double lo, double hi);

/// Two outlines and where they stand.
struct Pair {
  RoundedPolygon a, b;
  Pose2 X_WA, X_WB;
};

/// A disc, a capsule, a box, a general convex polygon or a sliver 1e-6 m thin, up to about 1 m across; half of them
/// rounded.
RoundedPolygon random_outline(std::mt19937& random);

/// Within 10 m of the origin and near each other, so that about half overlap. A third of the pairs are boxes,
/// capsules and discs on a coarse grid, square to each other: parallel and shared edges, shared vertices, equal
/// outlines.
Pair random_pair(std::mt19937& random);

}  // namespace stowpath::testing
