#include "render/studio/playback.h"

#include <catch2/catch.hpp>

#include "tests/support/gallery.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

Model demo() { return model_of(gallery_text("demo-cured")); }

bool same(const Configuration& a, const Configuration& b) {
  return a.station == b.station && a.lean == b.lean && a.folds == b.folds;
}

}  // namespace

TEST_CASE("playback: the pictures run on from move to move without a jump", "[studio]") {
  for (const char* name : {"demo", "costume-loft", "three-section", "rolling-ladder"}) {
    const Model model = model_of(gallery_text(name));
    for (std::size_t k = 0; k + 1 < model.moves.size(); ++k) {
      CAPTURE(name, k);
      const Configuration end = pose_at(model, {k, 1.0}), begin = pose_at(model, {k + 1, 0.0});
      CHECK(end.station == Approx(begin.station));
      CHECK(end.lean == Approx(begin.lean).margin(1e-9));
      CHECK(end.folds[0] == Approx(begin.folds[0]).margin(1e-9));
    }
  }
}

TEST_CASE("playback: a move's end is its last segment's end", "[studio]") {
  const Model model = demo();
  for (std::size_t k = 0; k < model.moves.size(); ++k) {
    if (stands_over_stations(model.moves[k])) continue;
    CHECK(same(pose_at(model, {k, 1.0}), at(model.linkage, model.moves[k].segments.back(), 1.0)));
  }
}

TEST_CASE("playback: a roll goes to the station that it is told, standing", "[studio]") {
  const Model model = demo();
  REQUIRE(model.moves[0].kind == MoveKind::roll);
  CHECK(pose_at(model, {0, 1.0}).station == Approx(*model.home));
  CHECK(pose_at(model, {0, 0.5}).lean == model.working_lean);
}

TEST_CASE("playback: stepping visits every end once, there and back", "[studio]") {
  const Model model = demo();
  Place place;
  std::size_t steps = 0;
  while (!at_end(model, place, true)) place = step_forward(model, place), ++steps;
  CHECK(steps == model.moves.size());
  CHECK(place.move == model.moves.size() - 1);
  for (std::size_t k = 0; k < steps; ++k) place = step_back(model, place);
  CHECK(at_end(model, place, false));
  CHECK(step_back(model, place).move == 0);
}

TEST_CASE("playback: a run begins where one is, and at the end over again", "[studio]") {
  const Model model = demo();
  const Place first, last{model.moves.size() - 1, 1.0}, between{1, 0.5};
  for (const bool forward : {true, false}) {
    const Place begun = begin_run(model, forward ? last : first, forward), same = begin_run(model, between, forward);
    CHECK(at_end(model, begun, !forward));
    CHECK((same.move == between.move && same.progress == between.progress));
    CHECK(at_end(model, begin_run(model, forward ? first : last, forward), !forward));
  }
}

TEST_CASE("playback: running for the time of all moves ends at the end, in whatever pieces", "[studio]") {
  const Model model = demo();
  double whole = 0.0;
  for (std::size_t k = 0; k < model.moves.size(); ++k) whole += showing_time(model, k);
  const Place once = run_on(model, {}, 0.5 * whole);
  Place pieces;
  for (int k = 0; k < 50; ++k) pieces = run_on(model, pieces, 0.01 * whole);
  CHECK(pieces.move == once.move);
  CHECK(pieces.progress == Approx(once.progress).margin(1e-9));
  CHECK(at_end(model, run_on(model, once, 0.51 * whole), true));
  CHECK(at_end(model, run_on(model, once, -whole), false));
  const Place back = run_on(model, once, -0.25 * whole), again = run_on(model, back, 0.25 * whole);
  CHECK(again.move == once.move);
  CHECK(again.progress == Approx(once.progress).margin(1e-9));
}
