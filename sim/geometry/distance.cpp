#include "sim/geometry/distance.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <limits>

namespace stowpath {
namespace {

constexpr double kFar = std::numeric_limits<double>::infinity();

/// Two numbers worked on at once: one register on any 64-bit machine, so the digits agree everywhere.
using Two = double __attribute__((vector_size(16)));
using TwoCounts = decltype(Two{} < Two{});

Two load(const double* p) {
  Two out;
  std::memcpy(&out, p, sizeof out);
  return out;
}
Two load(const Vec2& v) { return load(&v.x); }
void store(double* p, Two v) { std::memcpy(p, &v, sizeof v); }
Two both(double x) { return Two{x, x}; }

double least(double a, double b) { return a < b ? a : b; }
double greatest(double a, double b) { return a > b ? a : b; }
Two least(Two a, Two b) { return a < b ? a : b; }
Two greatest(Two a, Two b) { return a > b ? a : b; }

/// A key that grows with the angle of (x, y), from -2 at -pi to 2 at pi. Rounding may swap directions that differ by
/// 1e-15 rad, which moves the difference polygon by less than that times an edge.
double angle_key(double x, double y) { return std::copysign(1.0 - x / (std::abs(x) + std::abs(y)), y); }

/// One edge (or two) of the difference polygon, as seen from the origin.
template <class T>
struct Meeting {
  T inside;     // how far the origin lies to the left of the edge's line [m]
  T along;      // where its foot falls on the edge, from its start [m]
  T distance2;  // squared distance from the edge [m²]
};

template <class T>
Meeting<T> meet(T px, T py, T ux, T uy, T length) {
  const T inside = px * uy - py * ux, along = -(px * ux + py * uy);
  const T beyond = along - least(greatest(along, T{}), length);
  return {inside, along, inside * inside + beyond * beyond};
}

/// The signed distance of the cores, from the least distance to an edge and the least depth below an edge's line.
/// Rounding may put the origin left of every line of a sliver although it lies beyond its end: then it is far from
/// the edges and near the lines.
bool is_inside(double depth, double distance2) { return depth > 0.0 && distance2 <= 4.0 * depth * depth; }

}  // namespace

Outline::Outline(const RoundedPolygon& shape)
    : vertex_(shape.core), radius_(shape.radius), disc_(bounding_disc(shape)) {
  const std::size_t n = vertex_.size();
  take_edges(n > 1 ? n : 0);
  for (std::size_t k = 0; k < edges_; ++k) {
    const Vec2 e = vertex_[(k + 1) % n] - vertex_[k];
    const double length = norm(e);
    row(kAlongX)[k] = e.x / length;
    row(kAlongY)[k] = e.y / length;
    row(kLength)[k] = length;
  }
  sort_edges();
}

void Outline::take_edges(std::size_t count) {
  edges_ = count;
  stride_ = static_cast<std::ptrdiff_t>(count + count % 2);
  rows_.resize(static_cast<std::size_t>(kRows * stride_));
}

void Outline::sort_edges() {
  first_ = first_opposite_ = 0;
  if (edges_ == 0) return;
  double *x = row(kAlongX), *y = row(kAlongY), *length = row(kLength), *angle = row(kAngle), *other = row(kOpposite);
  if (edges_ % 2 != 0) {
    x[edges_] = x[edges_ - 1];
    y[edges_] = y[edges_ - 1];
    length[edges_] = length[edges_ - 1];
  }
  for (std::ptrdiff_t k = 0; k < stride_; ++k) {
    angle[k] = angle_key(x[k], y[k]);
    other[k] = angle[k] - std::copysign(2.0, angle[k]);
  }
  for (std::size_t k = 1; k < edges_; ++k) {
    first_ = angle[k] < angle[k - 1] ? k : first_;
    first_opposite_ = other[k] < other[k - 1] ? k : first_opposite_;
  }
}

void Outline::place(const Outline& body, const Pose2& X_WB) {
  vertex_.resize(body.vertex_.size());
  for (std::size_t i = 0; i < vertex_.size(); ++i) vertex_[i] = X_WB * body.vertex_[i];
  take_edges(body.edges_);
  const double *x = body.row(kAlongX), *y = body.row(kAlongY);
  const Two c = both(X_WB.c), s = both(X_WB.s);
  for (std::ptrdiff_t k = 0; k < stride_; k += 2) {
    store(row(kAlongX) + k, c * load(x + k) - s * load(y + k));
    store(row(kAlongY) + k, s * load(x + k) + c * load(y + k));
  }
  std::copy_n(body.row(kLength), stride_, row(kLength));
  radius_ = body.radius_;
  disc_ = {X_WB * body.disc_.centre, body.disc_.radius};
  sort_edges();
}

void Outline::set_capsule(Vec2 a, Vec2 b, double radius) {
  const double length = norm(b - a);
  radius_ = radius;
  disc_ = {0.5 * (a + b), 0.5 * length + radius};
  vertex_.assign(1, a);
  take_edges(length > 0.0 ? 2 : 0);
  if (edges_ > 0) {
    vertex_.push_back(b);
    const Vec2 u{(b - a).x / length, (b - a).y / length};
    store(row(kAlongX), Two{u.x, -u.x});
    store(row(kAlongY), Two{u.y, -u.y});
    store(row(kLength), both(length));
  }
  sort_edges();
}

/// The edges of one core, each meeting the vertex of the other core at which it stands in the difference polygon
/// B + (-A).
///
/// That polygon's edges are those of B and, reversed, those of A, sorted by angle: an edge of A stands at the vertex
/// of B which the edges of B before it lead to, and the other way about. Equal angles are settled by the same
/// comparison from both sides (A first), so that every edge starts where the one before it ends.
template <bool kOfA>
struct EdgeFan {
  const Outline &own, &other;
  const double* own_key = own.row(kOfA ? Outline::kOpposite : Outline::kAngle);
  const double* other_key = other.row(kOfA ? Outline::kAngle : Outline::kOpposite);
  const std::size_t other_first = kOfA ? other.first_ : other.first_opposite_;

  template <class Key>
  static auto comes_before(Key theirs, Key ours) {
    return kOfA ? theirs < ours : theirs <= ours;
  }

  std::size_t vertex_after(std::size_t edges_before) const {
    const std::size_t j = other_first + edges_before, n = other.vertex_.size();
    return j < n ? j : j - n;
  }

  /// The vertex of the other core that edge k meets.
  std::size_t vertex_met(std::size_t k) const {
    std::size_t before = 0;
    for (std::size_t j = 0; j < other.edges_; ++j) before += comes_before(other_key[j], own_key[k]) ? 1 : 0;
    return vertex_after(before);
  }

  Meeting<double> meet_one(std::size_t k, std::size_t vertex) const {
    const Vec2 p = own.vertex_[k] - other.vertex_[vertex];
    return meet(p.x, p.y, own.row(Outline::kAlongX)[k], own.row(Outline::kAlongY)[k], own.row(Outline::kLength)[k]);
  }

  /// Edges k and k + 1 at once (k twice, where it is the last).
  Meeting<Two> meet_two(std::size_t k) const {
    const Two keys = load(own_key + k);
    TwoCounts before{};
    for (std::size_t j = 0; j < other.edges_; ++j) before -= comes_before(both(other_key[j]), keys);
    const std::size_t next = k + 1 < own.edges_ ? k + 1 : k;
    const Two p = load(own.vertex_[k]) - load(other.vertex_[vertex_after(static_cast<std::size_t>(before[0]))]);
    const Two q = load(own.vertex_[next]) - load(other.vertex_[vertex_after(static_cast<std::size_t>(before[1]))]);
    return meet(Two{p[0], q[0]}, Two{p[1], q[1]}, load(own.row(Outline::kAlongX) + k),
                load(own.row(Outline::kAlongY) + k), load(own.row(Outline::kLength) + k));
  }

  void meet_all(Two& depth, Two& distance2) const {
    for (std::size_t k = 0; k < own.edges_; k += 2) {
      const Meeting<Two> m = meet_two(k);
      depth = least(depth, m.inside);
      distance2 = least(distance2, m.distance2);
    }
  }
};

/// Where the difference polygon comes closest to the origin: seen from within, that is the place of the least depth.
struct Witness {
  double depth = kFar, distance2 = kFar;
  Vec2 on_a, on_b;
  Vec2 normal{1.0, 0.0};  // of the edge there, from A to B
  bool on_edge = false;   // not at a corner of both

  template <bool kOfA>
  void look(const EdgeFan<kOfA>& fan) {
    for (std::size_t k = 0; k < fan.own.edges_; ++k) {
      const std::size_t vertex = fan.vertex_met(k);
      const Meeting<double> m = fan.meet_one(k, vertex);
      if (m.distance2 < distance2) take(fan, k, vertex, m.along);
      depth = least(depth, m.inside);
      distance2 = least(distance2, m.distance2);
    }
  }

  template <bool kOfA>
  void take(const EdgeFan<kOfA>& fan, std::size_t k, std::size_t vertex, double along) {
    const double length = fan.own.row(Outline::kLength)[k];
    const Vec2 u{fan.own.row(Outline::kAlongX)[k], fan.own.row(Outline::kAlongY)[k]};
    const Vec2 foot = fan.own.vertex_[k] + least(greatest(along, 0.0), length) * u, met = fan.other.vertex_[vertex];
    on_a = kOfA ? foot : met;
    on_b = kOfA ? met : foot;
    normal = kOfA ? Vec2{u.y, -u.x} : Vec2{-u.y, u.x};
    on_edge = 0.0 < along && along < length;
  }

  /// Unit, from A to B: along the line between the points, or square to the edge where that line is lost in rounding.
  Vec2 direction(bool inside) const {
    const Vec2 away = on_b - on_a;
    const double length = norm(away);
    if (inside || length <= 1e-12 * (norm(on_a) + norm(on_b))) return normal;
    if (!on_edge) return (1.0 / length) * away;
    return dot(away, normal) < 0.0 ? -normal : normal;  // a capsule's two edges share one line
  }
};

double signed_distance(const Outline& a, const Outline& b) {
  const double radii = a.radius_ + b.radius_;
  if (a.edges_ + b.edges_ == 0) return norm(b.vertex_[0] - a.vertex_[0]) - radii;
  Two depths = both(kFar), distances2 = depths;
  EdgeFan<true>{a, b}.meet_all(depths, distances2);
  EdgeFan<false>{b, a}.meet_all(depths, distances2);
  const double depth = least(depths[0], depths[1]), distance2 = least(distances2[0], distances2[1]);
  return (is_inside(depth, distance2) ? -depth : std::sqrt(distance2)) - radii;
}

Separation separation(const Outline& a, const Outline& b) {
  Witness w;
  w.look(EdgeFan<true>{a, b});
  w.look(EdgeFan<false>{b, a});
  const bool discs = a.edges_ + b.edges_ == 0;
  if (discs) w.on_a = a.vertex_[0], w.on_b = b.vertex_[0];
  const Vec2 n = w.direction(!discs && is_inside(w.depth, w.distance2));
  return {signed_distance(a, b), w.on_a + a.radius_ * n, w.on_b - b.radius_ * n};
}

double distance(const RoundedPolygon& a, const Pose2& X_WA, const RoundedPolygon& b, const Pose2& X_WB) {
  Outline A, B;
  A.place(Outline(a), X_WA);
  B.place(Outline(b), X_WB);
  return signed_distance(A, B);
}

}  // namespace stowpath
