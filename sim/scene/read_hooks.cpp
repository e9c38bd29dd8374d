#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <numbers>
#include <optional>
#include <stdexcept>
#include <string>

#include "sim/geometry/distance.h"
#include "sim/scene/scene_parts.h"
#include "sim/trade/length.h"

namespace stowpath {
namespace {

constexpr double kDrawnWithin = 5e-5;  // what a plate's part may reach into the bearing circle [m]

// Free width between the shank's inner line and the nearest point of the curl beyond it [m].
//
// At the arc angle psi from the shank the rod's inner side stands inside·(1 - cos psi) off the shank's inner line; a
// tip goes on along the tangent, by sin psi for each metre, and a point on the rod's axis likewise. Up to half a turn
// the curl does not come back, so nothing narrows the way out; from there on the end comes nearer all the time, and the
// end of the arc, of the tip or the point is the narrowest.
double mouth(const Hooks& hooks) {
  if (hooks.wrap <= std::numbers::pi) return 2 * hooks.inside;
  const double square = hooks.inside * (1 - std::cos(hooks.wrap)) + hooks.tip * std::sin(hooks.wrap);
  if (hooks.end == HookEnd::square) return square;
  const double axis = hooks.inside + hooks.rod / 2;
  return std::min(square, hooks.inside - axis * std::cos(hooks.wrap) + (hooks.tip + hooks.rod) * std::sin(hooks.wrap));
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
                           read.end == HookEnd::square
                               ? "less wrap or tip, or a larger inside radius, opens the mouth"
                               : "less wrap or tip, a square end, or a larger inside radius, opens the mouth");
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

void need(const Setting& hooks, std::initializer_list<const char*> keys, const char* hint) {
  for (const char* key : keys)
    if (!hooks.at(key).given()) hooks.at(key).missing(hint);
}

void refuse(const Setting& hooks, std::initializer_list<const char*> keys, const std::string& problem,
            const char* hint) {
  for (const char* key : keys)
    if (hooks.at(key).given()) hooks.at(key).fault(problem, hint);
}

void check_form(const Setting& hooks, bool plate) {
  if (!hooks.is_map()) return;
  if (plate) {
    need(hooks, {"rim", "thickness", "parts"}, "a plate hook takes rim, thickness and parts");
    refuse(hooks, {"rod", "shank", "shank offset", "tip", "end"}, "a plate hook takes parts instead",
           "leave it out, or write shape: rod");
  } else {
    need(hooks, {"rod", "shank"}, "a hook bent of a rod takes rod and shank");
    refuse(hooks, {"rim", "thickness", "parts"}, "only a plate hook takes this", "leave it out, or write shape: plate");
  }
}

// From the middle of the hook's circle to a part; nothing where the part's outline was refused.
std::optional<double> off_the_middle(const HookPiece& piece) {
  try {
    return distance(make_rounded_polygon(piece.corners, piece.radius), {}, make_disc({}, 0.0), {});
  } catch (const std::invalid_argument&) {
    return std::nullopt;
  }
}

HookPiece read_piece(const Setting& part, double inside) {
  HookPiece piece;
  piece.name = part.at("name").text();
  piece.radius = part.at("radius").number();
  piece.corners = read_outline(part.at("outline"), piece.radius);
  const std::optional<double> off = off_the_middle(piece);
  if (off && *off < inside - kDrawnWithin) {
    part.at("outline").fault(
        "this part reaches into the hook's circle, which is kept for the pipe, by " +
            length_text(std::min(inside, inside - *off), part.bare()),
        "keep every part at least " + length_text(inside, part.bare()) + " from the circle's middle");
  }
  return piece;
}

HookRoller read_roller(const Setting& roller, const Hooks& hooks) {
  const HookRoller read{roller.at("diameter").number(), roller.at("width").number(), roller.at("at").number()};
  if (read.at > hooks.wrap + 1e-12)
    roller.at("at").fault(
        "the roller lies past the end of the arc, which covers " + format_degrees(Nominal{hooks.wrap}),
        "angles count from the shank; 90 is the crown");
  return read;
}

void read_rod(const Setting& hooks, Hooks& read) {
  read.rod = hooks.at("rod").number();
  read.shank = hooks.at("shank").number();
  read.shank_offset = hooks.at("shank offset").number();
  read.tip = hooks.at("tip").number();
  read.end = hooks.at("end").word() == "pointed" ? HookEnd::pointed : HookEnd::square;
}

void read_plate(const Setting& hooks, Hooks& read) {
  read.form = HookForm::plate;
  read.rim = hooks.at("rim").number();
  read.thickness = hooks.at("thickness").number();
  for (const Setting& part : hooks.at("parts").items()) read.pieces.push_back(read_piece(part, read.inside));
}

}  // namespace

void read_hooks(const Setting& hooks, Scene& scene) {
  Hooks& read = scene.stair.hooks;
  read.stations = hooks.at("stations").numbers();
  read.inside = hooks.at("inside").number();
  read.wrap = hooks.at("wrap").number();
  const bool plate = hooks.at("shape").word() == "plate";
  check_form(hooks, plate);
  plate ? read_plate(hooks, read) : read_rod(hooks, read);
  if (hooks.at("roller").given()) read.roller = read_roller(hooks.at("roller"), read);
  read.seat_range = hooks.at("seat range").number();
  if (hooks.at("screws").given()) read.screws = read_screws(hooks.at("screws"));
  check_bend(hooks, read, scene.rail.pipe.diameter);
  check_stations(hooks, scene.stair);
}

}  // namespace stowpath
