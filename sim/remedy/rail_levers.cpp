#include <algorithm>
#include <cmath>
#include <string>

#include "sim/remedy/lever.h"

namespace stowpath {
namespace {

constexpr double kMostShift = 0.400;  // of a bracket or joint along the rail [m]
constexpr double kMostDrop = 0.060;   // of an arm [m]

std::string entry(const std::string& list, std::size_t i) { return list + "[" + std::to_string(i) + "]"; }

// Whether a hook comes to a place of the rail anywhere in the finding.
bool met_at(const LeverSite& site, const Finding& finding, double station) {
  constexpr double kNear = 0.060;  // half of a wide bracket, and a hook
  for (const double hook : site.scene.stair.hooks.stations) {
    for (const Interval& stretch : finding.stations) {
      if (station - hook > stretch.lo - kNear && station - hook < stretch.hi + kNear) return true;
    }
  }
  return false;
}

void add_both_ways(Lever right, std::vector<Lever>& levers) {
  levers.push_back(reversed(right, Way::left));
  levers.push_back(std::move(right));
}

// Farther, a bracket would be gained or lost at the pipe's other end.
double pattern_play(const Scene& scene, bool to_right) {
  const Brackets& brackets = scene.rail.brackets;
  const double half = 0.5 * brackets.saddle_length;
  const double every = brackets.stations.size() > 1 ? brackets.stations[1] - brackets.stations[0] : 2.0 * kMostShift;
  const double right_end = scene.rail.stations.hi - half;
  const double play = to_right ? right_end - brackets.stations.back()
                               : std::min(brackets.stations.front() - scene.rail.stations.lo - half,
                                          brackets.stations.back() + every - right_end);
  return std::min({play, 0.5 * every, kMostShift});
}

void add_pattern(const LeverSite& site, std::vector<Lever>& levers) {
  if (site.scene.rail.brackets.stations.empty()) return;
  Lever shift =
      length_lever(site, ChangeKind::shift_brackets, Way::right, Labour::fixing, pattern_play(site.scene, true), 1.0);
  shift.values = {{"rail.brackets.first", 1.0}};
  Lever back = reversed(shift, Way::left);
  back.most = pattern_play(site.scene, false);
  levers.push_back(std::move(shift));
  levers.push_back(std::move(back));
}

// One bracket of a list can be shifted by itself; where several are met, one does not help.
void add_single(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers) {
  const std::vector<double>& stations = site.scene.rail.brackets.stations;
  if (finding.things != 1) return;
  for (std::size_t i = 0; i < stations.size(); ++i) {
    if (!met_at(site, finding, stations[i])) continue;
    Lever shift = length_lever(site, ChangeKind::shift_bracket, Way::right, Labour::fixing, kMostShift, 1.0);
    shift.number = static_cast<int>(i) + 1;
    shift.values = {{entry("rail.brackets.at", i), 1.0}};
    add_both_ways(std::move(shift), levers);
  }
}

void add_arms(const LeverSite& site, std::vector<Lever>& levers) {
  Lever arms = length_lever(site, ChangeKind::lower_arms, Way::down, Labour::rebuilding, kMostDrop, 1.0);
  arms.values = {{"rail.brackets.drop", 1.0}};
  levers.push_back(std::move(arms));
}

void add_joints(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers) {
  for (std::size_t i = 0; i < site.scene.rail.joints.size(); ++i) {
    if (!met_at(site, finding, site.scene.rail.joints[i].station)) continue;
    for (const std::string& key :
         {entry("rail.joints", i), entry("rail.joints", i) + ".at", entry("rail.joints.at", i)}) {
      Lever shift = length_lever(site, ChangeKind::shift_joint, Way::right, Labour::fixing, kMostShift, 1.0);
      shift.number = static_cast<int>(i) + 1;
      shift.values = {{key, 1.0}};
      if (has_values(site, shift)) add_both_ways(std::move(shift), levers);
    }
  }
}

}  // namespace

void add_rail_levers(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers) {
  const bool rolling = over_stations(site.model, finding);
  if (finding.part_kinds[1] == PartKind::pipe_joint && !rolling) add_joints(site, finding, levers);
  if (finding.part_kinds[1] != PartKind::bracket) return;
  if (!rolling) {
    add_single(site, finding, levers);
    add_pattern(site, levers);
  }
  add_arms(site, levers);
}

}  // namespace stowpath
