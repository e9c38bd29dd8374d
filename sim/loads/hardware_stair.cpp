#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/loads/deflection_limit.h"
#include "sim/loads/hardware_items.h"
#include "sim/loads/joint_items.h"
#include "sim/loads/stair_items.h"
#include "sim/trade/section.h"
#include "sim/trade/us_units.h"

namespace stowpath {

HardwareItem& StairItems::add(const std::string& name, LoadKind kind, double load) {
  HardwareItem item;
  item.name = name;
  item.kind = kind;
  item.load = dynamic * load;
  item.where = where;
  item.dynamic = dynamic;
  items.push_back(std::move(item));
  return items.back();
}

HardwareItem& StairItems::add_wood(const std::string& name, double stress, double allowed, const std::string& what) {
  const WoodStrength& wood = inputs.climber.wood;
  HardwareItem& item = add(name, LoadKind::stress, stress);
  item.resistance = allowed;
  item.basis = "NDS " + what + " of " + std::string(wood.species->name) + " No. 2, normal duration, dry";
  item.status = wood.species->strength_status;
  item.reserve = kWoodReserve;
  if (wood.assumed) item.note = "the scene names no species: SPF is taken";
  return item;
}

HardwareItem& StairItems::add_rated(const std::string& name, double load,
                                    std::initializer_list<std::string_view> names) {
  items.push_back(rated_item(inputs.scene, name, dynamic * load, where, names));
  items.back().dynamic = dynamic;
  return items.back();
}

HardwareItem& StairItems::add_steel(const std::string& name, LoadKind kind, double load, double resistance,
                                    const std::string& basis) {
  HardwareItem& item = add(name, kind, load);
  item.resistance = resistance;
  item.basis = basis;
  item.status = SourceStatus::memory;
  item.reserve = kSteelReserve;
  return item;
}

namespace {

void add_side_rails(StairItems& to, const StandingState& state) {
  const ClimberReport& climber = to.inputs.climber;
  double bending = 0.0, shear = 0.0;
  for (const SideLoad& side : state.sides) {
    bending = std::max(bending, side.bending / (0.5 * climber.side_rail_modulus));
    shear = std::max(shear, 1.5 * side.shear / (0.5 * climber.side_rail_area));
  }
  HardwareItem& item = to.add_wood("side rail in bending", bending, climber.wood.bending, "F_b with C_F");
  if (to.inputs.model.linkage.sections > 1) also(item, "joints locked");
  to.add_wood("side rail in shear", shear, climber.wood.shear, "F_v");
}

void add_tread(StairItems& to, const StandingState& state) {
  if (!to.scene().stair.treads) return;
  const Species& species = *to.inputs.climber.wood.species;
  const TreadLoad tread = tread_load(to.scene(), species, state.on_tread);
  HardwareItem& item = to.add_wood("tread in bending", tread.stress,
                                   bending_value(species, to.scene().stair.treads->depth), "F_b with C_F");
  also(item, "the foot in its middle; laid flat, without the flat-use factor, of the side rails' species");
  also(to.add_wood("tread in shear", tread.shear, species.shear, "F_v"), "the foot at its end");
}

void add_give(StairItems& to, const std::string& name, BendingPart part, double give, double span) {
  const DeflectionLimit& limit = deflection_limit(part);
  HardwareItem& item = to.add(name, LoadKind::length, give);
  item.resistance = allowed_deflection(limit, span);
  item.basis = std::string(limit.source.title);
  item.status = limit.source.status;
}

/// How far treads and side rails give way under one person, a tread under the force that its limit is stated for at
/// least.
void add_gives(StairItems& to, const StandingState& state) {
  if (state.load_case != 0) return;
  for (const SideLoad& side : state.sides)
    add_give(to, "side rail's give", BendingPart::stair, side.sag, to.inputs.climber.axle_along);
  if (!to.scene().stair.treads) return;
  const double force = std::max(state.on_tread, deflection_limit(BendingPart::tread).load);
  const TreadLoad tread = tread_load(to.scene(), *to.inputs.climber.wood.species, force);
  add_give(to, "tread's give", BendingPart::tread, tread.deflection, tread.span);
}

/// What ends up on the hooks and lifts them, against the stair's own weight that keeps them down.
void add_standing_firm(StairItems& to, const StandingState& state) {
  HardwareItem& held = to.add("hooks held down on the pipe", LoadKind::force, state.lifts);
  held.resistance = std::max(0.0, state.held_down);
  held.basis = "what the stair itself weighs on its hooks; their curl is not counted on";
  held.status = SourceStatus::derived;
  if (to.scene().stair.casters.stations.empty()) return;
  HardwareItem& stand = to.add("stair's stand, tipping to its side", LoadKind::moment, state.tips);
  stand.resistance = state.tips > 0.0 ? std::max(0.0, state.tipping_held) : 1.0;
  stand.basis = "what the stair itself weighs inside the line from hook to caster; its handrails' wind is not counted";
  stand.status = SourceStatus::derived;
}

void add_casters(StairItems& to, const StandingState& state) {
  if (state.casters.empty()) return;
  const double most = *std::max_element(state.casters.begin(), state.casters.end());
  to.add_rated("caster", most, {"caster"});
  if (to.scene().stair.casters.plate > 0.0) to.add_rated("caster's plate and its screws", most, {"caster plate"});
}

}  // namespace

std::vector<HardwareItem> standing_items(const HardwareInputs& inputs, const StandingState& state) {
  std::vector<HardwareItem> items;
  StairItems to{inputs, items, state.where, 1.0, inputs.model.working_lean};
  add_side_rails(to, state);
  add_tread(to, state);
  add_tread_fixing(to, state.on_tread);
  add_gives(to, state);
  for (const SideLoad& side : state.sides)
    for (std::size_t k = 0; k < side.joints.size(); ++k) add_joint(to, k, side.joints[k]);
  const double share = 1.0 / static_cast<double>(std::max<std::size_t>(1, state.hooks.size()));
  for (const double hook : state.hooks) add_hook(to, {state.thrust * share, std::max(0.0, hook)}, state.along * share);
  add_standing_firm(to, state);
  add_casters(to, state);
  return items;
}

std::vector<HardwareItem> hoisted_stair_items(const HardwareInputs& inputs, const HoistState& state) {
  std::vector<HardwareItem> items;
  StairItems to{inputs, items, state.where, state.moving() ? inputs.scene.dynamic_factor : 1.0};
  const StandingStair stair = stand_still(inputs.scene, inputs.model, inputs.climber.wood.species->elasticity);
  for (std::size_t k = 0; k < state.hinges.size(); ++k) {
    const double force = 0.5 * state.hinges[k];  // its direction turns with the section: square to it and along it
    // Which way a raised joint bends is not kept: both are looked at.
    for (const double moment : {0.5 * state.moments[k], -0.5 * state.moments[k]})
      add_joint(to, k, joint_load(stair, static_cast<int>(k), moment, {force, force}));
  }
  const double hooks = static_cast<double>(inputs.scene.stair.hooks.stations.size());
  add_hook(to, (1.0 / hooks) * state.hooks, 0.0);
  return items;
}

}  // namespace stowpath
