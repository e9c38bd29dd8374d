#include "sim/mechanism/room_line.h"

#include <algorithm>
#include <string>

#include "sim/mechanism/line_route.h"
#include "sim/mechanism/scene_fault.h"

namespace stowpath {

namespace {

std::string run_name(std::size_t run, std::size_t leads) {
  if (run == leads) return "line to the hand";
  return leads == 1 ? "line to the lead" : "line to lead " + std::to_string(run + 1);
}

}  // namespace

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
