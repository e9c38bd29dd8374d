#include "sim/hoist/seat_force.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "sim/mechanism/mass.h"
#include "sim/mechanism/standing.h"

namespace stowpath {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kRounding = 1e-12;  // [rad]

void take(HookContact& contact, Vec2 push, double points, const HookCone& cone, Interval arc) {
  const double size = norm(push);
  const Interval here{points, points}, force{size, size};
  contact.points = contact.judged ? hull(contact.points, here) : here;
  contact.force = contact.judged ? hull(contact.force, force) : force;
  contact.held = contact.held && points >= -cone.sure && points <= arc.hi;
  contact.lifted = contact.lifted || push.y < 0.0;
  contact.judged = true;
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

bool balanced(const PosePull& pull) {
  const auto& tension = pull.reactions.tension;
  return pull.reactions.solvable && std::all_of(tension.begin(), tension.end(), [](double t) { return t >= 0.0; });
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
    take(contact, force, std::atan2(force.y, force.x) - lean, {cone.most + kRounding, cone.most}, arc);
  }
  add_touches(contact, cone, arc);
  return contact;
}

HookContact hauled_contact(const LiftRig& rig, const PosePlace& place, const HookCone& cone, Interval arc) {
  const double lean = at(rig.linkage, place.segment, place.u).lean;
  HookContact contact;
  for (const Haul haul : {Haul::raising, Haul::holding, Haul::lowering}) {
    const PosePull pull = pose_pull(rig, place, haul);
    if (!balanced(pull)) {
      // Let down, a foot that stays where it is takes less friction than the greatest: holding stands for it.
      contact.binds = contact.binds || haul != Haul::lowering;
      continue;
    }
    take(contact, pull.reactions.hook, bend_angle(pull.reactions.hook, lean, arc), cone, arc);
  }
  add_touches(contact, cone, arc);
  return contact;
}

}  // namespace stowpath
