#include "render/studio/ui_scale.h"

#include <catch2/catch.hpp>

using namespace stowpath;

TEST_CASE("ui scale: dots an inch are read from a server's resources", "[studio]") {
  CHECK(dots_per_inch("*customization:\t-color\nXft.dpi:\t144\nXft.antialias:\t1\n") == 144.0);
  CHECK(dots_per_inch("Xft.dpi: 96") == 96.0);
  CHECK_FALSE(dots_per_inch("").has_value());
  CHECK_FALSE(dots_per_inch("Old.Xft.dpi:\t144\n").has_value());  // another key
  CHECK_FALSE(dots_per_inch("Xft.dpi:\tmany\n").has_value());
  CHECK_FALSE(dots_per_inch("Xft.dpi:\t-5\n").has_value());
  CHECK_FALSE(dots_per_inch("Xft.dpi:").has_value());
}

TEST_CASE("ui scale: what the desktop asks for goes before the dots, these before the screen's height", "[studio]") {
  CHECK(scale_for({"", {}, 800}) == 1.0);
  CHECK(scale_for({"", {}, 1080}) == 1.0);
  CHECK(scale_for({"", {}, 2160}) == 1.75);
  CHECK(scale_for({"", 192.0, 1080}) == 2.0);
  CHECK(scale_for({"", 100.0, 2160}) == 1.0);
  CHECK(scale_for({"2", 96.0, 1080}) == 2.0);
  CHECK(scale_for({"nonsense", {}, 1080}) == 1.0);
  CHECK(scale_for({"", {}, 0}) == 1.0);
  CHECK(scale_for({"9", {}, 0}) == kMostScale);
}

TEST_CASE("ui scale: steps stay within the limits and come back", "[studio]") {
  CHECK(scale_stepped(1.0, 1) == 1.125);
  CHECK(scale_stepped(scale_stepped(1.5, 3), -3) == 1.5);
  CHECK(scale_stepped(kMostScale, 1) == kMostScale);
  CHECK(scale_stepped(kLeastScale, -1) == kLeastScale);
}
