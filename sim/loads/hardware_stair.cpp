#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/loads/dowel.h"
#include "sim/loads/hardware_items.h"
#include "sim/loads/hoisted_worst.h"
#include "sim/mechanism/hook_parts.h"
#include "sim/trade/us_units.h"

namespace stowpath {

namespace {

constexpr double kPinBendingYield = 45e3 * 6894.757293168;  // F_yb of common bolts, NDS appendix I, from memory [Pa]

struct StairItems {
  const HardwareInputs& inputs;
  std::vector<HardwareItem>& items;

  const Scene& scene() const { return inputs.scene; }
  const ClimberReport& climber() const { return inputs.climber; }

  HardwareItem& add(const std::string& name, LoadKind kind, double load, const std::string& where) {
    HardwareItem item;
    item.name = name;
    item.kind = kind;
    item.load = load;
    item.where = where;
    items.push_back(std::move(item));
    return items.back();
  }

  HardwareItem& add_wood(const std::string& name, double stress, const std::string& where, double allowed,
                         const std::string& what) {
    HardwareItem& item = add(name, LoadKind::stress, stress, where);
    item.resistance = allowed;
    item.basis = "NDS " + what + " of " + std::string(climber().wood.species->name) + " No. 2, normal duration, dry";
    item.status = climber().wood.species->strength_status;
    if (climber().wood.assumed) item.note = "the scene names no species: SPF is taken";
    return item;
  }

  template <class Value>
  const ClimberPlace& hardest(Value value) const {
    return *std::max_element(climber().places.begin(), climber().places.end(),
                             [&](const ClimberPlace& a, const ClimberPlace& b) { return value(a) < value(b); });
  }
};

std::string person_on(const ClimberPlace& place) { return "one person on " + place.name; }

void add_side_rails(StairItems& to) {
  const auto bending = [&](const ClimberPlace& p) { return to.climber().bending_stress(p); };
  const auto shear = [&](const ClimberPlace& p) { return to.climber().shear_stress(p); };
  const ClimberPlace& bent = to.hardest(bending);
  const ClimberPlace& sheared = to.hardest(shear);
  HardwareItem& item =
      to.add_wood("side rails in bending", bending(bent), person_on(bent), to.climber().wood.bending, "F_b with C_F");
  if (to.inputs.model.linkage.sections > 1) item.note += item.note.empty() ? "joints locked" : "; joints locked";
  to.add_wood("side rails in shear", shear(sheared), person_on(sheared), to.climber().wood.shear, "F_v");
}

void add_treads(StairItems& to) {
  if (!to.climber().tread) return;
  const TreadLoad& tread = *to.climber().tread;
  const Species& species = *to.climber().wood.species;
  HardwareItem& item = to.add_wood("tread in bending", tread.stress, "one person in its middle",
                                   bending_value(species, to.scene().stair.treads->depth), "F_b with C_F");
  item.note = "laid flat, without the flat-use factor, of the side rails' species";
  to.add_wood("tread in shear", tread.shear, "one person at its end", species.shear, "F_v");
  to.add("tread's fixing at each end", LoadKind::force, to.climber().mass * kGravity, "one person at its end").note =
      "the scene says nothing of how treads are fixed";
}

// The joint that is loaded most, under a person or while hoisted.
struct WorstJoint {
  JointLoad load;
  std::string where;
  double dynamic = 1.0;
};

WorstJoint joint_under_climber(const StairItems& to, std::size_t k) {
  const auto moment = [&](const ClimberPlace& p) { return std::abs(p.joints[k].moment); };
  const ClimberPlace& place = to.hardest(moment);
  return {place.joints[k], person_on(place), 1.0};
}

WorstJoint worst_joint(const StairItems& to, std::size_t k) {
  WorstJoint worst = joint_under_climber(to, k);
  if (!to.inputs.hoist) return worst;
  const double hoisted = to.scene().dynamic_factor * 0.5 * hoisted_worst(*to.inputs.hoist).joint_moment;
  const double standing = std::abs(worst.load.moment);
  if (hoisted <= standing) return worst;
  worst.load.moment = worst.load.scab = hoisted;
  if (worst.load.arm > 0.0) worst.load.pin = hoisted / worst.load.arm;
  worst.where = hoisted_worst(*to.inputs.hoist).joint_where;
  worst.dynamic = to.scene().dynamic_factor;
  return worst;
}

std::string joint_name(const StairItems& to, std::size_t k) {
  return to.scene().stair.hinges.size() > 1 ? " of joint " + std::to_string(k + 1) : "";
}

void add_pin(StairItems& to, std::size_t k, const WorstJoint& worst) {
  const Lock& lock = to.scene().stair.locks[k];
  const double bearing = dowel_bearing(to.climber().wood.species->gravity, lock.pin, true);
  const Dowel dowel{lock.pin, lock.thickness,  to.scene().stair.side_rails.thickness, lock.spacer, bearing,
                    bearing,  kPinBendingYield};
  HardwareItem& wood = to.add("lock pin" + joint_name(to, k) + ", bending and bearing in the wood", LoadKind::force,
                              worst.load.pin, worst.where);
  wood.resistance = dowel_resistance(dowel, true);
  wood.basis = "dowel equations of the NDS, across the grain, with the gap of the spacer";
  wood.status = SourceStatus::memory;
  wood.dynamic = worst.dynamic;
  wood.note = "the pin and the hinge make the couple; ends that butt tightly take some of it";
  HardwareItem& steel =
      to.add("lock pin" + joint_name(to, k) + " in shear", LoadKind::force, worst.load.pin, worst.where);
  const auto rated = rating_of(to.scene(), {"lock pin"});
  steel.resistance = rated ? allowed_by(*rated) : 0.6 * kMildSteelYield / kSteelFactor * std::numbers::pi / 4 * lock.pin * lock.pin;
  steel.basis = rated ? "rated in the scene file" : "a plain pin of mild steel, 0.6 of 36 ksi over 1.67";
  if (!rated) steel.status = SourceStatus::memory;
  steel.dynamic = worst.dynamic;
}

void add_scab(StairItems& to, std::size_t k, const WorstJoint& worst) {
  const Lock& lock = to.scene().stair.locks[k];
  const Section section = rectangle_section(lock.thickness, lock.width);
  HardwareItem& item = to.add_wood("scab" + joint_name(to, k) + " in bending", worst.load.scab / section.modulus,
                                   worst.where, bending_value(*to.climber().wood.species, lock.width), "F_b with C_F");
  item.note = "the whole moment of one side, of the side rails' species";
  item.dynamic = worst.dynamic;
}

void add_hinge(StairItems& to, std::size_t k) {
  const Stair& stair = to.scene().stair;
  const auto force = [&](const ClimberPlace& p) { return p.joints[k].hinge_force; };
  const ClimberPlace& place = to.hardest(force);
  double load = force(place), dynamic = 1.0;
  std::string where = person_on(place);
  if (to.inputs.hoist && 0.5 * to.scene().dynamic_factor * hoisted_worst(*to.inputs.hoist).hinge > load) {
    dynamic = to.scene().dynamic_factor;
    load = 0.5 * dynamic * hoisted_worst(*to.inputs.hoist).hinge;
    where = hoisted_worst(*to.inputs.hoist).hinge_where;
  }
  to.items.push_back(rated_item(to.scene(), "each hinge" + joint_name(to, k), load, where, {"hinge"}));
  HardwareItem& item = to.items.back();
  item.dynamic = dynamic;
  const std::string bends = stair.locks.empty()
                                ? "no lock: the hinge alone carries the joint's bending, which it must not"
                                : "a hinge must not carry bending by itself: keep the lock pin in";
  item.note += std::string(item.note.empty() ? "" : "; ") + bends;
  const auto& screws = stair.hinges[k].screws;
  if (!screws) return;
  const Species& wood = wood_of(*screws, to.climber());
  HardwareItem& held = to.add("hinge's screws" + joint_name(to, k) + ", each leaf", LoadKind::force, load, where);
  held.resistance = screws->count * screw_shear(*screws, wood.gravity, 0.0);
  held.basis = "dowel equations of the NDS, " + say_screws(to.scene(), *screws, wood);
  held.status = SourceStatus::memory;
  held.dynamic = dynamic;
}

void add_joints(StairItems& to) {
  for (std::size_t k = 0; k < to.scene().stair.hinges.size(); ++k) {
    add_hinge(to, k);
    if (to.scene().stair.locks.empty()) continue;
    const WorstJoint worst = worst_joint(to, k);
    add_pin(to, k, worst);
    add_scab(to, k, worst);
  }
}

struct HookWorst {
  double force = 0.0;
  std::string where;
  double dynamic = 1.0;
};

HookWorst worst_hook(const StairItems& to) {
  const ClimberPlace& place = to.hardest([](const ClimberPlace& p) { return p.worst_hook; });
  HookWorst worst{place.worst_hook, person_on(place) + ", one caster in the air", 1.0};
  if (!to.inputs.hoist) return worst;
  const double count = static_cast<double>(to.scene().stair.hooks.stations.size());
  const double hoisted = to.scene().dynamic_factor * norm(hoisted_worst(*to.inputs.hoist).hooks) / count;
  if (hoisted > worst.force) worst = {hoisted, hoisted_worst(*to.inputs.hoist).hooks_where, to.scene().dynamic_factor};
  return worst;
}

// Stress at the inner fibre where the bend meets the shank, for a force of 1 N through the bend's centre: Winkler's
// curved bar of round section or, for a plate's rim, of rectangular section; from memory (Shigley).
double bend_stress(const Hooks& hooks) {
  const bool round = hooks.form == HookForm::rod;
  const double d = hooks.depth(), centre = hooks.inside + 0.5 * d;
  const double area = round ? std::numbers::pi / 4 * d * d : d * hooks.thickness;
  const double neutral = round ? d * d / (4 * (2 * centre - std::sqrt(4 * centre * centre - d * d)))
                               : d / std::log((hooks.inside + d) / hooks.inside);
  const double bending = centre * (neutral - hooks.inside) / (area * (centre - neutral) * hooks.inside);
  return bending + 1.0 / area;
}

// How far a hook's shank runs from the bend's end, and where its middle lies.
struct Shank {
  double length = 0.0;  // [m]
  Vec2 middle;          // in section 1's frame [m]
};

Shank shank_of(const Hooks& hooks) {
  if (hooks.form == HookForm::rod)
    return {hooks.shank,
            {shank_jog(hooks.shank_offset, hooks.rod).along + 0.5 * hooks.shank,
             hooks.inside + 0.5 * hooks.rod + hooks.shank_offset}};
  double end = 0.0;  // a plate's parts run this far towards the foot
  for (const HookPiece& piece : hooks.pieces)
    for (const Vec2 corner : piece.corners) end = std::max(end, corner.x + piece.radius);
  return {end, {0.5 * end, hooks.inside + 0.5 * hooks.rim}};
}

// The hook's screws lie in a row along its shank; the outer two stand 2/3 of it apart (our assumption).
double worst_hook_screw(const StairItems& to, double force, int count) {
  const Shank shank = shank_of(to.scene().stair.hooks);
  const double lean = to.inputs.model.working_lean;
  const double moment = force * (shank.middle.x * std::sin(lean) + shank.middle.y * std::cos(lean));
  const double lever = 2.0 / 3.0 * shank.length;
  return force / count + (lever > 0.0 ? moment / lever : 0.0);
}

void add_hooks(StairItems& to) {
  const HookWorst worst = worst_hook(to);
  const bool plate = to.scene().stair.hooks.form == HookForm::plate;
  HardwareItem& bend =
      to.add(plate ? "hook's rim at the bend" : "hook's rod at the bend", LoadKind::force, worst.force, worst.where);
  const auto rated = rating_of(to.scene(), {"hook"});
  bend.resistance = rated ? allowed_by(*rated) : kMildSteelYield / kSteelFactor / bend_stress(to.scene().stair.hooks);
  bend.basis = rated   ? "rated in the scene file"
               : plate ? "a plate's rim of mild steel as a curved bar, yield 36 ksi over 1.67"
                       : "a round rod of mild steel as a curved bar, yield 36 ksi over 1.67";
  if (!rated) bend.status = SourceStatus::memory;
  bend.dynamic = worst.dynamic;
  const auto& screws = to.scene().stair.hooks.screws;
  if (!screws) {
    HardwareItem& none = to.add("hook's screws", LoadKind::force, worst.force, worst.where);
    none.note = "no screws given";
    none.dynamic = worst.dynamic;
    return;
  }
  const Species& wood = wood_of(*screws, to.climber());
  HardwareItem& held = to.add("hook's screws, the outermost", LoadKind::force,
                              worst_hook_screw(to, worst.force, std::max(1, screws->count)), worst.where);
  held.resistance = screw_shear(*screws, wood.gravity, to.scene().stair.hooks.width());
  held.basis = "dowel equations of the NDS, " + say_screws(to.scene(), *screws, wood);
  held.status = SourceStatus::memory;
  held.note = "in a row along the shank, the outer two 2/3 of it apart";
  held.dynamic = worst.dynamic;
}

void add_casters(StairItems& to) {
  if (to.scene().stair.casters.stations.empty()) return;
  const ClimberPlace& place = to.hardest([](const ClimberPlace& p) { return p.worst_caster; });
  const std::string where = person_on(place) + ", the other caster in the air";
  to.items.push_back(rated_item(to.scene(), "caster", place.worst_caster, where, {"caster"}));
  if (to.scene().stair.casters.plate > 0.0)
    to.items.push_back(
        rated_item(to.scene(), "caster's plate and its screws", place.worst_caster, where, {"caster plate"}));
}

}  // namespace

void add_stair_items(const HardwareInputs& inputs, std::vector<HardwareItem>& items) {
  if (inputs.climber.places.empty()) return;
  StairItems to{inputs, items};
  add_side_rails(to);
  add_treads(to);
  add_joints(to);
  add_hooks(to);
  add_casters(to);
}

}  // namespace stowpath
