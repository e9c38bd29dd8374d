#include "sim/rehearsal/run_difference.h"

#include <catch2/catch.hpp>

namespace stowpath {
namespace {

using Words = std::vector<std::string>;

TouchRun touch(const std::string& part, const std::string& other) {
  TouchRun run;
  run.part = part;
  run.other = other;
  return run;
}

RehearsalReport lost_at(double speed) {
  RehearsalReport report;
  report.aftermath = Aftermath{};
  report.aftermath->top_speed = speed;
  return report;
}

TEST_CASE("run difference: what one of the two runs has alone is named, either way", "[rehearsal]") {
  RehearsalReport here, finer;
  here.touches = {touch("hook curl", "bracket arm"), touch("side rail", "lamp")};
  finer.touches = {touch("side rail", "lamp"), touch("caster", "bench")};
  finer.zones = {{"side rail", "photo wall", 3.0, 1, false}};
  finer.gave_up = "pin 1 does not go in";
  finer.slack = {{1.0, 2.0, 30.0, false}};
  here.hooks_off = {{1.0, 2.0, 0.1, 0, false, true}};
  lay_beside(here, finer);
  CHECK(here.bounds.compared);
  CHECK(here.bounds.only_here == Words{"hook curl meets bracket arm", "the hooks come off the pipe"});
  CHECK(here.bounds.only_finer == Words{"caster meets bench", "side rail comes into photo wall",
                                        "the crew give up (pin 1 does not go in)", "the line goes slack"});
}

TEST_CASE("run difference: two runs alike have nothing to tell", "[rehearsal]") {
  RehearsalReport here;
  here.touches = {touch("side rail", "lamp")};
  const RehearsalReport finer = here;
  lay_beside(here, finer);
  CHECK(here.bounds.only_here.empty());
  CHECK(here.bounds.only_finer.empty());
}

TEST_CASE("run difference: speeds after a loss are compared where both runs have one", "[rehearsal]") {
  RehearsalReport both = lost_at(3.0), one = lost_at(3.0);
  lay_beside(both, lost_at(3.2));
  REQUIRE(both.bounds.speed);
  CHECK(*both.bounds.speed == Approx(0.2));
  lay_beside(one, RehearsalReport{});
  CHECK_FALSE(one.bounds.speed);
}

TEST_CASE("run difference: a run that could not be made again is no run alike", "[rehearsal]") {
  RehearsalReport here = lost_at(3.0), refused;
  refused.refused = true;
  lay_beside(here, refused);
  CHECK_FALSE(here.bounds.compared);
  CHECK(here.bounds.too_swift_again);
  CHECK_FALSE(here.bounds.speed);
}

}  // namespace
}  // namespace stowpath
