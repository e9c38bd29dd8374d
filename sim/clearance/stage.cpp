#include "sim/clearance/stage.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stowpath {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

Box3 box_of(const Target& target) {
  Interval x{kInfinity, -kInfinity}, y = x, s = x;
  for (const Vec2 v : target.outline.core()) {
    x = hull(x, {v.x, v.x});
    y = hull(y, {v.y, v.y});
  }
  for (const Interval i : target.stations) s = hull(s, i);
  Box3 box{{x, y, s}};
  for (std::size_t k = 0; k < 2; ++k) {
    box.side[k] = {box.side[k].lo - target.outline.radius(), box.side[k].hi + target.outline.radius()};
  }
  return box;
}

std::vector<Box3> boxes_of(const std::vector<Target>& targets) {
  std::vector<Box3> out;
  for (const Target& t : targets) out.push_back(box_of(t));
  return out;
}

}  // namespace

TargetSet::TargetSet(std::vector<Target> targets) : targets_(std::move(targets)), tree_(boxes_of(targets_)) {}

NeedTable::NeedTable(int mover_groups, int target_groups)
    : columns_(target_groups), needs_(static_cast<std::size_t>(mover_groups * target_groups)) {}

Need& NeedTable::at(int mover_group, int target_group) {
  return needs_[static_cast<std::size_t>(mover_group * columns_ + target_group)];
}

const Need& NeedTable::at(int mover_group, int target_group) const {
  return needs_[static_cast<std::size_t>(mover_group * columns_ + target_group)];
}

double NeedTable::greatest() const {
  double most = 0.0;
  for (const Need& n : needs_) most = std::max(most, n.check ? n.margin + n.play : 0.0);
  return most;
}

Need touching(const Need& need) {
  const bool meant_contact = need.silent && need.margin < 0.0;
  if (need.silent && !meant_contact) return {};
  return {need.check, need.silent, meant_contact ? need.margin : 0.0, 0.0, 0.0};
}

NeedTable NeedTable::touching() const {
  NeedTable out = *this;
  for (Need& n : out.needs_) n = stowpath::touching(n);
  return out;
}

namespace {

Need shared(Need need, double share) {
  need.play *= share;
  need.wander *= share;
  return need;
}

}  // namespace

Need ProofStage::need(int mover, int target) const {
  const Mover& m = movers[static_cast<std::size_t>(mover)];
  for (const PairNeed& pair : m.pairs)
    if (pair.target == target) return shared(pair.need, m.play_share);
  return m.only_pairs ? Need{} : shared(needs.at(m.group, targets[target].group), m.play_share);
}

double ProofStage::greatest_need() const {
  double most = needs.greatest();
  for (const Mover& m : movers)
    for (const PairNeed& pair : m.pairs) most = std::max(most, pair.need.margin + pair.need.play);
  return most;
}

Snapshot snapshot(const ProofStage& stage, double u) {
  const Configuration now = at(stage.linkage, stage.segment, u);
  const SectionPoses X_W = place_sections(stage.linkage, now);
  Snapshot out;
  out.station = now.station;
  const Pose2 X_BW = stage.base == kRoom ? Pose2{} : X_W[static_cast<std::size_t>(stage.base)].inverse();
  out.pose[0] = X_BW;
  for (int j = 0; j < stage.linkage.sections; ++j) {
    const std::size_t k = static_cast<std::size_t>(j);
    out.pose[k + 1] = stage.base == kRoom ? X_W[k] : X_BW * X_W[k];
    out.joint[k] = out.pose[k + 1] * stage.linkage.proximal(j);
  }
  return out;
}

double displacement(const ProofStage& stage, const Snapshot& now, const Turns& turns, int body, Vec2 centre,
                    double radius) {
  double nested = 0.0;  // joints from the part's own body to the base, each arc on the radius that the inner ones leave
  const auto turn = [&](int joint) {
    const std::size_t k = static_cast<std::size_t>(joint);
    nested += turns.joint[k] * (norm(centre - now.joint[k]) + radius + nested);
  };
  for (int k = body; k > stage.base; --k) turn(k);
  for (int k = body + 1; k <= stage.base; ++k) turn(k);
  if (stage.base != kRoom || body == kRoom) return nested;
  double chain = 0.0;  // joint to joint, each section by its own lean: shorter where turns cancel
  for (int k = 0; k < body; ++k) {
    const std::size_t i = static_cast<std::size_t>(k);
    chain += turns.section[i] * norm(now.joint[i + 1] - now.joint[i]);
  }
  const std::size_t j = static_cast<std::size_t>(body);
  chain += turns.section[j] * (norm(centre - now.joint[j]) + radius);
  return std::min(nested, chain);
}

namespace {

/// Where a rope's core runs, from its end a [m].
struct RopeCore {
  double from = 0.0, to = 0.0;
};

RopeCore rope_core(const Mover& rope, double length) {
  const auto along = [&](RopeSpot spot) { return spot.from_b ? length - spot.distance : spot.distance; };
  const double first = along(rope.first), last = along(rope.last);
  const auto place = [&](double share) {
    const double at = first + share * (last - first);
    const double least = rope.skip_a > 0.0 ? std::max(at, rope.skip_a) : at;
    return rope.skip_b > 0.0 ? std::min(least, length - rope.skip_b) : least;
  };
  return {place(rope.rope_from), place(rope.rope_to)};
}

}  // namespace

void place_mover(const Snapshot& now, const Mover& mover, Outline& out) {
  if (!mover.rope) return out.place(mover.outline, now.of(mover.body));
  const Vec2 a = now.of(mover.a.body) * mover.a.at, b = now.of(mover.b.body) * mover.b.at;
  const RopeCore core = rope_core(mover, norm(b - a));
  const RopeSpot from{false, core.from}, to{false, core.to};
  out.set_capsule(spot_at(a, b, from), spot_at(a, b, to), mover.rope_radius);
}

double mover_displacement(const ProofStage& stage, const Snapshot& now, const Turns& turns, const Mover& mover,
                          const Outline& placed) {
  if (!mover.rope) return displacement(stage, now, turns, mover.body, placed.disc().centre, placed.disc().radius);
  // Each point of a rope is a fixed mean of the two spots that it runs between.
  const Vec2 a = now.of(mover.a.body) * mover.a.at, b = now.of(mover.b.body) * mover.b.at;
  const double at_a = displacement(stage, now, turns, mover.a.body, a, 0.0);
  const double at_b = displacement(stage, now, turns, mover.b.body, b, 0.0), apart = norm(b - a);
  const auto spot = [&](RopeSpot s) { return spot_displacement(s, s.from_b ? at_b : at_a, s.from_b ? at_a : at_b, apart); };
  return std::max({spot(mover.first), spot(mover.last), mover.skip_a > 0.0 ? spot({false, mover.skip_a}) : 0.0,
                   mover.skip_b > 0.0 ? spot({true, mover.skip_b}) : 0.0});
}

Interval stations_over(const Segment& segment, double u0, double u1) {
  if (segment.over_stations()) return segment.stations;
  const double s0 = segment.from.station, s1 = segment.to.station;
  const double a = s0 + (s1 - s0) * u0, b = s0 + (s1 - s0) * u1;
  return {std::min(a, b) + segment.astray.lo, std::max(a, b) + segment.astray.hi};
}

bool any_station(const Segment& segment) {
  return segment.over_stations() || segment.from.station == segment.to.station;
}

Gaps rail_gaps(std::span<const Interval> moving, std::span<const Interval> fixed, Interval stations, bool anywhere) {
  Gaps out{kInfinity, kInfinity, -kInfinity, -kInfinity};
  for (const Interval i : moving) {
    for (const Interval j : fixed) {
      // Gap and overlap are worst where the middles meet, or as near to that as the stations go.
      const Interval worst = i + std::clamp(j.middle() - i.middle(), stations.lo, stations.hi);
      out.least = std::min(out.least, gap(worst, j));
      out.overlap = std::max(out.overlap, overlap(worst, j));
      // "Anywhere" asks whether some station violates; a moving station must violate at every one that it passes.
      const Interval first = anywhere ? worst : i + stations.lo, last = anywhere ? worst : i + stations.hi;
      out.most = std::min(out.most, std::max(gap(first, j), gap(last, j)));
      out.least_overlap = std::max(out.least_overlap, std::min(overlap(first, j), overlap(last, j)));
    }
  }
  return out;
}

namespace {

/// The two ends of each stretch, where a thing that is aslant may be at the least.
std::vector<Interval> ends_of(std::span<const Interval> stretches) {
  std::vector<Interval> out;
  for (const Interval i : stretches) {
    out.push_back({i.lo, i.lo});
    out.push_back({i.hi, i.hi});
  }
  return out;
}

/// The farthest that any end of the one is from the other, and the least that they overlap.
void take_farthest(std::span<const Interval> moving, std::span<const Interval> fixed, Interval stations, Gaps& gaps) {
  gaps.most = 0.0;
  gaps.least_overlap = kInfinity;
  for (const Interval& i : moving) {
    for (const Interval& j : fixed) {
      const Gaps at = rail_gaps({&i, 1}, {&j, 1}, stations, false);
      gaps.most = std::max(gaps.most, at.most);
      gaps.least_overlap = std::min(gaps.least_overlap, at.least_overlap);
    }
  }
}

}  // namespace

Gaps pair_gaps(const Segment& segment, const Mover& mover, const Target& target, Interval stations) {
  Gaps gaps = rail_gaps(mover.stations, target.stations, stations, any_station(segment));
  if (!mover.aslant && !target.aslant) return gaps;
  Gaps best{gaps.least, kInfinity, gaps.overlap, -kInfinity};
  for (const Interval& i : mover.stations) {
    for (const Interval& j : target.stations) {
      const std::vector<Interval> m = mover.aslant ? ends_of({&i, 1}) : std::vector<Interval>{i};
      const std::vector<Interval> t = target.aslant ? ends_of({&j, 1}) : std::vector<Interval>{j};
      take_farthest(m, t, stations, gaps);
      best.most = std::min(best.most, gaps.most);
      best.least_overlap = std::max(best.least_overlap, gaps.least_overlap);
    }
  }
  return best;
}

double prism_clearance(double d, double gap, double overlap) {
  if (d < 0.0 && overlap > 0.0) return -std::min(-d, overlap);
  if (d < 0.0) return gap;
  return gap > 0.0 ? std::sqrt(d * d + gap * gap) : d;
}

double side_view_threshold(double margin, double gap, double overlap) {
  if (margin > 0.0) return gap >= margin ? -kInfinity : std::sqrt((margin - gap) * (margin + gap));
  return overlap <= -margin ? -kInfinity : margin;
}

}  // namespace stowpath
