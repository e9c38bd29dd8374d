#include "sim/clearance/free_travel.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "sim/clearance/cast.h"

namespace stowpath {
namespace {

constexpr int kMostSteps = 60;
constexpr double kMet = 1e-7;  // nearer than this to the wanted overlap counts as there [m]

/// One thing that stops the stair, where the stair's middle is in these stations.
struct Stop {
  double travel = 0.0;
  IntervalSet stations;
  std::array<std::string, 2> parts;
};

bool solid(PartKind kind) { return kind != PartKind::floor && kind != PartKind::zone && kind != PartKind::lead_line; }

bool can_stop(const Role& mover, const Role& target) {
  const bool rail = target.kind == PartKind::pipe || target.kind == PartKind::pipe_joint;
  return solid(target.kind) && !(mover.kind == PartKind::hook && rail);
}

/// Whether the mover's disc comes by the target's at all.
bool passes_near(const BoundingDisc& a, const BoundingDisc& b, const Shift& shift) {
  const Vec2 apart = b.centre - a.centre;
  const double reach = a.radius + b.radius, ahead = dot(apart, shift.along);
  return std::abs(cross(shift.along, apart)) <= reach && ahead >= -reach && ahead <= shift.limit + reach;
}

/// Stations of the stair's middle where the two stretches overlap by more than the rounding.
IntervalSet overlapping(const Mover& mover, const Target& target, Interval meant) {
  IntervalSet out;
  for (const Interval i : mover.stations) {
    for (const Interval j : target.stations) {
      const Interval both = meet({j.lo - i.hi + kRoundingGuard, j.hi - i.lo - kRoundingGuard}, meant);
      if (!both.empty()) out.push_back(both);
    }
  }
  return unite(std::move(out));
}

/// The travel at which the pair overlaps by `depth`; nothing if it does not within the limit.
std::optional<double> first_overlap(const Outline& body, const Outline& target, const Shift& shift, double depth) {
  Outline shifted;
  const auto lacking = [&](double t) {
    shifted.place(body, {t * shift.along});
    return signed_distance(shifted, target) + depth;
  };
  double t = 0.0, lacks = lacking(0.0);
  double step = lacks;  // a distance changes by no more than the travel
  for (int k = 0; k < kMostSteps && lacks > kMet; ++k) {
    const double next = t + std::max(step, kMet), then = lacking(next);
    if (next > shift.limit || then >= lacks) return std::nullopt;
    step = then * (next - t) / (lacks - then);
    t = next;
    lacks = then;
  }
  return lacks <= kMet ? std::optional(t + kMet) : std::nullopt;
}

std::vector<Stop> stops_of(const Model& model, const Move& move, const Shift& shift) {
  Segment here;
  here.from = here.to = shift.pose;
  const MoverCast movers = stair_cast(model, move, here);
  const TargetCast targets = room_cast(model, move.state, move.hooked_on);
  const SectionPoses X_W = place_sections(model.linkage, shift.pose);
  std::vector<Stop> stops;
  Outline body;
  for (std::size_t m = 0; m < movers.movers.size(); ++m) {
    const Mover& mover = movers.movers[m];
    if (mover.rope) continue;
    body.place(mover.outline, X_W[static_cast<std::size_t>(mover.body)]);
    for (std::size_t k = 0; k < targets.roles.size(); ++k) {
      const Target& target = targets.targets[static_cast<int>(k)];
      if (!can_stop(movers.roles[m], targets.roles[k]) || !passes_near(body.disc(), target.outline.disc(), shift))
        continue;
      IntervalSet stations = overlapping(mover, target, shift.stations);
      if (stations.empty()) continue;
      const double depth = mover.excess + target.excess + shift.play;
      if (const auto travel = first_overlap(body, target.outline, shift, depth))
        stops.push_back({*travel, std::move(stations), {movers.roles[m].name, targets.roles[k].name}});
    }
  }
  return stops;
}

}  // namespace

FreeTravel free_travel(const Model& model, const Move& move, const Shift& shift) {
  std::vector<Stop> stops = stops_of(model, move, shift);
  std::sort(stops.begin(), stops.end(), [](const Stop& a, const Stop& b) { return a.travel < b.travel; });
  IntervalSet stopped;
  for (const Stop& stop : stops) {
    stopped.insert(stopped.end(), stop.stations.begin(), stop.stations.end());
    stopped = unite(std::move(stopped));
    const bool everywhere = stopped.size() == 1 && stopped[0].lo <= shift.stations.lo + kRoundingGuard &&
                            stopped[0].hi >= shift.stations.hi - kRoundingGuard;
    if (everywhere) return {std::min(stop.travel, shift.limit), true, stop.parts};
  }
  return {shift.limit, false, {}};
}

}  // namespace stowpath
