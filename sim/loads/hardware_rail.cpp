#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/loads/dowel.h"
#include "sim/loads/hardware_items.h"
#include "sim/mechanism/scene_fault.h"

namespace stowpath {

namespace {

const RailCase& hardest(const std::vector<RailCase>& rails, double RailCase::*stress) {
  return *std::max_element(rails.begin(), rails.end(),
                           [&](const RailCase& a, const RailCase& b) { return a.*stress < b.*stress; });
}

HardwareItem pipe_item(const Scene& scene, const std::string& name, double stress, const std::string& where) {
  const PipeStrength strength = pipe_strength(scene.rail.pipe);
  HardwareItem item;
  item.name = name;
  item.kind = LoadKind::stress;
  item.load = stress;
  item.where = where;
  item.resistance = strength.allowable;
  item.basis = "yield of A53 grade " + scene.rail.pipe.steel + " over 1.67; stress with 0.93 of the listed wall";
  item.status = SourceStatus::memory;  // the factor and 0.93; the yield itself is verified
  return item;
}

double greatest_hold(const RailCase& rail) {
  double most = 0.0;
  for (const MovingPeak& hold : rail.peaks.hold) most = std::max(most, hold.value);
  return most;
}

std::string station_text(const Scene& scene, double station) {
  return "stair at station " + say_length(scene, Nominal{station});
}

void add_pipe(const HardwareInputs& inputs, std::vector<HardwareItem>& items) {
  const RailCase& worst = hardest(inputs.rails, &RailCase::design_stress);
  const bool sags = worst.peaks.sagging.value >= worst.peaks.hogging.value;
  const double at = sags ? worst.peaks.sagging.position : worst.peaks.hogging.position;
  items.push_back(
      pipe_item(inputs.scene, "pipe", worst.design_stress, worst.forces.name + ", " + station_text(inputs.scene, at)));
  items.back().note = "continuous over its brackets, couplings as stiff as the pipe";
  const bool lifts = std::any_of(inputs.rails.begin(), inputs.rails.end(),
                                 [](const RailCase& rail) { return greatest_hold(rail) > 0.0; });
  if (!lifts && inputs.scene.rail.joints.empty()) return;
  const RailCase& loose = hardest(inputs.rails, &RailCase::hinged_stress);
  items.push_back(pipe_item(inputs.scene, "pipe, each span by itself", loose.hinged_stress, loose.forces.name));
  items.back().note = "holds good where saddles do not hold the pipe down or a coupling over a bracket gives";
}

struct Pressed {
  const RailCase* rail = nullptr;
  BracketLoad load;
};

Pressed hardest_pressed(const HardwareInputs& inputs) {
  Pressed worst;
  for (const RailCase& rail : inputs.rails) {
    const BracketLoad load = worst_bracket(inputs.scene, rail);
    if (worst.rail == nullptr || norm(load.force) > norm(worst.load.force)) worst = {&rail, load};
  }
  return worst;
}

std::string where_of(const Scene& scene, const Pressed& worst) {
  return "bracket at station " + say_length(scene, Nominal{worst.load.station}) + ", " + worst.rail->forces.name +
         ", " + station_text(scene, worst.load.at);
}

void add_bracket(const HardwareInputs& inputs, const Pressed& worst, std::vector<HardwareItem>& items) {
  const Scene& scene = inputs.scene;
  items.push_back(rated_item(scene, "bracket", norm(worst.load.force), where_of(scene, worst), {"bracket"}));
  if (worst.load.uplift > 0.0)
    items.back().note += std::string(items.back().note.empty() ? "" : "; ") +
                         "brackets further off must hold the pipe down: strap it or screw it to its saddles";
  const bool outlined = scene.rail.brackets.shape == BracketShape::outline;
  if (outlined || !(scene.rail.brackets.arm > 0.0)) return;
  HardwareItem arm;
  arm.name = scene.rail.brackets.post ? "bracket's arm at its post" : "bracket's arm at its plate";
  arm.kind = LoadKind::moment;
  arm.load = worst.load.bending;
  arm.where = where_of(scene, worst);
  arm.resistance = kMildSteelYield / kSteelFactor * std::numbers::pi / 32 * std::pow(scene.rail.brackets.arm, 3);
  arm.basis = "a plain round rod of mild steel, yield 36 ksi over 1.67";
  arm.status = SourceStatus::memory;
  arm.note = "a bracket with a rating of its own may bear more";
  items.push_back(std::move(arm));
}

void add_bracket_screws(const HardwareInputs& inputs, const Pressed& worst, std::vector<HardwareItem>& items) {
  const Scene& scene = inputs.scene;
  HardwareItem pull;
  pull.name = "bracket's upper screws, each, pulled out";
  pull.where = where_of(scene, worst);
  if (!scene.rail.brackets.screws) {
    pull.name = "bracket's screws";
    pull.load = norm(worst.load.force);
    pull.note = "no screws given";
    items.push_back(std::move(pull));
    return;
  }
  if (const BracketShape shape = scene.rail.brackets.shape;
      shape == BracketShape::strap || shape == BracketShape::post_mounted) {
    pull.name = "bracket's screws";
    pull.load = norm(worst.load.force);
    pull.note = "how a strap's or a post's screws share the load is not worked out here";
    items.push_back(std::move(pull));
    return;
  }
  const Screws& screws = *scene.rail.brackets.screws;
  const Species& wood = wood_of(screws, inputs.climber);
  pull.load = worst.load.pull;
  pull.resistance = screw_pull(screws, wood.gravity);
  pull.basis = "NDS withdrawal, " + say_screws(scene, screws, wood);
  pull.status = SourceStatus::verified;
  pull.note = "the plate turns about its lower edge; the upper half of its screws, at 3/4 of its height, hold it";
  HardwareItem shear = pull;
  shear.name = "bracket's screws, each, across";
  shear.load = worst.load.shear;
  shear.resistance = screw_shear(screws, wood.gravity, scene.rail.brackets.plate_thickness);
  shear.basis = "dowel equations of the NDS, " + say_screws(scene, screws, wood);
  shear.status = SourceStatus::memory;
  shear.note.clear();
  items.push_back(std::move(pull));
  items.push_back(std::move(shear));
}

}  // namespace

void add_rail_items(const HardwareInputs& inputs, std::vector<HardwareItem>& items) {
  if (inputs.rails.empty()) return;
  add_pipe(inputs, items);
  const Pressed worst = hardest_pressed(inputs);
  add_bracket(inputs, worst, items);
  add_bracket_screws(inputs, worst, items);
}

}  // namespace stowpath
