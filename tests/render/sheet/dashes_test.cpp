#include "render/sheet/dashes.h"

#include <catch2/catch.hpp>

using namespace stowpath;

namespace {

double length_of(const std::vector<Vec2>& stroke) {
  double sum = 0.0;
  for (std::size_t i = 0; i + 1 < stroke.size(); ++i) sum += norm(stroke[i + 1] - stroke[i]);
  return sum;
}

}  // namespace

TEST_CASE("dashes: a solid line stays whole, closed where it is asked for", "[sheet]") {
  const std::vector<Vec2> corner{{0, 0}, {4, 0}, {4, 3}};
  CHECK(dashes(corner, false, Dash::solid)[0].size() == 3);
  CHECK(length_of(dashes(corner, true, Dash::solid)[0]) == Approx(12.0));
}

TEST_CASE("dashes: strokes and gaps have the printed lengths, round corners too", "[sheet]") {
  const std::vector<Vec2> line{{0, 0}, {5, 0}, {5, 29}};  // 34 mm: ten times stroke and gap
  const auto strokes = dashes(line, false, Dash::hidden);
  REQUIRE(strokes.size() >= 10);
  for (std::size_t k = 0; k < 10; ++k) CHECK(length_of(strokes[k]) == Approx(2.2));
  CHECK(strokes[1].front().x == Approx(3.4));
  CHECK(strokes[1].size() == 3);  // from 3.4 to 5.6 along: over the corner
  const auto chain = dashes(std::vector<Vec2>{{0, 0}, {20, 0}}, false, Dash::chain);
  REQUIRE(chain.size() >= 4);
  CHECK(length_of(chain[0]) == Approx(6.0));
  CHECK(length_of(chain[1]) == Approx(1.2));
  CHECK(chain[2].front().x == Approx(9.6));
}
