#include <bit>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdint>
#include <limits>
#include <random>
#include <stdexcept>

#include "sim/rehearsal/recording_text.h"
#include "sim/rehearsal/recording_words.h"
#include "tests/support/gallery.h"
#include "tests/support/sample_recording.h"

using namespace stowpath;
using Catch::Matchers::StartsWith;

namespace {

// Any double but what is not finite: all signs, exponents and bits.
double any_double(std::mt19937_64& random) {
  for (;;) {
    const double value = std::bit_cast<double>(static_cast<std::uint64_t>(random()));
    if (std::isfinite(value)) return value;
  }
}

RecordedLine any_line(std::mt19937_64& random) {
  return {random() % 2 == 0, any_double(random), any_double(random), any_double(random)};
}

std::optional<double> any_or_none(std::mt19937_64& random) {
  return random() % 2 == 0 ? std::optional(any_double(random)) : std::nullopt;
}

Account any_account(std::mt19937_64& random) {
  Account out;
  RehearsalBounds& bounds = out.bounds;
  for (double* number : {&bounds.step, &bounds.energy_gain, &bounds.energy_scale, &bounds.touch_gap})
    *number = any_double(random);
  bounds.compared = random() % 2 == 0;
  if (bounds.compared) {
    for (double* number : {&bounds.pull, &bounds.lean, &bounds.swing}) *number = any_double(random);
    bounds.push = any_or_none(random);
    bounds.speed = any_or_none(random);
  }
  for (unsigned i = 0; i < random() % 6; ++i)
    out.troubles.push_back({kTroubleWords[random() % kTroubleWords.size()].first, "a \"word\"", "", any_double(random),
                            any_double(random)});
  for (unsigned i = 0; i < random() % 3; ++i) out.cautions.push_back("caution, said " + std::to_string(i));
  return out;
}

Recording any_recording(std::mt19937_64& random) {
  Recording out;
  out.scene = "shop \"A\"\n\\ \t\x01 \xc3\xa9";
  out.step = any_double(random);
  out.sections = static_cast<int>(1 + random() % 3);
  for (int i = 0; i < 20; ++i) {
    RecordedFrame frame;
    frame.time = 0.1 * i;
    frame.move = static_cast<int>(random() % 9) - 1;
    frame.station = any_double(random);
    frame.yaw = any_double(random);
    frame.push = any_double(random);
    for (int j = 0; j < out.sections; ++j)
      frame.sections.at(static_cast<std::size_t>(j)) = {{any_double(random), any_double(random)}, any_double(random)};
    frame.hoist = any_line(random);
    frame.fold = any_line(random);
    frame.hooks_on_pipe = random() % 2 == 0;
    frame.hook_force = {any_double(random), any_double(random)};
    out.frames.push_back(frame);
    const auto kind = kEventWords[random() % kEventWords.size()].first;
    out.events.push_back({0.07 * i, kind, "hook curl", "", any_double(random), any_double(random)});
  }
  if (random() % 4 != 0) out.account = any_account(random);
  return out;
}

bool same_bits(double a, double b) { return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b); }

bool same(const RecordedLine& a, const RecordedLine& b) {
  return a.on == b.on && same_bits(a.pull, b.pull) && same_bits(a.paid, b.paid) && same_bits(a.slack, b.slack);
}

bool same(const RecordedFrame& a, const RecordedFrame& b) {
  bool all = same_bits(a.time, b.time) && a.move == b.move && same_bits(a.station, b.station) &&
             same_bits(a.yaw, b.yaw) && same_bits(a.push, b.push) && same(a.hoist, b.hoist) && same(a.fold, b.fold) && a.hooks_on_pipe == b.hooks_on_pipe &&
             same_bits(a.hook_force.x, b.hook_force.x) && same_bits(a.hook_force.y, b.hook_force.y);
  for (std::size_t j = 0; j < a.sections.size(); ++j) {
    all = all && same_bits(a.sections[j].origin.x, b.sections[j].origin.x) &&
          same_bits(a.sections[j].origin.y, b.sections[j].origin.y) &&
          same_bits(a.sections[j].turn, b.sections[j].turn);
  }
  return all;
}

bool same(const RecordedEvent& a, const RecordedEvent& b) {
  return same_bits(a.time, b.time) && a.kind == b.kind && a.what == b.what && a.other == b.other &&
         same_bits(a.value, b.value) && same_bits(a.energy, b.energy);
}

bool same(const std::optional<double>& a, const std::optional<double>& b) {
  return a.has_value() == b.has_value() && (!a || same_bits(*a, *b));
}

bool same(const RehearsalBounds& a, const RehearsalBounds& b) {
  return same_bits(a.step, b.step) && same_bits(a.energy_gain, b.energy_gain) &&
         same_bits(a.energy_scale, b.energy_scale) && same_bits(a.touch_gap, b.touch_gap) &&
         a.compared == b.compared && same_bits(a.pull, b.pull) && same_bits(a.lean, b.lean) &&
         same_bits(a.swing, b.swing) && same(a.push, b.push) && same(a.speed, b.speed);
}

bool same(const Trouble& a, const Trouble& b) {
  return a.kind == b.kind && a.what == b.what && a.other == b.other && same_bits(a.value, b.value) &&
         same_bits(a.also, b.also);
}

template <typename Record>
bool all_same(const std::vector<Record>& a, const std::vector<Record>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const Record& x, const Record& y) { return same(x, y); });
}

bool same(const std::optional<Account>& a, const std::optional<Account>& b) {
  if (!a || !b) return a.has_value() == b.has_value();
  return same(a->bounds, b->bounds) && all_same(a->troubles, b->troubles) && a->cautions == b->cautions;
}

const char* const kHead = "stowpath-recording 1\nscene \"a\"\noptions \"\"\nstep 0.001\nsections 1\n";

std::string refusal(const std::string& text) {
  try {
    read_recording(text, "run.txt");
  } catch (const RecordingError& error) {
    return error.what();
  }
  return "taken";
}

}  // namespace

TEST_CASE("recording: what is written reads back to the last bit", "[rehearsal]") {
  std::mt19937_64 random(3);
  for (int draw = 0; draw < 50; ++draw) {
    const Recording out = any_recording(random);
    const Recording back = read_recording(write_recording(out), "run.txt");
    CHECK(back.scene == out.scene);
    CHECK(back.options == out.options);
    CHECK(same_bits(back.step, out.step));
    CHECK(back.sections == out.sections);
    CHECK(all_same(back.frames, out.frames));
    CHECK(all_same(back.events, out.events));
    CHECK(same(back.account, out.account));
  }
}

TEST_CASE("recording: zero keeps its sign, and the smallest numbers their bits", "[rehearsal]") {
  Recording out = testing::sample_recording();
  out.frames[0].station = -0.0;
  out.frames[0].hook_force = {std::numeric_limits<double>::denorm_min(), std::numeric_limits<double>::max()};
  const Recording back = read_recording(write_recording(out), "run.txt");
  CHECK(same(back.frames[0], out.frames[0]));
}

TEST_CASE("recording: frames and events stand in order of time", "[rehearsal]") {
  const std::string text = write_recording(testing::sample_recording());
  CHECK(text.find("event 1 let-go") < text.find("frame 1.05 "));
  CHECK(text.find("event 1 let-go") > text.find("frame 0.95 "));
  CHECK_THAT(text, Catch::Matchers::EndsWith("end 41 4\n"));
}

TEST_CASE("recording: comments, empty lines and a carriage return before the line's end are passed over",
          "[rehearsal]") {
  const std::string text = write_recording(testing::sample_recording());
  std::string other = "# kept by the owner\n\n";
  for (const char c : text) other += c == '\n' ? "\r\n" : std::string(1, c);
  CHECK(write_recording(read_recording(other, "run.txt")) == text);
}

TEST_CASE("recording: one of the first version is still read, with no yaw and no push in it", "[rehearsal]") {
  const std::string text = std::string(kHead) + "frame 0 0 4 1 2 0.5 on 1 2 0 off 0 0 0 on-pipe 0 200\nend 1 0\n";
  const Recording back = read_recording(text, "run.txt");
  REQUIRE(back.frames.size() == 1);
  CHECK(back.frames[0].station == 4.0);
  CHECK(back.frames[0].yaw == 0.0);
  CHECK(back.frames[0].push == 0.0);
  CHECK(back.frames[0].sections[0].turn == 0.5);
  CHECK(back.frames[0].hook_force.y == 200.0);
  CHECK_THAT(write_recording(back), StartsWith("stowpath-recording 3\n"));
}

TEST_CASE("recording: what is wrong is placed by line and column", "[rehearsal]") {
  const std::string head = kHead;
  const std::string frame = "frame 0 0 4 1 2 0.5 on 1 2 0 off 0 0 0 on-pipe 0 200\n";
  CHECK(refusal(head + frame + "end 1 0\n") == "taken");
  CHECK_THAT(refusal(""), StartsWith("run.txt:1:1: error: the recording stops here: its first line is missing"));
  CHECK_THAT(refusal("scene \"a\"\n"), StartsWith("run.txt:1:1: error: this is no recording"));
  CHECK_THAT(refusal("stowpath-recording 4\n"), StartsWith("run.txt:1:20: error: this version is not known"));
  CHECK_THAT(refusal("stowpath-recording 1\nname \"a\"\n"),
             StartsWith("run.txt:2:1: error: the line must begin with scene"));
  CHECK_THAT(refusal("stowpath-recording 1\nscene a\n"),
             StartsWith("run.txt:2:7: error: the scene's name must stand in double quotes"));
  CHECK_THAT(refusal("stowpath-recording 1\nscene \"a\n"),
             StartsWith("run.txt:2:7: error: the quotes of the scene's name do not close"));
  CHECK_THAT(refusal("stowpath-recording 1\nscene \"\xc3\xa9\\n\"\n"), StartsWith("run.txt:2:9: error: a backslash"));
  CHECK_THAT(refusal("stowpath-recording 1\nscene \"\\x41\"\n"), StartsWith("run.txt:2:8: error: a backslash"));
  CHECK_THAT(refusal(head + "pose 1\n"), StartsWith("run.txt:6:1: error: a line begins with frame, event or end"));
  CHECK_THAT(refusal(head + "frame 0 0 4 1 2 nan\n"), StartsWith("run.txt:6:17: error: a section's turn is no number"));
  CHECK_THAT(refusal(head + "frame 0 0 4 1 2 0.5 on 1 2\n"), StartsWith("run.txt:6:27: error: the slack is missing"));
  CHECK_THAT(refusal(head + "frame 0 0 4 1 2 0.5 yes 1 2 3\n"),
             StartsWith("run.txt:6:21: error: \"yes\" must be on or off"));
  CHECK_THAT(refusal(head + "frame 0 x\n"), StartsWith("run.txt:6:9: error: the move must be a whole number"));
  CHECK_THAT(refusal(head + "frame 1" + frame.substr(7) + frame),
             StartsWith("run.txt:7:7: error: time goes back here"));
  CHECK_THAT(refusal(head + "event 0 tuoch \"\" \"\" 0 0\n"), StartsWith("run.txt:6:9: error: \"tuoch\" is no event"));
  CHECK_THAT(refusal(head + frame), StartsWith("run.txt:6:1: error: the recording stops here: its end is missing"));
  CHECK_THAT(refusal(head + frame + "end 2 0\n"), StartsWith("run.txt:7:5: error: there are 1 here"));
  CHECK_THAT(refusal(head + "end 0 0\nmore\n"), StartsWith("run.txt:7:1: error: nothing belongs after the end"));
  CHECK_THAT(refusal(head + "end 0 0 0\n"), StartsWith("run.txt:6:9: error: nothing belongs after this"));
  CHECK_THAT(refusal("stowpath-recording 1\nscene \"\xff\"\n"), StartsWith("run.txt:1:1: error: the text is no UTF-8"));
}

TEST_CASE("recording: what is wrong with its account is placed too", "[rehearsal]") {
  std::string head = kHead;
  head.replace(head.find('1'), 1, "3");
  const std::string bounds = "bounds 0.001 0 1 0\n", end = "end 0 0\n";
  CHECK(refusal(head + bounds + "half-step 1 2 3 none 4\ntrouble slack \"\" \"\" 2 0\ncaution \"a\"\n" + end) == "taken");
  CHECK_THAT(refusal(head + bounds + bounds + end), StartsWith("run.txt:7:1: error: bounds stand here twice"));
  CHECK_THAT(refusal(head + "caution \"a\"\n" + bounds + end),
             StartsWith("run.txt:6:1: error: bounds belong before this"));
  CHECK_THAT(refusal(head + bounds + "trouble slakc \"\" \"\" 2 0\n" + end),
             StartsWith("run.txt:7:9: error: \"slakc\" is no trouble"));
  CHECK_THAT(refusal(head + bounds + "half-step 1 2 3 nona 4\n" + end),
             StartsWith("run.txt:7:17: error: the pushes' difference is no number"));
  CHECK_THAT(refusal(head + bounds + "half-step 1 2 3 4 none\nhalf-step 1 2 3 4 none\n" + end),
             StartsWith("run.txt:8:1: error: half-step stands here twice"));
  CHECK_THAT(refusal(head + bounds + "more\n"), StartsWith("run.txt:7:1: error: a line begins with frame, event or end"));
  CHECK_THAT(refusal(std::string(kHead) + bounds + end), StartsWith("run.txt:6:1: error: a line begins with frame"));
}

TEST_CASE("recording: what could not be read back is not written", "[rehearsal]") {
  const auto refused = [](auto change) {
    Recording out = testing::sample_recording();
    change(out);
    CHECK_THROWS_AS(write_recording(out), std::invalid_argument);
  };
  refused([](Recording& r) { r.step = std::nan(""); });
  refused([](Recording& r) { r.frames[3].hoist.pull = INFINITY; });
  refused([](Recording& r) { r.frames[3].time = 0.0; });
  refused([](Recording& r) { r.events[1].time = -1.0; });
  refused([](Recording& r) { r.sections = 4; });
  refused([](Recording& r) { r.scene = "\xff"; });
  refused([](Recording& r) { r.account.emplace().bounds.push = NAN, r.account->bounds.compared = true; });
  refused([](Recording& r) { r.account.emplace().cautions.push_back("\xff"); });
}
