#include "tests/support/touch_proof.h"

#include <algorithm>
#include <cmath>

#include "sim/clearance/pairs.h"
#include "tests/support/proof_maker.h"

namespace stowpath::testing {
namespace {

constexpr double kGuard = 1e-7;  // a drag's pose near full stretch is no better [m]
constexpr int kLooks = 400;      // at the course, before the nearest is narrowed

/// A pose of the course.
struct Place {
  const Segment* segment = nullptr;
  double u = 0.0;
  double off = INFINITY;  // [m]
};

std::vector<Vec2> seen_from(const WorldPart& a, int base, const SectionPoses& X_W) {
  const Pose2& X_WA = X_W[static_cast<std::size_t>(a.section)];
  std::vector<Vec2> corners;
  for (const Vec2 corner : a.shape.core) {
    const Vec2 p_W = X_WA * corner;
    corners.push_back(base < 0 ? p_W : X_W[static_cast<std::size_t>(base)].inverse() * p_W);
  }
  return corners;
}

double station_off(const RehearsedTouch& touch, const Segment& segment, const Configuration& course) {
  if (touch.b.section >= 0) return 0.0;  // both ride on the stair
  const Interval meant = segment.over_stations() ? segment.stations : Interval{course.station, course.station};
  return std::abs(touch.station - std::clamp(touch.station, meant.lo, meant.hi));
}

// Rounding does not count: it turns into itself.
double displacement(const Model& model, const RehearsedTouch& touch, const std::vector<Vec2>& rehearsed,
                    const Segment& segment, double u) {
  const Configuration course = at(model.linkage, segment, u);
  const std::vector<Vec2> meant = seen_from(touch.a, touch.b.section, place_sections(model.linkage, course));
  double most = 0.0;
  for (std::size_t i = 0; i < meant.size(); ++i) most = std::max(most, norm(meant[i] - rehearsed[i]));
  return most + station_off(touch, segment, course);
}

Place nearest(const Model& model, const Move& move, const RehearsedTouch& touch) {
  const std::vector<Vec2> rehearsed = seen_from(touch.a, touch.b.section, touch.X_W);
  Place best;
  const auto look = [&](const Segment& segment, double u) {
    const double off = displacement(model, touch, rehearsed, segment, std::clamp(u, 0.0, 1.0));
    if (off < best.off) best = {&segment, std::clamp(u, 0.0, 1.0), off};
  };
  for (const Segment& segment : move.segments)
    for (int k = 0; k <= kLooks; ++k) look(segment, static_cast<double>(k) / kLooks);
  for (double width = 1.0 / kLooks; width > 1e-7; width *= 0.5) {
    const Place from = best;
    look(*from.segment, from.u - 0.5 * width);
    look(*from.segment, from.u + 0.5 * width);
  }
  return best;
}

// Floor, walls and ceiling are cut off in the world, and there is one of each name.
const RoomPart& thing_of(const Model& model, const WorldPart& part) {
  const bool shell = part.kind == PartKind::floor || part.kind == PartKind::wall || part.kind == PartKind::ceiling;
  return *std::find_if(model.room.begin(), model.room.end(), [&](const RoomPart& thing) {
    return thing.name == part.name && thing.kind == part.kind && (shell || thing.outline.core == part.shape.core);
  });
}

std::vector<Interval> from_middle(const WorldPart& part, double station) {
  std::vector<Interval> stations = part.stations;
  for (Interval& stretch : stations) stretch = stretch + -station;
  return stations;
}

/// The pair alone, in one segment of the move.
ProofMaker pair_in(const Model& model, const RehearsedTouch& touch, const Segment& segment) {
  ProofMaker pair;
  pair.linkage = model.linkage;
  pair.segment = segment;
  pair.part(touch.a.shape, touch.a.section, from_middle(touch.a, touch.station));
  if (touch.b.section < 0) {
    const RoomPart& thing = thing_of(model, touch.b);
    pair.post(thing.outline, thing.stations);
    return pair;
  }
  pair.base = touch.b.section;
  pair.segment.stations = {0.0, 0.0};
  pair.post(touch.b.shape, from_middle(touch.b, touch.station));
  return pair;
}

/// The part of the stair that a world's part is; a wheel on the floor is the first caster.
const StairPart& part_of(const Model& model, const WorldPart& part) {
  return *std::find_if(model.stair.begin(), model.stair.end(), [&](const StairPart& own) {
    return own.kind == part.kind && own.section == part.section && (part.rolls || own.outline.core == part.shape.core);
  });
}

/// A margin, but for pairs that some contact rule names: those are held to its depth.
Need need_of(const Model& model, const Move& move, const RehearsedTouch& touch) {
  const bool room = touch.b.section < 0;
  const int a = part_of(model, touch.a).id, b = room ? thing_of(model, touch.b).id : part_of(model, touch.b).id;
  const Need margin = room ? room_need(model, wander_in(model, move), touch.a.kind, touch.b.kind)
                           : section_need(model, wander_in(model, move), touch.b.kind, touch.a.kind);
  double depth = -1.0;
  for (const ContactRule& rule : model.contacts)
    if (rule.names(a, b)) depth = std::max(depth, rule.depth);
  return depth < 0.0 ? margin : contact_need(depth);
}

bool met(const MoveTrial& proven, const RehearsedTouch& touch) {
  return std::any_of(proven.encounters.begin(), proven.encounters.end(), [&](const Encounter& e) {
    return e.mover.index == touch.part && e.mover.section == touch.a.section && e.target.section == touch.b.section &&
           e.target.name == touch.b.name;
  });
}

}  // namespace

bool TouchAndProof::contradicted() const {
  return at_least > seen + off + kGuard || (held_clear && seen + off < margin - kGuard);
}

TouchAndProof lay_beside(const Model& model, int number, const MoveTrial& proven, const RehearsedTouch& touch) {
  const Move& move = model.moves[static_cast<std::size_t>(number)];
  const Place place = nearest(model, move, touch);
  const Gaps gaps = rail_gaps(touch.a.stations, touch.b.stations, {0.0, 0.0}, false);
  TouchAndProof both;
  both.seen = prism_clearance(part_distance(touch.a, touch.b, touch.X_W), gaps.least, gaps.overlap);
  both.off = place.off;
  both.at_least = INFINITY;
  for (const Segment& segment : move.segments)
    both.at_least = std::min(both.at_least, pair_in(model, touch, segment).least(1e-5).at_least);
  const Need need = need_of(model, move, touch);
  both.margin = need.margin;
  both.held_clear = need.check && !met(proven, touch);
  return both;
}

}  // namespace stowpath::testing
