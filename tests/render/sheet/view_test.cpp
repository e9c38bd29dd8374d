#include "render/sheet/view.h"

#include <catch2/catch.hpp>
#include <cmath>

using namespace stowpath;

namespace {

double area(const std::vector<Vec2>& corners) {
  double sum = 0.0;
  for (std::size_t i = 0; i < corners.size(); ++i) sum += cross(corners[i], corners[(i + 1) % corners.size()]);
  return std::abs(0.5 * sum);
}

}  // namespace

TEST_CASE("view: the scale is the largest common one that fits both ways", "[sheet]") {
  CHECK(common_scale(DisplayUnits::metric, {200.0, 120.0}, {4.0, 2.9}).label == "1:25");
  CHECK(common_scale(DisplayUnits::metric, {200.0, 115.0}, {4.0, 2.9}).label == "1:30");
  CHECK(common_scale(DisplayUnits::imperial, {200.0, 130.0}, {4.0, 2.9}).label == "1/2\" = 1'-0\"");
  CHECK(common_scale(DisplayUnits::metric, {1.0, 1.0}, {50.0, 50.0}).label == "1:500");
}

TEST_CASE("view: a scale is what its label says", "[sheet]") {
  for (const DrawingScale& scale : common_scales(DisplayUnits::metric))
    CHECK(scale.label == "1:" + std::to_string(static_cast<int>(scale.ratio)));
  for (const DrawingScale& scale : common_scales(DisplayUnits::imperial)) {
    const std::string inches = scale.label.substr(0, scale.label.find(" ="));
    CHECK(scale.paper(0.3048) == Approx(1e3 * parse_length(inches, LengthUnit::none).value.value()));
  }
}

TEST_CASE("view: the side view runs up, the span view down", "[sheet]") {
  ViewFrame frame;
  frame.zero = {100.0, 200.0};
  frame.scale = {50.0, "1:50"};
  CHECK(frame({1.0, 2.0}) == Vec2{120.0, 160.0});
  frame.flipped = true;
  CHECK(frame({1.0, 2.0}) == Vec2{120.0, 240.0});
}

TEST_CASE("view: the common part of two polygons does not mind which way round they run", "[sheet]") {
  const std::vector<Vec2> a{{0, 0}, {4, 0}, {4, 4}, {0, 4}}, b{{2, 2}, {6, 2}, {6, 6}, {2, 6}};
  const std::vector<Vec2> a_back(a.rbegin(), a.rend()), b_back(b.rbegin(), b.rend());
  CHECK(area(common_part(a, b)) == Approx(4.0));
  CHECK(area(common_part(a_back, b)) == Approx(4.0));
  CHECK(area(common_part(a, b_back)) == Approx(4.0));
  CHECK(common_part(a, std::vector<Vec2>{{5, 5}, {6, 5}, {6, 6}}).empty());
}

TEST_CASE("view: hatching stays inside and leaves no gap", "[sheet]") {
  const std::vector<Vec2> box{{10, 10}, {30, 10}, {30, 20}, {10, 20}};
  DisplayList list;
  hatch(list, box, 0.785, 2.0, {});
  CHECK(list.items.size() >= 8);  // the box is 21 mm across the strokes' direction
  for (const Item& item : list.items) {
    for (const Vec2& p : std::get<Path>(item).points) {
      CHECK(p.x >= 10.0 - 1e-9);  // rounding of the cuts
      CHECK(p.x <= 30.0 + 1e-9);
      CHECK(p.y >= 10.0 - 1e-9);
      CHECK(p.y <= 20.0 + 1e-9);
    }
  }
}
