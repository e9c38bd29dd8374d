#include "sim/loads/sag.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "sim/clearance/dry_fit.h"
#include "sim/loads/hook_forces.h"
#include "tests/support/sample_scene.h"

using namespace stowpath;

namespace {

Scene stiff_rail() {
  Scene scene = testing::sample_scene();
  scene.rail.pipe.wall = 0.0150;
  scene.rail.brackets.stations.clear();
  for (int i = 0; i <= 71; ++i) scene.rail.brackets.stations.push_back(0.2 + 0.1 * i);
  return scene;
}

double reach_of(const Model& model) {
  double reach = 0.0;
  for (const double length : model.linkage.length) reach += length;
  return reach;
}

}  // namespace

TEST_CASE("sag: a hook never sags more than the pipe does anywhere", "[loads]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  const PipeSag sag = pipe_sag(scene, model);
  double deepest = 0.0;
  for (const HookForces& forces : standing_hook_forces(model, climb(scene, model)))
    deepest = std::max(deepest, rail_under(scene, forces, 1).peaks.down.value);
  CHECK(sag.most > 0.0);
  CHECK(sag.most <= deepest * (1 + 1e-12));
  CHECK(sag.most > 0.9 * deepest);  // with one hook taking most, the pipe is lowest near it
  CHECK(sag.least <= 0.0);
  CHECK(sag.difference <= sag.most - sag.least);
  CHECK(model.span.contains(sag.station));
}

TEST_CASE("sag: the bent pipe's pivot is in the middle of its range, and play covers both ends", "[loads]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  const PipeSag sag = pipe_sag(scene, model);
  const Model bent = sagged(scene, model);
  CHECK(bent.linkage.pivot.y - (bent.hook_play - model.hook_play) <= model.linkage.pivot.y - sag.most);
  CHECK(bent.linkage.pivot.y + (bent.hook_play - model.hook_play) >= model.linkage.pivot.y - sag.least);
  CHECK(bent.linkage.pivot.y < model.linkage.pivot.y);
  CHECK(bent.working_leans.contains(model.working_leans.lo));
  CHECK(bent.working_lean > model.working_lean);  // lower, it stands flatter
  CHECK(bent.moves.size() == model.moves.size());
}

TEST_CASE("sag: a drag on the bent pipe stays within the play of the middle one", "[loads]") {
  const Scene scene = testing::sample_scene();
  const Model model = build_model(scene);
  const PipeSag sag = pipe_sag(scene, model);
  const double half = 0.5 * (sag.most - sag.least);
  const Model bent = sagged(scene, model);
  const double grown = bent.hook_play - model.hook_play;
  for (const Move& move : bent.moves)
    for (const Segment& segment : move.segments) {
      if (segment.kind != SegmentKind::drag) continue;
      for (const double way : {-1.0, 1.0})
        for (int k = 1; k < 20; ++k) {
          const Configuration middle = at(bent.linkage, segment, k / 20.0);
          const SectionPoses here = place_sections(bent.linkage, middle);
          const double hinge_up = (here[0] * bent.linkage.distal(0)).y;
          Linkage moved = bent.linkage;
          moved.pivot.y += way * half;
          // The lean at which the moved pivot's hinge stands as high, the lower section leaning as before.
          const HingeSwing swing = hinge_swing(moved, middle, 0);
          Configuration same = middle;
          same.lean = std::acos((moved.pivot.y - hinge_up) / swing.reach) - swing.phase;
          same.folds[0] += (same.lean - middle.lean);
          const SectionPoses there = place_sections(moved, same);
          for (const StairPart& part : bent.stair)
            for (const Vec2 corner : part.outline.core) {
              const auto section = static_cast<std::size_t>(part.section);
              CHECK(norm(there[section] * corner - here[section] * corner) <= grown * (1 + 1e-9));
            }
        }
    }
}

TEST_CASE("sag: clearances fall by no more than the sag lets the stair move", "[loads]") {
  const Scene scene = testing::one_section_scene();
  const Model model = build_model(scene);
  const double sag = pipe_sag(scene, model).most - pipe_sag(scene, model).least;
  const Model bent = sagged(scene, model);
  const DryFit straight_fit = dry_fit(model), bent_fit = dry_fit(bent);
  REQUIRE(straight_fit.moves.size() == bent_fit.moves.size());
  // The play: from the nominal pivot down by half and half again either way. Standing, the lean turns besides: by at
  // most the sag over the stair's height, seen from all of its reach.
  const double turn = bent.working_leans.length() - model.working_leans.length();
  for (std::size_t i = 0; i < straight_fit.moves.size(); ++i) {
    CHECK(bent_fit.moves[i].at_least <= straight_fit.moves[i].at_most + sag + 1e-4);
    CHECK(bent_fit.moves[i].at_least >= straight_fit.moves[i].at_least - sag - turn * reach_of(model) - 1e-4);
  }
}

TEST_CASE("sag: a pipe that hardly bends changes hardly anything", "[loads]") {
  const Scene scene = stiff_rail();
  const Model model = build_model(scene);
  const Model bent = sagged(scene, model);
  CHECK(pipe_sag(scene, model).most < 5e-5);
  CHECK(bent.hook_play - model.hook_play < 2e-4);
}

TEST_CASE("sag: casters stand on the floor with the pipe bent too, and that is no finding", "[loads]") {
  const Scene scene = testing::one_section_scene();
  const DryFit fit = dry_fit(sagged(scene, build_model(scene)));
  for (const Finding& finding : fit.findings) {
    INFO(finding.parts[0] + ", " + finding.parts[1]);
    CHECK_FALSE((finding.parts[0] == "caster" && finding.parts[1] == "floor"));
  }
}
