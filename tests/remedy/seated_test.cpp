#include "sim/remedy/seated.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "sim/mechanism/pivot_play.h"
#include "sim/mechanism/standing.h"
#include "sim/remedy/assess.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

using namespace stowpath;
using testing::changed;
using testing::gallery_text;

namespace {

Assessment assessed(const std::string& text, const AssessOptions& options = {}) {
  return assess(parse_scene(text, "seated.yaml"), options);
}

// A floor that grips: the standing foot may be pushed far either way.
Assessment on_rough_floor(const std::string& text, const AssessOptions& options = {}) {
  Scene scene = parse_scene(text, "seated.yaml");
  scene.friction.floor = {0.3, 0.7};
  return assess(scene, options);
}

AssessOptions without_seat() {
  AssessOptions options;
  options.seat = false;
  return options;
}

}  // namespace

TEST_CASE("assess: the gallery's cured scenes stay clear with the hooks' true wander", "[remedy]") {
  for (const char* name : {"demo-cured", "costume-loft", "rolling-ladder", "three-section"}) {
    INFO(name);
    const Assessment found = assessed(gallery_text(name));
    CHECK(found.fit.verdict == Verdict::clear);
    CHECK(std::any_of(found.model.moves.begin(), found.model.moves.end(), [](const Move& m) { return m.seat; }));
  }
}

TEST_CASE("assess: without the seat nothing is counted with but the scene's range", "[remedy]") {
  const Assessment found = assessed(gallery_text("demo-cured"), without_seat());
  const double range = found.model.seat_range;
  for (const Move& move : found.model.moves) {
    REQUIRE(move.seat);
    CHECK(move.seat->touch == Interval{-range, range});
    CHECK_FALSE(counts_further(found.model, move));
  }
  CHECK(found.seat.poses.empty());
}

// A margin that the scene's 30 degrees leave and the true range takes: 7.6 mm of room, 3 mm of margin.
TEST_CASE("assess: a margin that only the assumed seat range leaves is not called clear", "[remedy]") {
  const std::string text = changed(gallery_text("demo-cured"), "hook: 3", "hook: 3.7");
  CHECK(assessed(text, without_seat()).fit.verdict == Verdict::clear);
  const Assessment found = on_rough_floor(text);
  CHECK(found.fit.verdict != Verdict::clear);
  const Finding* saddle = testing::find(found.fit, FindingKind::undecided, "hook curl", "bracket saddle");
  REQUIRE(saddle);
  CHECK(saddle->move_kinds.front() == MoveKind::roll);
}

TEST_CASE("assess: a higher pivot lets the standing stair be steeper, by where its foot stays", "[remedy]") {
  const Assessment still = assessed(gallery_text("demo-cured"), without_seat());
  const Assessment found = on_rough_floor(gallery_text("demo-cured"));
  const auto roll = [](const Assessment& a) { return a.model.moves[0].segments[0]; };
  REQUIRE(stands_over_stations(found.model.moves[0]));
  const double before = std::min(roll(still).from.lean, roll(still).to.lean);
  const double after = std::min(roll(found).from.lean, roll(found).to.lean);
  const Scene scene = parse_scene(gallery_text("demo-cured"), "seated.yaml");
  const Vec2 axle = stand(scene, found.model.linkage).axle;
  const auto drop = [&](double lean) { return norm(axle) * std::cos(lean + std::atan2(axle.y, axle.x)); };
  const double higher = found.model.moves[0].seat->rise - still.model.moves[0].seat->rise;
  CHECK(higher > 0.0);
  CHECK(drop(after) - drop(before) == Approx(higher).margin(1e-12));
  // 61 degrees towards the room: the centre is 7.3 mm (1 - cos 61) higher.
  CHECK(found.model.moves[0].seat->rise == Approx(0.0073 * (1.0 - std::cos(61.0 * 0.0174533))).margin(2e-4));
}

TEST_CASE("assess: findings of the seat are ranked and numbered with the others, and count", "[remedy]") {
  const Assessment found =
      assessed(changed(gallery_text("demo-cured"), "ceiling point: {out: 2550", "ceiling point: {out: 1300"));
  CHECK(found.fit.verdict == Verdict::interference);
  REQUIRE_FALSE(found.fit.findings.empty());
  const auto seat = std::find_if(found.fit.findings.begin(), found.fit.findings.end(),
                                 [](const Finding& f) { return f.kind == FindingKind::seat; });
  REQUIRE(seat != found.fit.findings.end());
  for (auto graver = found.fit.findings.begin(); graver != seat; ++graver)
    CHECK(graver->kind == FindingKind::interference);
  for (std::size_t i = 0; i < found.fit.findings.size(); ++i)
    CHECK(found.fit.findings[i].id == "F" + std::to_string(i + 1));
  // Unseated, all of the slack counts: both ways, 2 (inside - pipe radius).
  const auto& moves = found.model.moves;
  CHECK(std::any_of(moves.begin(), moves.end(), [](const Move& m) { return m.seat && m.seat->touch.hi > 3.14; }));
}
