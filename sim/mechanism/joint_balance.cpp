#include "sim/mechanism/joint_balance.h"

#include <algorithm>
#include <cmath>

#include "sim/trade/us_units.h"

namespace stowpath {

namespace {

constexpr double kNoLever = 1e-6;  // a line this close to the joint turns nothing [m]

std::size_t index(int j) { return static_cast<std::size_t>(j); }

// The way that a point goes when it is turned about another by 1 rad, counter-clockwise.
Vec2 turned(Vec2 point, Vec2 about) { return {about.y - point.y, point.x - about.x}; }

struct Below {
  double mass = 0.0;  // [kg]
  Vec2 centre;        // out, up [m]
};

Below below(const JointLoads& loads, const SectionPoses& X_W, int first) {
  Below all;
  for (int j = first; j < loads.linkage.sections; ++j) {
    const SectionMass& section = loads.masses[index(j)];
    all.mass += section.mass;
    all.centre = all.centre + section.mass * (X_W[index(j)] * section.centre);
  }
  if (all.mass > 0.0) all.centre = (1.0 / all.mass) * all.centre;
  return all;
}

Vec2 hinge_place(const JointLoads& loads, const SectionPoses& X_W, int hinge) {
  return X_W[index(hinge)] * loads.linkage.distal(hinge);
}

Vec2 end_place(const RopeEnd& end, const SectionPoses& X_W) {
  return end.section < 0 ? end.at : X_W[index(end.section)] * end.at;
}

// How fast a run between two ends shortens when all below the hinge turns by 1 rad, counter-clockwise.
double shortening(const RopeEnd& a, const RopeEnd& b, const SectionPoses& X_W, int hinge, Vec2 about) {
  const Vec2 p = end_place(a, X_W), q = end_place(b, X_W);
  const double length = norm(q - p);
  if (length <= kNoLever) return 0.0;
  const Vec2 way = (1.0 / length) * (q - p);
  const double p_goes = a.section > hinge ? dot(way, turned(p, about)) : 0.0;
  const double q_goes = b.section > hinge ? dot(way, turned(q, about)) : 0.0;
  return p_goes - q_goes;
}

// Tension of all parts of the hoist line together that balances the stair about its pivot [N].
double hoist_tension(const JointLoads& loads, const SectionPoses& X_W) {
  const Below all = below(loads, X_W, 0);
  const double arm = shortening(*loads.pick, *loads.ceiling_point, X_W, -1, loads.linkage.pivot);
  const double moment = kGravity * all.mass * (all.centre.x - loads.linkage.pivot.x);
  return arm > kNoLever ? std::max(0.0, moment / arm) : 0.0;
}

double angle_from_below(Vec2 centre, Vec2 about) {
  const Vec2 arm = centre - about;
  return std::abs(std::atan2(arm.x, -arm.y));
}

RopeEnd section_end(const SectionPoint& point) { return {point.section - 1, {point.along, point.across}, {}}; }

}  // namespace

JointLoads joint_loads(const Scene& scene, const Model& model) {
  JointLoads loads{model.linkage, model.masses};
  if (scene.hoist && scene.hoist->ceiling_point) {
    loads.ceiling_point = RopeEnd{-1, scene.hoist->ceiling_point->at, {}};
    loads.pick = section_end(scene.hoist->pick);
  }
  if (!scene.fold_line) return loads;
  loads.fold_line.push_back(section_end(scene.fold_line->from));
  for (const SectionPoint& pulley : scene.fold_line->through) loads.fold_line.push_back(section_end(pulley));
  return loads;
}

JointBalance balance_of(const JointLoads& loads, const Configuration& at, int hinge, bool hooked_on) {
  const SectionPoses X_W = place_sections(loads.linkage, at);
  const Vec2 about = hinge_place(loads, X_W, hinge);
  const Below chain = below(loads, X_W, hinge + 1);
  const double sign = loads.linkage.fold_sign[index(hinge)];
  JointBalance out;
  out.weight = -sign * kGravity * chain.mass * (chain.centre.x - about.x);
  out.load = kGravity * chain.mass;
  out.lever = kGravity * chain.mass * norm(chain.centre - about);
  out.off_plumb = angle_from_below(chain.centre, about);
  out.comes_back = chain.centre.y < about.y;
  if (hooked_on && loads.pick && loads.pick->section > hinge) {
    out.comes_back = true;
    out.weight += sign * hoist_tension(loads, X_W) * shortening(*loads.pick, *loads.ceiling_point, X_W, hinge, about);
  }
  for (std::size_t i = 0; i + 1 < loads.fold_line.size(); ++i)
    out.fold_line += sign * shortening(loads.fold_line[i], loads.fold_line[i + 1], X_W, hinge, about);
  return out;
}

double pivot_off_plumb(const JointLoads& loads, const Configuration& at) {
  return angle_from_below(below(loads, place_sections(loads.linkage, at), 0).centre, loads.linkage.pivot);
}

}  // namespace stowpath
