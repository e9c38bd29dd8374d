#include "sim/loads/joint_items.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/loads/connection.h"
#include "sim/loads/dowel.h"
#include "sim/loads/hardware_items.h"
#include "sim/trade/section.h"

namespace stowpath {

namespace {

constexpr double kPinBendingYield = 45e3 * 6894.757293168;  // F_yb of common bolts, NDS appendix I, from memory [Pa]

std::string joint_name(const StairItems& to, std::size_t k) {
  return to.scene().stair.hinges.size() > 1 ? " of joint " + std::to_string(k + 1) : "";
}

void add_pin(StairItems& to, std::size_t k, const JointLoad& joint) {
  const Lock& lock = to.scene().stair.locks[k];
  const Species& species = *to.inputs.climber.wood.species;
  const double bearing = dowel_bearing(species.gravity, lock.pin, true);
  const Dowel dowel{lock.pin, lock.thickness,  to.scene().stair.side_rails.thickness, lock.spacer, bearing,
                    bearing,  kPinBendingYield};
  HardwareItem& wood =
      to.add("lock pin" + joint_name(to, k) + ", bending and bearing in the wood", LoadKind::force, joint.pin);
  wood.resistance = dowel_resistance(dowel, true);
  wood.basis = "dowel equations of the NDS, across the grain, with the gap of the spacer";
  wood.reserve = kDowelReserve;
  wood.status = SourceStatus::memory;
  wood.note = "the pin and the hinge make the couple";
  const std::string shear = "lock pin" + joint_name(to, k) + " in shear";
  if (const Rating* rated = rating_of(to.scene(), {"lock pin"})) {
    rate(to.add(shear, LoadKind::force, joint.pin), *rated);
    return;
  }
  to.add_steel(shear, LoadKind::force, joint.pin,
               0.6 * kMildSteelYield / kSteelFactor * std::numbers::pi / 4 * lock.pin * lock.pin,
               "a plain pin of mild steel, 0.6 of 36 ksi over 1.67");
}

/// A board that the pin pushes across its grain, near its end.
void add_split(StairItems& to, const std::string& name, double across, double breadth, double depth) {
  const Species& species = *to.inputs.climber.wood.species;
  HardwareItem& item = to.add(name, LoadKind::force, across);
  item.resistance = end_connection_shear(species.shear, breadth, depth, 0.5 * depth);
  item.basis = "NDS 3.4.3.3, shear at a connection within 5 depths of the end, the pin in mid-depth";
  item.status = SourceStatus::memory;
  item.reserve = kWoodReserve;
}

void add_splits(StairItems& to, std::size_t k, const JointLoad& joint) {
  const Stair& stair = to.scene().stair;
  const Lock& lock = stair.locks[k];
  add_split(to, "side rail" + joint_name(to, k) + ", split by the lock pin", joint.pin_across,
            stair.side_rails.thickness, stair.side_rails.width);
  add_split(to, "scab" + joint_name(to, k) + ", split by the lock pin", joint.pin_across, lock.thickness, lock.width);
}

void add_distance(StairItems& to, const std::string& name, double needs, double has, const std::string& basis) {
  HardwareItem& item = to.add(name, LoadKind::length, 0.0);
  item.load = needs;
  item.dynamic = 1.0;
  item.where = "as drawn";
  item.resistance = has;
  item.basis = basis;
  item.status = SourceStatus::memory;
}

/// How far the pin must be from the ends of the boards that it ties and from the edge that it pushes towards.
void add_distances(StairItems& to, std::size_t k) {
  const Lock& lock = to.scene().stair.locks[k];
  add_distance(to, "lock pin's way to the edge" + joint_name(to, k), kLoadedEdge * lock.pin,
               0.5 * std::min(lock.width, to.scene().stair.side_rails.width),
               "4 diameters to the loaded edge, NDS Table 12.5.1C; the pin in mid-depth");
  add_distance(to, "lock pin's way to the end" + joint_name(to, k), kEndDistance * lock.pin, 0.25 * lock.length,
               "7 diameters to the end, NDS Table 12.5.1A; the pin half-way along the scab's lower half");
}

void add_scab(StairItems& to, std::size_t k, const JointLoad& joint) {
  const Lock& lock = to.scene().stair.locks[k];
  const Section section = rectangle_section(lock.thickness, lock.width);
  HardwareItem& item = to.add_wood("scab" + joint_name(to, k) + " in bending", joint.scab / section.modulus,
                                   bending_value(*to.inputs.climber.wood.species, lock.width), "F_b with C_F");
  also(item, "the whole moment of one side, of the side rails' species");
}

/// The scab's screws stand in two rows over the half of it that lies on the upper section, evenly over 2/3 of that.
double outer_scab_screw(const Lock& lock, const JointLoad& joint) {
  const int count = lock.screws->count;
  return joint.pin / count + outermost_in_row(0.5 * joint.scab, 2.0 / 3.0 * 0.5 * lock.length, count / 2);
}

void add_scab_fixing(StairItems& to, std::size_t k, const JointLoad& joint) {
  const Lock& lock = to.scene().stair.locks[k];
  const std::string name = "scab's fixing" + joint_name(to, k);
  if (!lock.screws) {
    to.add(name, LoadKind::moment, joint.scab).note =
        "nothing says what fixes the scab to its upper section: stair.locks[].screws, or glue of known strength";
    return;
  }
  const Species& wood = wood_of(*lock.screws, to.inputs.climber);
  HardwareItem& item = to.add(name + ", its outermost screws", LoadKind::force, outer_scab_screw(lock, joint));
  item.resistance = lock.screws->count > 3 ? screw_shear_in_wood(*lock.screws, wood.gravity, lock.thickness) : 0.0;
  item.basis = "dowel equations of the NDS, " + say_screws(to.scene(), *lock.screws, wood);
  item.reserve = kDowelReserve;
  item.status = SourceStatus::memory;
  item.note = "in two rows, evenly over 2/3 of the scab's upper half; " + setting_rule(to.scene(), *lock.screws);
}

/// The leaf's screws are pulled by what stands square to the leaf and sheared by what runs along it.
void add_leaf_screws(StairItems& to, std::size_t k, AlongAcross force) {
  const auto& screws = to.scene().stair.hinges[k].screws;
  const std::string name = "hinge's screws" + joint_name(to, k) + ", each leaf";
  const double size = std::hypot(force.along, force.across);
  if (!screws) {
    to.add(name, LoadKind::force, size).note = "no screws given: stair.hinges[].screws";
    return;
  }
  const Species& wood = wood_of(*screws, to.inputs.climber);
  HardwareItem& held = to.add(name, LoadKind::force, size);
  held.resistance =
      screws->count * pulled_and_sheared(screw_pull(*screws, wood.gravity), screw_shear(*screws, wood.gravity, 0.0),
                                         force.across, force.along);
  held.basis = "pull and shear together by NDS 12.4.1, " + say_screws(to.scene(), *screws, wood);
  held.reserve = kDowelReserve;
  held.status = SourceStatus::memory;
  held.note = setting_rule(to.scene(), *screws);
}

void add_hinge(StairItems& to, std::size_t k, double force, AlongAcross parts, const std::string& how) {
  const bool locked = !to.scene().stair.locks.empty();
  HardwareItem& item = to.add_rated("each hinge" + joint_name(to, k), force, {"hinge"});
  item.where += how;
  const std::string bends = locked ? "keep the lock pin in: only it holds the joint against folding"
                                   : "no lock: the hinge alone carries the joint's bending, which it must not";
  also(item, bends);
  add_leaf_screws(to, k, parts);
  to.items.back().where += how;
}

/// Whether the hinge is on the face that the moment stretches, so that the ends butt on the other one and nothing else
/// is needed: a stair that sags is stretched on its back.
bool ends_hold(const Stair& stair, std::size_t k, double moment) {
  return (stair.hinges[k].face == HingeFace::back) == (moment >= 0.0);
}

/// The ends of both side rails under the pressing part of the couple, a third of the depth in touch: along the grain.
void add_butting(StairItems& to, std::size_t k, const JointLoad& joint) {
  const SideRails& rails = to.scene().stair.side_rails;
  const Species& species = *to.inputs.climber.wood.species;
  const double area = rails.thickness * rails.width / 3.0;
  HardwareItem& item = to.add_wood("side rails' ends butting" + joint_name(to, k), joint.hinge_butted.along / area,
                                   species.compression, "F_c");
  also(item, "pressed over a third of their depth");
}

}  // namespace

void add_joint(StairItems& to, std::size_t k, const JointLoad& joint) {
  const Stair& stair = to.scene().stair;
  add_hinge(to, k, joint.hinge_unlocked, joint.hinge_butted, stair.locks.empty() ? "" : ", the ends butting");
  add_butting(to, k, joint);
  if (stair.locks.empty() || (stair.locks[k].slotted && ends_hold(stair, k, joint.moment))) return;
  add_hinge(to, k, joint.hinge_force, joint.hinge_pinned, ", the pin tight");
  add_pin(to, k, joint);
  add_splits(to, k, joint);
  add_distances(to, k);
  add_scab(to, k, joint);
  add_scab_fixing(to, k, joint);
}

}  // namespace stowpath
