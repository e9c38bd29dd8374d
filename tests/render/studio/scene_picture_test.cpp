#include "render/studio/scene_picture.h"

#include <catch2/catch.hpp>

#include <algorithm>

#include "render/paint/svg.h"
#include "render/studio/swept_outline.h"
#include "tests/support/lettering_check.h"
#include "tests/support/shown_scene.h"
#include "tests/support/xml_check.h"

using namespace stowpath;
using namespace stowpath::testing;
using Catch::Contains;

namespace {

constexpr Vec2 kPane{240.0, 130.0};

struct Shown : ShownScene {
  using ShownScene::ShownScene;
  PictureWish wish(Place place) const {
    const Configuration pose = pose_at(model, place);
    return {subject(), pose, place, PoseWatch(model).at(pose, model.moves[place.move]).closest, std::nullopt};
  }
};

/// How far a point lies outside of what rings enclose, holes left out [m].
double outside_by(const std::vector<std::vector<Vec2>>& rings, Vec2 p) {
  double nearest = 1e9;
  int turns = 0;  // winding number
  for (const std::vector<Vec2>& ring : rings) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Vec2 a = ring[i], b = ring[(i + 1) % ring.size()];
      const double u = std::clamp(dot(p - a, b - a) / norm_squared(b - a), 0.0, 1.0);
      nearest = std::min(nearest, norm(p - lerp(a, b, u)));
      if ((a.y <= p.y) != (b.y <= p.y) && (cross(b - a, p - a) > 0.0) == (b.y > a.y)) turns += b.y > a.y ? 1 : -1;
    }
  }
  return turns > 0 ? 0.0 : nearest;
}

std::size_t layers(const DisplayList& list, const std::string& begin) {
  const std::vector<Group> all = all_of<Group>(list);
  return static_cast<std::size_t>(std::count_if(
      all.begin(), all.end(), [&](const Group& layer) { return layer.opens && layer.id.starts_with(begin); }));
}

bool has_layer(const DisplayList& list, const std::string& id) {
  const std::vector<Group> all = all_of<Group>(list);
  return std::any_of(all.begin(), all.end(), [&](const Group& layer) { return layer.opens && layer.id == id; });
}

/// Every text lies within the pane, and on no other.
void check_pane(const DisplayList& list) {
  const std::vector<Text> all = all_of<Text>(list);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const PaperBox box = text_box(all[i]);
    INFO(all[i].words << " in " << list.title);
    CHECK((box.least.x >= 0.0 && box.least.y >= 0.0 && box.greatest.x <= list.width && box.greatest.y <= list.height));
    for (std::size_t j = 0; j < i; ++j) {
      INFO(all[j].words);
      CHECK_FALSE(overlap(box, text_box(all[j])));
    }
  }
}

}  // namespace

TEST_CASE("scene picture: no lettering lies on other lettering or runs off, near or far, in any pane", "[studio]") {
  for (const char* name : {"demo", "crowded-workshop", "three-section", "strap-rail", "rolling-ladder"}) {
    const Shown shown(name);
    for (const Vec2 size : {Vec2{178.0, 111.0}, kPane, Vec2{120.0, 90.0}}) {
      const ViewFrame whole = whole_side(shown.subject(), size);
      for (const double factor : {0.4, 1.0, 3.0, 12.0}) {
        const std::size_t last = shown.model.moves.size() - 1;
        PictureWish wish = shown.wish({last > 2 ? last - 2 : last, 0.6});
        if (!shown.fit.findings.empty()) wish.chosen_finding = 0;
        check_pane(side_picture(wish, {size, zoomed(whole, whole(shown.model.linkage.pivot), factor)}));
      }
    }
  }
}

TEST_CASE("scene picture: dimensions say deck, rail, ceiling, lengths, lean and reach", "[studio]") {
  const Shown demo("demo");
  const DisplayList list = side_picture(demo.wish({3, 0.0}), {kPane, whole_side(demo.subject(), kPane)});
  for (const double length :
       {demo.scene.loft.deck, demo.model.linkage.pivot.y, demo.scene.room.ceiling, demo.scene.loft.edge,
        demo.model.linkage.pivot.x, demo.model.linkage.length[0], demo.model.linkage.length[1]}) {
    INFO(length);
    CHECK(has_text(list, dimension_text(Nominal{length}, DisplayUnits::metric)));
  }
  CHECK(has_text(list, format_degrees(Nominal{pose_at(demo.model, {3, 0.0}).lean})));
  const DisplayList feet =
      side_picture({{demo.scene, demo.model, demo.fit, DisplayUnits::imperial}, {}, {0, 0.0}, {}, {}},
                   {kPane, whole_side(demo.subject(), kPane)});
  CHECK(has_text(feet, format_feet_inches(Nominal{demo.scene.room.ceiling})));
}

TEST_CASE("scene picture: each finding that is seen has a note with a leader, the chosen one in full", "[studio]") {
  const Shown demo("demo");
  PictureWish wish = demo.wish({3, 1.0});
  wish.chosen_finding = 2;
  const auto shown = [&](Vec2 pane) { return side_picture(wish, {pane, whole_side(demo.subject(), pane)}); };
  const DisplayList large = shown(kPane), low = shown({178.0, 40.0});
  for (const Finding& finding : demo.fit.findings) {
    INFO(finding.id);
    CHECK(has_layer(large, "finding-" + finding.id));
    CHECK(has_layer(large, "note-" + finding.id));
  }
  CHECK_FALSE(has_text(large, "more, in the list of findings"));

  // What finds no room is counted, and never the chosen one.
  const std::size_t marks = layers(low, "finding-"), notes = layers(low, "note-");
  CHECK(marks == demo.fit.findings.size());
  REQUIRE(notes < marks);
  CHECK(has_text(low, "and " + std::to_string(marks - notes) + " more, in the list of findings"));
  CHECK(has_layer(low, "note-F3"));
  const std::string chosen = finding_sentence(demo.fit.findings[2], DisplayUnits::metric);
  CHECK(has_text(low, chosen.substr(chosen.rfind(' ') + 1)));  // to its last word
  const DisplayList narrow = side_picture(wish, {{120.0, 90.0}, whole_side(demo.subject(), {120.0, 90.0})});
  CHECK_FALSE(has_text(narrow, "hook curl meets"));  // no room for notes
  CHECK(has_text(narrow, "F3"));                     // beside its mark
}

TEST_CASE("scene picture: the swept outline holds the poses it was drawn from and those between", "[studio]") {
  const Shown demo("demo");
  for (std::size_t move = 0; move < demo.model.moves.size(); ++move) {
    const auto rings = swept_outline(demo.model, move);
    const bool still = is_state(demo.model.moves[move].kind) || stands_over_stations(demo.model.moves[move]);
    CHECK(rings.empty() == still);
    if (still) continue;
    for (int k = 0; k <= 200; ++k) {
      const SectionPoses poses = place_sections(demo.model.linkage, pose_at(demo.model, {move, k / 200.0}));
      for (const StairPart& part : demo.model.stair) {
        if (part.kind != PartKind::side_rail) continue;
        for (const Vec2 corner : part.outline.core)
          CHECK(outside_by(rings, poses.at(static_cast<std::size_t>(part.section)) * corner) < 0.002);
      }
    }
  }
}

TEST_CASE("scene picture: the whole room lies within the pane", "[studio]") {
  const Shown demo("demo");
  const ViewFrame frame = whole_side(demo.subject(), kPane);
  for (const Vec2 corner : {Vec2{0.0, 0.0}, Vec2{demo.scene.room.depth, demo.scene.room.ceiling}}) {
    const Vec2 at = frame(corner);
    CHECK((at.x > 0.0 && at.x < kPane.x && at.y > 0.0 && at.y < kPane.y));
  }
}

TEST_CASE("scene picture: zooming keeps what is under the pointer, and under() undoes the frame", "[studio]") {
  const Shown demo("demo");
  const ViewFrame frame = whole_side(demo.subject(), kPane);
  const Vec2 about{80.0, 40.0}, model = under(frame, about);
  const ViewFrame near = zoomed(frame, about, 3.0);
  CHECK(norm(near(model) - about) < 1e-9);
  CHECK(near.scale.ratio == Approx(frame.scale.ratio / 3.0));
  CHECK(norm(under(near, near({1.25, 2.5})) - Vec2{1.25, 2.5}) < 1e-12);
  CHECK(zoomed(frame, about, 1e9).scale.ratio == 1.0);
}

TEST_CASE("scene picture: it shows stair, ghosts, sweep and least distance, each in its layer", "[studio]") {
  const Shown demo("demo");
  const ViewFrame frame = whole_side(demo.subject(), kPane);
  PictureWish wish = demo.wish({3, 0.5});
  const std::string svg = paint_svg(side_picture(wish, {kPane, frame}));
  CHECK(xml_fault(svg) == "");
  for (const char* layer :
       {"\"stair\"", "\"ghosts\"", "\"sweep\"", "\"least-distance\"", "\"finding-F1\"", "\"lines\""})
    CHECK_THAT(svg, Contains(std::string("id=") + layer));
  wish.show_sweep = wish.show_findings = false;
  CHECK_THAT(paint_svg(side_picture(wish, {kPane, frame})), !Contains("\"sweep\"") && !Contains("finding-F1"));
}

TEST_CASE("scene picture: span view and story stick share a scale that fits", "[studio]") {
  const Shown demo("demo");
  const std::string svg =
      paint_svg(rail_picture(demo.wish({0, 1.0}), {{240.0, 85.0}, rail_frame(demo.subject(), {240.0, 85.0})}));
  CHECK(xml_fault(svg) == "");
  CHECK_THAT(svg, Contains("id=\"span-view\"") && Contains("id=\"story-stick\"") && Contains("4.340 m"));
  const ViewFrame frame = rail_frame(demo.subject(), {240.0, 85.0});
  CHECK(frame.x(demo.scene.room.length) < 240.0);
}
