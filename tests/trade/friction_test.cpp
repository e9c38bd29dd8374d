#include "sim/trade/friction.h"

#include <catch2/catch.hpp>
#include <string>

using namespace stowpath;

namespace {
Interval at_rest(const std::string& name) {
  for (const FrictionPair& pair : friction_pairs()) {
    if (pair.name == name) return pair.at_rest;
  }
  return {};
}
}  // namespace

TEST_CASE("friction: every pair has a range, a source and a status", "[trade]") {
  for (const FrictionPair& pair : friction_pairs()) {
    INFO(pair.name);
    CHECK(0.0 < pair.at_rest.lo);
    CHECK(pair.at_rest.lo <= pair.at_rest.hi);
    if (pair.sliding) CHECK(pair.sliding->hi <= pair.at_rest.hi);
    CHECK(pair.source.id.substr(0, 5) == "S-FR-");
    CHECK_FALSE(pair.source.title.empty());
  }
  for (const RollingPair& pair : rolling_pairs()) {
    INFO(pair.name);
    CHECK(0.0 < pair.arm.lo);
    CHECK(pair.arm.lo <= pair.arm.hi);
    CHECK(pair.source.status == SourceStatus::verified);
  }
}

// mech.subwiki.org, misumi-ec.com and mechanics.ju.se, verified each: they disagree, and none is averaged away.
TEST_CASE("friction: steel on steel stands in the table three ways", "[trade][published]") {
  CHECK(at_rest("steel on steel, clean and dry") == Interval{0.74, 0.74});
  CHECK(at_rest("steel on steel, greased") == Interval{0.16, 0.16});
  CHECK(at_rest("steel on steel, not said how clean") == Interval{0.1, 0.3});
}

TEST_CASE("friction: what is recalled or judged says so", "[trade]") {
  for (const FrictionPair& pair : friction_pairs()) {
    INFO(pair.name);
    if (pair.name == "nylon rope on steel") CHECK(pair.source.status == SourceStatus::memory);
    if (pair.name == "steel hook on painted pipe") CHECK(pair.source.status == SourceStatus::judgement);
  }
  CHECK(kCasterStartSource.status == SourceStatus::memory);
  CHECK(status_text(SourceStatus::judgement) == "our judgement");
  CHECK(status_text(SourceStatus::memory) == "from memory");
  CHECK(status_text(SourceStatus::verified) == "verified");
  CHECK(status_text(SourceStatus::derived) == "derived");
}
