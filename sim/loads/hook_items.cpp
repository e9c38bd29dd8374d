#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/loads/connection.h"
#include "sim/loads/curved_bar.h"
#include "sim/loads/dowel.h"
#include "sim/loads/hardware_items.h"
#include "sim/loads/stair_items.h"
#include "sim/mechanism/hook_parts.h"

namespace stowpath {

namespace {

/// Where a hook's straight part lies on its section, and where wood begins under it [m].
struct Shank {
  double begins = 0.0;  // along
  double ends = 0.0;    // along
  double across = 0.0;  // of its middle line
  double wood = 0.0;    // along: from here on it lies on wood

  double held() const { return std::max(0.0, ends - wood); }
};

Shank shank_of(const Stair& stair) {
  const Hooks& hooks = stair.hooks;
  Shank shank;
  if (hooks.form == HookForm::rod) {
    shank.begins = shank_jog(hooks.shank_offset, hooks.rod).along;
    shank.ends = shank.begins + hooks.shank;
    shank.across = hooks.inside + 0.5 * hooks.rod + hooks.shank_offset;
  } else {
    shank.across = hooks.inside + 0.5 * hooks.rim;
    for (const HookPiece& piece : hooks.pieces)
      for (const Vec2 corner : piece.corners) shank.ends = std::max(shank.ends, corner.x + piece.radius);
  }
  shank.wood = std::max(shank.begins, -stair.above_pivot);
  return shank;
}

/// Stress at the inner fibre where the bend meets the shank, for a force of 1 N through the bend's centre: Winkler's
/// curved bar of round section or, for a plate's rim, of rectangular section.
double bend_stress(const Hooks& hooks) {
  const double centre = hooks.inside + 0.5 * hooks.depth();
  return curved_bar_stress(
             hooks.form == HookForm::rod ? round_bar(hooks.depth()) : flat_bar(hooks.depth(), hooks.thickness),
             hooks.inside, centre)
      .inner;
}

/// Where a force through the pivot bends the shank most: where the wood begins, seen from there [m].
struct Lever {
  double along = 0.0, across = 0.0;
};

/// Moment about a point of the section of a force through the pivot [N m].
double moment_about(const StairItems& to, Lever at, Vec2 force) {
  if (!to.lean) return norm(force) * std::hypot(at.along, at.across);
  const double lean = *to.lean;
  const Vec2 arm{at.along * std::sin(lean) + at.across * std::cos(lean),
                 -at.along * std::cos(lean) + at.across * std::sin(lean)};
  return std::abs(cross(-1.0 * arm, force));
}

/// Of the shank's section for bending in the hook's own plane and square to it [m3], and its area [m2].
struct ShankSection {
  double in_plane = 0.0, aside = 0.0, area = 0.0;
};

ShankSection section_of(const Hooks& hooks) {
  const double d = hooks.depth();
  if (hooks.form == HookForm::rod)
    return {std::numbers::pi / 32 * std::pow(d, 3), std::numbers::pi / 32 * std::pow(d, 3),
            std::numbers::pi / 4 * d * d};
  return {hooks.thickness * d * d / 6, d * hooks.thickness * hooks.thickness / 6, d * hooks.thickness};
}

/// A hook that is pushed along the rail slides once friction gives way: no more than that bends it aside.
double shank_stress(const StairItems& to, const Shank& shank, Vec2 force, double along) {
  const Hooks& hooks = to.scene().stair.hooks;
  const ShankSection section = section_of(hooks);
  const double aside =
      std::min(along, to.scene().friction.hook.hi * norm(force)) * std::hypot(shank.wood, shank.across);
  const double in_plane = moment_about(to, {shank.wood, shank.across}, force) / section.in_plane;
  const double bending =
      hooks.form == HookForm::rod ? std::hypot(in_plane, aside / section.aside) : in_plane + aside / section.aside;
  return bending + norm(force) / section.area;
}

void add_steel_of_hook(StairItems& to, Vec2 force, double along) {
  const Hooks& hooks = to.scene().stair.hooks;
  const bool plate = hooks.form == HookForm::plate;
  const std::string bend = plate ? "hook's rim at the bend" : "hook's rod at the bend";
  const std::string shank = plate ? "hook's plate where the wood begins" : "hook's shank where the wood begins";
  if (const Rating* rated = rating_of(to.scene(), {"hook"})) {
    rate(to.add(bend, LoadKind::force, norm(force)), *rated);
  } else {
    to.add_steel(bend, LoadKind::force, norm(force), kMildSteelYield / kSteelFactor / bend_stress(hooks),
                 plate ? "a plate's rim of mild steel as a curved bar, yield 36 ksi over 1.67"
                       : "a round rod of mild steel as a curved bar, yield 36 ksi over 1.67");
  }
  HardwareItem& free = to.add_steel(shank, LoadKind::stress, shank_stress(to, shank_of(to.scene().stair), force, along),
                                    kMildSteelYield / kSteelFactor, "mild steel in bending, yield 36 ksi over 1.67");
  free.note = "bent about where the side rail begins, and aside by what friction holds of a push along the rail";
}

/// On the screw that gets most: they stand in a row on the wood under the shank, evenly over 2/3 of it.
double outer_screw(const StairItems& to, const Shank& shank, Vec2 force, int count) {
  const double apart = 2.0 / 3.0 * shank.held(), middle = shank.wood + 0.5 * shank.held();
  const double moment = moment_about(to, {middle, shank.across}, force);
  return norm(force) / count + outermost_in_row(moment, apart, count);
}

void add_screws_of_hook(StairItems& to, Vec2 force) {
  const Stair& stair = to.scene().stair;
  const Shank shank = shank_of(stair);
  if (!stair.hooks.screws) {
    to.add("hook's screws", LoadKind::force, norm(force)).note = "no screws given: stair.hooks.screws";
    return;
  }
  const Screws& screws = *stair.hooks.screws;
  const std::string name = "hook's screws, the outermost";
  if (!(shank.held() > 0.0) || screws.count < 2) {
    HardwareItem& none = to.add(name, LoadKind::force, norm(force));
    none.resistance = 0.0;
    none.basis = screws.count < 2 ? "one screw holds no moment" : "no wood lies under the shank";
    none.status = SourceStatus::derived;
    return;
  }
  const Species& wood = wood_of(screws, to.inputs.climber);
  HardwareItem& held = to.add(name, LoadKind::force, outer_screw(to, shank, force, screws.count));
  held.resistance = screw_shear(screws, wood.gravity, stair.hooks.width());
  held.basis = "dowel equations of the NDS, " + say_screws(to.scene(), screws, wood);
  held.reserve = kDowelReserve;
  held.status = SourceStatus::memory;
  held.note = "in a row on the wood under the shank, evenly over 2/3 of it; " + setting_rule(to.scene(), screws);
}

}  // namespace

void add_hook(StairItems& to, Vec2 force, double along) {
  add_steel_of_hook(to, force, along);
  add_screws_of_hook(to, force);
}

}  // namespace stowpath
