#include "sim/hoist/pull_work.h"

#include <catch2/catch.hpp>

#include <cmath>

#include "sim/scene/reader.h"
#include "tests/support/gallery.h"
#include "tests/support/random_rig.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

double energy_gained(const LiftRig& rig, const Model& model) {
  double gained = 0.0;
  for (const Move& move : model.moves) {
    if (!is_hauled(move)) continue;
    for (const Segment& segment : move.segments)
      gained += potential_energy(rig.linkage, segment.to, rig.masses) -
                potential_energy(rig.linkage, segment.from, rig.masses);
  }
  return gained;
}

double done(const WorkBook& book) { return book.hand + book.fold_hand + book.turning; }

// One section on a line drawn at random, lifted from a random lean to a greater one.
Model random_lift(std::mt19937& random, Scene& scene) {
  scene = testing::one_section_scene();
  scene.hoist->ceiling_point =
      RoomPoint{{testing::draw(random, 2.3, 3.5), testing::draw(random, 4.0, 5.0)}, testing::draw(random, 3.5, 4.5)};
  scene.hoist->pick = {1, testing::draw(random, 1.2, 2.2), testing::draw(random, -0.05, 0.05)};
  scene.hoist->line.parts = 1 + static_cast<int>(random() % 6);
  Model model = build_model(scene);
  Configuration from;
  from.station = 4.0;
  from.lean = testing::draw(random, 0.3, 0.8);
  Configuration to = from;
  to.lean = testing::draw(random, 0.9, 1.4);
  model.moves = {{1, MoveKind::lift, {{SegmentKind::straight, from, to, {}, {1.0, 0.0}}}, ZoneState::moving, true, {}}};
  return model;
}

}  // namespace

TEST_CASE("pull work: without friction the hand's work is the gain in potential energy over any lift", "[hoist]") {
  std::mt19937 random(4141);
  for (int n = 0; n < 100; ++n) {
    Scene scene;
    const Model model = random_lift(random, scene);
    const LiftRig rig = lift_rig(scene, model, FrictionEnd::mean, 0.005);
    CHECK(work_book(rig, model, false).hand == Approx(energy_gained(rig, model)).epsilon(1e-9));  // the bound
  }
}

TEST_CASE("pull work: with friction the losses are the hand's work less the gain", "[hoist]") {
  std::mt19937 random(4242);
  for (int n = 0; n < 100; ++n) {
    Scene scene;
    const Model model = random_lift(random, scene);
    const LiftRig rig = lift_rig(scene, model, FrictionEnd::most, 0.005);
    const WorkBook book = work_book(rig, model, true);
    CHECK(book.hand - energy_gained(rig, model) == Approx(book.lost()).epsilon(1e-9));
    CHECK(book.lost() > 0.0);
    for (const PullLoss& loss : book.losses) CHECK(loss.energy >= 0.0);
  }
}

// A drag ends with the foot at full stretch or plumb, where its lower section turns fast: the quadrature must stand
// that.
TEST_CASE("pull work: the book balances over whole procedures, drag, swing and fold included", "[hoist]") {
  for (const char* name : {"demo", "three-section", "costume-loft", "crowded-workshop"}) {
    INFO(name);
    const Scene scene = parse_scene(testing::rig_text(name), name);
    const Model model = build_model(scene);
    for (const FrictionEnd end : {FrictionEnd::least, FrictionEnd::mean, FrictionEnd::most})
      for (const bool friction : {true, false}) {
        const LiftRig rig = lift_rig(scene, model, end, 0.005);
        const WorkBook book = work_book(rig, model, friction);
        CHECK(book.gain == Approx(energy_gained(rig, model)).epsilon(1e-9));
        CHECK(done(book) - book.gain == Approx(book.lost()).margin(1e-9 * std::abs(book.gain)));
      }
  }
}

TEST_CASE("pull work: a move that lets the stair down costs as friction does, not less", "[hoist]") {
  std::mt19937 random(4343);
  Scene scene;
  Model model = random_lift(random, scene);
  std::swap(model.moves[0].segments[0].from, model.moves[0].segments[0].to);
  const LiftRig rig = lift_rig(scene, model, FrictionEnd::mean, 0.005);
  const WorkBook book = work_book(rig, model, true);
  CHECK(book.hand < 0.0);
  CHECK(book.gain < book.hand);  // more energy comes down than reaches the hand
  CHECK(book.hand - book.gain == Approx(book.lost()).epsilon(1e-9));
}
