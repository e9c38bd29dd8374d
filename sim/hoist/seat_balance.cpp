#include "sim/hoist/seat_balance.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "sim/hoist/rope_geometry.h"
#include "sim/mechanism/mass.h"

namespace stowpath {
namespace {

constexpr double kUnbounded = 1e2;  // forces of this many weights come of a lever that is next to nothing
constexpr double kSettled = 1e-12;  // of the weight times 1 m: a drag that changes by less is settled
constexpr int kMostRounds = 200;
constexpr double kRounding = 1e-9;  // of the weight: less than that is lost in the rounding

std::size_t index(int j) { return static_cast<std::size_t>(j); }

bool is_haul_up(const Move& move) { return move.kind == MoveKind::drag || move.kind == MoveKind::hang; }

/// The uppermost hinge that nothing holds at its fold, from 0; -1 where all are held.
int free_hinge(const PosePlace& place) {
  if (!is_haul_up(place.move)) return -1;
  if (place.segment.kind == SegmentKind::drag) return place.segment.drag.hinge;
  if (settles(place)) return -1;
  const auto unpinned = std::find(place.move.pinned.begin(), place.move.pinned.end(), false);
  return unpinned == place.move.pinned.end() ? -1 : static_cast<int>(unpinned - place.move.pinned.begin());
}

// Dry friction of coefficient mu on a radius: the joint's force passes the centre at radius sin(atan(mu)).
double drag_of(double mu, double radius, Vec2 force) { return radius * mu / std::hypot(1.0, mu) * norm(force); }

using Row = std::array<double, 3>;

double times(const Row& a, const Row& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

Row across(const Row& a, const Row& b) {
  return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

Row sum(double k, const Row& a, double m, const Row& b) {
  return {k * a[0] + m * b[0], k * a[1] + m * b[1], k * a[2] + m * b[2]};
}

/// The straight line on which a x = p and b x = q, and the stretch of it that is left.
struct Stretch {
  Row base{}, along{};
  double from = -std::numeric_limits<double>::infinity(), to = std::numeric_limits<double>::infinity();
  bool empty = false;

  Stretch(const Row& a, double p, const Row& b, double q) : along(across(a, b)) {
    const double size = times(along, along);
    empty = !(size > 0.0);
    if (empty) return;
    base = sum(p / size, across(b, along), q / size, across(along, a));
    along = sum(1.0 / std::sqrt(size), along, 0.0, along);
  }

  /// Leaves what has side . x >= 0, to within the rounding.
  void keep(const Row& side, double rounding) {
    const double at_base = times(side, base), rate = times(side, along);
    const bool level = std::abs(rate) <= 1e-12;
    if (level) empty = empty || at_base < -rounding;
    if (!level && rate > 0.0) from = std::max(from, -at_base / rate);
    if (!level && rate < 0.0) to = std::min(to, -at_base / rate);
  }

  /// Ends that have passed each other by no more than the rounding are one.
  void close(double rounding) {
    if (from <= to) return;
    if (from - to > rounding) empty = true;
    from = to = 0.5 * (from + to);
  }
};

}  // namespace

SeatBalance::SeatBalance(const LiftRig& rig, const PosePlace& place)
    : hook_radius_(rig.hook_radius), hinge_radius_(rig.hinge_radius) {
  const Configuration pose = at(rig.linkage, place.segment, place.u);
  const SectionPoses X_W = place_sections(rig.linkage, pose);
  const int hinge = free_hinge(place);
  below_ = hinge < 0 ? rig.linkage.sections : hinge + 1;
  pivot_ = X_W[0] * rig.linkage.proximal(0);
  if (hinge >= 0) hinge_ = X_W[index(hinge)] * rig.linkage.distal(hinge);
  if (hinge >= 0) held_ = place.segment.kind == SegmentKind::drag ? Held::drags : Held::hangs;
  add_weights(rig, X_W);
  place_line(rig, X_W, pose.station);
  if (on_floor()) place_floor(rig, place, X_W);
}

void SeatBalance::add_weights(const LiftRig& rig, const SectionPoses& X_W) {
  for (int j = 0; j < rig.linkage.sections; ++j) {
    const SectionMass& section = rig.masses[index(j)];
    const double weight = kGravity * section.mass, out = (X_W[index(j)] * section.centre).x;
    weight_ += weight;
    moment_ += weight * (out - pivot_.x);
    if (j < below_) continue;
    below_weight_ += weight;
    below_moment_ += weight * (out - hinge_.x);
  }
}

void SeatBalance::place_line(const LiftRig& rig, const SectionPoses& X_W, double station) {
  const RopeSegment part = rope_segments(rig.line, X_W, station).front();
  const bool from_pick = rig.line.points[0].section >= 0;
  const RopePoint& pick = rig.line.points[from_pick ? 0 : 1];
  const Vec2 p_W = X_W[index(pick.section)] * pick.at;
  pull_ = from_pick ? part.pull.side : -part.pull.side;
  lever_ = cross(p_W - pivot_, pull_);
  pulled_below_ = pick.section >= below_;
  if (pulled_below_) lever_below_ = cross(p_W - hinge_, pull_);
}

void SeatBalance::place_floor(const LiftRig& rig, const PosePlace& place, const SectionPoses& X_W) {
  foot_ = {(X_W[index(below_)] * place.segment.drag.axle).x, rig.floor_level};
}

SeatForces SeatBalance::all_forces(const Unknowns& at, double share_of_weight) const {
  const Vec2 foot{at.scrub, at.floor};
  return {Vec2{0.0, share_of_weight * weight_} - at.line * pull_ - foot, at.line, at.floor, at.scrub};
}

// What hangs plumb is held there by a tilt too small to see: a couple on it alone, see HingeHold::hangs.
SeatEnd SeatBalance::end_off_floor(const Drag& drag) const {
  const bool hangs = held_ == Held::hangs;
  const double moment = moment_ - drag.hook - (hangs ? below_moment_ - drag.hinge : 0.0);
  const double line = moment / (lever_ - (hangs ? lever_below_ : 0.0));
  if (!(std::abs(line) <= kUnbounded * weight_))
    return {Balance::unbounded, all_forces({std::abs(line), 0.0, 0.0}, 1.0)};
  if (line < -kRounding * weight_) return {};
  return {Balance::possible, all_forces({std::max(line, 0.0), 0.0, 0.0}, 1.0)};
}

SeatEnd SeatBalance::end_on_floor(const Drag& drag, double floor, bool last) const {
  const Vec2 below = foot_ - hinge_, whole = foot_ - pivot_;
  const double rounding = kRounding * weight_;
  Stretch stretch({lever_below_, below.x, -below.y}, below_moment_ - drag.hinge, {lever_, whole.x, -whole.y},
                  moment_ - drag.hook);
  stretch.keep({1.0, 0.0, 0.0}, rounding);
  stretch.keep({0.0, floor, -1.0}, rounding);
  stretch.keep({0.0, floor, 1.0}, rounding);
  stretch.keep({0.0, 1.0, 0.0}, rounding);
  stretch.close(rounding);
  if (stretch.empty) return {};
  const double end = last ? stretch.to : stretch.from;
  const Row x = sum(1.0, stretch.base, std::abs(end) <= kUnbounded * weight_ ? end : 0.0, stretch.along);
  if (std::abs(end) <= kUnbounded * weight_) return {Balance::possible, all_forces({x[0], x[1], x[2]}, 1.0)};
  const double way = last ? 1.0 : -1.0;
  const Row& d = stretch.along;
  return {Balance::unbounded, all_forces({way * d[0], way * d[1], way * d[2]}, 0.0)};
}

/// Upper section on lower.
Vec2 SeatBalance::hinge_force(const SeatForces& forces) const {
  const Vec2 line = pulled_below_ ? forces.line * pull_ : Vec2{};
  return Vec2{0.0, below_weight_} - line - Vec2{forces.scrub, forces.floor};
}

SeatBalance::Drag SeatBalance::drag_at(const JointFriction& joints, const SeatForces& forces) const {
  const double hinge = has_free_hinge() ? drag_of(joints.hinge, hinge_radius_, hinge_force(forces)) : 0.0;
  return {drag_of(joints.hook, hook_radius_, forces.hook), hinge};
}

SeatEnd SeatBalance::end(const JointFriction& joints, double floor, bool last) const {
  Drag drag;
  SeatEnd found;
  for (int round = 0; round < kMostRounds; ++round) {
    found = on_floor() ? end_on_floor(drag, floor, last) : end_off_floor(drag);
    if (found.balance != Balance::possible) return found;
    const Drag next = drag_at(joints, found.forces);
    const double change = std::abs(next.hook - drag.hook) + std::abs(next.hinge - drag.hinge);
    drag = next;
    if (change <= kSettled * weight_) return found;
  }
  found.balance = Balance::unbounded;
  return found;
}

}  // namespace stowpath
