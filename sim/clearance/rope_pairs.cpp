#include "sim/clearance/rope_pairs.h"

#include <algorithm>
#include <cmath>

namespace stowpath {
namespace {

/// One rope of each line, and what is known of them along the segment.
class TwoRopes {
 public:
  TwoRopes(const ProofStage& stage, const Mover& a, const Mover& b, const Need& need, const DryFitOptions& options)
      : stage_(stage), a_(a), b_(b), options_(options), gaps_(rail_gaps(a.stations, b.stations, {0.0, 0.0}, true)) {
    const bool sure = !a.aslant && !b.aslant;
    clear_ = side_view_threshold(need.margin + need.play, gaps_.least, gaps_.overlap);
    violate_ = side_view_threshold(need.margin, sure ? gaps_.most : beyond(), sure ? gaps_.least_overlap : 0.0);
  }

  void walk(double u0, double u1) {
    const double um = 0.5 * (u0 + u1);
    const Snapshot now = snapshot(stage_, um);
    const Turns turns = half_turns(stage_.linkage, stage_.segment, u0, u1);
    Outline a, b;
    place_mover(now, a_, a);
    place_mover(now, b_, b);
    const double d = signed_distance(a, b);
    const double D = options_.bound_scale * (mover_displacement(stage_, now, turns, a_, a) +
                                             mover_displacement(stage_, now, turns, b_, b)) + kRoundingGuard;
    ++counts.distances;
    const double here = prism_clearance(d, gaps_.least, gaps_.overlap);
    if (here < witnessed) witnessed = here, closest = um;
    const double turn = *std::max_element(turns.joint.begin(), turns.joint.end());
    const bool small = turn < options_.resolution || u1 - u0 < 1e-12;
    if (d - D >= clear_ && (small || bound_of(d - D) >= witnessed - options_.tolerance)) return bound(d - D);
    if (d + D < violate_) return keep(u0, u1, Verdict::interference, d - D);
    if (small) return keep(u0, u1, Verdict::undecided, d - D);
    walk(u0, um);
    walk(um, u1);
  }

  std::vector<Span> spans;
  double least = 1.0, witnessed = 1.0, closest = 0.0;
  WalkCounts counts;

 private:
  /// The farthest that the two may be from each other along the rail.
  double beyond() const {
    const Interval i = a_.stations.front(), j = b_.stations.front();
    return std::max(std::abs(i.hi - j.lo), std::abs(j.hi - i.lo));
  }
  double bound_of(double d) const { return prism_clearance(d, gaps_.least, gaps_.overlap); }
  void bound(double d) { least = std::min(least, bound_of(d)); }
  void keep(double u0, double u1, Verdict verdict, double d) {
    bound(d);
    if (!spans.empty() && spans.back().u1 == u0 && spans.back().verdict == verdict) {
      spans.back().u1 = spans.back().open1 = u1;
      return;
    }
    spans.push_back({0, 0, u0, u1, verdict, false, u0, u1});
  }

  const ProofStage& stage_;
  const Mover &a_, &b_;
  const DryFitOptions& options_;
  Gaps gaps_;
  double clear_ = 0.0, violate_ = 0.0;
};

Encounter meeting(const ProofStage& stage, const MoverCast& cast, std::size_t a, std::size_t b, const Need& need,
                  const TwoRopes& found, const Span& span) {
  Encounter e;
  e.span = span;
  e.mover = cast.roles[a];
  e.target = cast.roles[b];
  e.need = need;
  e.least.at_least = found.least;
  e.least.at_most = found.witnessed;
  e.least.u = std::clamp(found.closest, span.u0, span.u1);
  e.from = at(stage.linkage, stage.segment, span.u0);
  e.to = at(stage.linkage, stage.segment, span.u1);
  e.at = at(stage.linkage, stage.segment, e.least.u);
  e.stations = {middles(stage.segment)};
  e.things = {static_cast<double>(e.target.id)};
  const Snapshot now = snapshot(stage, e.least.u);
  Outline first, second;
  place_mover(now, cast.movers[a], first);
  place_mover(now, cast.movers[b], second);
  e.worst.witness = separation(first, second);
  e.worst.side_view = e.worst.clearance = e.worst.witness.distance;
  for (const Outline* outline : {&first, &second})
    e.outlines.push_back(drawn_corners({outline->core(), outline->radius()}, 2e-4));
  return e;
}

}  // namespace

RopePairs rope_pairs(const Model& model, const Move& move, const Segment& segment, const NeedTable& needs,
                     const DryFitOptions& options) {
  static const TargetSet kNothing;
  RopePairs out;
  const MoverCast cast = beyond_cast(model, move, segment, model.linkage.sections);
  const ProofStage stage{model.linkage, segment, kRoom, cast.movers, kNothing, needs};
  for (std::size_t a = 0; a < cast.movers.size(); ++a) {
    for (std::size_t b = 0; b < cast.movers.size(); ++b) {
      if (cast.roles[a].kind != PartKind::line || cast.roles[b].kind != PartKind::fold_line) continue;
      const Need& need = needs.at(cast.movers[a].group, cast.movers[b].group);
      TwoRopes pair(stage, cast.movers[a], cast.movers[b], need, options);
      pair.walk(0.0, 1.0);
      out.counts.distances += pair.counts.distances;
      for (const Span& span : pair.spans) out.encounters.push_back(meeting(stage, cast, a, b, need, pair, span));
      out.least = std::min(out.least, pair.least);
      if (pair.witnessed >= out.witnessed) continue;
      out.witnessed = pair.witnessed;
      out.closest = {cast.roles[a].name, cast.roles[b].name};
      out.closest_at = at(stage.linkage, segment, pair.closest);
    }
  }
  return out;
}

}  // namespace stowpath
