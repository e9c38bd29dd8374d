#include "render/studio/scene_picture.h"

#include <catch2/catch.hpp>

#include "render/paint/svg.h"
#include "tests/support/gallery.h"
#include "tests/support/xml_check.h"
#include "sim/scene/reader.h"

using namespace stowpath;
using namespace stowpath::testing;
using Catch::Contains;

namespace {

constexpr Vec2 kPane{240.0, 130.0};

struct Shown {
  Scene scene;
  Model model;
  DryFit fit;
  explicit Shown(const std::string& name)
      : scene(parse_scene(gallery_text(name), name)), model(build_model(scene)), fit(dry_fit(model)) {}

  Subject subject() const { return {scene, model, fit}; }
  PictureWish wish(Place place) const {
    const Configuration pose = pose_at(model, place);
    return {subject(), pose, place, PoseWatch(model).at(pose, model.moves[place.move]).closest, std::nullopt};
  }
};

}  // namespace

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
  for (const char* layer : {"\"stair\"", "\"ghosts\"", "\"sweep\"", "\"least-distance\"", "\"finding-F1\"", "\"lines\""})
    CHECK_THAT(svg, Contains(std::string("id=") + layer));
  wish.show_sweep = wish.show_findings = false;
  CHECK_THAT(paint_svg(side_picture(wish, {kPane, frame})), !Contains("\"sweep\"") && !Contains("finding-F1"));
}

TEST_CASE("scene picture: span view and story stick share a scale that fits", "[studio]") {
  const Shown demo("demo");
  const std::string svg = paint_svg(rail_picture(demo.wish({0, 1.0}), {{240.0, 85.0}, rail_frame(demo.subject(), {240.0, 85.0})}));
  CHECK(xml_fault(svg) == "");
  CHECK_THAT(svg, Contains("id=\"span-view\"") && Contains("id=\"story-stick\"") && Contains("4.340 m"));
  const ViewFrame frame = rail_frame(demo.subject(), {240.0, 85.0});
  CHECK(frame.x(demo.scene.room.length) < 240.0);
}
