#include "sim/mechanism/room_line.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "sim/mechanism/line_route.h"
#include "sim/mechanism/scene_fault.h"

namespace stowpath {

namespace {

constexpr double kSlab = 0.040;  // [m]

RoomPoint between(const RoomPoint& a, const RoomPoint& b, double u) {
  return {lerp(a.at, b.at, u), a.station + u * (b.station - a.station)};
}

double length_of(const RoomRope& rope) {
  return std::hypot(norm(rope.b.at - rope.a.at), rope.b.station - rope.a.station);
}

std::string run_name(std::size_t run, std::size_t leads) {
  if (run == leads) return "line to the hand";
  return leads == 1 ? "line to the lead" : "line to lead " + std::to_string(run + 1);
}

}  // namespace

std::vector<RoomPart> rope_slabs(const RoomRope& rope, double from, double to) {
  const double whole = length_of(rope), u_from = from / whole, u_to = 1.0 - to / whole;
  std::vector<RoomPart> parts;
  if (!(u_from < u_to)) return parts;
  // A slab is exact where the rope runs only out and up, or only along the rail: the shorter of the two counts.
  const double stations = rope.b.station - rope.a.station;
  const double skew = (u_to - u_from) * std::min(norm(rope.b.at - rope.a.at), std::abs(stations));
  const int slabs = std::max(1, static_cast<int>(std::ceil(skew / kSlab)));
  for (int k = 0; k < slabs; ++k) {
    const double share = (u_to - u_from) / slabs;
    const RoomPoint a = between(rope.a, rope.b, u_from + k * share);
    const RoomPoint b = between(rope.a, rope.b, u_from + (k + 1) * share);
    RoomPart part{PartKind::lead_line,
                  rope.name,
                  make_capsule(a.at, b.at, rope.radius),
                  {{std::min(a.station, b.station) - rope.radius, std::max(a.station, b.station) + rope.radius}}};
    part.aslant = skew > 0.0;
    part.when = rope.when;
    part.id = rope.id;
    parts.push_back(std::move(part));
  }
  return parts;
}

std::vector<RoomRope> led_off_runs(const Scene& scene) {
  const std::vector<RoomPoint> route = line_route(scene);
  if (route.empty()) return {};
  if (scene.hoist->rolls && route.size() > 2)
    refuse(scene, "hoist.line.lead", "a hoist that rolls cannot lead its line to a fixed point",
           "leave `lead` out, or write `rolls: no`");
  std::vector<RoomRope> runs;
  for (std::size_t i = 0; i + 1 < route.size() && !scene.hoist->rolls; ++i)
    runs.push_back({run_name(i, route.size() - 2), route[i], route[i + 1], 0.5 * scene.hoist->line.diameter});
  return runs;
}

std::vector<RoomRope> hanging_line(const Scene& scene, double hangs_to) {
  if (!scene.hoist || !scene.hoist->ceiling_point || scene.hoist->rolls) return {};
  const RoomPoint top = *scene.hoist->ceiling_point;
  RoomPoint end = top;
  end.at.y = std::min(hangs_to, top.at.y - knot_room(scene.hoist->line));
  return {{"hanging hoist line", top, end, tackle_radius(scene.hoist->line), LineState::hooked_off}};
}

}  // namespace stowpath
