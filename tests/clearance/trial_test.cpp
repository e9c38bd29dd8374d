#include "sim/clearance/trial.h"

#include <catch2/catch.hpp>

using namespace stowpath;

namespace {

/// Two sections, straight, lifted without folding; the line runs from the ceiling to a pick on one of them, in their
/// own plane.
Model lifted_by_line(int picked, Vec2 pick, Vec2 ceiling) {
  Model model;
  model.linkage = {{1.0, 3.0}, 2, {1.5, 1.5, 0.0}, {-0.1, 0.0}, {-1.0, 0.0}};
  model.span = {0.0, 8.0};
  for (int j = 0; j < 2; ++j) {
    model.stair.push_back({PartKind::tread, "tread", j, make_box({0.7, -0.05}, {0.73, 0.05}), {{-0.25, 0.25}}});
  }
  model.ropes.push_back({PartKind::line, "line", {-1, ceiling, {4.0, 4.0}}, {picked, pick, {0.0, 0.0}}, 0.004,
                         LineState::hooked_on});
  Move lift;
  lift.index = 1;
  lift.hooked_on = true;
  lift.pinned = {true};
  lift.segments.resize(1);
  lift.segments[0].from.station = lift.segments[0].to.station = 4.0;
  lift.segments[0].from.lean = 0.3;
  lift.segments[0].to.lean = 1.4;
  model.moves.push_back(lift);
  return model;
}

Verdict verdict_of(const Model& model) { return Trial(model, {}).run(0).result.verdict; }

}  // namespace

TEST_CASE("trial: a line that sweeps through another section is found in a lift that folds nothing", "[clearance]") {
  // From over the pivot to the lower section the line lies along the upper one.
  CHECK(verdict_of(lifted_by_line(1, {0.5, 0.0}, {1.05, 3.1})) == Verdict::interference);
  // From the upper section straight away from the stair it meets neither.
  CHECK(verdict_of(lifted_by_line(0, {1.4, 0.08}, {4.0, 4.0})) == Verdict::clear);
}

TEST_CASE("trial: a line picked on the upper section is found where it crosses the foot", "[clearance]") {
  // From a low point in front, the line to the upper section's back passes the lower one.
  CHECK(verdict_of(lifted_by_line(0, {1.4, -0.2}, {3.6, 0.0})) == Verdict::interference);
}

TEST_CASE("trial: what stands in the way of a rolling line's upper end is found, the track that holds it is not",
          "[clearance]") {
  Model model = lifted_by_line(0, {1.4, 0.08}, {4.0, 4.0});
  model.ropes[0].a.rolls = true;
  model.ropes[0].a.stations = {0.0, 0.0};
  model.moves[0].segments[0].to.station = 6.0;
  model.room.push_back({PartKind::obstacle, "track", make_box({3.9, 4.0}, {4.1, 4.1}), {{-0.5, 8.5}}});
  CHECK(verdict_of(model) == Verdict::interference);
  model.ropes[0].id = 1;
  model.room[0].id = 2;
  ContactRule hangs;
  hangs.a = {1};
  hangs.b = {2};
  hangs.centre = {4.0, 4.0};
  hangs.radius = 0.05;
  hangs.depth = 0.005;
  model.contacts.push_back(hangs);
  CHECK(verdict_of(model) == Verdict::clear);
  model.contacts[0].depth = 0.003;  // the rope's end is 4 mm thick
  CHECK(verdict_of(model) == Verdict::interference);
  model.contacts[0].depth = 0.005;
  model.room.push_back({PartKind::obstacle, "beam", make_box({3.9, 3.9}, {4.1, 4.1}), {{5.0, 5.1}}});
  CHECK(verdict_of(model) == Verdict::interference);
}
