#include "render/sheet/labels.h"

#include <catch2/catch.hpp>

using namespace stowpath;

namespace {

Text named(const std::string& words) {
  Text text;
  text.words = words;
  return text;
}

std::vector<PaperBox> boxes(const DisplayList& list) {
  std::vector<PaperBox> out;
  for (const Item& item : list.items) {
    if (const Text* text = std::get_if<Text>(&item)) out.push_back(text_box(*text));
  }
  return out;
}

}  // namespace

TEST_CASE("labels: many names at one spot stand apart, and what has no room is left out", "[sheet]") {
  DisplayList list;
  Labels labels;
  const PaperBox bounds{{0, 0}, {60, 30}};
  int placed = 0;
  for (int i = 0; i < 60; ++i) placed += labels.place(list, named("strip light"), {30, 15}, bounds) ? 1 : 0;
  CHECK(placed > 5);
  CHECK(placed < 60);
  const std::vector<PaperBox> all = boxes(list);
  CHECK(static_cast<int>(all.size()) == placed);
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) CHECK_FALSE(overlap(all[i], all[j]));
  }
}

TEST_CASE("labels: a name keeps off a line where it can, and stands on it where it must", "[sheet]") {
  const std::vector<Vec2> line{{0, 15}, {60, 15}};
  for (const double height : {30.0, 6.0}) {
    DisplayList list;
    Labels labels;
    labels.avoid(line, false);
    REQUIRE(labels.place(list, named("loft"), {30, 15}, {{0, 15 - height / 2}, {60, 15 + height / 2}}));
    const PaperBox box = boxes(list).front();
    CHECK((box.least.y < 15.0 && box.greatest.y > 15.0) == (height < 10.0));
  }
}

TEST_CASE("labels: a dimension's figures lie on its line, or beyond its end where they do not fit", "[sheet]") {
  DisplayList list;
  Labels labels;
  dimension(list, labels, {10, 50}, {90, 50}, 8.0, "2950");
  dimension(list, labels, {10, 80}, {14, 80}, 8.0, "2950");
  const std::vector<PaperBox> all = boxes(list);
  CHECK(0.5 * (all[0].least.x + all[0].greatest.x) == Approx(50.0));
  CHECK(all[1].least.x > 14.0);
}
