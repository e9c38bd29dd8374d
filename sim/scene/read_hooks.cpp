#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "sim/scene/scene_parts.h"

namespace stowpath {
namespace {

// Free width between the shank's inner line and the nearest point of the curl beyond it [m].
//
// At the arc angle psi from the shank the rod's inner side stands inside·(1 - cos psi) off the shank's inner line; a
// tip goes on along the tangent, by sin psi for each metre. Up to half a turn the curl does not come back, so nothing
// narrows the way out; from there on the end comes nearer all the time, and the end of the tip or of the arc is the
// narrowest.
double mouth(const Hooks& hooks) {
  if (hooks.wrap <= std::numbers::pi) return 2 * hooks.inside;
  return hooks.inside * (1 - std::cos(hooks.wrap)) + hooks.tip * std::sin(hooks.wrap);
}

void check_bend(const Setting& hooks, const Hooks& read, double pipe) {
  const LengthUnit bare = hooks.bare();
  if (read.inside < pipe / 2 - 1e-9) {
    hooks.at("inside").fault("the bend does not go over the pipe, whose radius is " + length_text(pipe / 2, bare),
                             "give the inside radius of the bend");
    return;
  }
  const double free = mouth(read);
  if (free < pipe - 1e-9) {
    hooks.at("wrap").fault("the hook's mouth is " + length_text(std::max(0.0, free), bare) + " and the pipe is " +
                               length_text(pipe, bare) + ": it could not be hung",
                           "less wrap or tip, or a larger inside radius, opens the mouth");
  }
}

void check_stations(const Setting& hooks, const Stair& stair) {
  const std::vector<Setting> items = hooks.at("stations").items();
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (std::abs(stair.hooks.stations[i]) > stair.width / 2) {
      items[i].fault("this hook lies beside the stair, which reaches " + length_text(stair.width / 2, hooks.bare()) +
                         " each way from its middle",
                     "stations of hooks count from the middle of the stair's width");
    }
  }
}

}  // namespace

void read_hooks(const Setting& hooks, Scene& scene) {
  Hooks& read = scene.stair.hooks;
  read.stations = hooks.at("stations").numbers();
  read.rod = hooks.at("rod").number();
  read.inside = hooks.at("inside").number();
  read.shank = hooks.at("shank").number();
  read.wrap = hooks.at("wrap").number();
  read.tip = hooks.at("tip").number();
  read.seat_range = hooks.at("seat range").number();
  if (hooks.at("screws").given()) read.screws = read_screws(hooks.at("screws"));
  check_bend(hooks, read, scene.rail.pipe.diameter);
  check_stations(hooks, scene.stair);
}

}  // namespace stowpath
