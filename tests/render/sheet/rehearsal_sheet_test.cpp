#include "render/sheet/rehearsal_sheet.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <stdexcept>

#include "render/paint/svg.h"
#include "render/report/recording_words.h"
#include "render/sheet/lettering.h"
#include "render/sheet/recording_curves.h"
#include "tests/support/sample_recording.h"
#include "tests/support/sample_scene.h"
#include "tests/support/xml_check.h"

using namespace stowpath;
using Catch::Contains;
using stowpath::testing::sample_recording;
using stowpath::testing::sample_scene;

namespace {

DisplayList sheet(const Recording& recording, DisplayUnits units) {
  const Scene scene = sample_scene();
  const Model model = build_model(scene);
  return make_rehearsal_sheet({scene, model, recording, units});
}

// All lettering, line after line.
std::string lettering(const DisplayList& list) {
  std::string all;
  for (const Item& item : list.items)
    if (const Text* text = std::get_if<Text>(&item)) all += text->words + " ";
  return all;
}

int layers(const DisplayList& list, const std::string& id) {
  return static_cast<int>(std::count_if(list.items.begin(), list.items.end(), [&](const Item& item) {
    const Group* group = std::get_if<Group>(&item);
    return group && group->opens && group->id == id;
  }));
}

}  // namespace

TEST_CASE("rehearsal sheet: it is well-formed and says what happened", "[sheet]") {
  for (const DisplayUnits units : {DisplayUnits::metric, DisplayUnits::imperial}) {
    const DisplayList list = sheet(sample_recording(), units);
    const std::string svg = paint_svg(list);
    CHECK(testing::xml_fault(svg) == "");
    for (const char* layer : {"strip", "pull", "speed", "lean"}) CHECK(layers(list, layer) == 1);
    CHECK_THAT(svg, Contains("hoist line let go"));
    CHECK_THAT(svg, Contains("it proves no clearance"));
    CHECK(svg == paint_svg(sheet(sample_recording(), units)));
  }
}

TEST_CASE("rehearsal sheet: no lettering lies on other lettering", "[sheet]") {
  const DisplayList list = sheet(sample_recording(), DisplayUnits::metric);
  std::vector<PaperBox> boxes;
  for (const Item& item : list.items) {
    const Text* text = std::get_if<Text>(&item);
    if (!text || text->words.empty()) continue;
    for (const PaperBox& other : boxes) {
      INFO(text->words);
      CHECK_FALSE(overlap(grown(text_box(*text), -0.4), other));  // figures of two axes at their corner
    }
    boxes.push_back(text_box(*text));
  }
  CHECK(boxes.size() > 30);
}

TEST_CASE("rehearsal sheet: a recording of another stair or of nothing is refused", "[sheet]") {
  Recording other = sample_recording();
  other.sections = 3;
  CHECK_THROWS_AS(sheet(other, DisplayUnits::metric), std::invalid_argument);
  other = sample_recording();
  other.frames.clear();
  CHECK_THROWS_AS(sheet(other, DisplayUnits::metric), std::invalid_argument);
}

TEST_CASE("rehearsal sheet: a recording of one frame is drawn too", "[sheet]") {
  Recording one = sample_recording();
  one.frames.resize(1);
  CHECK(testing::xml_fault(paint_svg(sheet(one, DisplayUnits::metric))) == "");
}

TEST_CASE("recording curves: the foot's speed is that of its circle", "[sheet]") {
  const Model model = build_model(sample_scene());
  Recording recording = sample_recording();
  // Both sections turned as one at a steady rate about the pivot.
  const double rate = 0.6, length = model.linkage.length[0] + model.linkage.length[1];
  for (RecordedFrame& frame : recording.frames) {
    const double turn = rate * frame.time - 1.2;
    frame.sections[0] = {{1.0, 2.9}, turn};
    frame.sections[1] = {Vec2{1.0, 2.9} + model.linkage.length[0] * Vec2{std::cos(turn), std::sin(turn)}, turn};
  }
  const RecordingCurves curves = curves_of(model, recording);
  REQUIRE(curves.speed.size() == 1);
  REQUIRE(curves.speed[0].size() == recording.frames.size() - 1);
  // A chord in place of its arc of 0.03 rad: short by a twenty-fourth of its square.
  for (const Vec2& at : curves.speed[0]) CHECK(at.y == Approx(rate * length).epsilon(5e-5));
  CHECK(curves.leans[1].front().y == Approx(-1.2 + 0.5 * std::acos(-1.0)));
}

TEST_CASE("recording curves: a stair that is brought elsewhere has no speed on the way", "[sheet]") {
  const Model model = build_model(sample_scene());
  Recording recording = sample_recording();
  for (RecordedFrame& frame : recording.frames) frame.station = frame.time < 1.2 ? 4.34 : 2.0;
  const auto fastest = [&] {
    double most = 0.0;
    for (const auto& piece : curves_of(model, recording).speed)
      for (const Vec2& at : piece) most = std::max(most, at.y);
    return most;
  };
  CHECK(fastest() > 40.0);  // 2.34 m in a twentieth of a second, if it were a motion
  recording.events.insert(recording.events.end() - 2, {1.2, RecordedEventKind::brought, "", "", 2.0, 0.0});
  CHECK(fastest() < 6.0);
  const RecordingCurves curves = curves_of(model, recording);
  REQUIRE(curves.station.size() == 2);
  CHECK(curves.station[0].back().y == 4.34);
  CHECK(curves.station[1].front() == Vec2{recording.frames[24].time, 2.0});
}

TEST_CASE("rehearsal sheet: what does not fit is counted, and the gravest is written", "[sheet]") {
  Recording recording = sample_recording();
  for (int i = 0; i < 80; ++i)
    recording.events.push_back({2.0, RecordedEventKind::slack_ends, "line " + std::to_string(i), "", 100.0 + i, 0.0});
  recording.events.push_back({2.0, RecordedEventKind::leaves_pipe, "", "", 7.1, 0.0});
  recording.events.push_back({2.0, RecordedEventKind::touch, "shoe", "beam", 3.5, 60.0});
  const DisplayList list = sheet(recording, DisplayUnits::metric);
  const std::string svg = paint_svg(list);
  CHECK_THAT(svg, Contains("To look into, gravest first"));
  const std::size_t off = svg.find("a hook rolls off the pipe"), met = svg.find("shoe meets beam"),
                    bench = svg.find("caster meets truing"), jerk = svg.find("line 79 comes taut");
  CHECK(off < met);
  CHECK(met < bench);
  CHECK(bench < jerk);
  CHECK(jerk != std::string::npos);
  CHECK_THAT(svg, !Contains("line 0 comes taut"));
  int told = 0, more = 0;
  for (const Item& item : list.items) {
    const Text* text = std::get_if<Text>(&item);
    if (text && text->words.find(" s  ") != std::string::npos) ++told;
    if (text && text->words.find(" more: see the written report") != std::string::npos) more = std::stoi(text->words);
  }
  CHECK(told > 10);
  CHECK(told + more == static_cast<int>(told_events(recording).size()));
}

TEST_CASE("rehearsal sheet: what happens again and again is written once, at its worst", "[sheet]") {
  Recording recording = sample_recording();
  for (const double speed : {0.3, 2.5, 1.1})
    recording.events.push_back({2.0, RecordedEventKind::touch, "shoe", "beam", speed, 10.0 * speed});
  for (const double station : {4.7, 0.4})
    recording.events.push_back({2.0, RecordedEventKind::brought, "", "", station, 0.0});
  for (int i = 0; i < 2; ++i) recording.events.push_back({2.0, RecordedEventKind::binds, "", "", 100.0, 0.0});
  const std::string words = lettering(sheet(recording, DisplayUnits::metric));
  CHECK_THAT(words, Contains("2.00 s and 2 times more  shoe meets beam at 2.50 m/s, 25 J at most"));
  CHECK_THAT(words, !Contains("0.30 m/s"));
  CHECK_THAT(words,
             Contains("2.00 s and once more  the hooks bind: a push of 100 N along the rail moves nothing 2.00"));
  CHECK_THAT(words, Contains("to station 4.700 m, which it did not reach by itself 2.00 s  taken to station 0.400 m"));
}

TEST_CASE("rehearsal sheet: what is wrong, how good the numbers are and what was granted stands on it", "[sheet]") {
  Recording recording = sample_recording();
  recording.account = testing::sample_account();
  const auto words = [&](DisplayUnits units) { return lettering(sheet(recording, units)); };
  const std::string metric = words(DisplayUnits::metric);
  CHECK_THAT(metric, Contains("TROUBLE: 2 pairs of parts touch") && Contains("How good the numbers are Step 1/960 s"));
  CHECK_THAT(metric, Contains("at most 0.23 J") && Contains("peak pulls by up to 13.8 N"));
  CHECK_THAT(metric, Contains("Taken for granted The rope is a guess."));
  CHECK_THAT(words(DisplayUnits::imperial), Contains("ft-lb") && !Contains(" J,"));
  recording.account.reset();
  CHECK_THAT(words(DisplayUnits::metric), Contains("Recorded in an older format"));
}

TEST_CASE("rehearsal sheet: what happened after the last frame is drawn too", "[sheet]") {
  Recording recording = sample_recording();
  recording.events.push_back({7.5, RecordedEventKind::touch, "shoe", "beam", 3.5, 60.0});
  CHECK(ends_at(recording) == 7.5);
  const DisplayList list = sheet(recording, DisplayUnits::metric);
  const auto axis_says = [&](const std::string& figure) {
    return std::any_of(list.items.begin(), list.items.end(), [&](const Item& item) {
      const Text* text = std::get_if<Text>(&item);
      return text && text->words == figure;
    });
  };
  CHECK(axis_says("8"));
}

TEST_CASE("recording curves: the strip takes frames by the way gone, not by time", "[sheet]") {
  const Model model = build_model(sample_scene());
  Recording recording = sample_recording();
  // At rest for the first half.
  for (std::size_t i = 0; i < 20; ++i) recording.frames[i].sections = recording.frames[20].sections;
  const std::vector<std::size_t> shown = strip_frames(model, recording, 8);
  CHECK(shown.front() == 0);
  CHECK(shown.back() == recording.frames.size() - 1);
  CHECK(std::is_sorted(shown.begin(), shown.end()));
  CHECK(shown.size() <= 8);
  CHECK(shown[1] > 20);
}

TEST_CASE("recording curves: the way down is not drawn over the way up, unless it is another one", "[sheet]") {
  const Model model = build_model(sample_scene());
  Recording recording = sample_recording();
  recording.events = {{1.0, RecordedEventKind::lowers_away, "", "", 0.0, 0.0}};
  CHECK(drawn_until(recording) == 1.0);
  const std::vector<std::size_t> shown = strip_frames(model, recording, 8, drawn_until(recording));
  CHECK(recording.frames[shown.back()].time == 1.0);
  CHECK(shown.size() > 4);
  recording.events.push_back({1.5, RecordedEventKind::gives_up, "it hangs", "", 0.0, 0.0});
  CHECK(drawn_until(recording) == recording.frames.back().time);
  recording.events.clear();
  CHECK(drawn_until(recording) == recording.frames.back().time);
}

TEST_CASE("recording curves: frames in motion are left out only where straight lines show them", "[sheet]") {
  const Model model = build_model(sample_scene());
  const Recording recording = sample_recording();
  const auto coarse = motion_frames(model, recording, 0.05), fine = motion_frames(model, recording, 1e-4);
  CHECK(coarse.size() < fine.size());
  CHECK(coarse.front() == 0);
  CHECK(coarse.back() == recording.frames.size() - 1);
  for (std::size_t k = 0; k + 1 < coarse.size(); ++k) {
    const RecordedFrame &a = recording.frames[coarse[k]], &b = recording.frames[coarse[k + 1]];
    for (std::size_t i = coarse[k]; i <= coarse[k + 1]; ++i) {
      const RecordedFrame& was = recording.frames[i];
      const double u = (was.time - a.time) / (b.time - a.time);
      const Vec2 shown = lerp(a.sections[1].origin, b.sections[1].origin, u);
      CHECK(norm(shown - was.sections[1].origin) <= 0.05 + 1e-12);
      CHECK(a.hoist.on == recording.frames[std::max(i, coarse[k] + 1) - 1].hoist.on);
    }
  }
}

TEST_CASE("recording words: an event says what met what, how fast, in the sheet's units", "[report]") {
  const RecordedEvent touch{1.0, RecordedEventKind::touch, "caster", "bench", 1.25, 14.2};
  CHECK(event_sentence(touch, DisplayUnits::metric) == "caster meets bench at 1.25 m/s, 15 J");
  CHECK(event_sentence(touch, DisplayUnits::imperial) == "caster meets bench at 4.2 ft/s, 11 ft-lb");
  for (int kind = 0; kind <= static_cast<int>(RecordedEventKind::at_rest); ++kind) {
    const RecordedEvent any{0.0, static_cast<RecordedEventKind>(kind), "it", "that", 1.0, 1.0};
    CHECK_FALSE(event_sentence(any, DisplayUnits::metric).empty());
  }
  CHECK_THAT(recording_answer(sample_recording(), DisplayUnits::metric), Contains("1 touch"));
}

TEST_CASE("recording words: a foot that settles on the floor is neither told nor counted", "[report]") {
  Recording recording = sample_recording();
  recording.events.push_back({2.0, RecordedEventKind::touch, "caster", "floor", 0.001, 0.0});
  CHECK(told_events(recording).size() + 1 == recording.events.size());
  CHECK_THAT(recording_answer(recording, DisplayUnits::metric), Contains("1 touch,"));
}
