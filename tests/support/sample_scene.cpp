#include "tests/support/sample_scene.h"

#include <numbers>

namespace stowpath::testing {

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

Rail sample_rail() {
  Rail rail;
  rail.pipe = {"NPS 1", 0.0334, 0.0034, "A"};
  rail.at = {0.975, 2.900};
  rail.stations = {0.2, 7.3};
  rail.stops = {true, true, 0.060, 0.020};
  rail.joints = {{3.750, 0.042, 0.060}};
  Brackets& b = rail.brackets;
  for (int i = 0; i < 9; ++i) b.stations.push_back(0.3 + 0.86 * i);
  b.projection = 0.075;
  b.drop = 0.055;
  b.arm = 0.012;
  b.saddle_length = 0.040;
  b.saddle_thickness = 0.005;
  b.plate_width = 0.060;
  b.plate_height = 0.090;
  b.plate_thickness = 0.006;
  return rail;
}

Stair sample_stair() {
  Stair stair;
  stair.width = 0.560;
  stair.side_rails = {"2x6", 0.038, 0.140, "SPF", 0.070, true, 0.12};
  stair.sections = {1.790, 1.440};
  stair.above_pivot = -0.100;  // clear of the bracket's arm while standing
  stair.hinges = {{HingeFace::back, 0.012, 178 * kDegree}};
  stair.locks = {{"2x6", 0.038, 0.140, 0.900, 0.038, 0.010}};
  stair.treads = Treads{"2x6", 0.038, 0.140, std::nullopt, std::nullopt, 0.0};
  stair.hooks = {{-0.261, 0.261}, 0.012, 0.020, 0.150, 200 * kDegree, 0.0, 30 * kDegree};
  stair.casters = {0.075, 0.032, 1.500, 0.0, {-0.310, 0.310}, 0.008, 0.0, 0.4};
  stair.extras = {
      {"gate hinge", 1, {{1.60, -0.080}, {1.66, -0.080}, {1.66, -0.070}, {1.60, -0.070}}, 0.0, {-0.280, -0.240}, 0.6}};
  return stair;
}

Hoist sample_hoist() {
  Hoist hoist;
  hoist.ceiling_point = RoomPoint{{2.550, 4.080}, 4.000};
  hoist.home = 4.000;
  hoist.pick = {1, 1.700, 0.0};
  hoist.spread = 0.520;
  hoist.line = {4, SheaveKind::plain, 0.008, 8000.0};
  hoist.line.leads = {RoomPoint{{0.060, 1.200}, 6.900}};
  return hoist;
}

Step step(StepKind kind) {
  Step out;
  out.kind = kind;
  return out;
}

Step to_lean(StepKind kind, double degrees) {
  Step out = step(kind);
  out.lean = degrees * kDegree;
  return out;
}

Step to_home() {
  Step out = step(StepKind::roll);
  out.to_home = true;
  return out;
}

Step unpin_first() {
  Step out = step(StepKind::unpin);
  out.hinge = 1;
  return out;
}

Step fold_to(double degrees) {
  Step out = step(StepKind::fold);
  out.folds = {degrees * kDegree};
  return out;
}

void number_steps(Scene& scene) {
  for (std::size_t i = 0; i < scene.procedure.size(); ++i) scene.procedure[i].at = {100 + static_cast<int>(i), 5, 1};
}

}  // namespace

Scene sample_scene() {
  Scene scene;
  scene.file = "sample.yaml";
  scene.name = "Wheel loft";
  scene.room = {7.600, 4.600, 4.100};
  scene.loft = {0.900, 2.950, 0.240, {0.3, 7.3}, std::nullopt, std::nullopt};
  scene.rail = sample_rail();
  scene.stair = sample_stair();
  scene.obstacles = {{"strip light", {{2.35, 2.98}, {2.47, 2.98}, {2.47, 3.08}, {2.35, 3.08}}, 0.0, {0.9, 5.4}, {}}};
  scene.floor = {0.0, 0.005};
  scene.zones = {{"photo wall", {ZoneState::parked}, {{0, 0}, {3.4, 0}, {3.4, 1.9}, {0, 1.9}}, {2.5, 5.2}}};
  scene.hoist = sample_hoist();
  scene.fold_line = FoldLine{{1, 0.200, -0.060}, {{2, 1.300, -0.060}, {1, 0.200, -0.060}}, 0.008, 0.0};
  scene.procedure = {
      to_home(),    step(StepKind::hook_on),    unpin_first(), to_lean(StepKind::drag, 40), to_lean(StepKind::hang, 70),
      fold_to(176), to_lean(StepKind::lift, 88)};
  number_steps(scene);
  scene.where = {{"rail", {10, 1, 4}},           {"rail.stations", {11, 3, 8}}, {"stair", {20, 1, 5}},
                 {"stair.sections", {21, 3, 8}}, {"stair.hinges", {22, 3, 6}},  {"stair.hooks.inside", {23, 9, 6}},
                 {"hoist", {30, 1, 5}},          {"hoist.home", {31, 3, 4}},    {"procedure", {99, 1, 9}}};
  return scene;
}

Scene one_section_scene() {
  Scene scene = sample_scene();
  scene.stair.sections = {scene.stair.sections[0] + scene.stair.sections[1]};
  scene.stair.casters.along += 1.790;
  scene.stair.hinges.clear();
  scene.stair.locks.clear();
  scene.fold_line.reset();
  scene.procedure = {to_home(), step(StepKind::hook_on), to_lean(StepKind::lift, 88)};
  number_steps(scene);
  return scene;
}

}  // namespace stowpath::testing
