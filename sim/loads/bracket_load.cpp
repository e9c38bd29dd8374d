#include <algorithm>
#include <cmath>

#include "sim/loads/rail.h"

namespace stowpath {

namespace {

// How a bracket sits on its wall.
struct Mount {
  double projection = 0.0;  // wall to the pipe's centre [m]
  double below = 0.0;       // pipe's centre down to the plate's lower edge [m]
  double height = 0.0;      // of the plate [m]
};

// The pieces of an outlined bracket that touch its wall, to within a millimetre, are its plate.
Mount outlined_mount(const std::vector<BracketPiece>& pieces) {
  constexpr double kTouches = 0.001;
  double wall = 0.0;
  for (const BracketPiece& piece : pieces)
    for (const Vec2 corner : piece.corners) wall = std::min(wall, corner.x - piece.radius);
  Interval plate{1.0, -1.0};
  for (const BracketPiece& piece : pieces)
    for (const Vec2 corner : piece.corners) {
      if (corner.x - piece.radius > wall + kTouches) continue;
      const Interval here{corner.y - piece.radius, corner.y + piece.radius};
      plate = plate.empty() ? here : hull(plate, here);
    }
  return plate.empty() ? Mount{} : Mount{-wall, -plate.lo, plate.length()};
}

Mount mount_of(const Brackets& brackets) {
  if (brackets.shape == BracketShape::outline) return outlined_mount(brackets.pieces);
  return {brackets.projection, brackets.drop + 0.5 * brackets.plate_height, brackets.plate_height};
}

// The plate's screws, half of them at three quarters of its height and half at one quarter; a single one in the middle.
struct PlateScrews {
  double upper = 0.0, lower = 0.0;  // pull of each half, all its screws together [N]
};

// `opening` tilts the plate's top off the wall, about its middle [N m]; `out` pulls it away from the wall [N].
PlateScrews pulls_of(double out, double opening, double height) {
  const double apart = 0.5 * height;
  if (out > 0.0 && std::abs(opening) <= 0.5 * apart * out)  // neither edge is pressed
    return {0.5 * out + opening / apart, 0.5 * out - opening / apart};
  const double pull = std::max(0.0, (std::abs(opening) + 0.5 * height * out) / (0.75 * height));  // about the far edge
  return opening >= 0.0 ? PlateScrews{pull, 0.0} : PlateScrews{0.0, pull};
}

double pull_of_one(double out, double opening, double height) {
  return std::max(0.0, std::abs(opening) / (0.5 * height) + out);
}

void load_screws(const Brackets& brackets, BracketLoad& load) {
  const bool plate = brackets.shape == BracketShape::wall_saddle || brackets.shape == BracketShape::outline;
  if (!plate || !brackets.screws || brackets.screws->count < 1) return;
  const Mount mount = mount_of(brackets);
  const int count = brackets.screws->count, half = std::max(1, count / 2);
  load.shear = std::abs(load.force.y) / count;
  if (!(mount.height > 0.0)) return;
  const double opening = -load.force.y * mount.projection + load.force.x * (mount.below - 0.5 * mount.height);
  const PlateScrews pulls = pulls_of(load.force.x, opening, mount.height);
  load.lower = pulls.lower > pulls.upper;
  load.pull = count > 1 ? std::max(pulls.upper, pulls.lower) / half : pull_of_one(load.force.x, opening, mount.height);
}

// Of the arm's root: a force down and one outward, above the arm, bend it the same way.
double arm_bending(const Brackets& brackets, Vec2 force) {
  const double reach = std::max(0.0, mount_of(brackets).projection - brackets.plate_thickness);
  return std::abs(-force.y * reach + force.x * brackets.drop);
}

BracketLoad load_of(const Scene& scene, const RailCase& rail, const MovingPeak& peak, BracketState state) {
  BracketLoad load;
  load.state = state;
  load.station = peak.at;
  load.at = peak.position;
  const double size = norm(rail.forces.total), share = state == BracketState::pressed ? peak.value : -peak.value;
  load.force = size > 0.0 ? (share / size) * rail.forces.total : Vec2{0.0, -share};
  load.bending = arm_bending(scene.rail.brackets, load.force);
  load_screws(scene.rail.brackets, load);
  return load;
}

bool less(const MovingPeak& a, const MovingPeak& b) { return a.value < b.value; }

}  // namespace

std::vector<BracketLoad> bracket_loads(const Scene& scene, const RailCase& rail) {
  std::vector<BracketLoad> loads;
  const double uplift = std::max_element(rail.peaks.hold.begin(), rail.peaks.hold.end(), less)->value;
  for (std::size_t i = 0; i < rail.peaks.press.size(); ++i) {
    loads.push_back(load_of(scene, rail, rail.peaks.press[i], BracketState::pressed));
    loads.push_back(load_of(scene, rail, rail.peaks.hold[i], BracketState::held_down));
  }
  for (BracketLoad& load : loads) load.uplift = uplift;
  return loads;
}

BracketLoad worst_bracket(const Scene& scene, const RailCase& rail) {
  const auto press = std::max_element(rail.peaks.press.begin(), rail.peaks.press.end(), less);
  return bracket_loads(scene, rail)[2 * static_cast<std::size_t>(press - rail.peaks.press.begin())];
}

}  // namespace stowpath
