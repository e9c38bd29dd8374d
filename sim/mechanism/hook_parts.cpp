#include "sim/mechanism/hook_parts.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "sim/geometry/arc.h"
#include "sim/mechanism/hook_shape.h"
#include "sim/mechanism/scene_fault.h"

namespace stowpath {

namespace {

constexpr double kQuarter = 0.5 * std::numbers::pi;
constexpr double kCurlFrom = 1.5 * kQuarter;  // half-way from the crown to the wall side
constexpr double kSteepest = 0.5 * kQuarter;  // turn of a jog's bends
constexpr double kJogRadius = 1.5;            // of a jog's centre line, in rods: as tight as a rod bends well

struct HookMaker {
  const Hooks& hooks;
  double tolerance;
  std::vector<StairPart>& stair;

  double outer() const { return hooks.inside + hooks.depth(); }

  void add(const std::string& name, RoundedPolygon outline, double width) {
    std::vector<Interval> stations;
    for (const double s : hooks.stations) stations.push_back({s - 0.5 * width, s + 0.5 * width});
    stair.push_back({PartKind::hook, name, 0, std::move(outline), std::move(stations)});
  }
  void add(const std::string& name, RoundedPolygon outline) { add(name, std::move(outline), hooks.width()); }

  void add_band(const std::string& name, const ArcBand& band) {
    if (band.sweep <= 0.0) return;
    for (RoundedPolygon& piece : cover_arc(band, tolerance)) add(name, std::move(piece));
  }
};

void add_bend(HookMaker& maker, const std::string& name, double from, double to) {
  maker.add_band(name, {{}, maker.hooks.inside, maker.outer(), kQuarter + from, to - from});
}

// A jog to the climber's side: it turns left, goes straight on, and turns right.
void add_jog(HookMaker& maker, const ShankJog& jog) {
  const double rod = maker.hooks.rod, radius = kJogRadius * rod, s = std::sin(jog.turn), c = std::cos(jog.turn);
  const Vec2 left{0.0, maker.hooks.inside + 0.5 * rod + radius}, heading{c, s}, across{-s, c};
  const Vec2 turned = left - radius * across, straight = turned + jog.straight * heading;
  maker.add_band("hook shank", {left, radius - 0.5 * rod, radius + 0.5 * rod, -kQuarter, jog.turn});
  if (jog.straight > 0.0) {
    const Vec2 half = 0.5 * rod * across;
    maker.add("hook shank",
              make_rounded_polygon({turned - half, straight - half, straight + half, turned + half}, 0.0));
  }
  maker.add_band("hook shank",
                 {straight - radius * across, radius - 0.5 * rod, radius + 0.5 * rod, kQuarter, jog.turn});
}

void add_shank(HookMaker& maker) {
  const Hooks& hooks = maker.hooks;
  const ShankJog jog = shank_jog(hooks.shank_offset, hooks.rod);
  if (hooks.shank_offset > 0.0) add_jog(maker, jog);
  if (hooks.shank > 0.0)
    maker.add("hook shank", make_box({jog.along, hooks.inside + hooks.shank_offset},
                                     {jog.along + hooks.shank, maker.outer() + hooks.shank_offset}));
}

// The straight tip and the point, which together are one convex outline.
void add_end(HookMaker& maker) {
  const HookShape shape = hook_shape(maker.hooks);
  if (shape.end.size() < 3) return;
  std::vector<Vec2> corners(shape.end.rbegin(), shape.end.rend());  // counter-clockwise
  maker.add(maker.hooks.wrap > kCurlFrom ? "hook curl" : "hook crown", make_rounded_polygon(std::move(corners), 0.0));
}

void add_roller(HookMaker& maker, const HookRoller& roller) {
  const double inside = maker.hooks.inside, half = 0.5 * roller.width;
  const Vec2 outward = on_bend(1.0, roller.at), onward = on_bend(1.0, roller.at + kQuarter);
  const Vec2 near = inside * outward, far = (inside + roller.diameter) * outward, side = half * onward;
  maker.add("hook roller", make_rounded_polygon({near + side, near - side, far - side, far + side}, 0.0),
            roller.diameter);
}

void add_plates(const Scene& scene, HookMaker& maker) {
  for (std::size_t i = 0; i < maker.hooks.pieces.size(); ++i) {
    const HookPiece& piece = maker.hooks.pieces[i];
    const std::string key = "stair.hooks.parts[" + std::to_string(i) + "]";
    maker.add("hook " + piece.name, outline_of(scene, key, piece.corners, piece.radius));
  }
}

}  // namespace

ShankJog shank_jog(double offset, double rod) {
  const double radius = kJogRadius * rod, both = 2.0 * radius * (1.0 - std::cos(kSteepest));
  if (offset >= both) {
    const double straight = (offset - both) / std::sin(kSteepest);
    return {kSteepest, straight, 2.0 * radius * std::sin(kSteepest) + straight * std::cos(kSteepest)};
  }
  const double turn = offset > 0.0 ? std::acos(1.0 - 0.5 * offset / radius) : 0.0;
  return {turn, 0.0, 2.0 * radius * std::sin(turn)};
}

void add_hooks(const Scene& scene, double arc_tolerance, std::vector<StairPart>& stair) {
  const Hooks& hooks = scene.stair.hooks;
  HookMaker maker{hooks, arc_tolerance, stair};
  if (hooks.form == HookForm::rod) add_shank(maker);
  add_bend(maker, "hook crown", 0.0, std::min(hooks.wrap, kCurlFrom));
  add_bend(maker, "hook curl", kCurlFrom, hooks.wrap);
  if (hooks.form == HookForm::rod) add_end(maker);
  add_plates(scene, maker);
  if (hooks.roller) add_roller(maker, *hooks.roller);
}

}  // namespace stowpath
