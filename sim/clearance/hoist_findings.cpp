#include "sim/clearance/hoist_findings.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sim/clearance/stage.h"

namespace stowpath {
namespace {

constexpr double kTolerance = 1e-4;  // to which the least way between the blocks is known [m]

/// Where a move has the tackle shortest.
struct Shortest {
  double length = std::numeric_limits<double>::infinity();  // witnessed [m]
  double u = 0.0;
};

class TackleWalk {
 public:
  TackleWalk(const Model& model, const Segment& segment)
      : model_(model), segment_(segment), stage_{model.linkage, segment, kRoom, {}, nothing(), no_needs()} {}

  Shortest run() {
    walk(0.0, 1.0);
    return best_;
  }

 private:
  static const TargetSet& nothing() {
    static const TargetSet none;
    return none;
  }
  static const NeedTable& no_needs() {
    static const NeedTable none;
    return none;
  }

  /// Halves until nothing can be shorter than the best by more than the tolerance.
  void walk(double u0, double u1) {
    const double um = 0.5 * (u0 + u1);
    const Snapshot now = snapshot(stage_, um);
    const RopeEnd &top = model_.tackle->top, &bottom = model_.tackle->bottom;
    const Vec2 a = now.of(top.section) * top.at, b = now.of(bottom.section) * bottom.at;
    const double length = norm(b - a) - model_.tackle->from_bottom;
    if (length < best_.length) best_ = {length, um};
    const double moves = displacement(stage_, now, half_turns(model_.linkage, segment_, u0, u1), bottom.section, b, 0.0);
    if (length - moves >= best_.length - kTolerance || u1 - u0 < 1e-9) return;
    walk(u0, um);
    walk(um, u1);
  }

  const Model& model_;
  const Segment& segment_;
  ProofStage stage_;
  Shortest best_;
};

Finding blocks_met(const Model& model, const Move& move, const Segment& segment, const Shortest& shortest) {
  Finding f;
  f.clearance = shortest.length - kTolerance - model.tackle->blocks;
  f.kind = f.clearance < 0.0 ? FindingKind::interference : FindingKind::margin;
  f.parts = {"lower block", "upper block"};
  f.part_kinds = {PartKind::line, PartKind::line};
  f.moves = {move.index};
  f.move_kinds = {move.kind};
  f.needed = model.margin.standard;
  f.from = f.to = f.worst = at(model.linkage, segment, shortest.u);
  f.stations = {{f.worst.station, f.worst.station}};
  f.things = f.things_in_all = 1;
  const SectionPoses X_W = place_sections(model.linkage, f.worst);
  const RopeEnd& bottom = model.tackle->bottom;
  f.witness = {f.clearance, X_W[static_cast<std::size_t>(bottom.section)] * bottom.at, model.tackle->top.at};
  return f;
}

/// Farthest that any part can be from the pivot, with the folds anyhow [m].
double farthest_part(const Model& model) {
  double start = 0.0, reach = 0.0;
  for (int k = 0; k < model.linkage.sections; ++k) {
    for (const StairPart& part : model.stair)
      if (part.section == k)
        for (const Vec2 corner : part.outline.core)
          reach = std::max(reach, start + norm(corner - model.linkage.proximal(k)) + part.outline.radius);
    if (k + 1 < model.linkage.sections) start += norm(model.linkage.distal(k) - model.linkage.proximal(k));
  }
  return reach;
}

Interval stair_width(const Model& model) {
  Interval out{0.0, 0.0};
  for (const StairPart& part : model.stair)
    for (const Interval stretch : part.stations) out = hull(out, stretch);
  return out;
}

}  // namespace

std::vector<Finding> block_findings(const Model& model) {
  std::vector<Finding> out;
  if (!model.tackle) return out;
  for (const Move& move : model.moves) {
    if (!move.hooked_on) continue;
    for (const Segment& segment : move.segments) {
      const Shortest shortest = TackleWalk(model, segment).run();
      if (shortest.length - kTolerance - model.tackle->blocks >= model.margin.standard) continue;
      Finding met = blocks_met(model, move, segment, shortest);
      if (out.empty()) {
        out.push_back(std::move(met));
        continue;
      }
      if (out[0].moves.back() != met.moves[0] || out[0].move_kinds.back() != met.move_kinds[0]) {
        out[0].moves.push_back(met.moves[0]);
        out[0].move_kinds.push_back(met.move_kinds[0]);
      }
      out[0].to = met.worst;
      if (met.clearance >= out[0].clearance) continue;
      out[0].clearance = met.clearance;
      out[0].kind = met.kind;
      out[0].worst = met.worst;
      out[0].witness = met.witness;
    }
  }
  return out;
}

std::vector<Finding> fall_findings(const Model& model) {
  std::vector<Finding> out;
  for (const ZonePart& zone : model.zones) {
    if (!zone.of_hand || !model.home) continue;
    const double home = *model.home, within = model.home_within;
    const Interval stair = stair_width(model) + home;
    const double apart = signed_distance(Outline(make_disc(model.linkage.pivot, 0.0)), Outline(zone.outline));
    const double clearance = apart - farthest_part(model);
    if (clearance >= 0.0 || gap({stair.lo - within, stair.hi + within}, zone.stations) > 0.0) continue;
    Finding f;
    f.kind = FindingKind::zone;
    f.parts = {"falling stair", zone.name};
    f.part_kinds = {PartKind::extra, PartKind::zone};
    f.stations = {{home - within, home + within}};
    f.clearance = clearance;
    f.from.station = f.to.station = f.worst.station = home;
    f.from.lean = f.to.lean = f.worst.lean = model.working_lean;
    f.things = f.things_in_all = 1;
    f.witness = separation(Outline(make_disc(model.linkage.pivot, farthest_part(model))), Outline(zone.outline));
    for (const Move& move : model.moves) {
      if (!move.hooked_on) continue;
      f.moves.push_back(move.index);
      f.move_kinds.push_back(move.kind);
    }
    f.note = "if the line is let go, the stair comes down to where whoever pulls it stands: lead the line further along "
             "the rail, or say with hoist.line.hand where it is pulled";
    out.push_back(std::move(f));
  }
  return out;
}

}  // namespace stowpath
