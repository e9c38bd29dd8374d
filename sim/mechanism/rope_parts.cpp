#include "sim/mechanism/rope_parts.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "sim/mechanism/scene_fault.h"
#include "sim/mechanism/standing.h"

namespace stowpath {

namespace {

constexpr double kSlab = 0.040;  // [m]

RopeEnd section_end(const Scene& scene, const std::string& key, const SectionPoint& point, Interval stations) {
  if (point.section < 1 || point.section > static_cast<int>(scene.stair.sections.size()))
    refuse(scene, key + ".section", "there is no section " + std::to_string(point.section));
  return {point.section - 1, {point.along, point.across}, stations};
}

// A hoist that rolls carries its ceiling point along: its stations count from the stair's middle.
RopeEnd ceiling_end(const Scene& scene) {
  const Hoist& hoist = *scene.hoist;
  RopeEnd end{-1, hoist.ceiling_point->at, {hoist.ceiling_point->station, hoist.ceiling_point->station}};
  if (!hoist.rolls) return end;
  end.rolls = true;
  end.stations = end.stations + -home_station(scene).value_or(hoist.ceiling_point->station);
  return end;
}

void add_fold_line(const Scene& scene, std::vector<RopeRun>& runs) {
  const FoldLine& line = *scene.fold_line;
  const Interval station{line.station, line.station};
  RopeEnd from = section_end(scene, "fold line.from", line.from, station);
  for (std::size_t i = 0; i < line.through.size(); ++i) {
    const RopeEnd to = section_end(scene, "fold line.through[" + std::to_string(i) + "]", line.through[i], station);
    runs.push_back({PartKind::fold_line, "fold line", from, to, 0.5 * line.diameter, false});
    from = to;
  }
}

}  // namespace

std::vector<RopeRun> rope_runs(const Scene& scene) {
  std::vector<RopeRun> runs;
  if (scene.hoist && scene.hoist->ceiling_point) {
    const double half = 0.5 * scene.hoist->spread;
    runs.push_back({PartKind::line, "hoist line", ceiling_end(scene),
                    section_end(scene, "hoist.pick", scene.hoist->pick, {-half, half}),
                    0.5 * scene.hoist->line.diameter, true});
  }
  if (scene.fold_line) add_fold_line(scene, runs);
  return runs;
}

std::vector<RoomPart> lead_line_parts(const Scene& scene) {
  if (!scene.hoist || !scene.hoist->ceiling_point || !scene.hoist->line.lead) return {};
  if (scene.hoist->rolls)
    refuse(scene, "hoist.line.lead", "a hoist that rolls cannot lead its line to a fixed point",
           "leave `lead` out, or write `rolls: no`");
  const RoomPoint a = *scene.hoist->ceiling_point, b = *scene.hoist->line.lead;
  const double radius = 0.5 * scene.hoist->line.diameter, stations = b.station - a.station;
  // A slab is exact where the rope runs only out and up, or only along the rail: the shorter of the two counts. A point
  // of a slab lies within sqrt(2) radii and that length of the rope's axis.
  const double skew = std::min(norm(b.at - a.at), std::abs(stations));
  const int slabs = std::max(1, static_cast<int>(std::ceil(skew / kSlab)));
  std::vector<RoomPart> parts;
  for (int k = 0; k < slabs; ++k) {
    const double u0 = static_cast<double>(k) / slabs, u1 = static_cast<double>(k + 1) / slabs;
    const double s0 = a.station + u0 * stations, s1 = a.station + u1 * stations;
    parts.push_back({PartKind::lead_line,
                     "line to the lead",
                     make_capsule(lerp(a.at, b.at, u0), lerp(a.at, b.at, u1), radius),
                     {{std::min(s0, s1) - radius, std::max(s0, s1) + radius}},
                     skew / slabs + (std::numbers::sqrt2 - 1.0) * radius});
  }
  return parts;
}

}  // namespace stowpath
