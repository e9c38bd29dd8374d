#pragma once

#include <cstddef>
#include <vector>

#include "sim/geometry/pose2.h"
#include "sim/geometry/rounded_polygon.h"

namespace stowpath {

/// How far two outlines are apart, with the two points that show it.
struct Separation {
  double distance = 0.0;  ///< negative: the least shift that frees them, as depth [m]
  Vec2 on_a, on_b;        ///< in the world; |on_b - on_a| = |distance| [m]
};

/// An outline made ready for distances: its core and its edges, as they lie in some frame.
///
/// The edges' directions are turned from the body's own, never taken as differences of placed vertices: so a sliver's
/// edge keeps its direction to the last bit wherever the body stands.
class Outline {
 public:
  Outline() = default;
  explicit Outline(const RoundedPolygon& shape);

  /// Writes `body` as seen from W into this one. Cheap where this one has held that body before.
  void place(const Outline& body, const Pose2& X_WB);
  /// Becomes a capsule (or a disc) between two points of W.
  void set_capsule(Vec2 a, Vec2 b, double radius);

  int vertices() const { return static_cast<int>(vertex_.size()); }
  const std::vector<Vec2>& core() const { return vertex_; }
  double radius() const { return radius_; }
  const BoundingDisc& disc() const { return disc_; }

  friend double signed_distance(const Outline& a, const Outline& b);
  friend Separation separation(const Outline& a, const Outline& b);

 private:
  template <bool kOfA>
  friend struct EdgeFan;
  friend struct Witness;
  enum Row { kAlongX, kAlongY, kLength, kAngle, kOpposite, kRows };
  double* row(Row r) { return rows_.data() + r * stride_; }
  const double* row(Row r) const { return rows_.data() + r * stride_; }
  void take_edges(std::size_t count);
  void sort_edges();

  std::vector<Vec2> vertex_;  // counter-clockwise [m]
  // What the distance needs of each edge (from vertex i to i+1; none for a disc), row by row: the unit vector along
  // it, its length [m], its direction and the opposite one as sort keys that grow with the angle. An odd count is
  // made even by repeating the last edge.
  std::vector<double> rows_;
  std::ptrdiff_t stride_ = 0;
  std::size_t edges_ = 0;
  std::size_t first_ = 0;           // the edge of least kAngle
  std::size_t first_opposite_ = 0;  // the edge of least kOpposite
  double radius_ = 0.0;
  BoundingDisc disc_;
};

/// Signed distance of two outlines that lie in one frame: exact up to rounding (below 1e-12 m for coordinates to 10 m).
///
/// Every edge of the Minkowski difference of the cores is met once, with no iteration and no tolerance: an edge of one
/// core stands at the vertex of the other which its direction picks out. Symmetric but for rounding, and 1-Lipschitz in
/// the displacement of either outline, overlapping or not: it is the greatest separation over all directions.
double signed_distance(const Outline& a, const Outline& b);

/// The same with witness points.
Separation separation(const Outline& a, const Outline& b);

/// For single questions; the proofs keep their Outlines.
double distance(const RoundedPolygon& a, const Pose2& X_WA, const RoundedPolygon& b, const Pose2& X_WB);

}  // namespace stowpath
