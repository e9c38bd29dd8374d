#include "sim/mechanism/hook_parts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/geometry/arc.h"

namespace stowpath {

namespace {

constexpr double kCurlFrom = 0.75 * std::numbers::pi;  // half-way from the crown to the wall side

struct HookMaker {
  const Hooks& hooks;
  std::vector<Interval> stations;
  std::vector<StairPart>& stair;

  double outer() const { return hooks.inside + hooks.rod; }

  void add(const char* name, RoundedPolygon outline) {
    stair.push_back({PartKind::hook, name, 0, std::move(outline), stations});
  }

  void add_bend(const char* name, double from, double to, double tolerance) {
    if (to <= from) return;
    const ArcBand band{{}, hooks.inside, outer(), 0.5 * std::numbers::pi + from, to - from};
    for (RoundedPolygon& piece : cover_arc(band, tolerance)) add(name, std::move(piece));
  }

  void add_tip() {
    const Vec2 outward{-std::sin(hooks.wrap), std::cos(hooks.wrap)};
    const Vec2 onward = hooks.tip * Vec2{-std::cos(hooks.wrap), -std::sin(hooks.wrap)};
    const Vec2 a = hooks.inside * outward, b = outer() * outward;
    add(hooks.wrap > kCurlFrom ? "hook curl" : "hook crown", make_rounded_polygon({a, b, b + onward, a + onward}, 0.0));
  }
};

std::vector<Interval> hook_stations(const Hooks& hooks) {
  std::vector<Interval> stations;
  for (const double s : hooks.stations) stations.push_back({s - 0.5 * hooks.rod, s + 0.5 * hooks.rod});
  return stations;
}

}  // namespace

void add_hooks(const Scene& scene, double arc_tolerance, std::vector<StairPart>& stair) {
  const Hooks& hooks = scene.stair.hooks;
  HookMaker maker{hooks, hook_stations(hooks), stair};
  if (hooks.shank > 0.0) maker.add("hook shank", make_box({0.0, hooks.inside}, {hooks.shank, maker.outer()}));
  maker.add_bend("hook crown", 0.0, std::min(hooks.wrap, kCurlFrom), arc_tolerance);
  maker.add_bend("hook curl", kCurlFrom, hooks.wrap, arc_tolerance);
  if (hooks.tip > 0.0) maker.add_tip();
}

}  // namespace stowpath
