#include "sim/mechanism/bracket_parts.h"

#include <algorithm>
#include <numbers>
#include <string>
#include <utility>

#include "sim/geometry/arc.h"
#include "sim/mechanism/scene_fault.h"

namespace stowpath {

namespace {

constexpr double kCradle = 0.7;  // half-width of the saddle's side view, in pipe radii
constexpr double kQuarter = 0.5 * std::numbers::pi;

struct BracketMaker {
  const Scene& scene;
  double tolerance;
  std::vector<RoomPart> parts;

  const Brackets& brackets() const { return scene.rail.brackets; }
  double pipe() const { return 0.5 * scene.rail.pipe.diameter; }
  /// The saddle's top and underside, up from the pipe's centre [m].
  double seat() const { return brackets().flat - pipe(); }
  double under_saddle() const { return seat() - brackets().saddle_thickness; }

  /// @param width   of the piece along the rail [m]
  /// @param offset  of its middle from the bracket's [m]
  void add(const std::string& piece, const RoundedPolygon& outline, double width, double offset = 0.0,
           double excess = 0.0) {
    std::vector<Interval> stations;
    for (const double s : brackets().stations) stations.push_back({s + offset - 0.5 * width, s + offset + 0.5 * width});
    parts.push_back(
        {PartKind::bracket, "bracket " + piece, placed(outline, {scene.rail.at}), std::move(stations), excess});
  }

  void add_band(const std::string& piece, const ArcBand& band, double width) {
    for (const RoundedPolygon& outline : cover_arc(band, tolerance)) add(piece, outline, width, 0.0, tolerance);
  }
};

// Heads side by side, each a block round its true disc.
void add_heads(BracketMaker& maker, const ScrewHeads& heads, const RoundedPolygon& outline) {
  if (heads.apart <= 0.0) return maker.add("screw head", outline, heads.diameter);
  for (const double side : {-0.5, 0.5}) maker.add("screw head", outline, heads.diameter, side * heads.apart);
}

void add_saddle(BracketMaker& maker) {
  const Brackets& b = maker.brackets();
  const double half = kCradle * maker.pipe(), under = maker.under_saddle();
  if (b.saddle_thickness > 0.0) maker.add("saddle", make_box({-half, under}, {half, maker.seat()}), b.saddle_length);
  if (!b.saddle_heads) return;
  const double radius = 0.5 * b.saddle_heads->diameter;
  add_heads(maker, *b.saddle_heads, make_box({-radius, under - b.saddle_heads->height}, {radius, under}));
}

/// A rod from under the saddle down to the elbow and level to what it is fixed to. It is cut off square under the
/// saddle, and mitred at a sharp elbow, so that the upright rod's outline ends in corners; the level rod's far end lies
/// behind the face that it is fixed to.
void add_arm(BracketMaker& maker, double fixed_at) {
  const Brackets& b = maker.brackets();
  const double radius = 0.5 * b.arm, top = maker.under_saddle(), turn = b.bend > 0.0 ? b.bend + radius : 0.0;
  const Vec2 centre{-turn, -b.drop + turn};
  const double bottom = turn > 0.0 ? centre.y : -b.drop - radius;
  if (top > bottom) maker.add("arm", make_box({-radius, bottom}, {radius, top}), b.arm);
  if (turn > 0.0) maker.add_band("arm", {centre, b.bend, b.bend + b.arm, -kQuarter, kQuarter}, b.arm);
  if (centre.x > fixed_at) maker.add("arm", make_capsule({centre.x, -b.drop}, {fixed_at, -b.drop}, radius), b.arm);
}

void add_plate(BracketMaker& maker) {
  const Brackets& b = maker.brackets();
  const double face = -b.projection + b.plate_thickness;
  if (b.plate_thickness > 0.0)
    maker.add("plate",
              make_box({-b.projection, -b.drop - 0.5 * b.plate_height}, {face, -b.drop + 0.5 * b.plate_height}),
              b.plate_width);
  if (!b.plate_heads) return;
  const double radius = 0.5 * b.plate_heads->diameter;
  for (const double at : b.plate_heads->at)
    add_heads(maker, *b.plate_heads,
              make_box({face, -b.drop + at - radius}, {face + b.plate_heads->height, -b.drop + at + radius}));
}

void add_wall_saddle(BracketMaker& maker) {
  add_saddle(maker);
  if (maker.brackets().arm > 0.0) add_arm(maker, -maker.brackets().projection + maker.brackets().plate_thickness);
  add_plate(maker);
}

/// A box given for a tab that goes up, turned back to the wall where that is where the tab goes.
RoundedPolygon tab_box(TabWay way, Vec2 least, Vec2 greatest) {
  return way == TabWay::up ? make_box(least, greatest) : make_box({-greatest.y, least.x}, {-least.y, greatest.x});
}

void add_strap(BracketMaker& maker) {
  const Brackets& b = maker.brackets();
  const double pipe = maker.pipe(), full = 4.0 * kQuarter;
  const double from = b.tab == TabWay::up ? kQuarter : 2.0 * kQuarter;
  maker.add_band("band", {{}, pipe, pipe + b.strap_thickness, from, std::min(b.strap_arc, full)}, b.strap_width);
  const double half = b.strap_arc >= full ? b.strap_thickness : 0.5 * b.strap_thickness;  // both legs, or one
  const double end = b.projection - b.plate_thickness;
  maker.add("tab", tab_box(b.tab, {-half, pipe}, {half, end}), b.strap_width);
  if (b.plate_thickness > 0.0)
    maker.add("plate", tab_box(b.tab, {-0.5 * b.plate_height, end}, {0.5 * b.plate_height, b.projection}),
              b.plate_width);
}

void add_post_mounted(BracketMaker& maker) {
  const Brackets& b = maker.brackets();
  if (!b.post) return;
  add_saddle(maker);
  if (b.post->beside && b.arm > 0.0) add_arm(maker, -b.projection);
  const double foot = b.post->foot - maker.scene.rail.at.y;
  const double top = b.post->beside ? b.post->above - b.drop : maker.under_saddle();
  const Interval out = b.post->beside ? Interval{-b.projection - b.post->depth, -b.projection}
                                      : Interval{-0.5 * b.post->depth, 0.5 * b.post->depth};
  maker.add("post", make_box({out.lo, foot}, {out.hi, top}), b.post->width);
}

void add_outlined(BracketMaker& maker) {
  const Brackets& brackets = maker.brackets();
  for (std::size_t i = 0; i < brackets.pieces.size(); ++i) {
    const BracketPiece& piece = brackets.pieces[i];
    const std::string key = "rail.brackets.parts[" + std::to_string(i) + "]";
    maker.add(piece.name, outline_of(maker.scene, key, piece.corners, piece.radius), piece.width);
  }
}

}  // namespace

std::vector<RoomPart> bracket_parts(const Scene& scene, double arc_tolerance) {
  BracketMaker maker{scene, arc_tolerance, {}};
  if (scene.rail.brackets.stations.empty()) return {};
  switch (scene.rail.brackets.shape) {
    case BracketShape::wall_saddle:
      add_wall_saddle(maker);
      break;
    case BracketShape::strap:
      add_strap(maker);
      break;
    case BracketShape::post_mounted:
      add_post_mounted(maker);
      break;
    case BracketShape::outline:
      add_outlined(maker);
      break;
  }
  return std::move(maker.parts);
}

}  // namespace stowpath
