#include "sim/clearance/trial.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/clearance/pairs.h"
#include "sim/clearance/rope_pairs.h"
#include "sim/clearance/stations.h"

namespace stowpath {
namespace {

/// Clearances beyond this are not told apart [m].
constexpr double kHorizon = 1.0;

/// Rounding that station sets are widened by, so that what is left of the span is proven [m].
constexpr double kStationGuard = 1e-9;

/// The station of the stair's middle at which the pair's stretches overlap most, within those meant.
double worst_station(const Mover& mover, const Target& target, Interval stations) {
  double best = stations.lo, most = -std::numeric_limits<double>::infinity();
  for (const Interval i : mover.stations) {
    for (const Interval j : target.stations) {
      const double s = std::clamp(j.middle() - i.middle(), stations.lo, stations.hi);
      const double over = overlap(i + s, j);
      if (over > most) best = s, most = over;
    }
  }
  return best;
}

/// Stations to report: in a roll all that are blocked within it; else the stretch that holds the stair's station.
IntervalSet reported_stations(const Mover& mover, const Target& target, double d, double margin, Interval meant,
                              bool roll) {
  IntervalSet out;
  for (const Interval i : blocked_stations(d, margin, mover.stations, target.stations)) {
    if (i.hi < meant.lo || i.lo > meant.hi) continue;
    out.push_back(roll ? meet(i, meant) : i);
  }
  if (out.empty()) out.push_back(meant);
  return out;
}

/// One number for each of the room's things that the pair meets within `stations`.
std::vector<double> met_things(const Mover& mover, const Target& target, const Role& role, double d, double margin,
                               Interval stations) {
  std::vector<double> out;
  for (const Interval j : target.stations) {
    const IntervalSet blocked = blocked_stations(d, margin, mover.stations, {&j, 1});
    const bool met = std::any_of(blocked.begin(), blocked.end(),
                                 [&](Interval b) { return b.lo < stations.hi && b.hi > stations.lo; });
    if (met || (stations.length() == 0.0 && contains(blocked, stations.lo))) {
      out.push_back(thing_number(target, role, j));
    }
  }
  return out;
}

std::vector<Vec2> seen_from_room(const Outline& outline, const Pose2& X_WB) {
  std::vector<Vec2> corners = drawn_corners({outline.core(), outline.radius()}, 2e-4);
  for (Vec2& v : corners) v = X_WB * v;
  return corners;
}

PairPlace pair_place(PairPlace where, const Mover& mover, const Role& mover_role, const Role& target_role, double u) {
  where.mover = end_of(mover, mover_role);
  where.target = end_of(target_role);
  where.u = where.piece.lo + u * where.piece.length();
  return where;
}

bool rolls(const ProofStage& stage) { return stage.base == kRoom && stage.segment.over_stations(); }

/// Where along the rail the pair meets, and which of the room's like things it is.
void tell_stations(const ProofStage& stage, Encounter& e) {
  e.stations = {{e.from.station, e.from.station}};
  e.things = {static_cast<double>(e.target.thing)};
  if (stage.base != kRoom) return;
  const Mover& m = stage.movers[static_cast<std::size_t>(e.span.mover)];
  const Target& t = stage.targets[e.span.target];
  const Interval meant = stations_over(stage.segment, e.span.u0, e.span.u1);
  const double margin = e.least.at_most < 0.0 ? std::min(0.0, e.need.margin) : e.need.margin + e.need.play;
  e.stations = reported_stations(m, t, e.worst.side_view, margin, meant, rolls(stage));
  const std::vector<double> met = met_things(m, t, e.target, e.worst.side_view, margin, meant);
  if (!met.empty()) e.things = met;
  e.at.station = worst_station(m, t, rolls(stage) ? meant : stations_over(stage.segment, e.least.u, e.least.u));
}

/// The two parts and their witness points at the worst pose, seen from the room.
void draw_worst(const ProofStage& stage, Encounter& e) {
  const Snapshot now = snapshot(stage, e.least.u);
  const Pose2 X_WB = now.of(kRoom).inverse();
  Outline mover;
  place_mover(now, stage.movers[static_cast<std::size_t>(e.span.mover)], mover);
  e.outlines = {seen_from_room(mover, X_WB), seen_from_room(stage.targets[e.span.target].outline, X_WB)};
  if (e.worst.side_view < -kHorizon)  // deep in a half space there is no nearest point worth showing
    e.worst.witness.on_a = e.worst.witness.on_b = mover.disc().centre;
  e.worst.witness.on_a = X_WB * e.worst.witness.on_a;
  e.worst.witness.on_b = X_WB * e.worst.witness.on_b;
}

}  // namespace

Trial::Trial(const Model& model, const DryFitOptions& options)
    : model_(model),
      options_(options),
      room_needs_(stowpath::room_needs(model)),
      section_needs_(stowpath::section_needs(model, room_needs_.wander)) {
  for (const bool hooked_on : {false, true})
    for (const ZoneState state : {ZoneState::always, ZoneState::standing, ZoneState::moving, ZoneState::parked})
      rooms_.push_back(room_cast(model, state, hooked_on));
}

const TargetCast& Trial::room(ZoneState state, bool hooked_on) const {
  return rooms_[static_cast<std::size_t>(state) + (hooked_on ? 4U : 0U)];
}

MoveTrial Trial::run(int number) {
  const Move& move = model_.moves[static_cast<std::size_t>(number)];
  MoveTrial out;
  out.result.index = move.index;
  out.result.kind = move.kind;
  out.result.verdict = Verdict::clear;
  out.result.at_least = out.result.at_most = kHorizon;
  let_wander(move);
  for (const Segment& segment : move.segments) {
    const std::size_t before = out.encounters.size();
    PairPlace where;
    where.move = number;
    where.segment = static_cast<int>(&segment - move.segments.data());
    against_room(move, segment, where, out);
    against_sections(move, segment, where, out);
    against_ropes(move, segment, out);
    for (std::size_t i = before; i < out.encounters.size(); ++i) out.encounters[i].part = where.segment;
  }
  for (Encounter& e : out.encounters) {
    e.move = number;
    out.result.verdict = worse(out.result.verdict, e.span.verdict);
  }
  return out;
}

void Trial::let_wander(const Move& move) {
  const Wander wander = wander_in(model_, move);
  if (wander == room_needs_.wander) return;
  room_needs_ = stowpath::room_needs(model_, wander);
  section_needs_ = stowpath::section_needs(model_, wander);
}

void Trial::against_room(const Move& move, const Segment& whole, PairPlace where, MoveTrial& out) {
  const TargetCast& targets = room(move.state, move.hooked_on);
  for (const Stretch& stretch : room_stretches(model_, move, whole)) {
    MoverCast movers = stair_cast(model_, move, stretch.segment);
    allow_contacts(model_, stretch.state, room_needs_, targets, movers);
    where.piece = stretch.piece;
    take({model_.linkage, stretch.segment, kRoom, movers.movers, targets.targets, room_needs_}, movers, targets, where,
         out);
  }
}

void Trial::against_sections(const Move& move, const Segment& whole, PairPlace where, MoveTrial& out) {
  for (int base = 0; base < model_.linkage.sections; ++base) {
    const TargetCast targets = section_cast(model_, move, base);
    where.base = base;
    for (const Stretch& stretch : section_stretches(model_, move, whole, base)) {
      MoverCast movers = beyond_cast(model_, move, whole, base);
      allow_contacts(model_, stretch.state, section_needs_, targets, movers);
      where.piece = stretch.piece;
      take({model_.linkage, stretch.segment, base, movers.movers, targets.targets, section_needs_}, movers, targets,
           where, out);
    }
  }
}

/// Two ropes that both move have no body in which one stands still: they are halved on by themselves.
void Trial::against_ropes(const Move& move, const Segment& segment, MoveTrial& out) {
  const RopePairs met = rope_pairs(model_, move, segment, section_needs_, options_);
  count(met.counts);
  for (const Encounter& e : met.encounters) out.encounters.push_back(e);
  if (!options_.least || !(met.least < out.result.at_least)) return;
  out.result.at_least = met.least;
  if (met.witnessed < out.result.at_most) {
    out.result.at_most = met.witnessed;
    out.result.closest = met.closest;
    out.result.closest_at = met.closest_at;
    out.result.closest_place = {};
  }
}

void Trial::take(const ProofStage& stage, const MoverCast& movers, const TargetCast& targets, const PairPlace& where,
                 MoveTrial& out) {
  ProofOptions options;
  options.resolution = options_.resolution;
  options.bound_scale = options_.bound_scale;
  const Proof proof = prove(stage, options);
  count(proof.counts);
  if (options_.least) closest(stage, movers, targets, where, out);
  if (rolls(stage)) block(stage, proof, out);
  for (const Span& span : proof.spans) {
    Encounter e = meet_pair(stage, movers, targets, span);
    e.place = pair_place(where, stage.movers[static_cast<std::size_t>(span.mover)], e.mover, e.target, e.least.u);
    out.encounters.push_back(std::move(e));
  }
}

Encounter Trial::meet_pair(const ProofStage& stage, const MoverCast& movers, const TargetCast& targets,
                           const Span& span) {
  Encounter e;
  e.span = span;
  e.mover = movers.roles[static_cast<std::size_t>(span.mover)];
  e.target = targets.roles[static_cast<std::size_t>(span.target)];
  e.need = stage.need(span.mover, span.target);
  e.least = least_of_pair(stage, span.mover, span.target, span.u0, span.u1, options_.tolerance);
  count(e.least.counts);
  e.worst = look_at_pair(stage, span.mover, span.target, e.least.u);
  e.from = at(model_.linkage, stage.segment, span.u0);
  e.to = at(model_.linkage, stage.segment, span.u1);
  e.at = at(model_.linkage, stage.segment, e.least.u);
  tell_stations(stage, e);
  draw_worst(stage, e);
  return e;
}

void Trial::count(const WalkCounts& counts) {
  work_.distances += counts.distances;
  work_.rejects += counts.rejects;
}

void Trial::block(const ProofStage& stage, const Proof& proof, MoveTrial& out) {
  const Turns turns = half_turns(stage.linkage, stage.segment, 0.0, 1.0);
  const Snapshot now = snapshot(stage, 0.5);
  IntervalSet blocked = std::move(out.not_clear);
  for (const Span& span : proof.spans) {
    const Mover& m = stage.movers[static_cast<std::size_t>(span.mover)];
    const Target& t = stage.targets[span.target];
    const Need need = stage.need(span.mover, span.target);
    Outline placed;
    place_mover(now, m, placed);
    const double d =
        signed_distance(placed, t.outline) - mover_displacement(stage, now, turns, m, placed) - kStationGuard;
    for (const Interval i : blocked_stations(d, need.margin + need.play, m.stations, t.stations)) {
      blocked.push_back({i.lo - kStationGuard, i.hi + kStationGuard});
    }
  }
  out.not_clear = unite(std::move(blocked));
}

void Trial::closest(const ProofStage& stage, const MoverCast& movers, const TargetCast& targets, const PairPlace& where,
                    MoveTrial& out) {
  MoveResult& r = out.result;
  const Least least = least_clearance(stage, options_.tolerance, r.at_most);
  count(least.counts);
  r.at_least = std::min(r.at_least, least.at_least);
  if (least.mover < 0) return;
  r.at_most = least.at_most;
  const auto mover = static_cast<std::size_t>(least.mover), target = static_cast<std::size_t>(least.target);
  r.closest = {movers.roles[mover].name, targets.roles[target].name};
  r.closest_place = pair_place(where, stage.movers[mover], movers.roles[mover], targets.roles[target], least.u);
  r.closest_at = at(stage.linkage, stage.segment, least.u);
  if (stage.base == kRoom) {
    r.closest_at.station = worst_station(stage.movers[static_cast<std::size_t>(least.mover)],
                                         stage.targets[least.target], stations_over(stage.segment, least.u, least.u));
  }
}

}  // namespace stowpath
