#include "tests/campaign/rehearsal_trial.h"

#include <algorithm>
#include <random>
#include <utility>
#include <vector>

#include "sim/rehearsal/side_world.h"
#include "tests/support/random_outlines.h"

namespace stowpath::testing {
namespace {

constexpr double kStep = 1.0 / 960.0, kSeconds = 1.5;
constexpr int kStepsALook = 16;
constexpr double kWell = 3.0 * kWorldSkin;  // parts go two skins at most from one look of the world to the next

Configuration random_start(const Model& model, std::mt19937& random) {
  const auto move = static_cast<std::size_t>(uniform(random, 0.0, static_cast<double>(model.moves.size()) - 1e-9));
  const std::vector<Segment>& segments = model.moves[move].segments;
  return at(model.linkage, segments.front(), uniform(random, 0.0, 1.0));
}

SideSetup setup_of(const Model& model, double station, std::mt19937& random) {
  SideSetup setup;
  setup.step = kStep;
  setup.station = station;
  setup.friction = {0.3, 0.2, 0.5};
  setup.hook_radius = 0.02;
  setup.hinge_radius = 0.005;
  for (int j = 0; j < model.linkage.sections; ++j) {
    const double length = model.linkage.length[static_cast<std::size_t>(j)], mass = uniform(random, 6.0, 16.0);
    setup.masses.push_back({mass, {0.5 * length, 0.0}, mass * length * length / 12.0});
  }
  return setup;
}

bool holds(const std::vector<std::pair<int, int>>& pairs, int a, int b) {
  return std::find(pairs.begin(), pairs.end(), std::pair{a, b}) != pairs.end();
}

// Every pair that the world could have seen, and those that it says it sees.
void look(const SideWorld& world, RehearsalAnswer& answer) {
  ++answer.looks;
  const auto touching = world.touching(), aside = world.met_from_start();
  const SectionPoses X_W = world.poses();
  const auto& parts = world.parts();
  for (int a = 0; a < static_cast<int>(parts.size()); ++a)
    for (int b = a + 1; b < static_cast<int>(parts.size()); ++b) {
      const WorldPart &first = parts[static_cast<std::size_t>(a)], &second = parts[static_cast<std::size_t>(b)];
      if (second.kind == PartKind::zone || !can_touch(first, second, world.hooks_on_pipe(), false)) continue;
      if (holds(touching, a, b) || holds(aside, a, b)) continue;
      if (part_distance(first, second, X_W) < -kWell) ++answer.missed;
    }
}

}  // namespace

RehearsalAnswer try_rehearsal(const Model& model, std::uint64_t seed) {
  std::mt19937 random(static_cast<std::mt19937::result_type>(seed * 747796405U + 29U));
  const Configuration start = random_start(model, random);
  SideWorld world(model, setup_of(model, start.station, random), start);
  RehearsalAnswer answer;
  double push = 0.0;
  for (int i = 0; i < static_cast<int>(kSeconds / kStep); ++i) {
    if (i % 96 == 0) push = uniform(random, -120.0, 120.0);
    const int last = model.linkage.sections - 1;
    world.push(last, {0.8 * model.linkage.length[static_cast<std::size_t>(last)], 0.0}, {push, 0.0});
    world.step();
    for (const WorldTouch& touch : world.new_touches()) {
      if (world.parts()[static_cast<std::size_t>(touch.b)].kind == PartKind::zone) continue;
      ++answer.touches;
      answer.greatest = std::max(answer.greatest, touch.gap);
      if (touch.gap > kWorldSkin) ++answer.unconfirmed;
    }
    if (i % kStepsALook == 0) look(world, answer);
  }
  return answer;
}

}  // namespace stowpath::testing
