#include "tests/support/free_stair.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <catch2/catch.hpp>

#include "tests/support/sample_scene.h"

namespace stowpath::testing {

namespace {

// At a lean, straight between the two samples next to it; NaN beyond those of the move.
double static_pull(const PullReport& pull, std::size_t move, double lean, double PullSample::*which) {
  for (std::size_t i = 1; i < pull.samples.size(); ++i) {
    const PullSample &a = pull.samples[i - 1], &b = pull.samples[i];
    if (a.move != move || b.move != move || lean < a.pose.lean || lean > b.pose.lean) continue;
    const double share = (lean - a.pose.lean) / (b.pose.lean - a.pose.lean);
    return a.*which + share * (b.*which - a.*which);
  }
  return NAN;
}

}  // namespace

Scene free_stair() {
  Scene scene = one_section_scene();
  scene.obstacles.clear();
  scene.zones.clear();
  scene.room.depth = 8.0;
  scene.rail.brackets.stations = {0.3, 7.18};
  scene.rail.joints.clear();
  scene.loft.edge = 0.7;
  scene.hoist->ceiling_point->at.x = 3.1;  // over the pick when it is up: the line draws the hooks on, not off
  scene.hoist->pick.along = 2.0;
  return scene;
}

Scene slow(Scene scene, double line_speed) {
  Winch winch;
  winch.drum = 0.1;
  winch.ratio = 1.0;
  winch.speed = 60.0 * line_speed / (std::numbers::pi * (winch.drum + scene.hoist->line.diameter));
  scene.hoist->pulled_by = PulledBy::powered_winch;
  scene.hoist->winch = winch;
  return scene;
}

double lean_of(const RecordedFrame& frame) { return frame.sections[0].turn + 0.5 * std::numbers::pi; }

double worst_share(const Scene& scene, const RehearsalReport& report, const MoveRun& run, double PullSample::*which) {
  const PullReport pull = pull_through(scene, build_model(scene));
  double worst = 0.0;
  int looked = 0;
  for (const RecordedFrame& frame : report.recording.frames) {
    if (frame.time < run.begins + 4.0 || frame.time > run.ends - 3.0) continue;
    const double statics = static_pull(pull, static_cast<std::size_t>(run.move), lean_of(frame), which);
    if (!std::isfinite(statics)) continue;
    worst = std::max(worst, std::abs(frame.hoist.pull / statics - 1.0));
    ++looked;
  }
  REQUIRE(looked > 20);
  return worst;
}

}  // namespace stowpath::testing
