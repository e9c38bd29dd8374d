#include <algorithm>
#include <string>
#include <utility>

#include "sim/remedy/lever.h"

namespace stowpath {
namespace {

constexpr double kMostCut = 0.150;     // off side rails, treads' overhang, scabs [m]
constexpr double kMostHinge = 0.200;   // of a hinge along the stair [m]
constexpr double kMostOffset = 0.060;  // of a hinge off its face [m]
constexpr double kMostExtra = 0.400;   // of an extra along its section [m]

std::string entry(const std::string& list, std::size_t i) { return list + "[" + std::to_string(i) + "]"; }

bool of_body(const Finding& finding) {
  switch (finding.part_kinds[0]) {
    case PartKind::side_rail:
    case PartKind::tread:
    case PartKind::scab:
    case PartKind::spacer_block:
    case PartKind::hinge:
    case PartKind::lock_pin:
    case PartKind::caster_plate:
    case PartKind::caster_block:
      return true;
    default:
      return false;
  }
}

void add_cut(const LeverSite& site, ChangeKind kind, const std::string& key, Way way, double rate, double most,
             std::vector<Lever>& levers, int number = 0) {
  Lever lever = length_lever(site, kind, way, Labour::trimming, most, 1.0);
  lever.number = number;
  lever.values = {{key, rate}};
  levers.push_back(std::move(lever));
}

void add_cuts(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers) {
  if (concerns(finding, "side rail"))
    add_cut(site, ChangeKind::cut_side_rails, "stair.above pivot", Way::less, -1.0, kMostCut, levers);
  if (concerns(finding, "tread"))
    add_cut(site, ChangeKind::set_treads_back, "stair.treads.overhang", Way::less, -1.0, 0.5 * kMostCut, levers);
  if (concerns(finding, "scab")) {
    for (std::size_t k = 0; k < site.scene.stair.locks.size(); ++k)
      add_cut(site, ChangeKind::shorten_scab, entry("stair.locks", k) + ".length", Way::less, -1.0,
              0.5 * site.scene.stair.locks[k].length, levers, static_cast<int>(k) + 1);
  }
  if (concerns(finding, "handrail") || finding.part_kinds[0] == PartKind::handrail)
    add_cut(site, ChangeKind::lower_handrail, "stair.handrails.height", Way::less, -1.0, kMostExtra, levers);
}

// An extra keeps its shape: all its outline's numbers along the section move alike.
void add_extra(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers) {
  const auto& extras = site.scene.stair.extras;
  for (std::size_t i = 0; i < extras.size(); ++i) {
    if (!concerns(finding, extras[i].name)) continue;
    Lever lever = length_lever(site, ChangeKind::move_extra, Way::down, Labour::trimming, kMostExtra, 1.0);
    lever.thing = extras[i].name;
    for (std::size_t k = 0;; ++k) {
      const std::string key = entry(entry("stair.extras", i) + ".outline", k) + "[0]";
      if (!site.draft.number(key)) break;
      lever.values.push_back({key, 1.0});
    }
    levers.push_back(reversed(lever, Way::up));
    levers.push_back(std::move(lever));
  }
}

// The stair keeps its length, and the casters their place on it.
void add_hinges(const LeverSite& site, std::vector<Lever>& levers) {
  const std::size_t hinges = site.scene.stair.hinges.size();
  for (std::size_t k = 0; k < hinges; ++k) {
    Lever lever = length_lever(site, ChangeKind::shift_hinge, Way::down, Labour::rebuilding, kMostHinge, 0.0);
    lever.number = static_cast<int>(k) + 1;
    lever.values = {{entry("stair.sections", k), 1.0}, {entry("stair.sections", k + 1), -1.0}};
    if (k + 1 == hinges) lever.values.push_back({"stair.casters.along", -1.0});
    levers.push_back(reversed(lever, Way::up));
    levers.push_back(std::move(lever));
  }
}

void add_offsets(const LeverSite& site, std::vector<Lever>& levers) {
  for (std::size_t k = 0; k < site.scene.stair.hinges.size(); ++k) {
    Lever lever = length_lever(site, ChangeKind::set_hinge_off, Way::more, Labour::rebuilding, kMostOffset, 0.0);
    lever.number = static_cast<int>(k) + 1;
    lever.values = {{entry("stair.hinges", k) + ".offset", 1.0}};
    levers.push_back(std::move(lever));
  }
}

void add_casters(const LeverSite& site, std::vector<Lever>& levers) {
  Lever lever = length_lever(site, ChangeKind::lower_casters, Way::down, Labour::rebuilding, kMostCut, 0.0);
  lever.values = {{"stair.casters.along", 1.0}};
  levers.push_back(std::move(lever));
}

}  // namespace

void add_stair_levers(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers) {
  const bool treads_at_joint = finding.kind == FindingKind::build && finding.parts[0] == "tread";
  if (treads_at_joint) {
    Lever first = length_lever(site, ChangeKind::shift_treads, Way::up, Labour::trimming, 0.5 * kMostCut, 0.0);
    first.values = {{"stair.treads.first", 1.0}};
    levers.push_back(reversed(first, Way::down));
    levers.push_back(std::move(first));
    add_hinges(site, levers);
  }
  if (finding.kind == FindingKind::build) return;
  add_cuts(site, finding, levers);
  add_extra(site, finding, levers);
  const bool within_stair = finding.part_kinds[1] < PartKind::floor;
  if (within_stair) add_offsets(site, levers);
  if (of_body(finding) && !over_stations(site.model, finding)) add_hinges(site, levers);
  if (of_body(finding) && finding.part_kinds[1] == PartKind::floor) add_casters(site, levers);
}

}  // namespace stowpath
