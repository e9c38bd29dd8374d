#include "sim/mechanism/rope_parts.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "sim/mechanism/line_route.h"
#include "sim/mechanism/scene_fault.h"
#include "sim/mechanism/standing.h"

namespace stowpath {

namespace {

RopeEnd section_end(const Scene& scene, const std::string& key, const SectionPoint& point, Interval stations) {
  if (point.section < 1 || point.section > static_cast<int>(scene.stair.sections.size()))
    refuse(scene, key + ".section", "there is no section " + std::to_string(point.section));
  return {point.section - 1, {point.along, point.across}, stations};
}

// What rolls along with the stair counts its stations from the stair's middle.
RopeEnd room_end(const Scene& scene, const RoomPoint& point) {
  RopeEnd end{-1, point.at, {point.station, point.station}};
  if (!scene.hoist->rolls) return end;
  end.rolls = true;
  end.stations = end.stations + -home_station(scene).value_or(point.station);
  return end;
}

RopeEnd pick_end(const Scene& scene) { return section_end(scene, "hoist.pick", scene.hoist->pick, {0.0, 0.0}); }

// A run as thick as `radius`, from `from` short of the ceiling point to `to` short of the pick.
RopeRun hoist_run(const Scene& scene, const std::string& name, double radius, RopeSpot first, RopeSpot last) {
  return {PartKind::line, name,  room_end(scene, *scene.hoist->ceiling_point), pick_end(scene), radius,
          LineState::hooked_on, first, last};
}

// The blocks end where they are held: the core of what is as thick as they are ends a radius short of that.
RopeRun tackle_run(const Scene& scene, double short_of_pick) {
  const double radius = tackle_radius(scene.hoist->line), inset = scene.hoist->line.blocks ? radius : 0.0;
  return hoist_run(scene, "hoist line", radius, {false, inset}, {true, short_of_pick + inset});
}

void add_spreader(const Scene& scene, std::vector<RopeRun>& runs) {
  const Spreader& spreader = *scene.hoist->spreader;
  const double half = 0.5 * spreader.length, line = 0.5 * scene.hoist->line.diameter;
  runs.push_back(tackle_run(scene, spreader.drop));
  RopeRun bar = hoist_run(scene, "spreader bar", 0.5 * spreader.thickness, {true, spreader.drop}, {true, spreader.drop});
  bar.half_width = half;
  runs.push_back(bar);
  for (const double side : {-1.0, 1.0}) {
    RopeRun leg = hoist_run(scene, "spreader leg", line, {true, spreader.drop}, {true, 0.0});
    leg.first_aside = side * half;
    leg.last_aside = side * 0.5 * scene.hoist->spread;
    runs.push_back(leg);
  }
}

void add_hoist(const Scene& scene, std::vector<RopeRun>& runs) {
  if (scene.hoist->spreader) return add_spreader(scene, runs);
  if (scene.hoist->spread == 0.0) return runs.push_back(tackle_run(scene, 0.0));
  for (const double side : {-1.0, 1.0}) {
    runs.push_back(tackle_run(scene, 0.0));
    runs.back().last_aside = side * 0.5 * scene.hoist->spread;
  }
}

// The led-off line and the free line of a hoist that rolls: points of the room that roll with it.
void add_rolling_lines(const Scene& scene, double hangs_to, std::vector<RopeRun>& runs) {
  const RopeEnd top = room_end(scene, *scene.hoist->ceiling_point);
  RopeEnd free = top;
  free.at.y = std::min(hangs_to, top.at.y);
  runs.push_back({PartKind::line, "line to the hand", top, room_end(scene, hand_place(scene)),
                  0.5 * scene.hoist->line.diameter});
  runs.push_back({PartKind::line, "hanging hoist line", top, free, tackle_radius(scene.hoist->line),
                  LineState::hooked_off});
}

void add_fold_line(const Scene& scene, std::vector<RopeRun>& runs) {
  const FoldLine& line = *scene.fold_line;
  const Interval station{line.station, line.station};
  RopeEnd from = section_end(scene, "fold line.from", line.from, station);
  for (std::size_t i = 0; i < line.through.size(); ++i) {
    const RopeEnd to = section_end(scene, "fold line.through[" + std::to_string(i) + "]", line.through[i], station);
    runs.push_back({PartKind::fold_line, "fold line", from, to, 0.5 * line.diameter});
    from = to;
  }
}

}  // namespace

std::vector<RopeRun> rope_runs(const Scene& scene, double hangs_to) {
  std::vector<RopeRun> runs;
  if (scene.hoist && scene.hoist->ceiling_point) {
    add_hoist(scene, runs);
    if (scene.hoist->rolls) add_rolling_lines(scene, hangs_to, runs);
  }
  if (scene.fold_line) add_fold_line(scene, runs);
  return runs;
}

std::optional<Tackle> tackle_of(const Scene& scene) {
  if (!scene.hoist || !scene.hoist->ceiling_point || !scene.hoist->line.blocks) return std::nullopt;
  return Tackle{room_end(scene, *scene.hoist->ceiling_point), pick_end(scene),
                scene.hoist->spreader ? scene.hoist->spreader->drop : 0.0, 2.0 * scene.hoist->line.blocks->length};
}

double hanging_end(const Scene& scene, const Linkage& linkage, double working_lean) {
  if (!scene.hoist || !scene.hoist->ceiling_point) return 0.0;
  if (scene.hoist->line.hangs_to) return *scene.hoist->line.hangs_to;
  const RopeEnd pick = pick_end(scene);
  return (place_sections(linkage, {0.0, working_lean, {}})[static_cast<std::size_t>(pick.section)] * pick.at).y;
}

}  // namespace stowpath
