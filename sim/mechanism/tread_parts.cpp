#include "sim/mechanism/tread_parts.h"

#include <algorithm>
#include <cmath>

#include "sim/mechanism/scene_fault.h"
#include "sim/mechanism/side_rail_band.h"

namespace stowpath {

namespace {

constexpr double kMostRise = 0.250;  // [m]
constexpr double kLeastLastRise =
    0.001;                            // a tread this close under the deck is the deck, written in rounded numbers [m]
constexpr double kCountSlack = 1e-9;  // 12 rises of exactly 250 mm are 12

// Chain coordinates: along from the pivot over all sections laid straight, across as ever.
struct Chain {
  Vec2 pivot;
  double floor = 0.0, sine = 0.0, cosine = 1.0;  // of the working lean

  Vec2 level_back(double length) const { return {-length * sine, -length * cosine}; }
  Vec2 down(double length) const { return {length * cosine, -length * sine}; }
  double along_at(double height, double across) const { return (pivot.y + across * sine - floor - height) / cosine; }
};

std::vector<Vec2> tread_corners(const Stair& stair, const Chain& chain, double height) {
  const double across = stair.side_rails.front_face + stair.treads->overhang;
  const Vec2 front{chain.along_at(height, across), across};
  const Vec2 back = front + chain.level_back(stair.treads->depth), down = chain.down(stair.treads->thickness);
  return {front, back, back + down, front + down};
}

Interval along_range(const std::vector<Vec2>& corners) {
  Interval range{corners.front().x, corners.front().x};
  for (const Vec2 corner : corners) range = hull(range, {corner.x, corner.x});
  return range;
}

struct Place {
  int section = 0;
  double start = 0.0;  // along of the section's own zero on the chain [m]
};

Place section_at(const Linkage& linkage, double along) {
  Place place;
  while (place.section + 1 < linkage.sections) {
    const double length = linkage.length[static_cast<std::size_t>(place.section)];
    if (along < place.start + length) break;
    place.start += length;
    ++place.section;
  }
  return place;
}

void check_joints(const Scene& scene, const Linkage& linkage, double height, Interval range,
                  std::vector<BuildFault>& faults) {
  double joint = 0.0;
  for (int k = 0; k + 1 < linkage.sections; ++k) {
    joint += linkage.length[static_cast<std::size_t>(k)];
    const double over = std::min(range.hi - joint, joint - range.lo);
    if (over > kCountSlack)
      faults.push_back({"the tread " + say_length(scene, Nominal{height}) +
                            " above the floor lies across the joint at " + say_length(scene, Nominal{joint}) +
                            " along: it overlaps the joint by " + say_length(scene, AtMost{over}),
                        {"tread", "hinge"}});
  }
}

std::vector<double> heights_from(double first, double rise, double deck) {
  std::vector<double> heights;
  for (int k = 0; first + k * rise < deck - kLeastLastRise; ++k) heights.push_back(first + k * rise);
  return heights;
}

double equal_rise(double climb) { return climb / std::max(1.0, std::ceil(climb / kMostRise - kCountSlack)); }

}  // namespace

std::vector<double> tread_heights(const Scene& scene) {
  if (!scene.stair.treads) return {};
  const Treads& treads = *scene.stair.treads;
  const double deck = scene.loft.deck - scene.floor.level;
  const double rise = treads.rise ? *treads.rise : equal_rise(deck - treads.first.value_or(0.0));
  if (!(rise > 0.0) || !(deck > 0.0))
    refuse(scene, "stair.treads", "there is nothing to climb between the floor and the deck");
  return heights_from(treads.first.value_or(rise), rise, deck);
}

void add_treads(const Scene& scene, const Linkage& linkage, double working_lean, std::vector<StairPart>& stair,
                std::vector<BuildFault>& faults) {
  const Chain chain{linkage.pivot, scene.floor.level, std::sin(working_lean), std::cos(working_lean)};
  const double half_width = right_side_rail(scene.stair).lo;
  for (const double height : tread_heights(scene)) {
    std::vector<Vec2> corners = tread_corners(scene.stair, chain, height);
    const Interval range = along_range(corners);
    if (range.lo < -scene.stair.above_pivot) continue;
    check_joints(scene, linkage, height, range, faults);
    const Place place = section_at(linkage, range.middle());
    for (Vec2& corner : corners) corner.x -= place.start;
    stair.push_back({PartKind::tread,
                     "tread",
                     place.section,
                     make_rounded_polygon(std::move(corners), 0.0),
                     {{-half_width, half_width}}});
  }
}

}  // namespace stowpath
