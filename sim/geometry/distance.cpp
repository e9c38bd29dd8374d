#include "sim/geometry/distance.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stowpath {
namespace {

using EdgePair = CoreTable::EdgePair;
using TwoCounts = decltype(Two{} < Two{});

constexpr double kFar = std::numeric_limits<double>::infinity();

Two both(double x) { return Two{x, x}; }
Two least(Two a, Two b) { return a < b ? a : b; }
Two greatest(Two a, Two b) { return a > b ? a : b; }
Two swapped(Two v) { return Two{v[1], v[0]}; }
Two as_two(Vec2 v) { return Two{v.x, v.y}; }
Vec2 as_vec2(Two v) { return {v[0], v[1]}; }

/// Keys that grow with the angle of (x, y), from -2 at -pi to 2 at pi. Rounding may swap directions that differ by
/// 1e-15 rad, which moves the difference polygon by less than that times an edge.
void write_keys(EdgePair& edges) {
  const Two x = edges.x, y = edges.y;
  const Two from_x = 1.0 - x / (greatest(x, -x) + greatest(y, -y));
  edges.angle = y < 0.0 ? -from_x : from_x;
  edges.opposite = edges.angle < 0.0 ? edges.angle + 2.0 : edges.angle - 2.0;
}

/// Keys for edges whose directions are written, and the edges where they start from the least.
void sort_edges(CoreTable& t) {
  for (EdgePair& edges : t.pair) write_keys(edges);
  const auto angle = [&](std::size_t k) { return t.pair[k / 2].angle[k % 2]; };
  const auto opposite = [&](std::size_t k) { return t.pair[k / 2].opposite[k % 2]; };
  t.first = t.first_opposite = 0;
  for (std::size_t k = 1; k < t.edges; ++k) {
    t.first = angle(k) < angle(k - 1) ? k : t.first;
    t.first_opposite = opposite(k) < opposite(k - 1) ? k : t.first_opposite;
  }
}

void make_room(CoreTable& t, std::size_t vertices) {
  t.vertices = vertices;
  t.edges = vertices > 1 ? vertices : 0;
  t.corner.resize(2 * vertices);
  t.pair.resize((t.edges + 1) / 2);
}

void set_corner(CoreTable& t, std::size_t i, Two at) { t.corner[i].at = t.corner[i + t.vertices].at = at; }

/// Edges from the corners; where two edges repeat the first one, so do the corners.
void make_edges(CoreTable& t) {
  for (std::size_t k = 0; k < 2 * t.pair.size(); ++k) {
    const Vec2 e = as_vec2(t.corner[(k + 1) % t.vertices].at - t.corner[k % t.vertices].at);
    const double length = norm(e);
    EdgePair& edges = t.pair[k / 2];
    edges.x[k % 2] = e.x / length;
    edges.y[k % 2] = e.y / length;
    edges.length[k % 2] = length;
  }
  sort_edges(t);
}

}  // namespace

Outline::Outline(const RoundedPolygon& shape) : radius_(shape.radius), disc_(bounding_disc(shape)) {
  make_room(table_, shape.core.size());
  for (std::size_t i = 0; i < table_.vertices; ++i) set_corner(table_, i, as_two(shape.core[i]));
  make_edges(table_);
}

std::vector<Vec2> Outline::core() const {
  std::vector<Vec2> out;
  for (std::size_t i = 0; i < table_.vertices; ++i) out.push_back(as_vec2(table_.corner[i].at));
  return out;
}

void Outline::place(const Outline& body, const Pose2& X_WB) {
  const CoreTable& from = body.table_;
  if (table_.vertices != from.vertices) make_room(table_, from.vertices);
  const Two p = as_two(X_WB.p), c = both(X_WB.c), s = both(X_WB.s), turn{-X_WB.s, X_WB.s};
  for (std::size_t i = 0; i < from.vertices; ++i) {
    const Two v = from.corner[i].at;
    set_corner(table_, i, p + (c * v + turn * swapped(v)));
  }
  for (std::size_t k = 0; 2 * k < from.edges; ++k) {
    const EdgePair& e = from.pair[k];
    EdgePair& out = table_.pair[k];
    out.x = c * e.x - s * e.y;
    out.y = s * e.x + c * e.y;
    out.length = e.length;
  }
  sort_edges(table_);
  radius_ = body.radius_;
  disc_ = {X_WB * body.disc_.centre, body.disc_.radius};
}

void Outline::set_capsule(Vec2 a, Vec2 b, double radius) {
  const double length2 = norm_squared(b - a);
  make_room(table_, length2 >= std::numeric_limits<double>::min() ? 2 : 1);
  set_corner(table_, 0, as_two(a));
  if (table_.vertices == 2) set_corner(table_, 1, as_two(b));
  make_edges(table_);
  radius_ = radius;
  disc_ = {0.5 * (a + b), 0.5 * std::sqrt(length2) + radius};
}

namespace {

/// Two edges of the difference polygon B + (-A) as seen from the origin, each an edge of one core and the vertex of the
/// other that it stands at.
struct Meeting {
  Two inside;     // how far the vertex lies to the left of the edge's line, where the edge's own body is [m]
  Two along;      // where its foot falls on the edge, from the edge's start [m]
  Two distance2;  // squared distance from the edge [m²]
};

/// @param rx, ry  from the edges' starts to their vertices
Meeting meet(Two rx, Two ry, const EdgePair& e) {
  const Two inside = e.x * ry - e.y * rx, along = e.x * rx + e.y * ry;
  const Two beyond = along - least(greatest(along, Two{}), e.length);
  return {inside, along, inside * inside + beyond * beyond};
}

/// All edges of one core, with the vertices of the other that they stand at.
///
/// The difference polygon's edges are those of B and, reversed, those of A, sorted by angle: an edge of A stands at the
/// vertex of B which the edges of B before it lead to, and the other way about. Equal angles are settled by the same
/// comparison from both sides (A first), so that every edge starts where the one before it ends.
template <bool kOfA>
struct EdgeFan {
  const CoreTable &own, &other;

  static const Two& own_keys(const EdgePair& e) { return kOfA ? e.opposite : e.angle; }
  static const Two& other_keys(const EdgePair& e) { return kOfA ? e.angle : e.opposite; }
  static TwoCounts come_before(Two theirs, Two ours) { return kOfA ? theirs < ours : theirs <= ours; }

  /// How many edges of the other core come before each of two.
  TwoCounts edges_before(Two ours) const {
    TwoCounts count{};
    for (const EdgePair& e : other.pair) {
      const Two theirs = other_keys(e);
      count -= come_before(both(theirs[0]), ours) + come_before(both(theirs[1]), ours);
    }
    if (other.edges % 2 != 0) count += come_before(both(other_keys(other.pair[0])[0]), ours);
    return count;
  }

  const CoreTable::Corner* other_start() const {
    return other.corner.data() + (kOfA ? other.first : other.first_opposite);
  }

  /// Edges 2k and 2k + 1 at once.
  Meeting meet_two(std::size_t k) const {
    const EdgePair& e = own.pair[k];
    const TwoCounts before = edges_before(own_keys(e));
    const Two r = other_start()[before[0]].at - own.corner[2 * k].at;
    const Two q = other_start()[before[1]].at - own.corner[2 * k + 1].at;
    return meet(Two{r[0], q[0]}, Two{r[1], q[1]}, e);
  }
};

/// The least depth below an edge's line, and the least squared distance from an edge, so far, in two columns.
struct Least {
  Two depth = both(kFar), distance2 = both(kFar);

  template <bool kOfA>
  void look(const EdgeFan<kOfA>& fan) {
    for (std::size_t k = 0; 2 * k < fan.own.edges; ++k) {
      const Meeting m = fan.meet_two(k);
      depth = least(depth, m.inside);
      distance2 = least(distance2, m.distance2);
    }
  }
};

/// Whether the cores overlap. Rounding may put the origin left of every line of a sliver although it lies beyond its
/// end: then it is far from the edges and near the lines.
bool is_inside(double depth, double distance2) { return depth > 0.0 && distance2 <= 4.0 * depth * depth; }

/// Where the difference polygon comes closest to the origin: seen from within, that is the place of the least depth.
struct Witness {
  double depth = kFar, distance2 = kFar;
  Vec2 on_a, on_b;
  Vec2 normal{1.0, 0.0};  // of the edge there, from A to B
  bool on_edge = false;   // not at a corner of both

  template <bool kOfA>
  void look(const EdgeFan<kOfA>& fan) {
    for (std::size_t k = 0; k < fan.own.edges; ++k) {
      const Meeting m = fan.meet_two(k / 2);
      depth = std::min(depth, m.inside[k % 2]);
      if (m.distance2[k % 2] < distance2) take(fan, k, m);
    }
  }

  template <bool kOfA>
  void take(const EdgeFan<kOfA>& fan, std::size_t k, const Meeting& m) {
    const EdgePair& e = fan.own.pair[k / 2];
    const double along = m.along[k % 2], length = e.length[k % 2];
    const Vec2 u{e.x[k % 2], e.y[k % 2]};
    const Vec2 foot = as_vec2(fan.own.corner[k].at) + std::min(std::max(along, 0.0), length) * u;
    const Vec2 met = as_vec2(fan.other_start()[fan.edges_before(fan.own_keys(e))[k % 2]].at);
    distance2 = m.distance2[k % 2];
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

}  // namespace

double signed_distance(const Outline& a, const Outline& b) {
  const double radii = a.radius_ + b.radius_;
  const CoreTable &A = a.table_, &B = b.table_;
  if (A.edges + B.edges == 0) return norm(as_vec2(B.corner[0].at - A.corner[0].at)) - radii;
  Least found;
  found.look(EdgeFan<true>{A, B});
  found.look(EdgeFan<false>{B, A});
  const double depth = std::min(found.depth[0], found.depth[1]);
  const double distance2 = std::min(found.distance2[0], found.distance2[1]);
  return (is_inside(depth, distance2) ? -depth : std::sqrt(distance2)) - radii;
}

Separation separation(const Outline& a, const Outline& b) {
  const CoreTable &A = a.table_, &B = b.table_;
  Witness w;
  w.look(EdgeFan<true>{A, B});
  w.look(EdgeFan<false>{B, A});
  const bool discs = A.edges + B.edges == 0;
  if (discs) w.on_a = as_vec2(A.corner[0].at), w.on_b = as_vec2(B.corner[0].at);
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
