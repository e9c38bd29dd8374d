#include "sim/rehearsal/trouble.h"

#include <catch2/catch.hpp>
#include <vector>

using namespace stowpath;

namespace {

std::vector<TroubleKind> kinds(const std::vector<Trouble>& found) {
  std::vector<TroubleKind> out;
  for (const Trouble& trouble : found) out.push_back(trouble.kind);
  return out;
}

using Kinds = std::vector<TroubleKind>;

RollLeg leg_that(RollEnd end) {
  RollTry hold;
  hold.end = end;
  hold.height = 1.1;
  hold.greatest_push = 90.0;
  if (end == RollEnd::ran_into) hold.stop = RollStop{"hook curl", "bracket arm", 2.0, 0.5, 3.0};
  RollLeg leg;
  leg.tries.push_back(hold);
  return leg;
}

RollReport rolled_over_all(std::vector<RollStop> stops) {
  RollReport report;
  report.asked.height = 1.4;
  report.floor_level = 0.3;
  report.push.force = {120.0, 0.0};
  for (RollRun& run : report.runs) {
    run.rolls = true;
    run.push_needed = 40.0;
    run.stops = stops;
  }
  return report;
}

}  // namespace

TEST_CASE("trouble: a run in which nothing happened has none", "[rehearsal]") {
  RehearsalReport report;
  report.moves.resize(3);
  report.again = StandsAgain{0.01, 0.0, 0.02, true};
  report.landings.push_back({"caster", "floor", 1.0, 0, false, 1, 0.2, 0.1, 0.0, false});
  report.hooks_off.push_back({1.0, 1.1, 5e-5, 0, false, false});
  report.loose.push_back({0, 1.0, 0.05, 0.0, 0.0});
  CHECK(troubles(report).empty());
}

TEST_CASE("trouble: each limit counts from just beyond it", "[rehearsal]") {
  RehearsalReport report;
  report.again = StandsAgain{0.02, 0.0, 0.0, true};
  CHECK(kinds(troubles(report)) == Kinds{TroubleKind::stands_otherwise});
  report.again.reset();
  report.landings.push_back({"caster", "floor", 1.0, 0, false, 1, 0.31, 0.1, 0.0, false});
  CHECK(kinds(troubles(report)) == Kinds{TroubleKind::lands_hard});
  CHECK(troubles(report)[0].value == 0.31);
  report.landings.clear();
  report.loose.push_back({0, 1.0, 0.09, 0.0, 0.0});
  CHECK(kinds(troubles(report)) == Kinds{TroubleKind::swings_loose});
  report.loose.clear();
  report.hooks_off.push_back({1.0, 1.1, 2e-4, 0, false, false});
  CHECK(kinds(troubles(report)) == Kinds{TroubleKind::hooks_lift});
  report.hooks_off.push_back({2.0, 2.1, 0.04, 0, false, true});
  CHECK(kinds(troubles(report)) == Kinds{TroubleKind::hooks_off});
}

TEST_CASE("trouble: a line let go is one unless it is held, and a stair that stays is another", "[rehearsal]") {
  RehearsalReport report;
  report.aftermath.emplace();
  report.aftermath->cause = "the line is let go";
  report.aftermath->top_speed = 3.0;
  report.aftermath->fastest = "hinge 1";
  CHECK(kinds(troubles(report)) == Kinds{TroubleKind::moves_off});
  CHECK(troubles(report)[0].other == "hinge 1");
  CHECK(troubles(report)[0].value == 3.0);
  report.aftermath->at_rest = true;
  report.aftermath->top_speed = 0.01;
  CHECK(kinds(troubles(report)) == Kinds{TroubleKind::stays_up});
  report.aftermath->nothing = true;
  CHECK(troubles(report).empty());
}

TEST_CASE("trouble: what never came, what overlaps from the start, and what the half step has besides", "[rehearsal]") {
  RehearsalReport report;
  report.bounds.only_here = {"caster meets bench"};
  CHECK(troubles(report).empty());
  report.not_tried = {"the push at 3000.0 s (the run ends before that)"};
  report.met_from_start = {"hook curl and bracket arm", "side rail and lamp"};
  report.bounds.only_finer = {"side rail meets lamp", "the line goes slack"};
  const auto found = troubles(report);
  CHECK(kinds(found) == Kinds{TroubleKind::not_tried, TroubleKind::overlaps, TroubleKind::at_half_step,
                              TroubleKind::at_half_step});
  CHECK(found[0].what == report.not_tried[0]);
  CHECK(found[1].value == 2.0);
  CHECK(found[3].what == "the line goes slack");
}

TEST_CASE("trouble: gravest first, and the same roll's trouble once", "[rehearsal]") {
  RehearsalReport report;
  report.slack.resize(2);
  report.touches.resize(3);
  report.rolls = {leg_that(RollEnd::bound), leg_that(RollEnd::bound), leg_that(RollEnd::ran_into)};
  report.gave_up = "the hooks jam";
  const auto found = troubles(report);
  CHECK(kinds(found) == Kinds{TroubleKind::gave_up, TroubleKind::roll_binds, TroubleKind::roll_meets,
                              TroubleKind::touches, TroubleKind::slack});
  CHECK(found[1].also == 1.1);
  CHECK(found[2].what == "hook curl");
  CHECK(found[2].other == "bracket arm");
  CHECK(found[3].value == 3.0);
  CHECK(found[4].value == 2.0);
}

TEST_CASE("trouble: a stair pushed along may meet the rail's stops, and nothing else", "[rehearsal]") {
  const RollStop stop{"hook crown", "rail stop", 5.0, 0.7, 4.0}, bracket{"hook curl", "bracket arm", 3.0, 0.7, 4.0};
  const RollStop end{"", "", 5.0, 0.7, 4.0};
  CHECK(troubles(rolled_over_all({stop, stop})).empty());
  CHECK(kinds(troubles(rolled_over_all({stop, bracket}))) == Kinds{TroubleKind::roll_meets});
  CHECK(kinds(troubles(rolled_over_all({end}))) == Kinds{TroubleKind::roll_leaves_pipe});
}

TEST_CASE("trouble: a stair pushed along that binds or stays at one friction of its range has trouble",
          "[rehearsal]") {
  RollReport report = rolled_over_all({});
  report.runs[2].rolls = false;
  auto found = troubles(report);
  CHECK(kinds(found) == Kinds{TroubleKind::roll_too_weak});
  CHECK(found[0].value == 120.0);
  CHECK(found[0].also == Approx(1.1));  // above the floor
  report.runs[2].push_needed.reset();
  CHECK(kinds(troubles(report)) == Kinds{TroubleKind::roll_binds});
}
