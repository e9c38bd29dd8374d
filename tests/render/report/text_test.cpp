#include "render/report/text.h"

#include <catch2/catch.hpp>
#include <limits>
#include <sstream>

#include "render/report/wrap.h"
#include "tests/support/sample_dry_fit.h"

using namespace stowpath;
using Catch::Contains;
using Catch::StartsWith;

namespace {

std::string report(const DryFit& fit, const TextOptions& options = {}) {
  return dry_fit_text(testing::dry_fit_model(), fit, options);
}

}  // namespace

TEST_CASE("text report: the verdict stands on the first line", "[report]") {
  CHECK_THAT(report(testing::sample_dry_fit()), StartsWith("INTERFERENCE: 5 findings ("));
  CHECK_THAT(report(testing::clear_dry_fit()), StartsWith("CLEAR: no findings in 7 moves and states."));
}

TEST_CASE("text report: a finding reads as a builder would say it, with its place below", "[report]") {
  CHECK_THAT(report(testing::sample_dry_fit()),
             Contains("F1  hook curl meets bracket arm at all 8 brackets while rolling, 9.0 mm deep\n"
                      "    stations 0.520 m to 0.600 m, 0.860 m to 1.460 m, 1.720 m to 2.320 m\n"
                      "    lean 27.7°, fold 0.0°; move 1 roll\n"
                      "    worst at station 1.160 m, lean 27.7°, fold 0.0°: out 0.958 m, up 2.856 m\n"
                      "    play of hook and floor may take another 1.7 mm\n"));
}

TEST_CASE("text report: things that do not move meet in no move and in no pose", "[report]") {
  DryFit fit = testing::sample_dry_fit();
  fit.findings.resize(1);
  fit.findings[0].moves.clear();
  fit.findings[0].move_kinds.clear();
  CHECK_THAT(report(fit), Contains("    stations 0.520 m to 0.600 m, 0.860 m to 1.460 m, 1.720 m to 2.320 m\n"
                                   "    worst at station 1.160 m: out 0.958 m, up 2.856 m\n"));
}

TEST_CASE("text report: a broken building rule has no pose", "[report]") {
  CHECK_THAT(report(testing::sample_dry_fit()),
             Contains("F5  a tread would cross the joint at 1.790 m along\n\nMOVES"));
}

TEST_CASE("text report: the moves stand in a table, states without a number", "[report]") {
  const std::string text = report(testing::sample_dry_fit());
  CHECK_THAT(text, Contains("  no  move      verdict       at least  at most  closest parts\n"));
  CHECK_THAT(text, Contains("  1   roll      INTERFERENCE  -9.1 mm   -9.0 mm  hook curl, bracket arm\n"));
  CHECK_THAT(text, Contains("      standing  CLEAR         14 mm     15 mm    tread, loft\n"));
}

TEST_CASE("text report: nothing near prints no number", "[report]") {
  DryFit fit = testing::clear_dry_fit();
  fit.moves[1].closest = {};
  fit.moves[1].at_least = fit.moves[1].at_most = std::numeric_limits<double>::infinity();
  const std::string text = report(fit);
  CHECK_THAT(text, Contains("  1   roll      CLEAR    nothing near\n"));
  CHECK_THAT(text, !Contains("inf ") && !Contains("nan"));
}

TEST_CASE("text report: no line is wider than 100 columns, in either unit", "[report]") {
  for (const DisplayUnits units : {DisplayUnits::metric, DisplayUnits::imperial}) {
    std::istringstream lines(report(testing::sample_dry_fit(), {units, false}));
    for (std::string line; std::getline(lines, line);) CHECK(columns(line) <= 100);
  }
}

TEST_CASE("text report: colour repeats the words and changes none", "[report]") {
  std::string text = report(testing::sample_dry_fit(), {DisplayUnits::metric, true});
  CHECK_THAT(text, StartsWith("\033[1;31mINTERFERENCE\033[0m: "));
  for (std::size_t at = text.find('\033'); at != std::string::npos; at = text.find('\033'))
    text.erase(at, text.find('m', at) - at + 1);
  CHECK(text == report(testing::sample_dry_fit()));
}

TEST_CASE("text report: it says who has to be asked, and promises nothing", "[report]") {
  const std::string text = report(testing::clear_dry_fit());
  CHECK_THAT(text, Contains("licensed engineer") && Contains("building authority"));
  CHECK_THAT(text, !Contains("safe", Catch::CaseSensitive::No));
}
