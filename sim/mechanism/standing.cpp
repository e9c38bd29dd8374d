#include "sim/mechanism/standing.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "sim/mechanism/scene_fault.h"
#include "sim/trade/length.h"

namespace stowpath {

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kLeastLean = 1.0 * kDegree;      // steeper, and nothing keeps the foot from swinging under the rail
constexpr double kGreatestLean = 80.0 * kDegree;  // flatter, and it is a gangway: the foot scrubs, no tread is level
constexpr double kUsualLean = 30.0 * kDegree;     // what the hints aim at: the middle of 25 to 35 degrees

double hook_slack(const Scene& scene) { return scene.stair.hooks.inside - 0.5 * scene.rail.pipe.diameter; }

void check_counts(const Scene& scene) {
  const Stair& stair = scene.stair;
  if (stair.sections.empty() || stair.sections.size() > static_cast<std::size_t>(kMaxSections))
    refuse(scene, "stair.sections", "a stair has 1 to 3 sections");
  if (stair.hinges.size() + 1 != stair.sections.size())
    refuse(scene, "stair.hinges",
           std::to_string(stair.hinges.size()) + " given for " + std::to_string(stair.sections.size()) + " sections",
           "give one hinge between each two sections");
  if (!stair.locks.empty() && stair.locks.size() != stair.hinges.size())
    refuse(scene, "stair.locks",
           std::to_string(stair.locks.size()) + " given for " + std::to_string(stair.hinges.size()) + " hinges",
           "give one lock for each hinge, or none at all");
}

void check_hooks(const Scene& scene) {
  if (hook_slack(scene) >= 0.0) return;
  refuse(scene, "stair.hooks.inside",
         "an inside radius of " + say_length(scene, Nominal{scene.stair.hooks.inside}) +
             " does not go over a pipe of " + say_length(scene, Nominal{scene.rail.pipe.diameter}) + " diameter",
         "bend the hooks to at least " + say_length(scene, AtMost{0.5 * scene.rail.pipe.diameter}) + " inside");
}

double hinge_across(const SideRails& rails, const Hinge& hinge) {
  const bool back = hinge.face == HingeFace::back;
  return back ? rails.front_face - rails.width - hinge.offset : rails.front_face + hinge.offset;
}

Vec2 straight_axle(const Stair& stair) {
  double along = stair.casters.along;
  for (std::size_t k = 0; k + 1 < stair.sections.size(); ++k) along += stair.sections[k];
  return {along, stair.casters.across};
}

// How much longer the chain must be for the axle to hang `drop` below the pivot at this lean [m].
double lacking(Vec2 axle, double drop, double lean) {
  return (drop + axle.y * std::sin(lean)) / std::cos(lean) - axle.x;
}

void check_reach(const Scene& scene, Vec2 axle, double drop) {
  if (drop <= 0.0)
    refuse(scene, "stair.sections",
           "the stair cannot stand: its pivot is " + say_length(scene, AtMost{-drop}) + " below the casters' axle",
           "check rail.at, floor.level and the casters' diameter");
  if (drop <= norm(axle)) return;
  refuse(scene, "stair.sections",
         "the stair cannot stand: its foot stays " + say_length(scene, AtMost{drop - norm(axle)}) + " above the floor",
         "make the sections " + say_length(scene, Nominal{lacking(axle, drop, kUsualLean)}) +
             " longer in all to stand at 30° (" + say_length(scene, AtMost{std::max(0.0, lacking(axle, drop, 0.0))}) +
             " would just touch)");
}

void check_lean(const Scene& scene, Vec2 axle, double drop, double lean) {
  if (lean > kLeastLean && lean < kGreatestLean) return;
  const double change = lacking(axle, drop, kUsualLean);
  refuse(scene, "stair.sections",
         "the stair would stand at " + format_degrees(Nominal{lean}) + " from plumb, outside 1° to 80°",
         "make the sections " + say_length(scene, Nominal{std::abs(change)}) + (change > 0.0 ? " longer" : " shorter") +
             " in all to stand at 30°");
}

struct HookReach {
  double left = 0.0, right = 0.0;  // outermost edges of the hooks from the stair's middle [m]
};

HookReach hook_reach(const Hooks& hooks) {
  const auto [least, greatest] = std::minmax_element(hooks.stations.begin(), hooks.stations.end());
  const double half = 0.5 * std::max(hooks.width(), hooks.roller ? hooks.roller->diameter : 0.0);
  return {*least - half, *greatest + half};
}

void check_home(const Scene& scene, Interval span) {
  const auto home = home_station(scene);
  if (!home || span.contains(*home)) return;
  refuse(scene, scene.hoist->home ? "hoist.home" : "hoist.ceiling point",
         "home " + say_length(scene, Nominal{*home}) + " is out of the stair's reach",
         "its hooks keep it between stations " + say_length(scene, AtMost{span.lo}) + " and " +
             say_length(scene, AtLeast{span.hi}));
}

}  // namespace

double lean_for(Vec2 axle, double drop) {
  return std::acos(std::clamp(drop / norm(axle), -1.0, 1.0)) - std::atan2(axle.y, axle.x);
}

Linkage make_linkage(const Scene& scene) {
  check_counts(scene);
  check_hooks(scene);
  const Stair& stair = scene.stair;
  Linkage linkage;
  linkage.pivot = scene.rail.at - Vec2{0.0, hook_slack(scene)};
  linkage.sections = static_cast<int>(stair.sections.size());
  std::copy(stair.sections.begin(), stair.sections.end(), linkage.length.begin());
  for (std::size_t k = 0; k < stair.hinges.size(); ++k) {
    linkage.hinge_across[k] = hinge_across(stair.side_rails, stair.hinges[k]);
    linkage.fold_sign[k] = stair.hinges[k].face == HingeFace::back ? -1.0 : 1.0;
  }
  return linkage;
}

Standing stand(const Scene& scene, const Linkage& linkage) {
  Standing standing;
  standing.axle = straight_axle(scene.stair);
  standing.axle_height = scene.floor.level + 0.5 * scene.stair.casters.diameter;
  const double drop = linkage.pivot.y - standing.axle_height;
  check_reach(scene, standing.axle, drop);
  standing.lean = lean_for(standing.axle, drop);
  check_lean(scene, standing.axle, drop, standing.lean);
  standing.leans = {lean_for(standing.axle, drop + scene.floor.uneven),
                    lean_for(standing.axle, drop - scene.floor.uneven)};
  return standing;
}

Interval station_span(const Scene& scene) {
  const Rail& rail = scene.rail;
  if (scene.stair.hooks.stations.empty()) refuse(scene, "stair.hooks.stations", "the stair hangs on no hook");
  const HookReach hooks = hook_reach(scene.stair.hooks);
  const Interval span{rail.stations.lo + (rail.stops.left ? rail.stops.width : 0.0) - hooks.left,
                      rail.stations.hi - (rail.stops.right ? rail.stops.width : 0.0) - hooks.right};
  if (span.empty())
    refuse(scene, "rail.stations",
           "the rail is " + say_length(scene, AtMost{-span.length()}) + " too short for the hooks",
           "lengthen the rail, or set the hooks closer together");
  check_home(scene, span);
  return span;
}

std::optional<double> home_station(const Scene& scene) {
  if (!scene.hoist) return std::nullopt;
  if (scene.hoist->home) return scene.hoist->home;
  if (scene.hoist->ceiling_point) return scene.hoist->ceiling_point->station;
  return std::nullopt;
}

double hook_play(const Scene& scene) { return 2.0 * hook_slack(scene) * std::sin(0.5 * scene.stair.hooks.seat_range); }

}  // namespace stowpath
