#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/loads/connection.h"
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
  add_pipe_stress(to, "pipe", to.rail.design_stress, stair_at(to, sags ? peaks.sagging.position : peaks.hogging.position))
      .note = "continuous over its brackets";
  const auto holds = [](const MovingPeak& hold) { return hold.value > 0.0; };
  const bool lifts = std::any_of(peaks.hold.begin(), peaks.hold.end(), holds);
  if (lifts || !to.scene().rail.joints.empty())
    add_pipe_stress(to, "pipe, each span by itself", to.rail.hinged_stress, to.rail.forces.name).note =
        "holds good where saddles do not hold the pipe down or a coupling over a bracket gives";
}

/// A coupling's threads leave the root of the pipe's wall; what a flush joint passes on is not ours to know.
void add_joint(RailItems& to, const PipeJoint& joint, const JointPeak& peak) {
  constexpr double kFlush = 0.0005;
  const Pipe& pipe = to.scene().rail.pipe;
  const std::string name = "pipe's joint at station " + say_length(to.scene(), Nominal{joint.station});
  if (joint.diameter <= pipe.diameter + kFlush) {
    to.add(name, LoadKind::moment, peak.moment, stair_at(to, peak.at)).note =
        "what a flush joint passes on is not known: keep it where this is least, a fifth of the way between brackets";
    return;
  }
  HardwareItem& item =
      add_pipe_stress(to, name, peak.moment / threaded_section(pipe).modulus, stair_at(to, peak.at));
  item.basis = "yield of A53 grade " + pipe.steel + " over 1.67; stress in the root of a coupling's thread (ASME B1.20.1)";
}

void add_joints(RailItems& to) {
  for (std::size_t i = 0; i < to.rail.joints.size(); ++i) add_joint(to, to.scene().rail.joints[i], to.rail.joints[i]);
}

/// How far a pipe gives way before whoever stands on the stair feels it: our judgement, 1/200 of its longest span.
void add_give(RailItems& to) {
  if (to.rail.forces.ultimate || to.rail.forces.moving) return;
  constexpr double kFelt = 1.0 / 200.0;
  const std::vector<double>& at = to.scene().rail.brackets.stations;
  double longest = 0.0;
  for (std::size_t i = 1; i < at.size(); ++i) longest = std::max(longest, at[i] - at[i - 1]);
  HardwareItem& give = to.add("pipe's give", LoadKind::length, to.rail.peaks.down.value,
                              stair_at(to, to.rail.peaks.down.position));
  give.resistance = kFelt * longest;
  give.basis = "1/200 of the longest span, beyond which it feels loose";
  give.status = SourceStatus::judgement;
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
  HardwareItem& arm = to.add(brackets.post ? "bracket's arm at its post" : "bracket's arm at its plate", LoadKind::moment,
                             load.bending, bracket_where(to, load));
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
  HardwareItem& upper = to.add("bracket's upper screws, each", LoadKind::force, std::hypot(load.pull, load.shear),
                               bracket_where(to, load));
  upper.resistance = pulled_and_sheared(screw_pull(screws, wood.gravity),
                                        screw_shear(screws, wood.gravity, brackets.plate_thickness), load.pull, load.shear);
  upper.basis = "pull and shear together by NDS 12.4.1, " + say_screws(to.scene(), screws, wood);
  upper.reserve = kDowelReserve;
  upper.status = SourceStatus::memory;
  upper.note = "the plate turns about its lower edge; the upper half of its screws, at 3/4 of its height, hold it; " +
               setting_rule(to.scene(), screws);
}

/// A far bracket must hold the pipe down: what straps it or screws it to its saddle.
void add_hold_down(RailItems& to, const BracketLoad& load) {
  add_rated(to, "saddle, holding the pipe down", norm(load.force), bracket_where(to, load), {"saddle"});
  if (!to.items.back().resistance)
    to.items.back().note = "brackets further off must hold the pipe down: strap it or screw it to its saddles, and rate that";
}

}  // namespace

std::vector<HardwareItem> rail_items(const HardwareInputs& inputs, const RailCase& rail) {
  std::vector<HardwareItem> items;
  RailItems to{inputs, rail, items};
  add_pipe(to);
  add_joints(to);
  add_give(to);
  for (const BracketLoad& load : bracket_loads(inputs.scene, rail)) {
    if (load.holds_down) {
      add_hold_down(to, load);
      continue;
    }
    add_rated(to, "bracket", norm(load.force), bracket_where(to, load), {"bracket"});
    add_arm(to, load);
    add_screws(to, load);
  }
  Pieces worst;  // of all brackets
  worst.look(std::move(items));
  return worst.weakest_first();
}

}  // namespace stowpath
