#include <algorithm>
#include <numbers>

#include "sim/remedy/lever.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

// Half-way from the crown to the wall side the arc has no curl left to trim.
constexpr double kLeastWrap = 135.0 * kDegree;
constexpr double kLeastShank = 0.060;  // room for two screws: a judgement [m]

void add_trim(const LeverSite& site, std::vector<Lever>& levers) {
  Lever trim;
  trim.kind = ChangeKind::trim_curl;
  trim.way = Way::less;
  trim.labour = Labour::trimming;
  trim.angle = true;
  trim.step = kDegree;
  trim.most = site.scene.stair.hooks.wrap - kLeastWrap;
  trim.reach = site.scene.stair.hooks.inside + site.scene.stair.hooks.depth();  // at the outer side of the end
  trim.values = {{"stair.hooks.wrap", -1.0}};
  levers.push_back(std::move(trim));
}

// Where the pipe bears too near the end, more arc is what holds. A hook that could no longer be hung is refused.
void add_longer_curl(std::vector<Lever>& levers) {
  Lever longer;
  longer.kind = ChangeKind::longer_curl;
  longer.way = Way::more;
  longer.labour = Labour::rebuilding;
  longer.angle = true;
  longer.step = kDegree;
  longer.stride = 4;
  longer.most = 45.0 * kDegree;
  longer.values = {{"stair.hooks.wrap", 1.0}};
  levers.push_back(std::move(longer));
}

}  // namespace

void add_hook_levers(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers) {
  if (finding.kind == FindingKind::seat) return add_longer_curl(levers);
  const Hooks& hooks = site.scene.stair.hooks;
  if (finding.part_kinds[0] != PartKind::hook) return;
  if (concerns(finding, "hook curl") || concerns(finding, "hook crown")) {
    Lever tip = length_lever(site, ChangeKind::cut_tip, Way::less, Labour::trimming, hooks.tip, 1.0);
    tip.values = {{"stair.hooks.tip", -1.0}};
    levers.push_back(std::move(tip));
    add_trim(site, levers);
  }
  if (concerns(finding, "hook shank")) {
    Lever shank =
        length_lever(site, ChangeKind::shorten_shank, Way::less, Labour::trimming, hooks.shank - kLeastShank, 1.0);
    shank.values = {{"stair.hooks.shank", -1.0}};
    levers.push_back(std::move(shank));
  }
}

}  // namespace stowpath
