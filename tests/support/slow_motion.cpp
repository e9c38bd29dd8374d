#include "tests/support/slow_motion.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stowpath::testing {

template <typename Real>
SlowMotion<Real>::SlowMotion(const ProofStage& stage, int mover, int target)
    : stage_(stage), mover_(stage.movers[static_cast<std::size_t>(mover)]), target_(stage.targets[target]) {
  // Farther than this from the pivot nothing of mover or target gets while the chain folds as it likes.
  for (int j = 0; j < stage.linkage.sections; ++j) {
    const auto k = static_cast<std::size_t>(j);
    reach_ += std::abs(Real(stage.linkage.length[k]));
    if (k < 2) reach_ += 2 * std::abs(Real(stage.linkage.hinge_across[k]));
  }
  const auto farthest = [](const std::vector<Vec2>& points, double radius) {
    Real most = 0;
    for (const Vec2 v : points) most = std::max(most, std::hypot(Real(v.x), Real(v.y)) + Real(radius));
    return most;
  };
  if (mover_.rope) {
    reach_ += farthest({mover_.a.at, mover_.b.at}, mover_.rope_radius);
  } else {
    reach_ += farthest(mover_.outline.core(), mover_.outline.radius());
  }
  // Seen from a section, the room turns about the pivot.
  if (stage.base != kRoom) reach_ += std::hypot(Real(stage.linkage.pivot.x), Real(stage.linkage.pivot.y)) + reach_;
}

template <typename Real>
typename SlowMotion<Real>::Point SlowMotion<Real>::put(const Frame& f, Point p) {
  return {f.o.x + p.x * f.a.x + p.y * f.b.x, f.o.y + p.x * f.a.y + p.y * f.b.y};
}

template <typename Real>
typename SlowMotion<Real>::Point SlowMotion<Real>::take(const Frame& f, Point p) {
  const Real x = p.x - f.o.x, y = p.y - f.o.y;
  return {x * f.a.x + y * f.a.y, x * f.b.x + y * f.b.y};
}

/// Lean of the section under the dragged hinge: with the axle `along` and `over` from the hinge, its depth below the
/// hinge is along cos(lean) - over sin(lean), which must be the hinge's height over the axle's.
template <typename Real>
Real SlowMotion<Real>::dragged_lean(Real hinge_up) const {
  const DragRule& rule = stage_.segment.drag;
  const Real along = rule.axle.x;
  const Real over = Real(rule.axle.y) - Real(stage_.linkage.hinge_across[static_cast<std::size_t>(rule.hinge)]);
  const Real depth = hinge_up - Real(rule.axle_height);
  const Real out = std::sqrt(std::max(Real(0), along * along + over * over - depth * depth));
  // The foot stands on the far side of the plumb line through the hinge: the axle lies `out` out and `depth` below.
  return std::atan2(out, depth) - std::atan2(over, along);
}

template <typename Real>
typename SlowMotion<Real>::Pose SlowMotion<Real>::pose(Real u) const {
  const Segment& s = stage_.segment;
  const Linkage& l = stage_.linkage;
  const auto mix = [u](double from, double to) { return (1 - u) * Real(from) + u * Real(to); };
  Pose out{};
  for (int j = 0; j < l.sections; ++j) {
    const auto k = static_cast<std::size_t>(j);
    Point joint{Real(l.pivot.x), Real(l.pivot.y)};
    Real across = 0;
    if (j == 0) {
      out.lean[0] = mix(s.from.lean, s.to.lean);
    } else {
      across = l.hinge_across[k - 1];
      joint = put(out.frame[k - 1], {Real(l.length[k - 1]), across});
      const bool dragged = s.kind == SegmentKind::drag && s.drag.hinge == j - 1;
      const Real fold = mix(s.from.folds[k - 1], s.to.folds[k - 1]);
      out.lean[k] = dragged ? dragged_lean(joint.y) : out.lean[k - 1] + Real(l.fold_sign[k - 1]) * fold;
    }
    const Real sine = std::sin(out.lean[k]), cosine = std::cos(out.lean[k]);
    // Lean 0 hangs straight down with the climber's side outward.
    Frame& f = out.frame[k];
    f.a = {sine, -cosine};
    f.b = {cosine, sine};
    f.o = {joint.x - across * f.b.x, joint.y - across * f.b.y};
  }
  return out;
}

template <typename Real>
typename SlowMotion<Real>::Point SlowMotion<Real>::seen(const Pose& now, int body, Point p) const {
  if (body == stage_.base) return p;
  if (body != kRoom) p = put(now.frame[body], p);
  return stage_.base == kRoom ? p : take(now.frame[stage_.base], p);
}

template <typename Real>
Real SlowMotion<Real>::core_distance(const Point* a, int na, const Point* b, int nb) {
  const auto cross_line = [](const Point* p, int np, const Point* q, int nq) {
    // Greatest separation over the outward normals of p's edges.
    Real best = -std::numeric_limits<Real>::infinity();
    for (int i = 0; np > 1 && i < np; ++i) {
      const Point e{p[(i + 1) % np].x - p[i].x, p[(i + 1) % np].y - p[i].y};
      const Real length = std::sqrt(e.x * e.x + e.y * e.y);
      const Point n{e.y / length, -e.x / length};
      Real nearest = std::numeric_limits<Real>::infinity(), farthest = -nearest;
      for (int k = 0; k < nq; ++k) nearest = std::min(nearest, n.x * (q[k].x - p[i].x) + n.y * (q[k].y - p[i].y));
      for (int k = 0; k < np; ++k) farthest = std::max(farthest, n.x * (p[k].x - p[i].x) + n.y * (p[k].y - p[i].y));
      best = std::max(best, nearest - farthest);
    }
    return best;
  };
  const Real overlap = std::max(cross_line(a, na, b, nb), cross_line(b, nb, a, na));
  if (overlap < 0 && na + nb > 2) return overlap;  // two points have no normals: they are apart, or one
  const auto nearest = [](const Point* p, int np, const Point* q, int nq) {
    Real best = std::numeric_limits<Real>::infinity();
    for (int i = 0; i < np; ++i) {
      const Point e{p[(i + 1) % np].x - p[i].x, p[(i + 1) % np].y - p[i].y};
      const Real length2 = e.x * e.x + e.y * e.y;
      for (int k = 0; k < nq; ++k) {
        const Point w{q[k].x - p[i].x, q[k].y - p[i].y};
        const Real t = length2 > 0 ? std::clamp((w.x * e.x + w.y * e.y) / length2, Real(0), Real(1)) : Real(0);
        const Point off{w.x - t * e.x, w.y - t * e.y};
        best = std::min(best, off.x * off.x + off.y * off.y);
      }
    }
    return std::sqrt(best);
  };
  return std::min(nearest(a, na, b, nb), nearest(b, nb, a, na));
}

template <typename Real>
Real SlowMotion<Real>::side_view(Real u) const {
  const Pose now = pose(u);
  Point a[kMaxVertices], b[kMaxVertices];
  int na = 0, nb = 0;
  double radii = target_.outline.radius();
  if (mover_.rope) {
    const Point p = seen(now, mover_.a.body, {mover_.a.at.x, mover_.a.at.y});
    const Point q = seen(now, mover_.b.body, {mover_.b.at.x, mover_.b.at.y});
    const auto along = [&](double share) {
      return Point{p.x + Real(share) * (q.x - p.x), p.y + Real(share) * (q.y - p.y)};
    };
    a[na++] = along(mover_.rope_from);
    const Point end = along(mover_.rope_to);
    if (end.x != a[0].x || end.y != a[0].y) a[na++] = end;  // a point has no edges
    radii += mover_.rope_radius;
  } else {
    for (const Vec2 v : mover_.outline.core()) a[na++] = seen(now, mover_.body, {v.x, v.y});
    radii += mover_.outline.radius();
  }
  for (const Vec2 v : target_.outline.core()) b[nb++] = {v.x, v.y};
  return core_distance(a, na, b, nb) - Real(radii);
}

template <typename Real>
Real SlowMotion<Real>::clearance(Real u) const {
  const Segment& s = stage_.segment;
  const Real here = (1 - u) * Real(s.from.station) + u * Real(s.to.station);
  const Real lo = s.over_stations() ? Real(s.stations.lo) : here, hi = s.over_stations() ? Real(s.stations.hi) : here;
  const Real d = side_view(u);
  Real least = std::numeric_limits<Real>::infinity();
  for (const Interval i : mover_.stations) {
    for (const Interval j : target_.stations) {
      // Free lengths to either side at the station that makes each of them least, and the deepest overlap of all.
      const Real before = Real(j.lo) - Real(i.hi) - hi, after = Real(i.lo) - Real(j.hi) + lo;
      const Real free = std::max({Real(0), before, after});
      const Real full = (Real(i.hi) - Real(i.lo) + Real(j.hi) - Real(j.lo)) / 2;
      const Real overlap = std::min({-before, -after, full});
      Real c = d;
      if (d < 0) {
        c = free > 0 ? free : -std::min(-d, std::max(overlap, Real(0)));
      } else if (free > 0) {
        c = std::sqrt(d * d + free * free);
      }
      least = std::min(least, c);
    }
  }
  return least;
}

template <typename Real>
Real SlowMotion<Real>::travel(Real u, Real v) const {
  const Segment& s = stage_.segment;
  Real turn = std::abs((v - u) * (Real(s.to.lean) - Real(s.from.lean)));
  for (std::size_t k = 0; k + 1 < static_cast<std::size_t>(stage_.linkage.sections); ++k) {
    if (s.kind == SegmentKind::drag && static_cast<std::size_t>(s.drag.hinge) == k) {
      const Pose a = pose(u), b = pose(v);
      turn += std::abs(b.lean[k + 1] - a.lean[k + 1]) + std::abs(b.lean[k] - a.lean[k]);
    } else {
      turn += std::abs((v - u) * (Real(s.to.folds[k]) - Real(s.from.folds[k])));
    }
  }
  const Real roll = s.over_stations() ? Real(0) : std::abs((v - u) * (Real(s.to.station) - Real(s.from.station)));
  return turn * reach_ + roll;
}

template class SlowMotion<double>;
template class SlowMotion<long double>;

namespace {

/// Golden-section search for a dip between two neighbours of a lower point.
SlowLeast dip(const SlowMotion<double>& motion, double u0, double u1, SlowLeast best) {
  constexpr double kGolden = 0.6180339887498949;
  double a = u1 - kGolden * (u1 - u0), b = u0 + kGolden * (u1 - u0);
  double at_a = motion.clearance(a), at_b = motion.clearance(b);
  for (int k = 0; k < 60 && u1 - u0 > 1e-13; ++k) {
    if (at_a < at_b) {
      u1 = b, b = a, at_b = at_a;
      a = u1 - kGolden * (u1 - u0), at_a = motion.clearance(a);
    } else {
      u0 = a, a = b, at_a = at_b;
      b = u0 + kGolden * (u1 - u0), at_b = motion.clearance(b);
    }
    if (std::min(at_a, at_b) < best.clearance) best = at_a < at_b ? SlowLeast{at_a, a} : SlowLeast{at_b, b};
  }
  return best;
}

}  // namespace

SlowLeast slow_least(const SlowMotion<double>& motion, double u0, double u1, double level, double grain,
                     double enough) {
  SlowLeast best{motion.clearance(u0), u0};
  double before = u0, at_before = best.clearance, here = u0, at_here = best.clearance, step = u1 - u0;
  while (here < u1 && best.clearance >= enough) {
    const double allowed = std::max(at_here - level, grain);
    double next = std::min(u1, here + step);
    for (int k = 0; k < 60 && motion.travel(here, next) > allowed; ++k) next = here + 0.5 * (next - here);
    if (next <= here) next = std::min(u1, std::nextafter(here, 2.0));
    step = 4.0 * (next - here);
    const double at_next = motion.clearance(next);
    if (at_next < best.clearance) best = {at_next, next};
    // A dip can only hide where the two steps round it were short ones.
    if (at_here <= at_before && at_here <= at_next && at_here < level + 4.0 * grain && next > before) {
      best = dip(motion, before, next, best);
    }
    before = here, at_before = at_here, here = next, at_here = at_next;
  }
  return best;
}

}  // namespace stowpath::testing
