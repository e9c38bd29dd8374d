#include "sim/loads/standing_stair.h"

#include <algorithm>
#include <cmath>

#include "sim/mechanism/scene_fault.h"
#include "sim/trade/section.h"
#include "sim/trade/us_units.h"

namespace stowpath {

namespace {

constexpr double kBareStep = 0.05;  // between places on a stair without treads [m]

std::vector<double> section_starts(const Linkage& linkage) {
  std::vector<double> starts{0.0};
  for (int k = 0; k + 1 < linkage.sections; ++k)
    starts.push_back(starts.back() + linkage.length[static_cast<std::size_t>(k)]);
  return starts;
}

Vec2 middle_of(const RoundedPolygon& outline) {
  Vec2 sum;
  for (const Vec2 corner : outline.core) sum = sum + corner;
  return (1.0 / static_cast<double>(outline.core.size())) * sum;
}

std::vector<Standpoint> tread_points(const StandingStair& stair) {
  std::vector<Standpoint> points;
  for (const StairPart& part : stair.model.stair) {
    if (part.kind != PartKind::tread) continue;
    const Vec2 at = middle_of(part.outline);
    const double along = stair.starts[static_cast<std::size_t>(part.section)] + at.x;
    points.push_back({"tread " + std::to_string(points.size() + 1), part.section, at, along});
  }
  return points;
}

std::vector<Standpoint> bare_points(const StandingStair& stair) {
  std::vector<Standpoint> points;
  const int count = static_cast<int>(stair.axle_along / kBareStep);
  for (int k = count; k >= 0; --k) {
    const double along = stair.axle_along * k / std::max(count, 1);
    const auto section = static_cast<std::size_t>(std::upper_bound(stair.starts.begin(), stair.starts.end(), along) -
                                                  stair.starts.begin() - 1);
    const Vec2 at{along - stair.starts[section], stair.scene.stair.side_rails.front_face};
    points.push_back({say_length(stair.scene, Nominal{along}) + " along", static_cast<int>(section), at, along});
  }
  return points;
}

void load_own_mass(StandingStair& stair) {
  for (std::size_t k = 0; k < stair.model.masses.size(); ++k) {
    const double start = stair.starts[k], length = stair.model.linkage.length[k];
    const double weight = stair.model.masses[k].mass * kGravity * stair.sine;
    stair.beam.spread.push_back({{start, start + length}, weight / length});
  }
}

}  // namespace

StandingStair stand_still(const Scene& scene, const Model& model, double elasticity) {
  Configuration pose;
  pose.lean = model.working_lean;
  StandingStair stair{scene, model, place_sections(model.linkage, pose), section_starts(model.linkage), 0, {}, 0,
                      0,     {}};
  const Casters& casters = scene.stair.casters;
  stair.axle_along = stair.starts.back() + casters.along;
  stair.axle = stair.room(model.linkage.sections - 1, {casters.along, casters.across});
  stair.sine = std::sin(model.working_lean);
  stair.cosine = std::cos(model.working_lean);
  const double foot = stair.starts.back() + model.linkage.length[static_cast<std::size_t>(model.linkage.sections - 1)];
  const Section rail = rectangle_section(scene.stair.side_rails.thickness, scene.stair.side_rails.width);
  stair.beam.supports = {0.0, stair.axle_along};
  stair.beam.ends = {std::min(0.0, -scene.stair.above_pivot), std::max(foot, stair.axle_along)};
  stair.beam.stiffness = 2.0 * elasticity * rail.second_moment;
  load_own_mass(stair);
  return stair;
}

std::vector<Standpoint> standpoints(const StandingStair& stair) {
  std::vector<Standpoint> points = tread_points(stair);
  return points.empty() ? bare_points(stair) : points;
}

std::vector<Weight> own_weights(const StandingStair& stair) {
  std::vector<Weight> weights;
  for (std::size_t k = 0; k < stair.model.masses.size(); ++k) {
    const SectionMass& own = stair.model.masses[k];
    const int section = static_cast<int>(k);
    weights.push_back({section, stair.room(section, own.centre), own.mass * kGravity});
  }
  return weights;
}

}  // namespace stowpath
