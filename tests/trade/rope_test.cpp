#include "sim/trade/rope.h"

#include <catch2/catch.hpp>
#include <stdexcept>
#include <string>

using namespace stowpath;

TEST_CASE("rope: a size between listed sizes has no strength", "[trade]") {
  CHECK_FALSE(rope_strengths(RopeMake::nylon_three_strand, 0.009525).empty());
  CHECK(rope_strengths(RopeMake::nylon_three_strand, 0.0090).empty());
  CHECK(rope_strengths(RopeMake::manila, 0.0).empty());
}

// They differ by 4 % or so: the check is only that no figure went in with a wrong unit.
TEST_CASE("rope: table and rule agree within a tenth on nylon of half an inch", "[trade]") {
  const double rule = exam_rule_strength(RopeMake::nylon_three_strand, 0.0127).value();
  for (const RopeStrength& strength : rope_strengths(RopeMake::nylon_three_strand, 0.0127)) {
    CHECK(strength.breaking == Approx(rule).epsilon(0.1));
  }
}

TEST_CASE("rope: knots weaken, splices least, and the listed share lies in the range", "[trade]") {
  for (const Knot& knot : knots()) {
    INFO(knot.name);
    CHECK(knot.range.contains(knot.listed));
    CHECK(knot.range.hi < 1.0);
    CHECK(knot.listed <= find_knot("eye splice")->listed);
  }
  CHECK(find_knot("granny") == nullptr);
}

TEST_CASE("rope: a design factor of nothing is refused", "[trade]") {
  CHECK_THROWS_AS(rope_working_load(1000, 0.6, 0), std::invalid_argument);
  CHECK(kRopeDesignFactor == Interval{5.0, 12.0});  // CI 1401-06 (S-ROPE-DF, verified)
  CHECK(kRopeDesignFactorSource.status == SourceStatus::verified);
}

// axiomcordages.com (S-ROPE-Dd) and US Army manuals (S-ROPE-block), verified.
TEST_CASE("rope: what a rope bends round is at least so many times its diameter", "[trade][published]") {
  REQUIRE(bend_rules().size() == 5);
  CHECK(bend_rules()[0].ratio == 10.0);
  CHECK(bend_rules()[1].ratio == 8.0);
  CHECK(bend_rules()[2].ratio == 3.0);
  CHECK(bend_rules()[3].ratio == 9.0);
  // A line 3-1/2 in round asks for a cheek of 10-1/2 in: three times round is nine and a bit across.
  CHECK(bend_rules()[4].ratio * 3.5 / 3.14159265358979 == Approx(10.5));
}

TEST_CASE("rope: every make has a name of its own", "[trade]") {
  CHECK(rope_make_text(RopeMake::nylon_three_strand) == "nylon three-strand");
  CHECK(rope_make_text(RopeMake::nylon_double_braid) == "nylon double braid");
  CHECK(rope_make_text(RopeMake::nylon_diamond_braid) == "nylon diamond braid");
  CHECK(rope_make_text(RopeMake::manila) == "manila");
  CHECK(rope_make_text(RopeMake::polypropylene) == "polypropylene three-strand");
}
