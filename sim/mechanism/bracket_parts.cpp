#include "sim/mechanism/bracket_parts.h"

#include <string>

#include "sim/mechanism/scene_fault.h"

namespace stowpath {

namespace {

constexpr double kCradle = 0.7;  // half-width of the saddle's side view, in pipe radii

struct BracketMaker {
  const Rail& rail;
  std::vector<RoomPart> parts;

  /// @param width  of the piece along the rail [m]
  void add(const std::string& piece, const RoundedPolygon& outline, double width) {
    std::vector<Interval> stations;
    for (const double s : rail.brackets.stations) stations.push_back({s - 0.5 * width, s + 0.5 * width});
    parts.push_back({PartKind::bracket, "bracket " + piece, placed(outline, {rail.at}), stations});
  }
};

void add_arm(BracketMaker& maker) {
  const Brackets& b = maker.rail.brackets;
  const double radius = 0.5 * b.arm, top = -0.5 * maker.rail.pipe.diameter - b.saddle_thickness - radius;
  const Vec2 elbow{0.0, -b.drop};
  if (top > elbow.y) maker.add("arm", make_capsule({0.0, top}, elbow, radius), b.arm);
  maker.add("arm", make_capsule(elbow, {-b.projection + b.plate_thickness, -b.drop}, radius), b.arm);
}

void add_wall_saddle(BracketMaker& maker) {
  const Brackets& b = maker.rail.brackets;
  const double pipe = 0.5 * maker.rail.pipe.diameter;
  if (b.saddle_thickness > 0.0)
    maker.add("saddle", make_box({-kCradle * pipe, -pipe - b.saddle_thickness}, {kCradle * pipe, -pipe}),
              b.saddle_length);
  if (b.arm > 0.0) add_arm(maker);
  if (b.plate_thickness > 0.0)
    maker.add("plate",
              make_box({-b.projection, -b.drop - 0.5 * b.plate_height},
                       {-b.projection + b.plate_thickness, -b.drop + 0.5 * b.plate_height}),
              b.plate_width);
}

}  // namespace

std::vector<RoomPart> bracket_parts(const Scene& scene) {
  BracketMaker maker{scene.rail, {}};
  const Brackets& brackets = scene.rail.brackets;
  if (brackets.stations.empty()) return {};
  if (brackets.shape == BracketShape::wall_saddle) {
    add_wall_saddle(maker);
    return maker.parts;
  }
  for (std::size_t i = 0; i < brackets.pieces.size(); ++i) {
    const BracketPiece& piece = brackets.pieces[i];
    const std::string key = "rail.brackets.parts[" + std::to_string(i) + "]";
    maker.add(piece.name, outline_of(scene, key, piece.corners, piece.radius), piece.width);
  }
  return maker.parts;
}

}  // namespace stowpath
