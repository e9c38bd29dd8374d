#include "render/report/wrap.h"

#include <catch2/catch.hpp>

using namespace stowpath;

TEST_CASE("wrap: a figure keeps its fraction and its unit", "[report]") {
  CHECK(wrapped("lift it by 3 1/2\" at most", 16, "", "") == "lift it by\n3 1/2\" at most\n");
  CHECK(wrapped("at least 12 mm wanted", 12, "", "") == "at least\n12 mm wanted\n");
  CHECK(wrapped("one two", 5, "F1  ", "    ") == "F1  one\n    two\n");
}

TEST_CASE("wrap: characters count, not bytes", "[report]") {
  CHECK(columns("30.1°") == 5);
  CHECK(wrapped("30.1° 40.2°", 11, "", "") == "30.1° 40.2°\n");
}

TEST_CASE("wrap: nothing is lost, whatever the width", "[report]") {
  const std::string text = "station 4'-2 3/16\" to 5'-0\"; lean 30.1° and 12 mm of play";
  for (std::size_t width = 1; width < 60; ++width) {
    std::string joined = wrapped(text, width, "", "");
    for (char& c : joined) c = c == '\n' ? ' ' : c;
    CHECK(joined == text + " ");
  }
}
