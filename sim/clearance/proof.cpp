#include "sim/clearance/proof.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

namespace stowpath {
namespace {

/// Keeps a threshold from being flattered by rounding of stations, where a square root would magnify it [m].
constexpr double kGapGuard = 1e-9;

/// Witness points nearer than this do not tell a direction well enough [m].
constexpr double kLeastApart = 1e-4;

struct Thresholds {
  double clear = 0.0;     // side view at least this: need kept at every station of the piece
  double violate = 0.0;   // below this: margin broken at every station
  double kept = 0.0;      // at least this: margin kept at every station
  double unproved = 0.0;  // below this: need kept at no station
  double seated = 0.0;    // at least this: need kept at every station if the pivot did not wander
};

Thresholds thresholds(const ProofStage& stage, int number, int target_number, Interval stations) {
  const Mover& mover = stage.movers[static_cast<std::size_t>(number)];
  const Target& target = stage.targets[target_number];
  const Need need = stage.need(number, target_number);
  const Gaps gaps = pair_gaps(stage.segment, mover, target, stations);
  const double wanted = need.margin + need.play, broken = need.margin - mover.excess - target.excess;
  const double most = gaps.overlap + kGapGuard, least = gaps.least_overlap - kGapGuard;
  const double near = std::max(0.0, gaps.least - kGapGuard), far = least > 0.0 ? 0.0 : gaps.most + kGapGuard;
  return {side_view_threshold(wanted, near, most), side_view_threshold(broken, far, least),
          side_view_threshold(broken, near, most), side_view_threshold(wanted, far, least),
          side_view_threshold(wanted - need.wander, near, most)};
}

bool station_moves(const Segment& segment) {
  return !segment.over_stations() && segment.from.station != segment.to.station;
}

struct ProofJudge {
  struct Pair {
    int target = 0;
    Thresholds at{};
  };

  const ProofStage& stage;
  const ProofOptions& options;
  double farthest = stage.greatest_need();
  std::vector<Span> found{};

  double reach(int) const { return farthest; }

  bool admits(int mover, int target, Pair& pair) const {
    if (!stage.need(mover, target).check) return false;
    set(mover, pair, stations_over(stage.segment, 0.0, 1.0));
    return pair.at.clear > -std::numeric_limits<double>::infinity();
  }

  void set(int mover, Pair& pair, Interval stations) const {
    pair.at = thresholds(stage, mover, pair.target, stations);
  }

  double drop_at(const Pair& pair) const { return pair.at.clear; }
  void dropped(int, const Pair&, double) const {}

  bool refine(int mover, Pair& pair, const Piece& piece, double d, double D) {
    if (station_moves(stage.segment)) set(mover, pair, piece.stations);
    const double bound = D * options.bound_scale;
    if (d - bound >= pair.at.clear) return false;
    const double spare = d - bound - pair.at.seated;
    const double taken = spare > 0.0 ? taken_by_wander(mover, pair, piece) : 0.0;
    if (spare > 0.0 && spare >= taken) return false;
    if (d + bound < pair.at.violate) return keep(mover, pair, piece, Verdict::interference, false);
    // Between margin and need all over the piece, with the same stations on both sides: halving cannot help.
    const bool hopeless = d + bound - pair.at.seated < taken;
    const bool between = d - bound >= pair.at.kept && d + bound < pair.at.unproved && hopeless;
    return between || small(piece, D) ? keep(mover, pair, piece, Verdict::undecided, between) : true;
  }

  /// How much of the pair's distance the wandering pivot can take. Along the line between the witness points the two
  /// stay apart by their distance there less what the wander goes along that line.
  double taken_by_wander(int mover, const Pair& pair, const Piece& piece) const {
    const Need need = stage.need(mover, pair.target);
    if (need.wander <= 0.0) return 0.0;
    const Separation near = look_at_pair(stage, mover, pair.target, piece.middle()).witness;
    if (near.distance < kLeastApart) return need.wander;
    return wander_towards(stage.needs.wander, 1.0 / near.distance * (near.on_b - near.on_a)) + kRoundingGuard;
  }

  /// A mover that none of the turning joints carries does not get any clearer by halving.
  bool small(const Piece& piece, double D) const {
    const bool turns = piece.greatest_turn >= options.resolution && D > kRoundingGuard;
    return !(turns || piece.half_roll >= options.roll_resolution) || !piece.divides();
  }

  bool keep(int mover, const Pair& pair, const Piece& piece, Verdict verdict, bool by_play) {
    found.push_back({mover, pair.target, piece.u0, piece.u1, verdict, by_play, piece.u0, piece.u1});
    return false;
  }
};

void sort_spans(std::vector<Span>& spans) {
  std::sort(spans.begin(), spans.end(), [](const Span& a, const Span& b) {
    return std::tuple(a.mover, a.target, a.u0) < std::tuple(b.mover, b.target, b.u0);
  });
}

/// The span's outermost pieces that are proven to violate give the bracket for its true ends.
struct Run {
  Span span;
  double first_bad = 1.0, last_bad = 0.0;
};

void add(Run& run, const Span& piece) {
  run.span.u1 = run.span.open1 = std::max(run.span.u1, piece.u1);
  run.span.verdict = worse(run.span.verdict, piece.verdict);
  run.span.by_play = run.span.by_play && piece.by_play;
  if (piece.verdict != Verdict::interference) return;
  run.first_bad = std::min(run.first_bad, piece.u0);
  run.last_bad = std::max(run.last_bad, piece.u1);
}

Span settle(const ProofStage& stage, Run run) {
  Span& s = run.span;
  if (s.verdict != Verdict::interference) return s;
  if (s.u0 < run.first_bad) s.u0 = refine_edge(stage, s.mover, s.target, s.u0, run.first_bad, 1);
  if (s.u1 > run.last_bad) s.u1 = refine_edge(stage, s.mover, s.target, run.last_bad, s.u1, 0);
  return s;
}

std::vector<Span> merge(const ProofStage& stage, std::vector<Span> pieces) {
  sort_spans(pieces);
  std::vector<Span> out;
  for (std::size_t i = 0; i < pieces.size();) {
    Run run{pieces[i], 1.0, 0.0};
    add(run, pieces[i]);
    std::size_t k = i + 1;
    for (; k < pieces.size() && pieces[k].mover == run.span.mover && pieces[k].target == run.span.target &&
           pieces[k].u0 <= run.span.u1;
         ++k) {
      add(run, pieces[k]);
    }
    out.push_back(settle(stage, run));
    i = k;
  }
  return out;
}

struct LeastJudge {
  struct Pair {
    int target = 0;
    double gap = 0.0, overlap = 0.0;
  };

  const ProofStage& stage;
  double tolerance;
  int only_mover = -1, only_target = -1;
  Least best{};
  double pruned = std::numeric_limits<double>::infinity();

  LeastJudge(const ProofStage& s, double tol, double far) : stage(s), tolerance(tol) { best.at_most = far; }

  double reach(int mover) const { return only_mover >= 0 && mover != only_mover ? -1.0 : std::max(0.0, best.at_most); }

  bool admits(int mover, int target, Pair& pair) const {
    if (only_target >= 0 && target != only_target) return false;
    const Mover& m = stage.movers[static_cast<std::size_t>(mover)];
    const Need need = stage.need(mover, target);
    if (only_target < 0 && (!need.check || need.silent)) return false;
    set(m, pair, stations_over(stage.segment, 0.0, 1.0));
    return true;
  }

  void set(const Mover& m, Pair& pair, Interval stations) const {
    const Gaps gaps = rail_gaps(m.stations, stage.targets[pair.target].stations, stations, any_station(stage.segment));
    pair.gap = gaps.least;
    pair.overlap = gaps.overlap;
  }

  double drop_at(const Pair& pair) const {
    // Without a gap an overlap may be deeper than any incumbent, a negative one too.
    if (pair.gap > 0.0 && pair.gap >= best.at_most) return -std::numeric_limits<double>::infinity();
    return std::max(0.0, best.at_most - tolerance);
  }

  void dropped(int, const Pair& pair, double bound) { pruned = std::min(pruned, std::max(bound, pair.gap)); }

  bool refine(int mover, Pair& pair, const Piece& piece, double d, double D) {
    if (station_moves(stage.segment)) set(stage.movers[static_cast<std::size_t>(mover)], pair, piece.stations);
    const double here = prism_clearance(d, pair.gap, pair.overlap);
    if (here + 2.0 * piece.half_roll < best.at_most) note(mover, pair.target, piece.middle());
    const double bound = prism_clearance(d - D, pair.gap, pair.overlap);
    const bool moves = D > 2.0 * kRoundingGuard || piece.half_roll > kRoundingGuard;
    if (bound < best.at_most - tolerance && moves && piece.divides()) return true;
    pruned = std::isnan(bound) ? -std::numeric_limits<double>::infinity() : std::min(pruned, bound);
    return false;
  }

  void note(int mover, int target, double u) {
    const double c = look_at_pair(stage, mover, target, u).clearance;
    if (c >= best.at_most) return;
    best.at_most = c;
    best.mover = mover;
    best.target = target;
    best.u = u;
  }

  Least result(const WalkCounts& counts) {
    best.at_least = std::min({pruned, best.at_most});
    best.counts = counts;
    return best;
  }
};

}  // namespace

Proof prove(const ProofStage& stage, const ProofOptions& options) {
  ProofJudge judge{stage, options};
  PieceWalk<ProofJudge> walk(stage, judge);
  walk.run();
  return {merge(stage, std::move(judge.found)), walk.counts()};
}

PairAt look_at_pair(const ProofStage& stage, int mover, int target, double u) {
  return look_at_pair(stage, stage.movers[static_cast<std::size_t>(mover)], stage.targets[target], u);
}

PairAt look_at_pair(const ProofStage& stage, const Mover& m, const Target& t, double u) {
  const Snapshot now = snapshot(stage, u);
  Outline placed;
  place_mover(now, m, placed);
  PairAt out;
  out.witness = separation(placed, t.outline);
  out.side_view = out.witness.distance;
  const Gaps gaps = rail_gaps(m.stations, t.stations, stations_over(stage.segment, u, u), any_station(stage.segment));
  out.clearance = prism_clearance(out.side_view, gaps.least, gaps.overlap);
  return out;
}

double refine_edge(const ProofStage& stage, int mover, int target, double u0, double u1, int violating_end) {
  const double margin = stage.need(mover, target).margin;
  const auto violates = [&](double u) { return look_at_pair(stage, mover, target, u).clearance < margin; };
  double bad = violating_end == 1 ? u1 : u0, good = violating_end == 1 ? u0 : u1;
  if (violates(good)) return good;
  for (int k = 0; k < 60 && std::abs(bad - good) > 1e-9; ++k) {
    const double um = 0.5 * (bad + good);
    (violates(um) ? bad : good) = um;
  }
  return bad;
}

Least least_clearance(const ProofStage& stage, double tolerance, double horizon) {
  LeastJudge judge(stage, tolerance, horizon);
  PieceWalk<LeastJudge> walk(stage, judge);
  walk.run();
  return judge.result(walk.counts());
}

Least least_of_pair(const ProofStage& stage, int mover, int target, double u0, double u1, double tolerance) {
  LeastJudge judge(stage, tolerance, std::numeric_limits<double>::infinity());
  judge.only_mover = mover;
  judge.only_target = target;
  judge.note(mover, target, u0);
  judge.note(mover, target, u1);
  PieceWalk<LeastJudge> walk(stage, judge);
  walk.run(u0, u1);
  return judge.result(walk.counts());
}

}  // namespace stowpath
