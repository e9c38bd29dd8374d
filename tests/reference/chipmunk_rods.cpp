#include "tests/reference/chipmunk_rods.h"

#include <chipmunk/chipmunk.h>

#include <array>
#include <cmath>
#include <memory>

#include "sim/geometry/pose2.h"
#include "sim/trade/us_units.h"

namespace stowpath::testing {
namespace {

constexpr int kIterations = 200;  // of the joints a step: their own error must not be what is compared

using Space = std::unique_ptr<cpSpace, decltype(&cpSpaceFree)>;
using Body = std::unique_ptr<cpBody, decltype(&cpBodyFree)>;
using Joint = std::unique_ptr<cpConstraint, decltype(&cpConstraintFree)>;

cpVect vect(Vec2 v) { return cpv(v.x, v.y); }

// A body's own frame has its centre of mass as origin, and here the section's axes.
Body add_section(cpSpace* space, const SectionMass& section, Vec2 origin, double turn) {
  Body body(cpBodyNew(section.mass, section.inertia), &cpBodyFree);
  cpBodySetPosition(body.get(), vect(make_pose(origin, turn) * section.centre));
  cpBodySetAngle(body.get(), turn);
  cpSpaceAddBody(space, body.get());
  return body;
}

Joint add_pin(cpSpace* space, cpBody* a, cpBody* b, Vec2 on_a, Vec2 on_b) {
  Joint joint(cpPivotJointNew2(a, b, vect(on_a), vect(on_b)), &cpConstraintFree);
  cpSpaceAddConstraint(space, joint.get());
  return joint;
}

}  // namespace

TwoTurns run_in_chipmunk(const TwoRods& rods, const TwoTurns& start, double time, double step) {
  const Space space(cpSpaceNew(), &cpSpaceFree);
  cpSpaceSetGravity(space.get(), cpv(0.0, -kGravity));
  cpSpaceSetIterations(space.get(), kIterations);
  const auto& [one, two] = rods.sections;
  const Vec2 hinge = make_pose({}, start.turn[0]) * rods.hinge;
  const Body first = add_section(space.get(), one, {}, start.turn[0]);
  const Body second = add_section(space.get(), two, hinge, start.turn[1]);
  const Joint pivot = add_pin(space.get(), cpSpaceGetStaticBody(space.get()), first.get(), {}, -one.centre);
  const Joint pin = add_pin(space.get(), first.get(), second.get(), rods.hinge - one.centre, -two.centre);
  for (long i = std::lround(time / step); i > 0; --i) cpSpaceStep(space.get(), step);
  const TwoTurns end{{cpBodyGetAngle(first.get()), cpBodyGetAngle(second.get())},
                     {cpBodyGetAngularVelocity(first.get()), cpBodyGetAngularVelocity(second.get())}};
  cpSpaceRemoveConstraint(space.get(), pivot.get());
  cpSpaceRemoveConstraint(space.get(), pin.get());
  cpSpaceRemoveBody(space.get(), first.get());
  cpSpaceRemoveBody(space.get(), second.get());
  return end;
}

}  // namespace stowpath::testing
