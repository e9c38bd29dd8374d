#include "sim/clearance/cast.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "sim/clearance/outside_disc.h"
#include "sim/clearance/pairs.h"
#include "sim/mechanism/upper_reach.h"

namespace stowpath {
namespace {

constexpr double kRopeSlab = 0.02;  // slabs of an oblique rope are no longer along the rail than this [m]
constexpr int kLooks = 16;          // pieces of a segment over which a rope's least length is bounded
constexpr int kPlayPieces = 6;      // of a rope along its length, each with its own share of the play

constexpr int kKinds = static_cast<int>(PartKind::lead_line) + 1;

int group_of(PartKind kind) { return static_cast<int>(kind); }

PartKind kind_of(int group) { return static_cast<PartKind>(group); }

bool there(const StairPart& part, const Move& move) {
  if (!part.only_pinned) return true;
  const std::size_t hinge = static_cast<std::size_t>(std::max(0, part.hinge));
  return hinge < move.pinned.size() && move.pinned[hinge];
}

/// Bent rods are covered from outside.
double excess_of(const Model& model, const StairPart& part) {
  return std::max(part.kind == PartKind::hook ? model.arc_tolerance : 0.0, part.excess);
}

/// Stations of a rope's end from the stair's middle. An end in the room stays put, unless the hoist rolls with the
/// stair.
Interval from_middle(const RopeEnd& end, Interval middles) {
  if (end.section >= 0 || end.rolls) return end.stations;
  return {end.stations.lo - middles.hi, end.stations.hi - middles.lo};
}

Interval between(Interval a, Interval b, double u) { return {a.lo + (b.lo - a.lo) * u, a.hi + (b.hi - a.hi) * u}; }

/// Proven: the rope's ends come no nearer to each other in the side view, all along the segment [m].
double shortest(const Model& model, const Segment& segment, const RopeRun& run) {
  static const TargetSet kNothing;
  static const NeedTable kNoNeeds;
  const ProofStage stage{model.linkage, segment, kRoom, {}, kNothing, kNoNeeds};
  double least = 1e9;
  for (int k = 0; k < kLooks; ++k) {
    const double u0 = static_cast<double>(k) / kLooks, u1 = static_cast<double>(k + 1) / kLooks;
    const Snapshot now = snapshot(stage, 0.5 * (u0 + u1));
    const Turns turns = half_turns(model.linkage, segment, u0, u1);
    const Vec2 a = now.of(run.a.section) * run.a.at, b = now.of(run.b.section) * run.b.at;
    const double moves = displacement(stage, now, turns, run.a.section, a, 0.0) +
                         displacement(stage, now, turns, run.b.section, b, 0.0);
    least = std::min(least, norm(b - a) - moves);
  }
  return std::max(0.0, least);
}

/// Stations of a spot: the farther from its end, the nearer to the other end's.
Interval spot_stations(RopeSpot spot, double aside, Interval a, Interval b, double least_length) {
  const Interval own = spot.from_b ? b : a, other = spot.from_b ? a : b;
  const double most = spot.distance <= 0.0            ? 0.0
                      : spot.distance >= least_length ? 1.0
                                                      : spot.distance / least_length;
  return hull(own, between(own, other, most)) + aside;
}

struct SpotStations {
  Interval first, last;
};

SpotStations spots_of(const Model& model, const Segment& segment, const RopeRun& run, Interval middles) {
  const Interval a = from_middle(run.a, middles), b = from_middle(run.b, middles);
  const bool measured = (run.first.distance > 0.0 || run.last.distance > 0.0) && !(a == b);
  const double length = measured ? shortest(model, segment, run) : 1.0;
  return {spot_stations(run.first, run.first_aside, a, b, length), spot_stations(run.last, run.last_aside, a, b, length)};
}

/// How far a rope runs aslant along the rail [m].
double aslant(Interval a, Interval b) { return std::max(std::abs(b.lo - a.lo), std::abs(b.hi - a.hi)); }

/// How much of the play shifts a rope against the section that its end b is tied to, beyond the fraction `from` of what
/// lies between its spots. End b goes along; end a in the room is shifted by the pivot's play, and by the section's turn,
/// which the play counts at the stair's own reach.
double play_share(const Model& model, const RopeRun& run, double from, double length) {
  if (length <= 0.0) return 1.0;
  const auto off_b = [&](RopeSpot spot) { return spot.from_b ? spot.distance / length : 1.0; };
  const double share = std::min(1.0, std::max(off_b(run.last), (1.0 - from) * off_b(run.first) + from * off_b(run.last)));
  const double lever = norm(run.a.at - model.linkage.pivot) / upper_reach(model, 0);
  return share * std::max(1.0, lever);
}

void add_part(const Model& model, int index, MoverCast& cast) {
  const StairPart& part = model.stair[static_cast<std::size_t>(index)];
  cast.movers.push_back(part_mover(model, part));
  cast.roles.push_back({part.kind, part.name, 0, part.section, index, part.id});
}

/// A rope that runs aslant along the rail is enclosed in slabs of stations, each short enough to stand for the rope.
/// @param base  where it is looked at from: a rope that ends on that section is cut for its shares of the play as well
void add_rope(const Model& model, const Segment& segment, int index, Interval middles, int base, MoverCast& cast) {
  const RopeRun& run = model.ropes[static_cast<std::size_t>(index)];
  const SpotStations spots = spots_of(model, segment, run, middles);
  const bool shares = base != kRoom && run.a.section == kRoom && run.b.section == base;
  const int least = shares ? kPlayPieces : 1;
  const int slabs = std::max(least, static_cast<int>(std::ceil(aslant(spots.first, spots.last) / kRopeSlab)));
  const double length = shares ? shortest(model, segment, run) : 0.0;
  for (int k = 0; k < slabs; ++k) {
    const double u0 = static_cast<double>(k) / slabs, u1 = static_cast<double>(k + 1) / slabs;
    cast.movers.push_back(rope_mover(model, segment, run, middles, u0, u1));
    cast.roles.push_back({run.kind, run.name, 0, std::max(run.a.section, run.b.section), index, run.id});
    if (shares) cast.movers.back().play_share = play_share(model, run, u0, length);
  }
}

void add_ropes(const Model& model, const Move& move, const Segment& segment, Interval middles, int base,
               MoverCast& cast) {
  for (int i = 0; i < static_cast<int>(model.ropes.size()); ++i) {
    const RopeRun& run = model.ropes[static_cast<std::size_t>(i)];
    if (is_there(run.when, move.hooked_on)) add_rope(model, segment, i, middles, base, cast);
  }
}

/// The disc's centre as the mover's own body has it; none where it is not fixed there.
std::optional<Vec2> centre_in(const Model& model, const ContactRule& rule, int body) {
  if (rule.body == body) return rule.centre;
  const bool axis = rule.body >= 0 && rule.body + 1 < model.linkage.sections &&
                    norm(rule.centre - model.linkage.distal(rule.body)) == 0.0;
  if (axis && body == rule.body + 1) return model.linkage.proximal(body);
  // Pinned, the two sections are straight and share their datum line.
  if (rule.when == ContactTime::pinned && body == rule.body + 1)
    return rule.centre - Vec2{model.linkage.length[static_cast<std::size_t>(rule.body)], 0.0};
  return std::nullopt;
}

std::vector<Mover> part_outside(const Model& model, const Mover& part, const ContactRule& rule) {
  const auto centre = centre_in(model, rule, part.body);
  if (!centre) return {part};
  std::vector<Mover> out;
  for (RoundedPolygon& piece : outside_disc({part.outline.core(), part.outline.radius()}, *centre, rule.radius)) {
    out.push_back(part);
    out.back().outline = Outline(piece);
  }
  return out;
}

bool is_at(const RopeAnchor& anchor, const ContactRule& rule) {
  return anchor.body == rule.body && norm(anchor.at - rule.centre) == 0.0;
}

/// A rope leaves the disc about its own end a radius from there.
std::vector<Mover> rope_outside(Mover rope, const ContactRule& rule) {
  if (is_at(rope.a, rule)) rope.skip_a = std::max(rope.skip_a, rule.radius);
  if (is_at(rope.b, rule)) rope.skip_b = std::max(rope.skip_b, rule.radius);
  // Both spots counted from one end: what lies between them may be all inside.
  const double skip = rope.first.from_b ? rope.skip_b : rope.skip_a;
  const bool inside = rope.first.from_b == rope.last.from_b && std::max(rope.first.distance, rope.last.distance) <= skip;
  return inside ? std::vector<Mover>{} : std::vector<Mover>{rope};
}

/// Which rules let a mover touch a target: by target.
using Allowed = std::vector<std::pair<int, std::vector<int>>>;

Allowed allowed_for(const Model& model, const std::vector<int>& active, int id, const TargetCast& targets) {
  Allowed out;
  std::vector<int> mine;
  for (const int rule : active) {
    const ContactRule& r = model.contacts[static_cast<std::size_t>(rule)];
    const bool named = std::find(r.a.begin(), r.a.end(), id) != r.a.end() || std::find(r.b.begin(), r.b.end(), id) != r.b.end();
    if (named) mine.push_back(rule);
  }
  if (mine.empty()) return out;
  for (int t = 0; t < static_cast<int>(targets.roles.size()); ++t) {
    std::vector<int> rules;
    for (const int rule : mine)
      if (model.contacts[static_cast<std::size_t>(rule)].names(id, targets.roles[static_cast<std::size_t>(t)].id))
        rules.push_back(rule);
    if (!rules.empty()) out.emplace_back(t, std::move(rules));
  }
  return out;
}

double deepest(const Model& model, const std::vector<int>& rules, double rise) {
  double depth = 0.0;
  for (const int rule : rules) {
    const ContactRule& r = model.contacts[static_cast<std::size_t>(rule)];
    depth = std::max(depth, r.depth + (r.when == ContactTime::foot_down ? rise : 0.0));
  }
  return depth;
}

/// The pieces outside of the rules' discs keep the margin to all targets that the same rules name.
void add_outside(const Model& model, const std::vector<int>& rules, std::vector<PairNeed> pairs, std::size_t number,
                 MoverCast& cast) {
  int piece = 0;
  for (Mover& mover : outside_rules(model, cast.movers[number], rules)) {
    mover.pairs = pairs;
    mover.only_pairs = true;
    cast.movers.push_back(std::move(mover));
    cast.roles.push_back(cast.roles[number]);
    cast.roles.back().rules = rules;
    cast.roles.back().piece = piece++;
  }
}

void allow(const Model& model, const ContactState& state, const NeedTable& needs, const TargetCast& targets,
           const std::vector<int>& active, std::size_t number, MoverCast& cast) {
  const Allowed allowed = allowed_for(model, active, cast.roles[number].id, targets);
  const int group = cast.movers[number].group;
  std::vector<std::vector<int>> done;
  for (const auto& [target, rules] : allowed) {
    cast.movers[number].pairs.push_back({target, contact_need(deepest(model, rules, state.rise))});
    if (std::find(done.begin(), done.end(), rules) != done.end()) continue;
    done.push_back(rules);
    std::vector<PairNeed> pairs;
    for (const auto& [other, same] : allowed)
      if (same == rules) pairs.push_back({other, needs.at(group, targets.targets[other].group)});
    add_outside(model, rules, std::move(pairs), number, cast);
  }
}

}  // namespace

Mover part_mover(const Model& model, const StairPart& part) {
  Mover mover;
  mover.body = part.section;
  mover.outline = Outline(part.outline);
  mover.stations = part.stations;
  mover.excess = excess_of(model, part);
  mover.group = group_of(part.kind);
  return mover;
}

Mover rope_mover(const Model& model, const Segment& segment, const RopeRun& run, Interval middles, double from,
                 double to) {
  const SpotStations spots = spots_of(model, segment, run, middles);
  const Interval stations = hull(between(spots.first, spots.last, from), between(spots.first, spots.last, to));
  const double wide = run.half_width + run.radius;
  Mover mover;
  mover.rope = true;
  mover.a = {run.a.section, run.a.at};
  mover.b = {run.b.section, run.b.at};
  mover.first = run.first;
  mover.last = run.last;
  mover.rope_from = from;
  mover.rope_to = to;
  mover.rope_radius = run.radius;
  mover.group = group_of(run.kind);
  mover.stations = {{stations.lo - wide, stations.hi + wide}};
  mover.aslant = stations.length() > 0.0;
  return mover;
}

PairEnd end_of(const Role& role) { return {role.kind, role.index, role.section, 0.0, 1.0, role.rules, role.piece}; }

PairEnd end_of(const Mover& mover, const Role& role) {
  return {role.kind, role.index, role.section, mover.rope_from, mover.rope_to, role.rules, role.piece};
}

double thing_number(const Target& target, const Role& role, Interval stretch) {
  return target.stations.size() > 1 ? stretch.middle() : static_cast<double>(role.thing);
}

MoverCast stair_cast(const Model& model, const Move& move, const Segment& segment) {
  MoverCast cast;
  for (int i = 0; i < static_cast<int>(model.stair.size()); ++i) {
    if (there(model.stair[static_cast<std::size_t>(i)], move)) add_part(model, i, cast);
  }
  add_ropes(model, move, segment, {segment.from.station, segment.from.station}, kRoom, cast);
  return cast;
}

MoverCast beyond_cast(const Model& model, const Move& move, const Segment& segment, int base) {
  MoverCast cast;
  for (int i = 0; i < static_cast<int>(model.stair.size()); ++i) {
    const StairPart& part = model.stair[static_cast<std::size_t>(i)];
    if (part.section > base && there(part, move)) add_part(model, i, cast);
  }
  add_ropes(model, move, segment, middles(segment), base, cast);
  return cast;
}

TargetCast room_cast(const Model& model, ZoneState state, bool hooked_on) {
  TargetCast cast;
  std::vector<Target> targets;
  for (int i = 0; i < static_cast<int>(model.room.size()); ++i) {
    const RoomPart& part = model.room[static_cast<std::size_t>(i)];
    if (!is_there(part.when, hooked_on)) continue;
    targets.push_back({Outline(part.outline), part.stations, part.excess, group_of(part.kind), part.aslant});
    cast.roles.push_back({part.kind, part.name, part.thing, -1, i, part.id});
  }
  for (int i = 0; i < static_cast<int>(model.zones.size()); ++i) {
    const ZonePart& zone = model.zones[static_cast<std::size_t>(i)];
    const auto names = [&](ZoneState s) { return std::find(zone.when.begin(), zone.when.end(), s) != zone.when.end(); };
    if (!names(state) && !names(ZoneState::always)) continue;
    targets.push_back({Outline(zone.outline), {zone.stations}, 0.0, group_of(PartKind::zone)});
    cast.roles.push_back({PartKind::zone, zone.name, -1 - static_cast<int>(cast.roles.size()), -1, i});
  }
  cast.targets = TargetSet(std::move(targets));
  return cast;
}

TargetCast section_cast(const Model& model, const Move& move, int section) {
  TargetCast cast;
  std::vector<Target> targets;
  for (int i = 0; i < static_cast<int>(model.stair.size()); ++i) {
    const StairPart& part = model.stair[static_cast<std::size_t>(i)];
    if (part.section != section || !there(part, move)) continue;
    targets.push_back({Outline(part.outline), part.stations, excess_of(model, part), group_of(part.kind)});
    cast.roles.push_back({part.kind, part.name, static_cast<int>(targets.size()), section, i, part.id});
  }
  cast.targets = TargetSet(std::move(targets));
  return cast;
}

NeedTable room_needs(const Model& model, const Wander& wander) {
  NeedTable needs(kKinds, kKinds);
  needs.wander = wander;
  for (int mover = 0; mover < kKinds; ++mover)
    for (int target = 0; target < kKinds; ++target)
      needs.at(mover, target) = room_need(model, wander, kind_of(mover), kind_of(target));
  return needs;
}

NeedTable room_needs(const Model& model) { return room_needs(model, assumed_wander(model)); }

NeedTable section_needs(const Model& model, const Wander& wander) {
  NeedTable needs(kKinds, kKinds);
  for (int mover = 0; mover < kKinds; ++mover)
    for (int target = 0; target < kKinds; ++target)
      needs.at(mover, target) = section_need(model, wander, kind_of(target), kind_of(mover));
  return needs;
}

void allow_contacts(const Model& model, const ContactState& state, const NeedTable& needs, const TargetCast& targets,
                    MoverCast& movers) {
  std::vector<int> active;
  for (int i = 0; i < static_cast<int>(model.contacts.size()); ++i)
    if (state.counts(model.contacts[static_cast<std::size_t>(i)])) active.push_back(i);
  const std::size_t whole = movers.movers.size();
  for (std::size_t number = 0; number < whole; ++number) allow(model, state, needs, targets, active, number, movers);
}

std::vector<Mover> outside_rules(const Model& model, const Mover& whole, const std::vector<int>& rules) {
  std::vector<Mover> pieces{whole};
  for (Mover& piece : pieces) piece.pairs.clear();
  for (const int number : rules) {
    const ContactRule& rule = model.contacts[static_cast<std::size_t>(number)];
    if (std::isinf(rule.radius)) return {};
    std::vector<Mover> left;
    for (const Mover& piece : pieces)
      for (Mover& out : piece.rope ? rope_outside(piece, rule) : part_outside(model, piece, rule))
        left.push_back(std::move(out));
    pieces = std::move(left);
  }
  return pieces;
}

}  // namespace stowpath
