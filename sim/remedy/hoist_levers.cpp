#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "sim/remedy/lever.h"

namespace stowpath {
namespace {

constexpr double kMostHome = 0.600;   // home along the rail [m]
constexpr double kMostPoint = 0.300;  // ceiling point, pick or lead [m]
constexpr double kSame = 1e-4;        // stations that were meant to be one [m]

void add_both(Lever more, Way less, std::vector<Lever>& levers) {
  levers.push_back(reversed(more, less));
  levers.push_back(std::move(more));
}

void add_station(const LeverSite& site, const std::string& key, double home, Lever& lever) {
  const auto given = site.draft.number(key);
  if (given && std::abs(*given - home) < kSame) lever.values.push_back({key, 1.0});
}

// Home, and everything that the file puts over it: ceiling point, lead sheaves, rolls that name the station.
void add_home(const LeverSite& site, std::vector<Lever>& levers) {
  const Scene& scene = site.scene;
  if (!site.model.home || scene.hoist->rolls) return;
  const double home = *site.model.home;
  Lever lever = length_lever(site, ChangeKind::move_home, Way::right, Labour::fixing, kMostHome, 1.0);
  for (const char* key : {"hoist.home", "hoist.ceiling point.station", "hoist.line.lead.station"})
    add_station(site, key, home, lever);
  for (std::size_t i = 0; i < scene.hoist->line.leads.size(); ++i)
    add_station(site, "hoist.line.leads[" + std::to_string(i) + "].station", home, lever);
  for (std::size_t i = 0; i < scene.procedure.size(); ++i) {
    const std::string step = "procedure[" + std::to_string(i) + "]";
    add_station(site, step + ".roll", home, lever);
    add_station(site, step + ".together.station", home, lever);
  }
  // Where the ceiling point stays behind, the line changes its slant, and no bound is known.
  const bool together = std::any_of(lever.values.begin(), lever.values.end(),
                                    [](const LeverValue& value) { return value.key == "hoist.ceiling point.station"; });
  if (scene.hoist->ceiling_point && !together) lever.reach = 0.0;
  add_both(std::move(lever), Way::left, levers);
}

bool stands_fast(PartKind room) {
  return room == PartKind::floor || room == PartKind::ceiling || room == PartKind::pipe || room == PartKind::rail_stop;
}

void add_line(const LeverSite& site, std::vector<Lever>& levers) {
  Lever point = length_lever(site, ChangeKind::move_ceiling_point, Way::out, Labour::fixing, kMostPoint, 1.0);
  point.values = {{"hoist.ceiling point.out", 1.0}};
  add_both(std::move(point), Way::in, levers);
  Lever pick = length_lever(site, ChangeKind::move_pick, Way::down, Labour::trimming, kMostPoint, 1.0);
  pick.values = {{"hoist.pick.along", 1.0}};
  add_both(std::move(pick), Way::up, levers);
}

void add_lead(const LeverSite& site, std::vector<Lever>& levers) {
  const std::string lead = site.draft.number("hoist.line.lead.out") ? "hoist.line.lead" : "hoist.line.leads[0]";
  Lever out = length_lever(site, ChangeKind::move_lead, Way::out, Labour::fixing, kMostPoint, 0.0);
  out.values = {{lead + ".out", 1.0}};
  add_both(std::move(out), Way::in, levers);
  Lever up = length_lever(site, ChangeKind::move_lead, Way::up, Labour::fixing, kMostPoint, 0.0);
  up.values = {{lead + ".up", 1.0}};
  add_both(std::move(up), Way::down, levers);
}

}  // namespace

void add_hoist_levers(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers) {
  if (!site.scene.hoist || finding.kind == FindingKind::build) return;
  if (finding.part_kinds[0] == PartKind::lead_line) return add_lead(site, levers);
  if (finding.kind == FindingKind::seat) return add_line(site, levers);
  if (finding.part_kinds[0] == PartKind::line) add_line(site, levers);
  const bool within_stair = finding.part_kinds[1] < PartKind::floor;
  if (!within_stair && !stands_fast(finding.part_kinds[1]) && !over_stations(site.model, finding))
    add_home(site, levers);
}

}  // namespace stowpath
