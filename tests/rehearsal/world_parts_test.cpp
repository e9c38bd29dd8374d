#include "sim/rehearsal/world_parts.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "tests/support/gallery.h"

using namespace stowpath;

namespace {

const WorldPart& named(const std::vector<WorldPart>& parts, const std::string& name) {
  return *std::find_if(parts.begin(), parts.end(), [&](const WorldPart& part) { return part.name == name; });
}

const WorldPart& rolling(const std::vector<WorldPart>& parts) {
  return *std::find_if(parts.begin(), parts.end(), [](const WorldPart& part) { return part.rolls; });
}

}  // namespace

TEST_CASE("world: casters stand on the floor as discs about their axle, at one height however the section leans",
          "[rehearsal]") {
  const Model model = testing::model_of(testing::rig_text("demo-cured"));
  const std::vector<WorldPart> parts = world_parts(model, *model.home);
  const WorldPart &wheel = rolling(parts), &floor = named(parts, "floor");
  CHECK(std::count_if(parts.begin(), parts.end(), [](const WorldPart& part) { return part.rolls; }) == 1);
  CHECK(wheel.outline.radius() == model.wheels.radius);
  CHECK(part_distance(wheel, floor, place_sections(model.linkage, {0.0, model.working_lean, {}})) ==
        Approx(0.0).margin(1e-12));
}

TEST_CASE("world: the disc meets the floor alone, and the wheel on edge everything else", "[rehearsal]") {
  const Model model = testing::model_of(testing::rig_text("demo-cured"));
  const std::vector<WorldPart> parts = world_parts(model, *model.home);
  for (const WorldPart& part : parts) {
    if (part.kind != PartKind::caster) continue;
    for (const WorldPart& thing : parts) {
      if (thing.section >= 0) continue;
      INFO(thing.name << (part.rolls ? ", disc" : ", wheel on edge"));
      const bool meets = can_touch(part, thing, true, false);
      if (part.rolls != (thing.kind == PartKind::floor)) CHECK_FALSE(meets);
      if (part.rolls && thing.kind == PartKind::floor) CHECK(meets);
    }
    for (const WorldPart& other : parts)
      if (part.rolls && other.section >= 0) CHECK_FALSE(can_touch(part, other, true, false));
  }
}

TEST_CASE("world: floor, walls and ceiling are cut off a metre behind their faces", "[rehearsal]") {
  const Model model = testing::model_of(testing::rig_text("demo-cured"));
  const std::vector<WorldPart> parts = world_parts(model, *model.home);
  const Interval out = model.inside.out, up = model.inside.up;
  CHECK(named(parts, "floor").shape.core == make_box({out.lo - 2.0, up.lo - 1.0}, {out.hi + 2.0, up.lo}).core);
  CHECK(named(parts, "ceiling").shape.core == make_box({out.lo - 1.0, up.hi}, {out.hi + 1.0, up.hi + 1.0}).core);
  CHECK(named(parts, "back wall").shape.core == make_box({out.lo - 1.0, up.lo - 1.0}, {out.lo, up.hi + 1.0}).core);
  CHECK(named(parts, "front wall").shape.core == make_box({out.hi, up.lo - 1.0}, {out.hi + 1.0, up.hi + 1.0}).core);
}
