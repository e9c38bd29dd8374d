#include "render/sheet/stair_drawing.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "tests/support/gallery.h"

using namespace stowpath;

namespace {

Interval extent(const Path& path, double Vec2::*axis) {
  Interval out{path.points.front().*axis, path.points.front().*axis};
  for (const Vec2 corner : path.points) out = hull(out, {corner.*axis, corner.*axis});
  return out;
}

/// Closed outlines about a point that are no larger than the wheels.
std::vector<Path> round_the_axle(const DisplayList& list, Vec2 axle, double reach) {
  std::vector<Path> out;
  for (const Item& item : list.items) {
    const Path* path = std::get_if<Path>(&item);
    if (path == nullptr || path->points.empty()) continue;
    const Interval x = extent(*path, &Vec2::x), y = extent(*path, &Vec2::y);
    if (norm(Vec2{x.middle(), y.middle()} - axle) < 1e-6 && std::max(x.length(), y.length()) < 2.01 * reach)
      out.push_back(*path);
  }
  return out;
}

}  // namespace

TEST_CASE("side view: a rigid caster is one upright bar, as wide as its tread and as high as its wheel", "[sheet]") {
  const Model model = testing::model_of(testing::rig_text("demo-cured"));
  const ViewFrame frame{{}, {100.0, ""}};
  const Configuration working{0.0, model.working_lean, {}};
  const Vec2 axle =
      place_sections(model.linkage, working)[static_cast<std::size_t>(model.wheels.section)] * model.wheels.axle;
  for (const bool ghost : {false, true}) {
    DisplayList list;
    if (ghost)
      draw_stair_ghost(list, frame, model, working, Pen{});
    else
      draw_stair(list, frame, model, working);
    const std::vector<Path> wheels = round_the_axle(list, frame(axle), frame.scale.paper(model.wheels.radius));
    REQUIRE(wheels.size() == 1);
    CHECK(extent(wheels[0], &Vec2::x).length() == Approx(frame.scale.paper(2.0 * model.wheels.half_width)));
    CHECK(extent(wheels[0], &Vec2::y).length() == Approx(frame.scale.paper(2.0 * model.wheels.radius)));
  }
}

TEST_CASE("from above: a wheel is one piece along the rail, as long as its diameter", "[sheet]") {
  const Model model = testing::model_of(testing::rig_text("demo-cured"));
  int shown = 0;
  for (const StairPart& part : model.stair) {
    if (part.kind != PartKind::caster || !seen_from_side(model, part)) continue;
    ++shown;
    for (const Interval& stretch : stations_from_above(model, part))
      CHECK(stretch.length() == Approx(2.0 * model.wheels.radius));
  }
  CHECK(shown == 1);
}
