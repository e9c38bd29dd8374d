#include "sim/loads/hardware.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include "sim/loads/loads.h"
#include "sim/trade/fittings.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

HoistState sample_state() {
  HoistState state;
  state.where = "raising, lean 40°";
  state.line = 400.0;
  state.dead_end = 300.0;
  state.hand = 450.0;
  state.ceiling = {{0.0, -1200.0}, 0.0};
  state.pick = {{0.0, 1000.0}, 0.0};
  state.leads = {{{600.0, 0.0}, 0.0}};
  state.hooks = {20.0, 500.0};
  state.hinges = {200.0};
  state.moments = {0.0};
  state.fold_line = 150.0;
  return state;
}

/// Whatever the drive pulls is known: what is not said of it has tests of its own.
HoistLoads loads_in(std::vector<HoistState> states) {
  DrivePull drive;
  drive.force = 500.0;
  drive.known = true;
  return {std::move(states), drive, {}};
}

HoistLoads sample_loads() { return loads_in({sample_state()}); }

LoadsReport report_of(const Scene& scene, bool hoisted = true) {
  return look_at_loads(scene, build_model(scene), hoisted ? std::optional(sample_loads()) : std::nullopt);
}

const HardwareItem& item_of(const LoadsReport& report, const std::string& name) {
  const auto found = std::find_if(report.hardware.begin(), report.hardware.end(),
                                  [&](const HardwareItem& item) { return item.name == name; });
  INFO(name);
  REQUIRE(found != report.hardware.end());
  return *found;
}

bool has(const LoadsReport& report, const std::string& name) {
  return std::any_of(report.hardware.begin(), report.hardware.end(),
                     [&](const HardwareItem& item) { return item.name == name; });
}

Scene screwed_scene() {
  Scene scene = testing::sample_scene();
  const Screws lags{4, 0.008, 0.050, true, ""};
  scene.rail.brackets.screws = lags;
  scene.stair.hooks.screws = Screws{3, 0.006, 0.035, false, ""};
  scene.stair.hinges[0].screws = Screws{4, 0.005, 0.030, false, ""};
  scene.hoist->eye = Screws{1, 0.0095, 0.060, true, "DF-L"};
  scene.ratings = {{"carabiner", 7000.0}, {"Block", 2000.0}, {"lead block", 1500.0}, {"caster", 900.0}};
  scene.stair.treads->screws = Screws{4, 0.006, 0.060, false, ""};
  scene.stair.locks[0].screws = Screws{8, 0.006, 0.060, false, ""};
  return scene;
}

}  // namespace

TEST_CASE("hardware: the weakest comes first, and pieces without a resistance last", "[loads]") {
  const LoadsReport report = report_of(screwed_scene());
  REQUIRE(report.hardware.size() > 20);
  for (std::size_t i = 1; i < report.hardware.size(); ++i) {
    const auto before = report.hardware[i - 1].ratio(), after = report.hardware[i].ratio();
    if (before && after) CHECK(*before <= *after);
    if (!before) CHECK_FALSE(after);
  }
}

TEST_CASE("hardware: every piece names its load, its place, and either its basis or why it has none", "[loads]") {
  for (const HardwareItem& item : report_of(screwed_scene()).hardware) {
    INFO(item.name);
    CHECK(std::isfinite(item.load));
    CHECK(item.load >= 0.0);
    CHECK_FALSE(item.where.empty());
    if (item.resistance) CHECK_FALSE(item.basis.empty());
    if (!item.resistance) CHECK_FALSE(item.note.empty());
    if (item.resistance && !item.status) CHECK(item.basis.rfind("rated in the scene file", 0) == 0);
  }
}

TEST_CASE("hardware: the hoist's pieces take the dynamic factor, and a rating given by name", "[loads]") {
  Scene scene = screwed_scene();
  scene.dynamic_factor = 1.5;
  const LoadsReport report = report_of(scene);
  const HardwareItem& carabiner = item_of(report, "carabiner or shackle at the pick");
  CHECK(carabiner.load == Approx(1500.0));
  CHECK(carabiner.dynamic == 1.5);
  CHECK(*carabiner.resistance == 7000.0);
  CHECK_FALSE(carabiner.status);
  CHECK(*carabiner.ratio() == Approx(7000.0 / 1500.0));
  CHECK(*item_of(report, "block at the pick").resistance == 2000.0);
  CHECK(*item_of(report, "lead sheave 1").resistance == 1500.0);
  CHECK(*item_of(report, "hoist line").resistance == Approx(8000.0 / 5.0));
  CHECK(*item_of(report, "knot at the dead end (bowline)").resistance < 8000.0 / 5.0);
  CHECK(*item_of(report, "caster").resistance == 900.0);
  CHECK_FALSE(item_of(report, "caster's plate and its screws").resistance);
}

TEST_CASE("hardware: a block set's rating by any longer name is found", "[loads]") {
  Scene scene = screwed_scene();
  scene.ratings = {{"block set of the shop", 2001.7}, {"fold line", 10.0}};
  const LoadsReport report = report_of(scene);
  CHECK(*item_of(report, "block at the ceiling point").resistance == 2001.7);
  CHECK(*item_of(report, "hoist line").resistance == Approx(1600.0));  // the fold line's rating is not the line's
  CHECK(*item_of(report, "fold line").resistance == 10.0);
}

// S-NDS-lagW, verified: 1800 G^1.5 D^0.75 pounds an inch, here straight down.
TEST_CASE("hardware: a screw eye has no rating of its own and is reckoned as a lag's thread", "[loads]") {
  const LoadsReport report = report_of(screwed_scene());
  const HardwareItem& eye = item_of(report, "eye at the ceiling point, its thread in the wood");
  const double pounds = 1800 * std::pow(0.50, 1.5) * std::pow(0.0095 / 0.0254, 0.75) * 0.060 / 0.0254;
  CHECK(*eye.resistance == Approx(pounds * 4.4482216152605).epsilon(1e-9));
  CHECK(eye.note.find("no rating") != std::string::npos);
  CHECK(*eye.status == SourceStatus::verified);
}

TEST_CASE("hardware: a side pull on the screw eye counts", "[loads]") {
  const Scene scene = screwed_scene();
  const Model model = build_model(scene);
  HoistState state = sample_state();
  state.ceiling = {{900.0, -800.0}, 0.0};
  const LoadsReport slanted = look_at_loads(scene, model, loads_in({state}));
  const HardwareItem& eye = item_of(slanted, "eye at the ceiling point, its thread in the wood");
  CHECK(*eye.status == SourceStatus::memory);
  CHECK(*eye.resistance != *item_of(report_of(scene), eye.name).resistance);
}

// S-EYE-angle: a shoulder eye's share falls with the angle, by the next printed angle up; a plain eye has none.
TEST_CASE("hardware: an eye pulled aslant keeps a share of its rating with a shoulder, none without, all on a swivel",
          "[loads]") {
  Scene scene = screwed_scene();
  scene.hoist->eye.reset();
  scene.ratings.push_back({"ceiling point", 4000.0});
  HoistState state = sample_state();
  state.ceiling = {{1200.0 * std::sin(0.4886921905584123), -1200.0 * std::cos(0.4886921905584123)}, 0.0};  // 28 degrees
  const HoistLoads loads = loads_in({state});
  const auto at_ceiling = [&](EyeKind kind) {
    scene.hoist->eye_kind = kind;
    return item_of(look_at_loads(scene, build_model(scene), loads), "ceiling point");
  };
  CHECK(*at_ceiling(EyeKind::swivel).resistance == 4000.0);
  const double share = *at_ceiling(EyeKind::shoulder).resistance / 4000.0;
  CHECK(share == *eyebolt_share(true, 0.4886921905584123));
  CHECK(share <= 0.65);
  CHECK_FALSE(at_ceiling(EyeKind::plain).resistance);
}

TEST_CASE("hardware: should the stair catch, every piece is held against what breaks it", "[loads]") {
  const Scene scene = screwed_scene();
  HoistState caught = sample_state();
  caught.doing = HoistDoing::snagged;
  caught.where = "caught, lean 40°";
  caught.line = caught.dead_end = caught.hand = 4500.0;
  const LoadsReport report = look_at_loads(scene, build_model(scene), loads_in({sample_state(), caught}));
  const HardwareItem& line = item_of(report, "hoist line");
  CHECK(line.ultimate);
  CHECK(line.load == 4500.0);
  CHECK(*line.resistance == Approx(8000.0));
  CHECK(line.where == caught.where);
  CHECK(item_of(report_of(scene), "hoist line").ultimate == false);
}

TEST_CASE("hardware: each piece's worst is the worst of all states tried one by one", "[loads]") {
  const Scene scene = screwed_scene();
  const Model model = build_model(scene);
  const LoadsReport all = look_at_loads(scene, model, std::nullopt);
  std::map<std::string, double> least;
  for (std::size_t i = 0; i < all.climber.states.size(); ++i) {
    ClimberReport one = all.climber;
    one.states = {all.climber.states[i]};
    for (const HardwareItem& item : hardware_list({scene, model, one, {}, std::nullopt})) {
      if (!item.resistance) continue;
      const auto [place, is_new] = least.try_emplace(item.name, *item.ratio());
      if (!is_new) place->second = std::min(place->second, *item.ratio());
    }
  }
  ClimberReport nobody = all.climber;
  nobody.states.clear();
  for (const RailCase& rail : all.rails)
    for (const HardwareItem& item : hardware_list({scene, model, nobody, {rail}, std::nullopt})) {
      if (!item.resistance) continue;
      const auto [place, is_new] = least.try_emplace(item.name, *item.ratio());
      if (!is_new) place->second = std::min(place->second, *item.ratio());
    }
  int looked = 0;
  for (const HardwareItem& item : all.hardware) {
    if (!item.resistance) continue;
    INFO(item.name);
    CHECK(*item.ratio() == least.at(item.name));
    ++looked;
  }
  CHECK(looked > 15);
}

TEST_CASE("hardware: a state more makes no piece better, and drops none", "[loads]") {
  const Scene scene = screwed_scene();
  const Model model = build_model(scene);
  const LoadsReport all = look_at_loads(scene, model, sample_loads());
  ClimberReport fewer = all.climber;
  fewer.states.resize(fewer.states.size() / 2);
  const std::vector<RailCase> one_rail{all.rails.front()};
  for (const HardwareItem& item : hardware_list({scene, model, fewer, one_rail, std::nullopt})) {
    INFO(item.name);
    const HardwareItem& more = item_of(all, item.name);
    if (item.resistance && more.resistance) CHECK(*more.ratio() <= *item.ratio());
    if (!item.resistance) CHECK((!more.resistance || *more.ratio() < 1.0));
  }
}

TEST_CASE("hardware: a rating that breaks is divided by its factor, and that much is known to break it", "[loads]") {
  Scene scene = screwed_scene();
  scene.ratings = {{"hook", 20000.0, true, 5.0}};
  const LoadsReport report = report_of(scene, false);
  const HardwareItem& bend = item_of(report, "hook's rod at the bend");
  CHECK(*bend.resistance == (bend.ultimate ? 20000.0 : 4000.0));
}

TEST_CASE("hardware: framing gets its share of the load and no verdict", "[loads]") {
  Scene scene = screwed_scene();
  scene.hoist->eye_members = 2;
  const LoadsReport report = report_of(scene);
  const HardwareItem& framing = item_of(report, "each framing member over the ceiling point");
  CHECK(framing.load == Approx(0.5 * 1.25 * 1200.0));
  CHECK_FALSE(framing.resistance);
  CHECK_FALSE(framing.ratio());
  CHECK(framing.note.find("a licensed engineer must accept") != std::string::npos);
}

TEST_CASE("hardware: without a hoist its pieces are left out, and the stair's stay", "[loads]") {
  const LoadsReport report = report_of(testing::sample_scene(), false);
  CHECK_FALSE(has(report, "hoist line"));
  for (const char* name : {"pipe",
                           "pipe's give",
                           "side rail in bending",
                           "side rail in shear",
                           "side rail's give",
                           "tread in bending",
                           "tread's give",
                           "tread's fixing at each end",
                           "side rails' ends butting",
                           "scab in bending",
                           "scab's fixing",
                           "lock pin in shear",
                           "lock pin, bending and bearing in the wood",
                           "side rail, split by the lock pin",
                           "lock pin's way to the edge",
                           "each hinge",
                           "hinge's screws, each leaf",
                           "hook's rod at the bend",
                           "hook's shank where the wood begins",
                           "hook's screws",
                           "hooks held down on the pipe",
                           "bracket",
                           "bracket's screws",
                           "caster"})
    CHECK(has(report, name));
}

TEST_CASE("hardware: a stair without locks is told that its hinges carry the bending", "[loads]") {
  Scene scene = testing::sample_scene();
  scene.stair.locks.clear();
  const LoadsReport report = report_of(scene, false);
  CHECK(item_of(report, "each hinge").note.find("which it must not") != std::string::npos);
  CHECK_FALSE(has(report, "lock pin in shear"));
  CHECK(item_of(report, "each hinge").load > 0.0);
}

TEST_CASE("hardware: in a slotted hole the pin carries nothing that the butting ends and the hinge do", "[loads]") {
  Scene tight = screwed_scene(), slotted = screwed_scene();
  slotted.stair.locks[0].slotted = true;
  const LoadsReport held = report_of(tight, false), free = report_of(slotted, false);
  const std::string split = "side rail, split by the lock pin";
  REQUIRE(has(held, split));
  // Where somebody leans out beyond the casters the joint bends the other way, and the pin has to hold a little.
  if (has(free, split)) CHECK(item_of(free, split).load < 0.2 * item_of(held, split).load);
  CHECK(has(free, "side rails' ends butting"));
  CHECK(item_of(free, "each hinge").load <= item_of(held, "each hinge").load);
}

TEST_CASE("hardware: a slotted hole does not help a hinge on the pressed face, where the ends would gape", "[loads]") {
  Scene slotted = screwed_scene();
  slotted.procedure.clear();
  slotted.fold_line.reset();
  slotted.hoist.reset();
  slotted.stair.hinges[0].face = HingeFace::front;
  const double tight = item_of(report_of(slotted, false), "side rail, split by the lock pin").load;
  slotted.stair.locks[0].slotted = true;
  CHECK(item_of(report_of(slotted, false), "side rail, split by the lock pin").load == tight);
}

TEST_CASE("hardware: a raised joint may bend either way, so that a slotted hole does not spare its pin", "[loads]") {
  Scene scene = screwed_scene();
  scene.stair.locks[0].slotted = true;
  HoistState state = sample_state();
  state.moments = {400.0};
  const LoadsReport report = look_at_loads(scene, build_model(scene), loads_in({state}));
  CHECK(item_of(report, "lock pin in shear").load >= 200.0 * scene.dynamic_factor);
  CHECK(has(report, "side rail, split by the lock pin"));
}

TEST_CASE("hardware: a hook on a raised stair is bent by its force at whatever lean is worst", "[loads]") {
  Scene scene = screwed_scene();
  HoistState state = sample_state();
  state.hooks = {0.0, 1e5};  // far beyond any person's
  const LoadsReport report = look_at_loads(scene, build_model(scene), loads_in({state}));
  const double d = scene.stair.hooks.rod, wood = -scene.stair.above_pivot;
  const double lever = std::hypot(wood, scene.stair.hooks.inside + 0.5 * d);
  const double force = scene.dynamic_factor * 0.5e5, modulus = 3.141592653589793 / 32 * d * d * d;
  CHECK(item_of(report, "hook's shank where the wood begins").load >= force * lever / modulus);
}

TEST_CASE("hardware: a heavier person loads every piece of the stair more", "[loads]") {
  Scene heavy = screwed_scene();
  heavy.climber.mass *= 1.5;
  const LoadsReport light_report = report_of(screwed_scene(), false), heavy_report = report_of(heavy, false);
  for (const HardwareItem& item : light_report.hardware) {
    INFO(item.name);
    const HardwareItem& heavy_item = item_of(heavy_report, item.name);
    if (item.resistance && heavy_item.resistance) CHECK(*heavy_item.ratio() <= *item.ratio());
    if (!item.resistance && item.load > 0.0) CHECK(heavy_item.load > item.load);
  }
}

TEST_CASE("hardware: on fewer than two brackets the pipe is not looked at, and it is said why", "[loads]") {
  Scene scene = testing::sample_scene();
  scene.rail.brackets.stations.resize(1);
  const LoadsReport report = report_of(scene, false);
  CHECK_FALSE(report.rail_problem.empty());
  CHECK_FALSE(has(report, "pipe"));
}
