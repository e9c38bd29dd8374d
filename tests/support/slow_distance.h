#pragma once

#include "sim/geometry/rounded_polygon.h"

namespace stowpath::testing {

/// The signed distance of two placed outlines the slow way, in long double: the greatest separation over every
/// direction that can attain it (each edge's two normals and each line through a vertex of A and one of B), each
/// measured over all vertices. Shares nothing with the kernel but the definition.
/// @returns the distance [m], negative by the least shift that frees them
/// Source: the distance of disjoint convex sets is the greatest separation over all directions, and the penetration
/// depth its continuation; Boyd & Vandenberghe (2004), Convex Optimization, section 8.2 (exercise 8.1 for the dual).
long double slow_distance(const RoundedPolygon& a, const Pose2& X_WA, const RoundedPolygon& b, const Pose2& X_WB);

}  // namespace stowpath::testing
