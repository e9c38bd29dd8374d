#include "render/studio/fitting_words.h"

#include <catch2/catch.hpp>

#include "render/sheet/lettering.h"

using namespace stowpath;

TEST_CASE("fitting words: the fullest way to say it that has room", "[studio]") {
  const std::vector<std::string> ways{"the pull at the hand, in newtons", "the pull, N", "pull"};
  for (const std::string& way : ways) {
    const double width = text_width(way, 2.5);
    CHECK(fitting_words(ways, 2.5, width) == way);
    CHECK((fitting_words(ways, 2.5, width - 0.01) != way || way == ways.back()));
  }
}

TEST_CASE("fitting words: a text that is cut says so, and stays within its width", "[studio]") {
  const std::string text = "a hand takes hold 1.607 m above the floor, to roll the stair";
  const double whole = text_width(text, 2.5);
  CHECK(one_line_of(text, 2.5, whole) == text);
  for (const double width : {whole - 0.01, 60.0, 40.0}) {
    const std::string cut = one_line_of(text, 2.5, width);
    CHECK(text_width(cut, 2.5) <= width);
    CHECK(cut.ends_with(" ..."));
    CHECK(text.starts_with(cut.substr(0, cut.size() - 4)));
  }
}
