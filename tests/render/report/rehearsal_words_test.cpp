#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "render/report/account_words.h"
#include "render/report/rehearsal_report.h"
#include "tests/support/sample_scene.h"

namespace stowpath {
namespace {

using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

// A run in which nothing happened, to which the tests add.
struct Told {
  Scene scene = testing::sample_scene();
  Model model = build_model(scene);
  RehearsalReport report;

  Told() { report.bounds.step = 1.0 / 960.0; }
  RehearsalSubject subject() const { return {scene, model, report}; }
  std::string line() const { return rehearsal_line(subject()); }
  std::string text() const { return rehearsal_text(subject(), {DisplayUnits::metric, false}); }
  std::string bounds() const { return bounds_sentences(report.bounds, DisplayUnits::metric); }
  nlohmann::json json() const { return nlohmann::json::parse(rehearsal_json(subject())); }
};

// The report's lines are folded: words are looked for with single spaces.
std::string unfolded(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const char as = c == '\n' ? ' ' : c;
    if (as != ' ' || out.empty() || out.back() != ' ') out += as;
  }
  return out;
}

TEST_CASE("rehearsal words: what was asked for and never came is trouble", "[render][rehearsal]") {
  Told told;
  CHECK_FALSE(has_trouble(told.subject()));
  told.report.not_tried = {"the push at 3000.0 s (the run ends before that)"};
  CHECK(has_trouble(told.subject()));
  CHECK_THAT(told.line(), StartsWith("TROUBLE: not tried: the push at 3000.0 s (the run ends before that)"));
  CHECK_THAT(unfolded(told.text()), Contains("NOT TRIED Asked for, and it never came: the push at 3000.0 s"));
  CHECK(told.json()["not_tried"].size() == 1);
  CHECK(told.json()["verdict"] == "trouble");
}

TEST_CASE("rehearsal words: parts that overlap from the start are trouble", "[render][rehearsal]") {
  Told told;
  told.report.met_from_start = {"hook curl and bracket arm"};
  CHECK_THAT(told.line(), StartsWith("TROUBLE: 1 pair of parts overlaps from the start"));
  CHECK_THAT(unfolded(told.text()),
             Contains("The hook curl and bracket arm overlap already where they first can meet"));
}

TEST_CASE("rehearsal words: what the half step shows besides is trouble, what it lacks is told",
          "[render][rehearsal]") {
  Told told;
  told.report.bounds.compared = true;
  told.report.bounds.only_here = {"caster meets bench"};
  CHECK_FALSE(has_trouble(told.subject()));
  CHECK_THAT(unfolded(told.text()), Contains("Seen at this step alone: caster meets bench."));
  told.report.bounds.only_finer = {"side rail meets lamp", "the line goes slack"};
  CHECK_THAT(told.line(), StartsWith("TROUBLE: at half the step besides: side rail meets lamp; at half the step "
                                     "besides: the line goes slack"));
  CHECK_THAT(unfolded(told.text()),
             Contains("Seen at half the step alone: side rail meets lamp, the line goes slack."));
  CHECK(told.json()["bounds"]["half_step"]["only_at_half_the_step"].size() == 2);
}

TEST_CASE("rehearsal words: a run that could not be made again says so, and prints no difference",
          "[render][rehearsal]") {
  Told told;
  told.report.bounds.too_swift_again = true;
  CHECK_THAT(told.bounds(), Contains("could not be run again at half the step") && !Contains("differ"));
  CHECK(told.json()["bounds"]["half_step"].is_null());
  CHECK(told.json()["bounds"]["half_step_refused"] == true);
  told.report.bounds.too_swift_again = false;  // nobody asked for it
  CHECK_THAT(told.bounds(), Contains("was not run again") && !Contains("too swiftly"));
}

TEST_CASE("rehearsal words: a speed after a loss is compared only where both runs have one", "[render][rehearsal]") {
  Told told;
  told.report.aftermath = Aftermath{};
  told.report.bounds.compared = true;
  CHECK_THAT(told.bounds(), !Contains("greatest speed"));
  CHECK(told.json()["bounds"]["half_step"]["top_speed_m_s"].is_null());
  told.report.bounds.speed = 0.125;
  CHECK_THAT(told.bounds(), Contains("the greatest speed afterwards by 0.125 m/s"));
}

TEST_CASE("rehearsal words: after a loss, the fastest end, the first stroke and the hardest", "[render][rehearsal]") {
  Told told;
  Aftermath after;
  after.cause = "the line is let go";
  after.begins = 30.0;
  after.ends = 34.0;
  after.top_speed = 3.25;
  after.fastest = "hinge 1";
  after.first = Stroke{"caster", "floor", 0.5, 1.0, 10.0};
  after.hardest = Stroke{"side rail", "bench", 0.75, 3.0, 80.0};
  told.report.aftermath = after;
  CHECK_THAT(told.line(), StartsWith("TROUBLE: the line is let go and hinge 1 reaches 3.25 m/s"));
  const std::string said = aftermath_sentences(told.subject());
  CHECK_THAT(said, Contains("At its fastest hinge 1 reaches 3.25 m/s"));
  CHECK_THAT(said, Contains("0.50 s later the caster strikes the floor at 1.00 m/s, a stroke of 10 J."));
  CHECK_THAT(said, Contains("Hardest, after 0.75 s, the side rail strikes the bench at 3.00 m/s, a stroke of 80 J."));
  const auto json = told.json()["what_then"];
  CHECK(json["top_speed_m_s"] == 3.25);
  CHECK(json["fastest"] == "hinge 1");
  CHECK(json["first_stroke"]["stroke_j"] == 10.0);
  CHECK(json["hardest_stroke"]["parts"][1] == "bench");
  told.report.aftermath->hardest = after.first;
  CHECK_THAT(aftermath_sentences(told.subject()), !Contains("Hardest"));
}

TEST_CASE("rehearsal words: a line still slack at the end has no jerk", "[render][rehearsal]") {
  Told told;
  told.report.slack = {{12.0, 20.0, 0.0, true}};
  CHECK_THAT(unfolded(told.text()),
             Contains("hangs slack from 12.0 s on, and still does at the end") && !Contains("jerks"));
  CHECK(told.json()["slack"][0]["jerk_n"].is_null());
  CHECK(told.json()["slack"][0]["at_the_end"] == true);
  CHECK(has_trouble(told.subject()));
}

TEST_CASE("rehearsal words: a refused run says what to look at", "[render][rehearsal]") {
  Told told;
  told.report.refused = true;
  told.report.bounds.step = 1.0 / 61440.0;
  CHECK_THAT(told.line(), StartsWith("TROUBLE: a rope is too stiff for the physics world"));
  CHECK_THAT(unfolded(told.text()), Contains("hoist.line.strength") && Contains("Nothing is recorded or drawn"));
}

}  // namespace
}  // namespace stowpath
