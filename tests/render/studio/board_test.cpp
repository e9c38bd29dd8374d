#include "render/studio/board.h"

#include <catch2/catch.hpp>
#include <set>

#include "render/studio/detail_picture.h"
#include "tests/support/lettering_check.h"
#include "tests/support/shown_scene.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

constexpr Vec2 kSize{246.0, 212.0};

struct Shown : ShownScene {
  Board board;
  explicit Shown(const std::string& name) : ShownScene(name) { board.lay_out(subject(), kSize); }

  PictureWish wish(const Configuration& pose) const { return {subject(), pose, {}, {}, {}}; }
};

}  // namespace

TEST_CASE("board: its drawings cover it, each point on one of them", "[studio]") {
  Shown demo("demo");
  for (int k = 0; k < kBoardViews; ++k) {
    demo.board.show(static_cast<BoardView>(k), demo.subject());
    INFO(view_name(demo.board.view()));
    double area = 0.0;
    for (const Pane& pane : demo.board.panes()) area += pane.view.size.x * pane.view.size.y;
    CHECK(area == Approx(kSize.x * kSize.y));
    for (const Vec2 at : {Vec2{0.0, 0.0}, 0.5 * kSize, kSize - Vec2{0.1, 0.1}})
      CHECK(demo.board.pane_at(at) != nullptr);
    CHECK(demo.board.pane_at(kSize + Vec2{1.0, 0.0}) == nullptr);
  }
}

TEST_CASE("board: zoom keeps what lies under the pointer, shift carries it along, fit undoes both", "[studio]") {
  Shown demo("demo");
  const Vec2 about{100.0, 50.0}, further = about + Vec2{10.0, 5.0};
  const Vec2 before = demo.board.pane_at(about)->model(about);
  demo.board.zoom(about, 3.0);
  CHECK(norm(demo.board.pane_at(about)->model(about) - before) < 1e-9);
  demo.board.shift(PaneKind::side, {10.0, 5.0});
  CHECK(norm(demo.board.pane_at(further)->model(further) - before) < 1e-9);
  demo.board.lay_out(demo.subject(), kSize - Vec2{30.0, 30.0});  // a smaller window: looked at as near as before
  CHECK(norm(demo.board.pane_at(further)->model(further) - before) < 1e-9);
  demo.board.lay_out(demo.subject(), kSize);
  demo.board.fit(demo.subject());
  CHECK(norm(demo.board.pane_at(about)->model(about) - before) < 1e-9);
}

TEST_CASE("board: the detail is at full size, zoomed or not", "[studio]") {
  Shown demo("demo");
  demo.board.show(BoardView::detail, demo.subject());
  demo.board.zoom(0.5 * kSize, 3.0);
  CHECK(demo.board.panes().front().view.frame.scale.ratio == 1.0);
  const DisplayList list = pane_picture(demo.wish(working_configuration(demo.model)), demo.board.panes().front());
  const auto rings = all_of<Arc>(list);
  const double radius = 500.0 * demo.scene.rail.pipe.diameter;
  CHECK(std::any_of(rings.begin(), rings.end(), [&](const Arc& arc) { return std::abs(arc.radius - radius) < 1e-9; }));
}

TEST_CASE("board: the detail follows the pose, and says the gap that the geometry has", "[studio]") {
  Shown demo("demo");
  demo.board.show(BoardView::detail, demo.subject());
  Configuration pose = *parked_configuration(demo.model);
  const auto detail = [&](const Configuration& at) { return pane_picture(demo.wish(at), demo.board.panes().front()); };
  const HookGap parked = *hook_gap_at(demo.model, pose);
  REQUIRE(parked.clearance < 0.0);
  REQUIRE(beside_bracket(demo.model, pose.station) < demo.model.margin.hook);
  CHECK(has_text(detail(pose),
                 "meets, " + format_small_length(AtMost{-parked.clearance}, DisplayUnits::metric) + " deep"));
  pose.lean = 0.3;
  const HookGap steep = *hook_gap_at(demo.model, pose);
  CHECK(has_text(detail(pose), "gap " + format_small_length(AtLeast{steep.clearance}, DisplayUnits::metric)));
  pose.station += 0.3;
  CHECK(has_text(detail(pose), "along the rail"));
}

TEST_CASE("board: lettering of the detail lies on no other, in wide panes and in small ones", "[studio]") {
  for (const char* name : {"demo", "crowded-workshop", "strap-rail", "post-rail", "long-curl"}) {
    Shown shown(name);
    for (const Vec2 size : {kSize, Vec2{178.0, 185.0}}) {
      const PaneView view{size, detail_frame(shown.subject(), size)};
      const std::vector<Text> all = all_of<Text>(detail_picture(shown.wish(working_configuration(shown.model)), view));
      CHECK(all.size() > 2);
      for (std::size_t i = 0; i < all.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
          INFO(all[i].words << " and " << all[j].words);
          CHECK_FALSE(overlap(text_box(all[i]), text_box(all[j])));
        }
      }
    }
  }
}

TEST_CASE("board: the slip beside the pointer stays on the pane", "[studio]") {
  for (const Vec2 at : {Vec2{1.0, 1.0}, Vec2{99.0, 1.0}, Vec2{1.0, 59.0}, Vec2{99.0, 59.0}}) {
    const DisplayList tag = pointer_tag("bracket saddle of the rail", at, {100.0, 60.0});
    for (const Path& box : all_of<Path>(tag)) {
      for (const Vec2 v : box.points) CHECK((v.x >= 0.0 && v.y >= 0.0 && v.x <= 100.0 && v.y <= 60.0));
    }
    CHECK(has_text(tag, "bracket saddle"));
  }
}

TEST_CASE("board: written out, all its drawings lie on one sheet where they hang, no layer named twice", "[studio]") {
  Shown demo("demo");
  for (int k = 0; k < kBoardViews; ++k) {
    demo.board.show(static_cast<BoardView>(k), demo.subject());
    INFO(view_name(demo.board.view()));
    const DisplayList sheet = board_picture(demo.wish(working_configuration(demo.model)), demo.board);
    CHECK(sheet.width == Approx(kSize.x));
    CHECK(sheet.height == Approx(kSize.y));
    std::set<std::string> names;
    for (const Group& layer : all_of<Group>(sheet)) {
      INFO(layer.id);
      CHECK((layer.id.empty() || names.insert(layer.id).second));
    }
    const auto laid = all_of<Inset>(sheet);
    CHECK(laid.size() == (demo.board.panes().size() == 1 ? 0 : 2 * demo.board.panes().size()));
    for (std::size_t i = 0; i < laid.size(); ++i) {
      const Pane& pane = demo.board.panes()[i / 2];
      CHECK(norm(laid[i].corner - pane.corner) == 0.0);
      CHECK(norm(laid[i].size - pane.view.size) == 0.0);
      CHECK(laid[i].opens == (i % 2 == 0));
    }
  }
}
