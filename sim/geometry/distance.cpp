#include "sim/geometry/distance.h"

#include <cmath>
#include <limits>

namespace stowpath {
namespace {

/// Angles from 0 up to pi come first in a walk that starts at the lowest vertex.
bool upward(Vec2 e) { return e.y > 0.0 || (e.y == 0.0 && e.x > 0.0); }

}  // namespace

Outline::Outline(const RoundedPolygon& shape)
    : vertex_(shape.core), radius_(shape.radius), disc_(bounding_disc(shape)) {
  const std::size_t n = vertex_.size();
  for (std::size_t i = 0; n > 1 && i < n; ++i) {
    edge_.push_back(vertex_[(i + 1) % n] - vertex_[i]);
    length2_.push_back(norm_squared(edge_.back()));
    inverse2_.push_back(1.0 / length2_.back());
  }
  find_extremes();
}

void Outline::find_extremes() {
  lowest_ = highest_ = 0;
  if (edge_.empty()) return;
  bool before = upward(edge_.back());
  for (std::size_t i = 0; i < edge_.size(); ++i) {
    const bool now = upward(edge_[i]);
    if (now != before) (now ? lowest_ : highest_) = static_cast<int>(i);
    before = now;
  }
}

void Outline::place(const Outline& body, const Pose2& X_WB) {
  const std::size_t n = body.vertex_.size(), edges = body.edge_.size();
  vertex_.resize(n);
  edge_.resize(edges);
  for (std::size_t i = 0; i < n; ++i) vertex_[i] = X_WB * body.vertex_[i];
  for (std::size_t i = 0; i < edges; ++i) edge_[i] = X_WB.turn(body.edge_[i]);
  length2_.assign(body.length2_.begin(), body.length2_.end());
  inverse2_.assign(body.inverse2_.begin(), body.inverse2_.end());
  radius_ = body.radius_;
  disc_ = {X_WB * body.disc_.centre, body.disc_.radius};
  find_extremes();
}

void Outline::set_capsule(Vec2 a, Vec2 b, double radius) {
  radius_ = radius;
  disc_ = {0.5 * (a + b), 0.5 * norm(b - a) + radius};
  vertex_.assign(1, a);
  edge_.clear();
  length2_.clear();
  inverse2_.clear();
  if (!(a == b)) {
    vertex_.push_back(b);
    edge_.assign({b - a, a - b});
    length2_.assign(2, norm_squared(b - a));
    inverse2_.assign(2, 1.0 / length2_.front());
  }
  find_extremes();
}

/// Walks the boundary of B + (-A), whose distance from the origin is that of the two cores.
struct MinkowskiWalk {
  double best2 = std::numeric_limits<double>::infinity();  // squared distance so far [m²]
  bool inside = true;                                      // the origin lies left of every edge met
  bool on_edge = false;                                    // the nearest feature is an edge's inner point
  bool edge_of_a = false;
  int a = 0, b = 0;    // vertices of A and B at the feature's start
  double along = 0.0;  // how far along the edge, 0 to 1

  MinkowskiWalk(const Outline& A, const Outline& B) {
    const int na = static_cast<int>(A.edge_.size()), nb = static_cast<int>(B.edge_.size());
    const Vec2 *va = A.vertex_.data(), *vb = B.vertex_.data(), *ea = A.edge_.data(), *eb = B.edge_.data();
    int i = A.highest_, j = B.lowest_;
    if (na + nb == 0) {
      take_vertex(norm_squared(vb[j] - va[i]), i, j);
      inside = false;
      return;
    }
    for (int left_a = na, left_b = nb; left_a + left_b > 0;) {
      const bool take_a = left_b == 0 || (left_a > 0 && comes_first(-ea[i], eb[j]));
      const Vec2 p = vb[j] - va[i];
      if (take_a) {
        meet(p, -ea[i], A.length2_[static_cast<std::size_t>(i)], A.inverse2_[static_cast<std::size_t>(i)], true, i, j);
        i = i + 1 == na ? 0 : i + 1;
        --left_a;
      } else {
        meet(p, eb[j], B.length2_[static_cast<std::size_t>(j)], B.inverse2_[static_cast<std::size_t>(j)], false, i, j);
        j = j + 1 == nb ? 0 : j + 1;
        --left_b;
      }
    }
    inside = inside && on_edge;  // from within a convex region the nearest point of its edge is never a corner
  }

  double core_distance() const { return inside ? -std::sqrt(best2) : std::sqrt(best2); }

 private:
  static bool comes_first(Vec2 e, Vec2 f) {
    const bool up = upward(e);
    return up == upward(f) ? cross(e, f) > 0.0 : up;
  }

  void take_vertex(double d2, int i, int j) {
    best2 = d2;
    on_edge = false;
    a = i;
    b = j;
  }

  void meet(Vec2 p, Vec2 e, double length2, double inverse2, bool of_a, int i, int j) {
    const double left = cross(p, e), t = -dot(p, e);
    inside = inside && left > 0.0;
    if (t <= 0.0) {
      const double d2 = norm_squared(p);
      if (d2 < best2) take_vertex(d2, i, j);
    } else if (t < length2) {
      const double d2 = left * left * inverse2;
      if (d2 < best2) {
        take_vertex(d2, i, j);
        on_edge = true;
        edge_of_a = of_a;
        along = t * inverse2;
      }
    }
  }
};

double signed_distance(const Outline& a, const Outline& b) {
  return MinkowskiWalk(a, b).core_distance() - a.radius_ - b.radius_;
}

Separation separation(const Outline& a, const Outline& b) {
  const MinkowskiWalk walk(a, b);
  const auto point = [](const Outline& o, int i, bool moves, double u) {
    const Vec2 v = o.vertex_[static_cast<std::size_t>(i)];
    return moves ? v + u * o.edge_[static_cast<std::size_t>(i)] : v;
  };
  Vec2 on_a = point(a, walk.a, walk.on_edge && walk.edge_of_a, walk.along);
  Vec2 on_b = point(b, walk.b, walk.on_edge && !walk.edge_of_a, walk.along);
  const double core = walk.core_distance();
  Vec2 away = on_b - on_a;  // from A to B, turned round where the cores overlap
  double length = norm(away);
  if (walk.inside) away = -away;
  if (length == 0.0) {  // touching cores: any normal of the feature will do
    const Outline& owner = walk.edge_of_a ? a : b;
    const Vec2 e = walk.on_edge ? owner.edge_[static_cast<std::size_t>(walk.edge_of_a ? walk.a : walk.b)] : Vec2{1, 0};
    away = walk.edge_of_a ? Vec2{e.y, -e.x} : Vec2{-e.y, e.x};
    length = norm(away);
  }
  const Vec2 n = (1.0 / length) * away;
  return {core - a.radius_ - b.radius_, on_a + a.radius_ * n, on_b - b.radius_ * n};
}

double distance(const RoundedPolygon& a, const Pose2& X_WA, const RoundedPolygon& b, const Pose2& X_WB) {
  Outline A, B;
  A.place(Outline(a), X_WA);
  B.place(Outline(b), X_WB);
  return signed_distance(A, B);
}

}  // namespace stowpath
