#include "render/sheet/hook_sheet.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "render/paint/svg.h"
#include "sim/remedy/assess.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"
#include "tests/support/lettering_check.h"
#include "tests/support/xml_check.h"

using namespace stowpath;
using stowpath::testing::all_of;
using stowpath::testing::check_lettering;
using stowpath::testing::has_text;

namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

struct Drawn {
  Scene scene;
  Assessment found;
  std::optional<HookGap> closest;
  std::optional<Trim> trim;
  DisplayList list;
};

Drawn draw(const std::string& text, DisplayUnits units = DisplayUnits::metric) {
  Drawn out{parse_scene(text, "scene.yaml"), {}, {}, {}, {}};
  out.found = assess(out.scene);
  out.closest = least_hook_gap(out.found.model);
  if (meets_bracket(out.found.fit)) out.trim = trim_that_clears(out.scene, kLeastArc);
  out.list = make_hook_sheet({out.scene, out.found.model, out.found.fit, units, out.closest, out.trim});
  return out;
}

/// Circles of a radius: the pipe's, one a view [mm].
std::vector<Arc> circles(const DisplayList& list, double radius) {
  std::vector<Arc> out;
  for (const Arc& arc : all_of<Arc>(list)) {
    if (arc.whole() && std::abs(arc.radius - radius) < 1e-6) out.push_back(arc);
  }
  return out;
}

}  // namespace

TEST_CASE("hook sheet: what is drawn measures on paper what it measures in the model", "[sheet]") {
  const Drawn d = draw(testing::gallery_text("demo"));
  const double pipe = 1e3 * d.scene.rail.pipe.diameter;
  CHECK(circles(d.list, 0.5 * pipe).size() == 3);
  CHECK(circles(d.list, 0.5 * pipe - 1e3 * d.scene.rail.pipe.wall).size() == 3);
  // The saddle's edges: 0.7 radii each way from the pipe's centre, and its thickness.
  bool saddle = false;
  for (const Path& path : all_of<Path>(d.list)) {
    if (path.points.size() != 4 || !path.closed) continue;
    double width = 0.0, height = 0.0;
    for (const Vec2 a : path.points) {
      for (const Vec2 b : path.points) width = std::max(width, a.x - b.x), height = std::max(height, a.y - b.y);
    }
    saddle = saddle || (std::abs(width - 0.7 * pipe) < 1e-6 &&
                        std::abs(height - 1e3 * d.scene.rail.brackets.saddle_thickness) < 1e-6);
  }
  CHECK(saddle);
}

TEST_CASE("hook sheet: the arc is dimensioned over what the hook covers at each lean", "[sheet]") {
  const Drawn d = draw(testing::gallery_text("demo"));
  const Hooks& hooks = d.scene.stair.hooks;
  int dimensions = 0;
  for (const Arc& arc : all_of<Arc>(d.list)) {
    if (arc.whole()) continue;
    ++dimensions;
    CHECK(arc.sweep == Approx(hooks.wrap).margin(1e-12));
    CHECK(arc.radius > 1e3 * (hooks.inside + hooks.rod));
  }
  CHECK(dimensions == 3);
  CHECK(has_text(d.list, "195° of arc"));
}

TEST_CASE("hook sheet: the trim line runs through the hook circle's centre at lean and arc left", "[sheet]") {
  const Drawn d = draw(testing::gallery_text("demo"));
  REQUIRE(d.trim);
  const Hooks& hooks = d.scene.stair.hooks;
  const std::vector<Arc> pipes = circles(d.list, 0.5e3 * d.scene.rail.pipe.diameter);
  const double slack = 1e3 * d.found.model.hook_slack;
  std::vector<double> leans;
  for (const Path& path : all_of<Path>(d.list)) {
    if (!path.pen || path.pen->ink != Ink::red || path.pen->dash != Dash::chain) continue;
    REQUIRE(path.points.size() == 2);
    const Arc& pipe = *std::min_element(pipes.begin(), pipes.end(), [&](const Arc& a, const Arc& b) {
      return norm(a.centre - path.points[0]) < norm(b.centre - path.points[0]);
    });
    const Vec2 pivot = pipe.centre + Vec2{0.0, slack};  // paper runs down
    const Vec2 from = path.points[0] - pivot, to = path.points[1] - pivot;
    CHECK(std::abs(cross(from, to)) < 1e-6 * norm(from) * norm(to));
    CHECK(norm(from) < 1e3 * hooks.inside);
    CHECK(norm(to) > 1e3 * (hooks.inside + hooks.rod));
    const double lean = std::remainder(std::atan2(-to.y, to.x) - d.trim->wrap, 2.0 * std::numbers::pi);
    leans.push_back(lean);
  }
  REQUIRE(leans.size() == 3);
  CHECK(leans[0] == Approx(d.found.model.working_lean).margin(1e-9));
  CHECK(leans[1] == Approx(d.closest->at.lean).margin(1e-9));
  CHECK(leans[2] == Approx(84.0 * kDegree).margin(1e-9));
}

TEST_CASE("hook sheet: the trim is the longest whole degree that the full proof lets by", "[remedy]") {
  for (const char* name : {"demo", "long-curl"}) {
    const Drawn d = draw(testing::gallery_text(name));
    REQUIRE(d.trim);
    Scene scene = d.scene;
    scene.stair.hooks.tip = 0.0;
    scene.stair.hooks.wrap = d.trim->wrap;
    CHECK_FALSE(meets_bracket(assess(scene).fit));
    scene.stair.hooks.wrap = d.trim->wrap + kDegree;
    CHECK(meets_bracket(assess(scene).fit));
    const double outer = d.scene.stair.hooks.inside + d.scene.stair.hooks.rod;
    CHECK(d.trim->cut == Approx((d.scene.stair.hooks.wrap - d.trim->wrap) * outer + d.scene.stair.hooks.tip));
  }
}

TEST_CASE("hook sheet: no trim is offered where none is needed, or none down to the least arc helps", "[remedy]") {
  const Drawn clear = draw(testing::gallery_text("demo-cured"));
  CHECK_FALSE(clear.trim);
  CHECK(has_text(clear.list, "No trim needed"));
  Scene scene = parse_scene(testing::gallery_text("demo"), "scene.yaml");
  CHECK_FALSE(trim_that_clears(scene, 180.0 * kDegree));
  CHECK(trim_that_clears(scene, 135.0 * kDegree));
}

TEST_CASE("hook gap: the least over all moves is no more than at any pose of a roll, and is met at its own",
          "[remedy]") {
  for (const char* name : {"demo-cured", "costume-loft", "three-section", "rolling-ladder"}) {
    const Model model = build_model(parse_scene(testing::gallery_text(name), "scene.yaml"));
    const std::optional<HookGap> least = least_hook_gap(model);
    REQUIRE(least);
    INFO(name);
    for (const Move& move : model.moves) {
      for (const Segment& segment : move.segments) {
        if (!segment.over_stations()) continue;  // elsewhere the gap along the rail counts too
        for (int k = 0; k <= 200; ++k) {
          const double side = hook_gap_at(model, at(model.linkage, segment, k / 200.0))->clearance;
          CHECK(least->clearance <= side + 1e-5);
        }
      }
    }
    CHECK(hook_gap_at(model, least->at)->clearance <= least->clearance + 1e-9);
  }
}

TEST_CASE("hook sheet: no lettering lies on other lettering or outside the frame", "[sheet]") {
  for (const char* name : {"demo", "demo-cured", "costume-loft", "three-section", "long-curl", "rolling-ladder"}) {
    for (const DisplayUnits units : {DisplayUnits::metric, DisplayUnits::imperial}) {
      INFO(name);
      check_lettering(draw(testing::gallery_text(name), units).list);
    }
  }
}

TEST_CASE("hook sheet: a long name is cut, not written over the frame", "[sheet]") {
  const std::string name = "name: Ladder along the map drawers";
  std::string longer = name;
  for (int i = 0; i < 6; ++i) longer += " and the bench beside it";
  check_lettering(draw(testing::changed(testing::gallery_text("rolling-ladder"), name, longer)).list);
}

TEST_CASE("hook sheet: the smallest common sheet that holds it at full size", "[sheet]") {
  const DisplayList small = draw(testing::gallery_text("rolling-ladder")).list;
  CHECK(small.width == 297.0);
  CHECK(has_text(small, "A4"));
  CHECK(draw(testing::gallery_text("demo")).list.width == 420.0);
  CHECK(draw(testing::gallery_text("rolling-ladder"), DisplayUnits::imperial).list.width == Approx(279.4));
  const std::string large =
      testing::changed(testing::gallery_text("demo"), "rod: 12, inside: 24", "rod: 40, inside: 60");
  const DisplayList list = draw(large).list;
  CHECK(list.width >= 594.0);
  check_lettering(list);
}

TEST_CASE("hook sheet: a bar of a known length shows whether the print is at full size", "[sheet]") {
  for (const auto& [units, length] : {std::pair{DisplayUnits::metric, 100.0}, {DisplayUnits::imperial, 101.6}}) {
    const DisplayList list = draw(testing::gallery_text("rolling-ladder"), units).list;
    double lo = 1e9, hi = -1e9;
    bool within = false;
    for (const Item& item : list.items) {
      if (const Group* group = std::get_if<Group>(&item)) within = group->opens && group->id == "check-bar";
      const Path* path = std::get_if<Path>(&item);
      if (!within || path == nullptr) continue;
      for (const Vec2 v : path->points) lo = std::min(lo, v.x), hi = std::max(hi, v.x);
    }
    CHECK(hi - lo == Approx(length).margin(1e-9));
  }
}

TEST_CASE("hook sheet: its SVG is well formed, in millimetres, and the same each time", "[sheet]") {
  const std::string text = testing::gallery_text("demo");
  const std::string svg = paint_svg(draw(text).list);
  CHECK(testing::xml_fault(svg) == "");
  CHECK(svg == paint_svg(draw(text).list));
  CHECK(svg.find("width=\"420mm\"") != std::string::npos);
}

TEST_CASE("hook sheet: where the stair parks between brackets, that is said and nothing is called met", "[sheet]") {
  const Drawn d = draw(testing::gallery_text("costume-loft"), DisplayUnits::imperial);
  CHECK(has_text(d.list, "nearest bracket"));
  CHECK_FALSE(has_text(d.list, "deep"));
  CHECK(has_text(draw(testing::gallery_text("demo")).list, "meets, 7.9 mm deep"));
}
