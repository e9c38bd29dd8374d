#include "sim/hoist/people.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "tests/support/sample_scene.h"

using namespace stowpath;

TEST_CASE("people: limits come weakest first, each with its source", "[hoist]") {
  for (const auto& limits : {hand_pull_limits(Effort::pull_down, 150.0), crank_limits(50.0)}) {
    REQUIRE(limits.size() >= 3);
    CHECK(std::is_sorted(limits.begin(), limits.end(),
                         [](const PersonLimit& a, const PersonLimit& b) { return a.force < b.force; }));
    for (const PersonLimit& limit : limits) {
      INFO(limit.name);
      CHECK(limit.force > 0.0);
      CHECK_FALSE(limit.source.id.empty());
    }
  }
}

TEST_CASE("people: the user's own limit is one more, and ours are called judgement", "[hoist]") {
  CHECK(hand_pull_limits(Effort::pull_down, 150.0).size() == hand_pull_limits(Effort::pull_down).size() + 1);
  int ours = 0, own = 0;
  for (const PersonLimit& limit : hand_pull_limits(Effort::pull_down, 150.0)) {
    ours += limit.source.status == SourceStatus::judgement ? 1 : 0;
    own += limit.name == "your own limit" && limit.force == 150.0 ? 1 : 0;
  }
  CHECK(ours == 2);
  CHECK(own == 1);
}

TEST_CASE("people: a force has a margin to every limit, negative where it is greater", "[hoist]") {
  const auto limits = hand_pull_limits(Effort::pull_down);
  const auto margins = limit_margins(150.0, limits);
  REQUIRE(margins.size() == limits.size());
  for (const LimitMargin& margin : margins) {
    CHECK(margin.margin == margin.limit.force - 150.0);
    CHECK(margin.share == Approx(150.0 / margin.limit.force));
    CHECK((margin.margin < 0.0) == (margin.share > 1.0));
  }
  CHECK(margins.front().margin < 0.0);
  CHECK(margins.back().margin > 0.0);
}

TEST_CASE("people: hauling hand over hand takes a range of minutes", "[hoist]") {
  CHECK(kHandOverHandSource.status == SourceStatus::judgement);
  CHECK(hand_over_hand_minutes(12.0).lo == Approx(0.8));
  CHECK(hand_over_hand_minutes(12.0).hi == Approx(2.0));
}

TEST_CASE("people: a line that comes from above is pulled down, a level one along, and figures follow", "[hoist]") {
  Scene scene = testing::sample_scene();
  scene.hoist->line.leads = {RoomPoint{{0.1, 4.0}, 6.9}};
  CHECK(haul_task(scene) == Effort::pull_down);
  scene.hoist->line.hand = RoomPoint{{3.0, 1.2}, 6.9};
  CHECK(haul_task(scene) == Effort::pull_across);
  scene.hoist->line.leads = {RoomPoint{{0.1, 0.1}, 6.9}};
  scene.hoist->line.hand = RoomPoint{{0.1, 1.2}, 6.9};
  CHECK(haul_task(scene) == Effort::pull_up);
  for (const PersonLimit& limit : hand_pull_limits(Effort::pull_down))
    CHECK(limit.source.id != "S-HUM-horiz");  // Kodak's are for a level push or pull
}
