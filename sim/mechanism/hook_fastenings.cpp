#include "sim/mechanism/hook_fastenings.h"

#include <algorithm>
#include <cmath>

#include "sim/mechanism/prism_touch.h"
#include "sim/mechanism/side_rail_band.h"

namespace stowpath {

namespace {

constexpr double kLeastLengths = 2.0;  // of shank on wood, in thicknesses of the hook
constexpr double kPerScrew = 4.0;      // of shank, in diameters of the screw
constexpr double kFar = 1e4;           // [m]

// How one piece of a hook lies on one side rail.
struct Bearing {
  double length = 0.0;     // along, over which it lies on wood [m]
  double distance = kFar;  // to the side rail [m]
  double beside = 0.0;     // of that, along the rail [m]
};

// The side rail with its front and back faces grown to where something still lies on them.
RoundedPolygon grown_across(RoundedPolygon rail) {
  const double middle = reach_y(rail.core).middle();
  for (Vec2& corner : rail.core) corner.y += corner.y > middle ? kOnFace : -kOnFace;
  return rail;
}

double length_of(const std::vector<Vec2>& corners) { return std::max(0.0, reach_x(corners).length()); }

Bearing bearing(const RoundedPolygon& piece, Interval at, const RoundedPolygon& rail, Interval wood) {
  const std::vector<Vec2> common = common_corners(piece, rail);
  const double across = std::max(0.0, reach_y(common).length()), along_rail = overlap(at, wood);
  Bearing out{0.0, free_distance({piece, at}, {rail, wood}), gap(at, wood)};
  if (across >= 0.5 * reach_y(piece.core).length() && gap(at, wood) <= kOnFace) out.length = length_of(common);
  if (along_rail >= 0.5 * std::min(at.length(), wood.length()))
    out.length = std::max(out.length, length_of(common_corners(piece, grown_across(rail))));
  return out;
}

bool may_hold(const Hooks& hooks, const StairPart& part) {
  if (part.kind != PartKind::hook || part.name == "hook roller") return false;
  if (hooks.form == HookForm::rod) return part.name == "hook shank" && part.outline.core.size() == 4;
  return reach_x(part.outline.core).hi + part.outline.radius > 0.0 && part.outline.core.size() > 2;
}

Interval around(double station, double width) { return {station - 0.5 * width, station + 0.5 * width}; }

Bearing better(const Bearing& a, const Bearing& b) {
  if (a.length != b.length) return a.length > b.length ? a : b;
  return a.distance < b.distance ? a : b;
}

// The straight shank is the longest of a rod's pieces on wood; a plate's best piece counts.
Bearing best_bearing(const HoldingView& view, double station) {
  const Hooks& hooks = view.scene.stair.hooks;
  Bearing best;
  for (const StairPart& part : view.model.stair) {
    if (!may_hold(hooks, part)) continue;
    for (const StairPart& rail : view.model.stair) {
      if (rail.kind != PartKind::side_rail || rail.section != 0) continue;
      for (const Interval wood : rail.stations)
        best = better(best, bearing(part.outline, around(station, hooks.width()), rail.outline, wood));
    }
  }
  return best;
}

std::string rails_middles(const HoldingView& view) {
  const double middle = right_side_rail(view.scene.stair).middle();
  return "the side rails' middles are " + say_distance(view.scene, Nominal{middle}) + " to either side of the stair's middle";
}

void break_off(const HoldingView& view, const Bearing& bearing, double least, Fastening& link) {
  link.ok = false;
  link.kind = "hook";
  if (bearing.distance > kOnFace && bearing.beside > kOnFace) {
    link.how =
        "the shank is " + say_distance(view.scene, AtMost{bearing.beside}) + " beside the nearest side rail of section 1";
    link.remedy = "set the hooks on the side rails (`stair.hooks.stations`): " + rails_middles(view);
  } else if (bearing.distance > kOnFace) {
    link.how = "the shank ends " + say_distance(view.scene, AtMost{bearing.distance}) + " short of the side rails of section 1";
    link.remedy =
        "make the shank longer (`stair.hooks.shank`), or have the side rails begin higher "
        "(`stair.above pivot`)";
  } else if (bearing.length <= 0.0) {
    link.how = "less than half of the shank's thickness lies on a side rail of section 1";
    link.remedy = "set the shank on the wood (`stair.hooks.stations`, `shank offset`): " + rails_middles(view);
  } else {
    link.in_part = true;
    link.how = "the shank lies on wood over " + say_distance(view.scene, AtLeast{bearing.length}) + " and takes " +
               say_distance(view.scene, Nominal{least}) + " at least";
    link.remedy =
        "make the shank longer (`stair.hooks.shank`), or have the side rails begin higher "
        "(`stair.above pivot`)";
  }
}

void check_screws(const HoldingView& view, const Bearing& bearing, Fastening& link) {
  const std::optional<Screws>& screws = view.scene.stair.hooks.screws;
  if (!screws || !link.ok) return;
  const double needed = kPerScrew * screws->count * screws->diameter;
  if (bearing.length >= needed) return;
  link.ok = false;
  link.kind = "hook";
  link.in_part = true;
  link.how = "its " + std::to_string(screws->count) + " screws take " + say_distance(view.scene, Nominal{needed}) +
             " of the shank, four diameters each, and only " + say_distance(view.scene, AtLeast{bearing.length}) +
             " lie on wood";
  link.remedy = "make the shank longer (`stair.hooks.shank`), or take fewer or thinner screws (`stair.hooks.screws`)";
}

}  // namespace

Fastenings hook_fastenings(const HoldingView& view) {
  const Hooks& hooks = view.scene.stair.hooks;
  const double least = kLeastLengths * hooks.depth();
  Fastenings links;
  for (const double station : hooks.stations) {
    const std::string place = say_place(view.scene, station) + " from the stair's middle";
    const Bearing found = best_bearing(view, station);
    Fastening link{"section 1", "hook " + place, {}, true, found.distance, {}, place};
    link.how = "its shank lies on the side rail over " + say_distance(view.scene, AtLeast{found.length});
    if (found.length < least) break_off(view, found, least, link);
    check_screws(view, found, link);
    links.push_back(link);
    links.push_back({"hook " + place, "pipe", "it hangs over it"});
  }
  return links;
}

}  // namespace stowpath
