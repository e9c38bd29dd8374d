#include "render/report/account_words.h"

#include <catch2/catch.hpp>
#include <set>

#include "render/report/recording_words.h"
#include "sim/rehearsal/recording_words.h"
#include "tests/support/sample_recording.h"

using namespace stowpath;
using Catch::Contains;

namespace {

RehearsalBounds bounds() {
  RehearsalBounds out;
  out.step = 1.0 / 960.0;
  out.energy_gain = 0.125;
  out.energy_scale = 812.0;
  return out;
}

}  // namespace

TEST_CASE("account words: every trouble has words of its own", "[report]") {
  std::set<std::string> said;
  for (const auto& [kind, word] : kTroubleWords) said.insert(trouble_text({kind, "a", "b", 1.0, 2.0}, DisplayUnits::metric));
  CHECK(said.size() == kTroubleWords.size());
  CHECK(said.count("") == 0);
}

TEST_CASE("account words: numbers come in the units asked for", "[report]") {
  const Trouble weak{TroubleKind::roll_too_weak, "", "", 120.0, 1.1}, off{TroubleKind::moves_off, "the line breaks", "the foot", 3.048};
  CHECK_THAT(trouble_text(weak, DisplayUnits::metric), Contains("120 N") && Contains("1.100 m"));
  CHECK(trouble_text(off, DisplayUnits::metric) == "the line breaks and the foot reaches 3.05 m/s");
  CHECK(trouble_text(off, DisplayUnits::imperial) == "the line breaks and the foot reaches 10.0 ft/s");
  RehearsalBounds of = bounds();
  of.compared = true;
  of.pull = 4.4482216152605;
  of.speed = 0.03048;
  of.touch_gap = 0.000254;
  CHECK_THAT(bounds_sentences(of, DisplayUnits::metric),
             Contains("0.13 J") && Contains("by up to 4.5 N") && Contains("0.031 m/s") && Contains("0.26 mm"));
  CHECK_THAT(bounds_sentences(of, DisplayUnits::imperial),
             Contains("0.10 ft-lb") && Contains("1.00 lbf") && Contains("0.100 ft/s") && Contains("0.010\"") &&
                 !Contains(" N") && !Contains(" mm") && !Contains(" J"));
}

TEST_CASE("account words: what was not compared, and what did not differ, is said so", "[report]") {
  RehearsalBounds of = bounds();
  CHECK_THAT(bounds_sentences(of, DisplayUnits::metric), Contains("not run again at half the step"));
  of.compared = true;
  CHECK_THAT(bounds_sentences(of, DisplayUnits::metric), Contains("nothing of what is told here differs"));
  CHECK_THAT(bounds_sentences(of, DisplayUnits::metric), !Contains("seen to touch"));
}

TEST_CASE("account words: a recording is judged by its account, an older one by its events", "[report]") {
  Recording recording = testing::sample_recording();
  CHECK(has_trouble(recording));
  CHECK_THAT(account_sentences(recording, DisplayUnits::metric), Contains("older format"));
  recording.account.emplace();
  recording.account->bounds = bounds();
  CHECK_FALSE(has_trouble(recording));
  CHECK_THAT(recording_answer(recording, DisplayUnits::metric), Contains(" UNEVENTFUL: "));
  recording.account->troubles.push_back({TroubleKind::slack, "", "", 2.0, 0.0});
  CHECK(has_trouble(recording));
  CHECK_THAT(recording_answer(recording, DisplayUnits::metric), Contains(" TROUBLE: 2 slack spells of the line."));
}

TEST_CASE("account words: a foot set down on the floor is no trouble, one that drops is", "[report]") {
  const auto lands = [](double speed) {
    return is_trouble({1.0, RecordedEventKind::touch, "caster", "floor", speed, 0.1});
  };
  CHECK_FALSE(lands(0.23));
  CHECK(lands(0.31));
  CHECK(is_trouble({1.0, RecordedEventKind::touch, "caster", "bench", 0.01, 0.0}));
}
