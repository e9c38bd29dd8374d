#include "tests/campaign/scene_trial.h"

#include <algorithm>
#include <cmath>

#include "sim/clearance/dry_fit.h"
#include "tests/support/proof_maker.h"
#include "tests/support/slow_motion.h"

namespace stowpath::testing {
namespace {

/// What rounding is granted [m]; near full stretch of a drag a pose itself is no better.
constexpr double kGuard = 1e-9, kStretched = 1e-7;
constexpr double kKnot = 0.15;  // nearer to where the line is tied the proof may let it touch (draws: within 0.1) [m]
constexpr double kGrain = 2e-3;  // steps of the search, each dip of which is refined [m]

struct PairOfParts {
  ProofMaker maker;  // one mover, one target
  Need need;
  std::string names[2];
};

/// The margins by a table of its own: nothing here is asked of the proof's.
Need wanted(const Model& model, PartKind stair, PartKind room) {
  if (room == PartKind::zone) return {true, true, 0.0, model.hook_play, 0.0};
  const bool hook = stair == PartKind::hook && (room == PartKind::bracket || room == PartKind::pipe_joint);
  return {true, false, hook ? model.margin.hook : model.margin.standard, model.hook_play, 0.0};
}

Need between_sections(const Model& model) { return {true, false, model.margin.self, 0.0, 0.0}; }

bool named(const ZonePart& zone, ZoneState state) {
  return std::any_of(zone.when.begin(), zone.when.end(),
                     [=](ZoneState s) { return s == state || s == ZoneState::always; });
}

PairOfParts pair_of(const Model& model, const Segment& segment, const StairPart& part) {
  PairOfParts pair;
  pair.maker.linkage = model.linkage;
  pair.maker.segment = segment;
  pair.maker.part(part.outline, part.section, part.stations);
  pair.names[0] = part.name;
  return pair;
}

/// Every part of the stair with every thing of the room, and with the parts of sections nearer the rail.
std::vector<PairOfParts> all_pairs(const Model& model, const Move& move, const Segment& segment) {
  std::vector<PairOfParts> out;
  for (const StairPart& part : model.stair) {
    const PairOfParts alone = pair_of(model, segment, part);
    for (const RoomPart& thing : model.room) {
      out.push_back(alone);
      out.back().maker.post(thing.outline, thing.stations);
      out.back().need = wanted(model, part.kind, thing.kind);
      out.back().names[1] = thing.name;
    }
    for (const ZonePart& zone : model.zones) {
      if (!named(zone, move.state)) continue;
      out.push_back(alone);
      out.back().maker.post(zone.outline, {zone.stations});
      out.back().need = wanted(model, part.kind, PartKind::zone);
      out.back().names[1] = zone.name;
    }
    for (const StairPart& nearer : model.stair) {
      if (nearer.section >= part.section) continue;
      out.push_back(alone);
      out.back().maker.base = nearer.section;
      out.back().maker.segment.stations = {0.0, 0.0};
      out.back().maker.post(nearer.outline, nearer.stations);
      out.back().need = between_sections(model);
      out.back().names[1] = nearer.name;
    }
  }
  return out;
}

double least_seen(PairOfParts& pair, double level, double enough) {
  const ProofStage stage = pair.maker.stage();
  const SlowMotion<double> slow(stage, 0, 0);
  const double grain = std::max(kGrain, slow.travel(0.0, 1.0) / 2000.0);
  return slow_least(slow, 0.0, 1.0, level, grain, enough).clearance;
}

/// One point of a line, as a pair's mover: with the line's radius taken off, its distance is that of a ball.
PairOfParts point_of_line(const Model& model, const Segment& segment, const RopeRun& run, double along, bool high) {
  PairOfParts pair;
  pair.maker.linkage = model.linkage;
  pair.maker.segment = segment;
  const auto station = [&](const RopeEnd& end) {
    const double s = high ? end.stations.hi : end.stations.lo;
    return end.section < 0 && !end.rolls ? s - segment.from.station : s;
  };
  const double s = (1.0 - along) * station(run.a) + along * station(run.b);
  pair.maker.rope({run.a.section, run.a.at}, {run.b.section, run.b.at}, 0.0, {{s, s}});
  pair.maker.movers[0].rope_from = pair.maker.movers[0].rope_to = along;
  return pair;
}

/// A ball on the line keeps what a clear move or its least clearance says of one thing.
bool ball_upholds(PairOfParts& pair, double radius, const Need& need, const MoveResult& result) {
  double floor = result.at_least;
  if (result.verdict == Verdict::clear) floor = std::max(floor, need.margin + need.play);
  const ProofStage stage = pair.maker.stage();
  const SlowMotion<double> slow(stage, 0, 0);
  for (int n = 0; n <= 20; ++n) {
    if (slow.clearance(n / 20.0) - radius < floor - kStretched) return false;
  }
  return true;
}

/// The line's least length, looked at 101 times [m].
double shortest_line(const Model& model, const Segment& segment, const RopeRun& run) {
  double least = 1e9;
  for (int n = 0; n <= 100; ++n) {
    const SectionPoses X_W = place_sections(model.linkage, at(model.linkage, segment, n / 100.0));
    least = std::min(least, norm(X_W[static_cast<std::size_t>(run.b.section)] * run.b.at - run.a.at));
  }
  return least;
}

/// Points of the line, looked at one by one, against the room, and against all sections but near the knot on its own.
bool line_upholds(const Model& model, const Segment& segment, const MoveResult& result) {
  for (const RopeRun& run : model.ropes) {
    const double shortest = shortest_line(model, segment, run);
    for (int k = 0; k < 42; ++k) {
      PairOfParts pair = point_of_line(model, segment, run, (k / 2) / 20.0, k % 2 == 1);
      for (const RoomPart& thing : model.room) {
        pair.maker.targets.clear();
        pair.maker.post(thing.outline, thing.stations);
        if (!ball_upholds(pair, run.radius, wanted(model, run.kind, thing.kind), result)) return false;
      }
      pair.maker.segment.stations = {0.0, 0.0};
      for (const StairPart& part : model.stair) {
        if (part.section == run.b.section && (1.0 - (k / 2) / 20.0) * shortest < kKnot) continue;
        pair.maker.base = part.section;
        pair.maker.targets.clear();
        pair.maker.post(part.outline, part.stations);
        if (!ball_upholds(pair, run.radius, between_sections(model), result)) return false;
      }
    }
  }
  return true;
}

/// Where the stair may stand besides where the segment says.
std::vector<Segment> astray(const Segment& segment) {
  std::vector<Segment> out;
  for (const double off : {0.0, segment.astray.lo, segment.astray.hi}) {
    out.push_back(segment);
    out.back().astray = {0.0, 0.0};
    out.back().from.station += off;
    out.back().to.station += off;
    if (segment.over_stations()) return out;
  }
  return out;
}

/// No pair comes closer than a clear move or its proven least clearance says.
bool upholds(const Model& model, const Move& move, const MoveResult& result) {
  for (const Segment& meant : move.segments) {
    const double guard = meant.kind == SegmentKind::drag ? kStretched : kGuard;
    for (const Segment& segment : astray(meant)) {
      if (move.hooked_on && !line_upholds(model, segment, result)) return false;
      for (PairOfParts& pair : all_pairs(model, move, segment)) {
        double floor = pair.need.silent ? -1e9 : result.at_least;
        if (result.verdict == Verdict::clear) floor = std::max(floor, pair.need.margin + pair.need.play);
        if (floor > -1e8 && least_seen(pair, floor, floor - guard) < floor - guard) return false;
      }
    }
  }
  return true;
}

/// At stations where the stair is said to stand clear it does, over all leans of its standing moves.
bool stands(const Model& model, const DryFit& fit) {
  for (const Interval free : fit.reach.standing) {
    for (const double share : {0.0, 0.37, 1.0}) {
      for (const Move& move : model.moves) {
        if (move.kind != MoveKind::roll) continue;
        Segment segment = move.segments.front();
        segment.stations = {1.0, 0.0};
        segment.from.station = segment.to.station = free.lo + share * free.length();
        for (PairOfParts& pair : all_pairs(model, move, segment)) {
          const double need = pair.need.margin + pair.need.play;
          if (pair.maker.base == kRoom && least_seen(pair, need, need - kGuard) < need - kGuard) return false;
        }
      }
    }
  }
  return true;
}

/// The pose that a finding calls its worst shows something of that clearance against the thing it names.
bool shows(const Model& model, const Finding& finding) {
  if (finding.kind == FindingKind::undecided || finding.kind == FindingKind::build) return true;
  Segment pose;
  pose.from = pose.to = finding.worst;
  if (finding.parts[0] == "line" || finding.parts[1] == "line") return true;  // its slabs stand out of it
  double least = 1e9;
  for (const Move& move : model.moves) {
    if (std::find(finding.moves.begin(), finding.moves.end(), move.index) == finding.moves.end()) continue;
    Move still = move;
    still.kind = MoveKind::roll;  // sections are looked at too
    for (PairOfParts& pair : all_pairs(model, still, pose)) {
      if (pair.names[1] != finding.parts[1] && pair.names[0] != finding.parts[1]) continue;
      least = std::min(least, least_seen(pair, -1e9, -1e9));
    }
  }
  return finding.clearance < finding.needed && least <= finding.clearance + kStretched;
}

}  // namespace

SceneAnswer try_scene(const Model& model) {
  const DryFit fit = dry_fit(model);
  SceneAnswer out;
  out.verdict = fit.verdict;
  for (std::size_t k = 0; k < fit.moves.size(); ++k) {
    ++out.moves;
    out.moves_clear += fit.moves[k].verdict == Verdict::clear;
    out.false_clear = out.false_clear || !upholds(model, model.moves[k], fit.moves[k]);
  }
  out.false_clear = out.false_clear || !stands(model, fit);
  for (const Finding& f : fit.findings) out.false_interference = out.false_interference || !shows(model, f);
  return out;
}

}  // namespace stowpath::testing
