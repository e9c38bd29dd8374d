#include "sim/hoist/seat_force.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "sim/mechanism/mass.h"
#include "sim/mechanism/standing.h"

namespace stowpath {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kRounding = 1e-12;  // [rad]
constexpr int kHalvings = 14;        // of the joints' friction: to a ten-thousandth of it

void take_direction(HookContact& contact, Vec2 push, double points, const HookCone& cone, Interval arc) {
  const Interval here{points, points};
  contact.points = contact.judged ? hull(contact.points, here) : here;
  contact.held = contact.held && points >= -cone.sure && points <= arc.hi;
  contact.lifted = contact.lifted || push.y < 0.0;
  contact.judged = true;
}

void take_size(HookContact& contact, Vec2 push) {
  const Interval here{norm(push), norm(push)};
  contact.force = contact.force.hi > 0.0 ? hull(contact.force, here) : here;
}

void add_touches(HookContact& contact, const HookCone& cone, Interval arc) {
  contact.touches = {std::clamp(contact.points.lo - cone.most, arc.lo, arc.hi),
                     std::clamp(contact.points.hi + cone.most, arc.lo, arc.hi)};
}

/// The floor's share of friction at which the pipe's force comes to point along that room angle, from -F.x sin + F.y
/// cos = 0.
double friction_pointing(const StandingBalance& b, double room_angle) {
  const double s = std::sin(room_angle), c = std::cos(room_angle);
  return -(b.foot - b.centre) * c / (b.height * c + b.centre * s);
}

double turn_between(Vec2 from, Vec2 to) { return std::atan2(cross(from, to), dot(from, to)); }

/// The contact of one pose over the whole range of friction.
class FrictionWalk {
 public:
  FrictionWalk(const SeatBalance& balance, const FrictionChoice& most, const HookCone& cone, Interval arc, double lean)
      : balance_(balance), most_(most), cone_(cone), arc_(arc), lean_(lean) {
    contact_.floor_known = most.floor;
  }

  HookContact look(double least_floor);

 private:
  void look_at_end(const SeatEnd& smooth, double points, bool last);
  void look_at_joints(const SeatEnd& smooth, double points, bool last, const JointFriction& joints);
  SeatEnd last_known(const JointFriction& joints, bool last);
  void take_end(const SeatEnd& end, double points);
  void tell_binding(const SeatEnd& smooth);

  const SeatBalance& balance_;
  const FrictionChoice most_;
  const HookCone cone_;
  const Interval arc_;
  const double lean_;
  HookContact contact_;
};

/// Of what grows without bounds only the direction is known.
void FrictionWalk::take_end(const SeatEnd& end, double points) {
  take_direction(contact_, end.forces.hook, points, cone_, arc_);
  if (end.balance == Balance::possible) take_size(contact_, end.forces.hook);
  if (end.balance == Balance::unbounded) contact_.binds = true;
}

/// As much of the joints' friction as has a balance, where all of it has none.
SeatEnd FrictionWalk::last_known(const JointFriction& joints, bool last) {
  SeatEnd known = balance_.end({}, most_.floor, last);
  double share = 0.0, beyond = 1.0;
  bool binds = false;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (share + beyond);
    const SeatEnd end = balance_.end({middle * joints.hook, middle * joints.hinge}, most_.floor, last);
    (end.balance == Balance::possible ? share : beyond) = middle;
    if (end.balance == Balance::possible) known = end;
    if (end.balance != Balance::possible) binds = end.balance == Balance::unbounded;
  }
  contact_.binds = contact_.binds || binds;
  if (binds) contact_.joints_known = std::min(contact_.joints_known, share);
  return known;
}

void FrictionWalk::look_at_joints(const SeatEnd& smooth, double points, bool last, const JointFriction& joints) {
  SeatEnd end = balance_.end(joints, most_.floor, last);
  if (end.balance != Balance::possible) end = last_known(joints, last);
  take_end(end, points + turn_between(smooth.forces.hook, end.forces.hook));
}

/// What grows without bounds points at the free hinge: the share of friction that does is the least that binds.
void FrictionWalk::tell_binding(const SeatEnd& smooth) {
  if (!balance_.on_floor()) {
    contact_.joints_known = 0.0;
  } else {
    contact_.floor_known = std::min(contact_.floor_known, std::abs(smooth.forces.scrub / smooth.forces.floor));
  }
}

/// One end of the forces without friction in the joints, and how those shift it.
void FrictionWalk::look_at_end(const SeatEnd& smooth, double points, bool last) {
  take_end(smooth, points);
  if (smooth.balance == Balance::unbounded) return tell_binding(smooth);
  for (const double hook : {-most_.hook, most_.hook}) {
    if (!balance_.has_free_hinge()) look_at_joints(smooth, points, last, {hook, 0.0});
    for (const double hinge : {-most_.hinge, most_.hinge})
      if (balance_.has_free_hinge()) look_at_joints(smooth, points, last, {hook, hinge});
  }
}

HookContact FrictionWalk::look(double least_floor) {
  contact_.slack = balance_.end({}, std::min(least_floor, most_.floor), false).balance == Balance::none;
  const SeatEnd first = balance_.end({}, most_.floor, false);
  if (first.balance == Balance::none) return contact_;
  const double points = bend_angle(first.forces.hook, lean_, arc_);
  look_at_end(first, points, false);
  if (balance_.on_floor()) {
    const SeatEnd last = balance_.end({}, most_.floor, true);
    look_at_end(last, points + turn_between(first.forces.hook, last.forces.hook), true);
  }
  add_touches(contact_, cone_, arc_);
  return contact_;
}

}  // namespace

double bend_angle(Vec2 force, double lean, Interval arc) {
  const double split = 0.5 * (arc.hi + arc.lo + kTurn);  // the middle of the mouth
  double angle = std::fmod(std::atan2(force.y, force.x) - lean - split, kTurn);
  if (angle > 0.0) angle -= kTurn;
  return angle + split;
}

HookCone hook_cone(const Frictions& friction) { return {std::atan(friction.hook.lo), std::atan(friction.hook.hi)}; }

StandingBalance standing_balance(const Scene& scene, const Model& model, double lean) {
  const SectionMass chain = chain_mass(model.linkage, model.masses, 0);
  const Pose2 X_W = place_sections(model.linkage, {0.0, lean, {}})[0];
  const Vec2 axle = X_W.turn(stand(scene, model.linkage).axle);
  return {chain.mass * kGravity, X_W.turn(chain.centre).x, axle.x, 0.5 * scene.stair.casters.diameter - axle.y};
}

Vec2 standing_hook_force(const StandingBalance& balance, double k) {
  const double normal = balance.weight * balance.centre / (balance.foot + k * balance.height);
  return {-k * normal, balance.weight - normal};
}

HookContact standing_contact(const StandingBalance& balance, double lean, double floor_friction, const HookCone& cone,
                             Interval arc) {
  // However far in the foot was pushed, the pipe can only press: beyond that share the shank would leave it.
  const double least = std::max(-floor_friction, friction_pointing(balance, lean - cone.most));
  HookContact contact;
  for (const double k : {least, 0.0, floor_friction}) {
    const Vec2 force = standing_hook_force(balance, k);
    take_direction(contact, force, std::atan2(force.y, force.x) - lean, {cone.most + kRounding, cone.most}, arc);
    take_size(contact, force);
  }
  add_touches(contact, cone, arc);
  return contact;
}

HookContact hauled_contact(const LiftRig& rig, const PosePlace& place, const HookCone& cone, Interval arc,
                           double least_floor) {
  const SeatBalance balance(rig, place);
  const FrictionChoice most{std::abs(rig.friction.hook), std::abs(rig.friction.hinge), std::abs(rig.friction.floor)};
  const double lean = at(rig.linkage, place.segment, place.u).lean;
  return FrictionWalk(balance, most, cone, arc, lean).look(least_floor);
}

}  // namespace stowpath
