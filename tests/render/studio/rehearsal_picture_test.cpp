#include "render/studio/rehearsal_picture.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>
#include <numbers>

#include "render/paint/svg.h"
#include "render/report/recording_words.h"
#include "render/report/rehearsal_report.h"
#include "render/sheet/lettering.h"
#include "render/sheet/rope_drawing.h"
#include "render/studio/live_run.h"
#include "render/studio/rehearsal_gauges.h"
#include "render/studio/seat_dial.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"
#include "tests/support/xml_check.h"

using namespace stowpath;
using namespace stowpath::testing;
using Catch::Contains;

namespace {

constexpr Vec2 kPane{246.0, 127.0}, kLow{246.0, 84.0};
constexpr double kForever = std::numeric_limits<double>::infinity();
constexpr double kDegree = std::numbers::pi / 180.0;

/// The demo, let go of while the lower section hangs.
struct Shown {
  Scene scene = parse_scene(gallery_text("demo"), "demo");
  Model model = build_model(scene);
  LiveRun run{scene, model, {}};

  // So long into the hang, with the line on.
  void go(double time) {
    const auto hang = std::find_if(model.moves.begin(), model.moves.end(),
                                   [](const Move& move) { return move.kind == MoveKind::hang; });
    const int number = static_cast<int>(hang - model.moves.begin());
    while (!run.begins(number)) run.run(run.time() + 0.1, kForever);
    run.run(*run.begins(number) + time, kForever);
  }
  RecordingSubject subject() const { return {scene, model, run.report().recording}; }
  RehearsalWish wish() const {
    const LiveRun::Moment now = run.now();
    return {subject(), now.frame, now.meant, run.touches(), now.push, now.gust};
  }
  std::string picture(const RehearsalWish& wish) const {
    return paint_svg(rehearsal_picture(wish, {kPane, whole_rehearsal(wish.subject, kPane)}));
  }
};

// All of it, in the order in which it is drawn.
std::string lettering(const DisplayList& list) {
  std::string all;
  for (const Item& item : list.items)
    if (const Text* text = std::get_if<Text>(&item)) all += text->words + " ";
  return all;
}

double length_of(const Path& path) {
  double length = 0.0;
  for (std::size_t i = 1; i < path.points.size(); ++i) length += norm(path.points[i] - path.points[i - 1]);
  return length;
}

}  // namespace

TEST_CASE("rehearsal picture: it shows the stair, the pose meant, lines with their pull, and what it is", "[studio]") {
  Shown shown;
  shown.go(0.5);
  const std::string svg = shown.picture(shown.wish());
  CHECK(xml_fault(svg) == "");
  for (const char* layer : {"\"stair\"", "\"meant\"", "\"lines\"", "\"touches\"", "\"words\""})
    CHECK_THAT(svg, Contains(layer));
  REQUIRE(shown.run.now().frame.hoist.on);
  CHECK_THAT(svg, Contains(rope_words(shown.run.now().frame.hoist, DisplayUnits::metric)));
  CHECK_THAT(svg, Contains("proves no clearance") && Contains("step 1/960 s"));
}

TEST_CASE("rehearsal picture: a stroke is marked with its words while it is fresh", "[studio]") {
  Shown shown;
  shown.go(8.0);
  const double before = shown.run.time();
  shown.run.add({TryKind::let_go});
  const auto struck = [&] {
    return !shown.run.touches().empty() && shown.run.touches().back().event.time > before &&
           worth_telling(shown.run.touches().back().event);
  };
  while (!struck()) shown.run.run(shown.run.time() + 0.05, kForever);
  const std::string words = event_sentence(shown.run.touches().back().event, DisplayUnits::metric);
  const std::string fresh = shown.picture(shown.wish());
  CHECK_THAT(fresh, Contains(words));
  const auto told = [&](const std::string& svg) {
    return svg.find(words, svg.find("\"touches\"")) != std::string::npos;
  };
  CHECK(told(fresh));
  RehearsalWish later = shown.wish();
  later.shown.time += 3.0;
  CHECK_FALSE(told(shown.picture(later)));
}

TEST_CASE("rehearsal picture: a push says its force and height, a gust its speed", "[studio]") {
  Shown shown;
  shown.go(1.0);
  RehearsalWish wish = shown.wish();
  wish.push = PushSight{{1.4, shown.model.floor_level + 1.1}, -120.0, true};
  wish.gust = 10.0;
  const std::string svg = shown.picture(wish);
  CHECK_THAT(svg, Contains("push 120 N at 1.10 m") && Contains("gust of 10.00 m/s"));
}

TEST_CASE("rehearsal picture: a zone entered is named with what came into it", "[studio]") {
  Shown shown;
  RehearsalWish wish = shown.wish();
  Recording recording = shown.run.report().recording;
  recording.frames.push_back(wish.shown);
  recording.events.push_back({0.0, RecordedEventKind::zone_entered, "side rail", "photo wall"});
  const RecordingSubject subject{shown.scene, shown.model, recording};
  const std::string svg = shown.picture({subject, wish.shown});
  CHECK_THAT(svg, Contains("\"zone-entered\"") && Contains("side rail comes into photo wall"));
}

TEST_CASE("seat: a force straight up bears at the crown of hooks that hang plumb, less the lean", "[studio]") {
  const Scene scene = parse_scene(gallery_text("demo"), "demo");
  RecordedFrame frame;
  frame.hook_force = {0.0, 300.0};
  for (const double lean : {0.0, 20.0, 55.0}) {
    frame.sections[0].turn = lean * kDegree - 0.5 * std::numbers::pi;
    const auto seat = seat_sight(scene, frame);
    REQUIRE(seat);
    CHECK(seat->at / kDegree == Approx(90.0 - lean).margin(1e-9));
    CHECK((seat->at + seat->arc_left) / kDegree == Approx(195.0).margin(0.5));
    CHECK_FALSE(seat->curl_holds);
  }
  frame.hook_force = {0.0, -50.0};
  CHECK(seat_sight(scene, frame)->curl_holds);
  frame.hook_force = {};
  CHECK_FALSE(seat_sight(scene, frame));
}

TEST_CASE("rope: taut it is straight and the wider the harder it is pulled; slack it sags by its excess", "[studio]") {
  const Scene scene = parse_scene(gallery_text("demo"), "demo");
  const Model model = build_model(scene);
  const Rigging rigging = hoist_rigging(scene);
  const SectionPoses sections = place_sections(model.linkage, working_configuration(model));
  const ViewFrame frame{{0.0, 100.0}, {40.0, ""}, false};
  const auto drawn = [&](RecordedLine now) {
    DisplayList list;
    Labels labels;
    draw_rope(list, labels, frame, {rigging, sections, now, 400.0});
    std::vector<Path> paths;
    for (const Item& item : list.items)
      if (const Path* path = std::get_if<Path>(&item)) paths.push_back(*path);
    return paths;
  };
  const auto weak = drawn({true, 50.0, 0.0, 0.0}), hard = drawn({true, 350.0, 0.0, 0.0});
  const auto slack = drawn({true, 0.0, 0.0, 0.12}), off = drawn({false, 0.0, 0.0, 0.0});
  REQUIRE(weak.size() == rigging.points.size() - 1);
  CHECK(hard.front().pen->width > 2.0 * weak.front().pen->width);
  CHECK(off.size() < weak.size());
  double excess = 0.0;
  for (std::size_t i = 0; i < slack.size(); ++i) {
    CHECK(slack[i].pen->dash == Dash::hidden);
    excess += length_of(slack[i]) - length_of(weak[i]);
  }
  CHECK(excess == Approx(frame.scale.paper(0.12)).epsilon(0.05));  // a parabola's length to its second order
  CHECK(rope_words({true, 0.0, 0.0, 0.12}, DisplayUnits::metric) == "slack 120 mm");
  CHECK(rope_words({true, 98.4, 0.0, 0.0}, DisplayUnits::metric) == "99 N");
}

TEST_CASE("rehearsal gauges: a point of the plots and the line at the time shown agree", "[studio]") {
  Shown shown;
  shown.go(3.0);
  for (const double time : {0.0, 3.0, 11.0}) {
    const RecordedFrame frame = shown.run.at(time).frame;
    const DisplayList list = rehearsal_gauges(shown.subject(), frame, kLow);
    CHECK(xml_fault(paint_svg(list)) == "");
    int lines = 0;
    for (const Item& item : list.items) {
      const Path* path = std::get_if<Path>(&item);
      if (!path || !path->pen || path->pen->ink != Ink::blue || path->points.size() != 2) continue;
      if (path->pen->dash != Dash::solid || path->points[0].x != path->points[1].x) continue;
      ++lines;
      const auto found = time_under(shown.run.report().recording, kLow, path->points[1] - Vec2{0.0, 0.1});
      REQUIRE(found);
      CHECK(*found == Approx(frame.time).margin(1e-9));
    }
    CHECK(lines == 2);
  }
  CHECK_FALSE(time_under(shown.run.report().recording, kLow, {5.0, 20.0}));
}

TEST_CASE("rehearsal gauges: what is said in a small pane ends in it, and in the smallest the caution alone stands",
          "[studio]") {
  Shown shown;
  shown.go(0.5);
  const RecordedFrame frame = shown.run.now().frame;
  const Vec2 small{119.0, 64.0}, smallest{42.0, 32.0};
  const DisplayList list = rehearsal_gauges(shown.subject(), frame, small);
  CHECK_THAT(lettering(list), Contains("curl's end") && Contains("pull at the hand, N") && Contains("bears at"));
  for (const Item& item : list.items) {
    const Text* text = std::get_if<Text>(&item);
    if (text && text->anchor == Anchor::start) CHECK(text->at.x + text_width(text->words, text->size) <= small.x);
  }
  const std::string said = lettering(rehearsal_gauges(shown.subject(), frame, smallest));
  CHECK_THAT(said, Contains("Keep people out") && !Contains("curl"));
  CHECK(time_under(shown.run.report().recording, small, {0.8 * small.x, 20.0}));
  CHECK_FALSE(time_under(shown.run.report().recording, smallest, {0.8 * smallest.x, 20.0}));
}

TEST_CASE("rehearsal gauges: limits of who pulls, the hooks' arc and the caution are in view", "[studio]") {
  Shown shown;
  shown.go(0.5);
  const std::string said = lettering(rehearsal_gauges(shown.subject(), shown.run.now().frame, kLow));
  for (const char* words :
       {"easy, suggested", "curl's end", "shank", "Clearance is what dryfit proves", "Keep people out"})
    CHECK_THAT(said, Contains(words));
  CHECK_THAT(said, Contains(seat_words(shown.subject(), shown.run.now().frame)));
}
