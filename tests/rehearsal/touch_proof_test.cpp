#include "tests/support/touch_proof.h"

#include <algorithm>
#include <cmath>

#include <catch2/catch.hpp>

#include "sim/rehearsal/rehearsal.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"
#include "tests/support/random_scene.h"

namespace stowpath {
namespace {

using testing::TouchAndProof;

SectionPoses poses_in(const RecordedFrame& frame) {
  SectionPoses X_W{};
  for (std::size_t j = 0; j < X_W.size(); ++j) X_W[j] = make_pose(frame.sections[j].origin, frame.sections[j].turn);
  return X_W;
}

struct Seen {
  TouchAndProof both;
  std::string names;
};

// Touches of a whole rehearsal while the crew are at a move, each beside the proof.
class Rehearsed {
 public:
  explicit Rehearsed(const Scene& scene, double bound_scale = 1.0) : model_(build_model(scene)) {
    options_.least = false;
    options_.bound_scale = bound_scale;
    RehearsalOptions options;
    options.compare = false;
    options.frame = options.step;  // every pose is kept
    report_ = rehearse(scene, model_, options);
    for (const TouchRun& touch : report_.touches) take(touch);
  }

  std::vector<Seen> seen;

 private:
  // A step's touches are of the pose that it began with.
  const RecordedFrame& frame_before(double time) const {
    const auto& frames = report_.recording.frames;
    return *std::prev(std::lower_bound(frames.begin(), frames.end(), time,
                                       [](const RecordedFrame& frame, double t) { return frame.time < t - 1e-9; }));
  }

  void take(const TouchRun& touch) {
    if (touch.move < 0) return;
    const RecordedFrame& frame = frame_before(touch.first);
    const SectionPoses X_W = poses_in(frame);
    const std::vector<WorldPart> parts = world_parts(model_, frame.station);
    Trial trial(model_, options_);
    const MoveTrial proven = trial.run(touch.move);
    const auto [a, b] = pair_of(parts, touch, X_W);
    CHECK(part_distance(parts[a], parts[b], X_W) == Approx(touch.gap).margin(1e-6));
    seen.push_back(
        {testing::lay_beside(model_, touch.move, proven, {static_cast<int>(a), parts[a], parts[b], X_W, frame.station}),
         touch.part + " and " + touch.other});
  }

  // Of those with these names, the two that are as far apart as the touch says.
  std::pair<std::size_t, std::size_t> pair_of(const std::vector<WorldPart>& parts, const TouchRun& touch,
                                              const SectionPoses& X_W) const {
    std::pair<std::size_t, std::size_t> best{0, 0};
    double least = INFINITY;
    for (std::size_t a = 0; a < parts.size(); ++a)
      for (std::size_t b = 0; b < parts.size(); ++b) {
        const bool named = (parts[a].name == touch.part && parts[b].name == touch.other) ||
                           (parts[b].name == touch.part && parts[a].name == touch.other);
        if (!named || parts[a].section <= parts[b].section) continue;
        const double off = std::abs(part_distance(parts[a], parts[b], X_W) - touch.gap);
        if (off < least) least = off, best = {a, b};
      }
    return best;
  }

  Model model_;
  DryFitOptions options_;
  RehearsalReport report_;
};

// The crew haul on lines that stretch, over joints that rub: how far the stair is off its course is its own affair.
TEST_CASE("touches: whatever a rehearsal runs into, the proof allows", "[rehearsal][random]") {
  int touches = 0, deciding = 0;
  const auto try_scene = [&](const std::string& text) {
    for (const Seen& seen : Rehearsed(parse_scene(text, "test.yaml")).seen) {
      INFO(seen.names << ": seen " << seen.both.seen << ", off the course by " << seen.both.off << ", at least "
                      << seen.both.at_least);
      CHECK_FALSE(seen.both.contradicted());
      ++touches;
      deciding += seen.both.breaks_margin();
    }
  };
  for (const char* name : {"demo", "crowded-workshop"}) try_scene(testing::rig_text(name));
  for (unsigned seed = 1; seed <= 10; ++seed) try_scene(testing::random_scene(seed));
  CAPTURE(touches, deciding);
  CHECK(touches > 8);
  CHECK(deciding > 4);
}

}  // namespace
}  // namespace stowpath
