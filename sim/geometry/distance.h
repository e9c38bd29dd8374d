#pragma once

#include <cstddef>
#include <vector>

#include "sim/geometry/pose2.h"
#include "sim/geometry/rounded_polygon.h"

namespace stowpath {

/// Covers rounding in placing and measuring for coordinates below 100 m: derived in docs/method.md [m].
inline constexpr double kRoundingGuard = 1e-9;

/// How far two outlines are apart, with the two points that show it.
struct Separation {
  double distance = 0.0;  ///< negative: the least shift that frees them, as depth [m]
  Vec2 on_a, on_b;        ///< in the world; |on_b - on_a| = |distance| [m]
};

/// Two numbers worked on at once: one register on any 64-bit machine, so the digits agree everywhere.
using Two = double __attribute__((vector_size(16)));

/// A core as the distance reads it.
struct CoreTable {
  struct Corner {
    Two at;  // x and y [m]
  };
  struct EdgePair {
    Two x, y;      // unit vectors along two edges that follow each other
    Two length;    // [m]
    Two angle;     // a key that grows with the edge's angle
    Two opposite;  // and one that grows with the angle of the edge walked backwards
  };

  std::size_t vertices = 0;
  std::size_t edges = 0;           // from vertex i to i+1; none for a disc
  std::vector<Corner> corner;      // counter-clockwise, twice over, so that no walk round has to wrap
  std::vector<EdgePair> pair;      // an odd count is made even by repeating the first edge
  std::size_t first = 0;           // the edge of least angle
  std::size_t first_opposite = 0;  // the edge of least opposite
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

  int vertices() const { return static_cast<int>(table_.vertices); }
  std::vector<Vec2> core() const;
  double radius() const { return radius_; }
  const BoundingDisc& disc() const { return disc_; }

  friend double signed_distance(const Outline& a, const Outline& b);
  friend Separation separation(const Outline& a, const Outline& b);

 private:
  CoreTable table_;
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
