#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/loads/connection.h"
#include "sim/loads/deflection_limit.h"
#include "sim/loads/dowel.h"
#include "sim/loads/hardware_items.h"
#include "sim/mechanism/scene_fault.h"
#include "sim/trade/pipe.h"

namespace stowpath {

namespace {

struct RailItems {
  const HardwareInputs& inputs;
  const RailCase& rail;
  std::vector<HardwareItem>& items;

  const Scene& scene() const { return inputs.scene; }

  HardwareItem& add(const std::string& name, LoadKind kind, double load, const std::string& where) {
    HardwareItem item;
    item.name = name;
    item.kind = kind;
    item.load = load;
    item.where = where;
    item.dynamic = rail.forces.moving ? scene().dynamic_factor : 1.0;
    items.push_back(std::move(item));
    return items.back();
  }
};

std::string stair_at(const RailItems& to, double station) {
  return to.rail.forces.name + ", stair at station " + say_length(to.scene(), Nominal{station});
}

/// What the pipe's steel breaks at, by its grade; its yield where the grade is not known [Pa].
double pipe_tensile(const Pipe& pipe) {
  const PipeGrade* grade = find_pipe_grade(pipe.steel);
  return grade != nullptr ? grade->ultimate : pipe_strength(pipe).yield;
}

HardwareItem& add_pipe_stress(RailItems& to, const std::string& name, double stress, const std::string& where) {
  const PipeStrength strength = pipe_strength(to.scene().rail.pipe);
  HardwareItem& item = to.add(name, LoadKind::stress, stress, where);
  item.resistance = strength.allowable;
  item.basis = "yield of A53 grade " + to.scene().rail.pipe.steel + " over 1.67; stress with 0.93 of the listed wall";
  item.status = SourceStatus::memory;  // the factor and 0.93; the yield itself is verified
  item.reserve = strength.allowable > 0.0 ? pipe_tensile(to.scene().rail.pipe) / strength.allowable : 1.0;
  return item;
}

void add_pipe(RailItems& to) {
  const MovingPeaks& peaks = to.rail.peaks;
  const bool sags = peaks.sagging.value >= peaks.hogging.value;
  add_pipe_stress(to, "pipe", to.rail.design_stress,
                  stair_at(to, sags ? peaks.sagging.position : peaks.hogging.position))
      .note = "continuous over its brackets";
  const auto holds = [](const MovingPeak& hold) { return hold.value > 0.0; };
  const bool lifts = std::any_of(peaks.hold.begin(), peaks.hold.end(), holds);
  if (lifts || !to.scene().rail.joints.empty())
    add_pipe_stress(to, "pipe, each span by itself", to.rail.hinged_stress, to.rail.forces.name).note =
        "holds good where saddles do not hold the pipe down or a coupling over a bracket gives";
}

/// A coupling's threads leave the root of the pipe's wall; what a flush joint passes on is not ours to know.
void add_joint(RailItems& to, const JointPeak& peak) {
  const std::string name = "pipe's joint at station " + say_length(to.scene(), Nominal{peak.station});
  if (!peak.design_stress) {
    to.add(name, LoadKind::moment, peak.moment, stair_at(to, peak.position)).note =
        peak.kind == JointKind::flush
            ? "what a flush joint passes on is not known: have it rated, or put it where this is least"
            : "the pipe's wall is thinner than a thread is deep: it cannot be threaded";
    return;
  }
  add_pipe_stress(to, name, *peak.design_stress, stair_at(to, peak.position)).basis =
      "yield of A53 grade " + to.scene().rail.pipe.steel +
      " over 1.67; stress in the root of a coupling's thread (ASME B1.20.1) in 0.93 of the wall";
}

/// How far a pipe gives way before whoever stands on the stair feels it.
void add_give(RailItems& to) {
  if (to.rail.forces.ultimate || to.rail.forces.moving) return;
  const DeflectionCheck check = pipe_deflection(to.scene(), to.rail);
  const DeflectionLimit& limit = deflection_limit(BendingPart::pipe);
  HardwareItem& give = to.add("pipe's give", LoadKind::length, check.deflection, stair_at(to, check.station));
  give.resistance = check.allowed;
  give.basis = std::string(limit.source.title);
  give.status = limit.source.status;
}

std::string bracket_where(const RailItems& to, const BracketLoad& load) {
  return "bracket at station " + say_length(to.scene(), Nominal{load.station}) + ", " + stair_at(to, load.at);
}

void add_rated(RailItems& to, const std::string& name, double load, const std::string& where,
               std::initializer_list<std::string_view> names) {
  to.items.push_back(rated_item(to.scene(), name, load, where, names));
  to.items.back().dynamic = to.rail.forces.moving ? to.scene().dynamic_factor : 1.0;
}

void add_arm(RailItems& to, const BracketLoad& load) {
  const Brackets& brackets = to.scene().rail.brackets;
  if (brackets.shape == BracketShape::outline || !(brackets.arm > 0.0)) return;
  HardwareItem& arm = to.add(brackets.post ? "bracket's arm at its post" : "bracket's arm at its plate",
                             LoadKind::moment, load.bending, bracket_where(to, load));
  arm.resistance = kMildSteelYield / kSteelFactor * std::numbers::pi / 32 * std::pow(brackets.arm, 3);
  arm.basis = "a plain round rod of mild steel, yield 36 ksi over 1.67";
  arm.status = SourceStatus::memory;
  arm.reserve = kSteelReserve;
  arm.note = "a bracket with a rating of its own may bear more";
}

/// What the pull of the plate and the weight on it do to one of its upper screws together.
void add_screws(RailItems& to, const BracketLoad& load) {
  const Brackets& brackets = to.scene().rail.brackets;
  const double size = norm(load.force);
  if (!brackets.screws || brackets.shape == BracketShape::strap || brackets.shape == BracketShape::post_mounted) {
    to.add("bracket's screws", LoadKind::force, size, bracket_where(to, load)).note =
        brackets.screws ? "how a strap's or a post's screws share the load is not worked out here"
                        : "no screws given: rail.brackets.screws";
    return;
  }
  const Screws& screws = *brackets.screws;
  const Species& wood = wood_of(screws, to.inputs.climber);
  HardwareItem& pulled = to.add("bracket's screws, each of those pulled", LoadKind::force,
                                std::hypot(load.pull, load.shear), bracket_where(to, load));
  pulled.resistance =
      pulled_and_sheared(screw_pull(screws, wood.gravity), screw_shear(screws, wood.gravity, brackets.plate_thickness),
                         load.pull, load.shear);
  pulled.basis = "pull and shear together by NDS 12.4.1, " + say_screws(to.scene(), screws, wood);
  pulled.reserve = kDowelReserve;
  pulled.status = SourceStatus::memory;
  pulled.note =
      "the plate turns about its edge; the half of its screws away from that, at 3/4 of its height, hold it; " +
      setting_rule(to.scene(), screws);
}

/// A far bracket must hold the pipe down: what straps it or screws it to its saddle.
void add_hold_down(RailItems& to, const BracketLoad& load) {
  add_rated(to, "saddle, holding the pipe down", norm(load.force), bracket_where(to, load), {"saddle"});
  if (!to.items.back().resistance)
    to.items.back().note =
        "brackets further off must hold the pipe down: strap it or screw it to its saddles, and rate that";
}

}  // namespace

std::vector<HardwareItem> rail_items(const HardwareInputs& inputs, const RailCase& rail) {
  std::vector<HardwareItem> items;
  RailItems to{inputs, rail, items};
  add_pipe(to);
  for (const JointPeak& peak : rail.joints) add_joint(to, peak);
  add_give(to);
  for (const BracketLoad& load : bracket_loads(inputs.scene, rail)) {
    if (load.state == BracketState::held_down) {
      if (norm(load.force) > 0.0) add_hold_down(to, load);
      continue;
    }
    add_rated(to, "bracket", norm(load.force), bracket_where(to, load), {"bracket"});
    add_arm(to, load);
    add_screws(to, load);
  }
  return items;
}

}  // namespace stowpath
