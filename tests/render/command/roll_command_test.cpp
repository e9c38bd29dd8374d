#include "render/command/roll_command.h"

#include <catch2/catch.hpp>

#include "render/command/faults.h"

using namespace stowpath;

TEST_CASE("roll command: a push is a force and a height, with their units", "[command]") {
  const PushOptions push = roll_push_options("120N at 1.1m");
  CHECK(push.force == Approx(120.0));
  CHECK(push.height == Approx(1.1));
  CHECK(roll_push_options("-27 lbf at 3ft 6in").force == Approx(-27.0 * 4.4482216));
  CHECK(roll_push_options("-27 lbf at 3ft 6in").height == Approx(1.0668));
}

TEST_CASE("roll command: anything else is refused with what to write", "[command]") {
  for (const char* text : {"", "120N", "120 at 1.1m", "120N at", "120N at 5", "N at 1m", "0N at 1m", "--5N at 1m"}) {
    CAPTURE(text);
    CHECK_THROWS_AS(roll_push_options(text), UsageFault);
  }
}
