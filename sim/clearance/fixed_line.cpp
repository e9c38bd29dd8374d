#include "sim/clearance/fixed_line.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "sim/clearance/stage.h"
#include "sim/mechanism/rope_slabs.h"

namespace stowpath {
namespace {

/// How much of the rope lies inside of a disc of a rule that lets it touch a thing: from its first end, to its last [m].
struct Left {
  double from = 0.0, to = 0.0, depth = 0.0;
};

Left left_by_rules(const Model& model, const RoomRope& rope, int thing) {
  Left left;
  for (const ContactRule& rule : model.contacts) {
    if (!rule.names(rope.id, thing) || rule.body >= 0) continue;
    if (norm(rule.centre - rope.a.at) == 0.0) left.from = std::max(left.from, rule.radius);
    if (norm(rule.centre - rope.b.at) == 0.0) left.to = std::max(left.to, rule.radius);
    left.depth = std::max(left.depth, rule.depth);
  }
  return left;
}

struct Nearest {
  RoomPart slab;
  double clearance = 1e9;
  double sure = 1e9;  // the true rope is at most this far [m]
};

/// Along the rail a slab that is aslant may hold the rope at either of its ends.
double farthest(const RoomPart& slab, const RoomPart& part, double d) {
  Mover rope;
  rope.stations = slab.stations;
  rope.aslant = slab.aslant;
  Target thing;
  thing.stations = part.stations;
  thing.aslant = part.aslant;
  const Gaps gaps = pair_gaps(Segment{}, rope, thing, {0.0, 0.0});
  if (gaps.least_overlap > 0.0) return prism_clearance(d, 0.0, gaps.least_overlap);
  return std::hypot(std::max(d, 0.0), gaps.most);
}

Nearest nearest(const std::vector<RoomPart>& slabs, const RoomPart& part) {
  Nearest best;
  const Outline fixed(part.outline);
  for (const RoomPart& slab : slabs) {
    const double d = signed_distance(Outline(slab.outline), fixed);
    const Gaps gaps = rail_gaps(slab.stations, part.stations, {0.0, 0.0}, true);
    const double c = prism_clearance(d, gaps.least, gaps.overlap);
    best.sure = std::min(best.sure, farthest(slab, part, d) + part.excess);
    if (c < best.clearance) best.clearance = c, best.slab = slab;
  }
  return best;
}

/// The slab's stations that lie beside the part; all of them where the part stands next to it along the rail.
IntervalSet beside(const RoomPart& slab, const RoomPart& part) {
  IntervalSet out;
  for (const Interval stretch : part.stations) {
    const Interval both = meet(slab.stations.front(), stretch);
    if (!both.empty()) out.push_back(both);
  }
  return out.empty() ? slab.stations : out;
}

Finding tell(const Model& model, const RoomPart& part, const Nearest& near, double needed) {
  const bool sure = near.sure < needed;
  Finding f;
  f.kind = !sure ? FindingKind::undecided : near.sure < 0.0 ? FindingKind::interference : FindingKind::margin;
  f.parts = {near.slab.name, part.name};
  f.part_kinds = {PartKind::lead_line, part.kind};
  f.stations = beside(near.slab, part);
  f.clearance = near.clearance;
  f.needed = needed;
  f.things = f.things_in_all = 1;
  f.from.lean = f.to.lean = f.worst.lean = model.working_lean;
  f.from.station = f.to.station = f.worst.station = f.stations.front().middle();
  f.witness = separation(Outline(near.slab.outline), Outline(part.outline));
  f.outlines = {drawn_corners(near.slab.outline, 2e-4), drawn_corners(part.outline, 2e-4)};
  if (!sure) f.note = "the line runs aslant, and is known there only to within its enclosure";
  return f;
}

/// The rope against one piece of a thing: beyond the discs of its rules with the margin, within them by their depth.
std::optional<Finding> look(const Model& model, const RoomRope& rope, const RoomPart& part) {
  const Left left = left_by_rules(model, rope, part.id);
  const Nearest outside = nearest(rope_slabs(rope, left.from, left.to), part);
  if (outside.clearance < model.margin.standard) return tell(model, part, outside, model.margin.standard);
  if ((left.from == 0.0 && left.to == 0.0) || std::isinf(left.depth)) return std::nullopt;
  const Nearest whole = nearest(rope_slabs(rope, 0.0, 0.0), part);
  if (whole.clearance < -left.depth) return tell(model, part, whole, -left.depth);
  return std::nullopt;
}

bool told(const std::vector<Finding>& findings, const Finding& f) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& g) { return g.parts == f.parts; });
}

bool there_together(LineState a, LineState b) {
  return a == LineState::always || b == LineState::always || a == b;
}

}  // namespace

std::vector<Finding> fixed_line_findings(const Model& model) {
  std::vector<Finding> out;
  for (const RoomRope& rope : model.room_ropes) {
    for (const RoomPart& part : model.room) {
      // Of two ropes, the one that is told first looks at the other.
      if (part.id == rope.id || (part.kind == PartKind::lead_line && part.id < rope.id)) continue;
      if (!there_together(rope.when, part.when)) continue;
      const std::optional<Finding> found = look(model, rope, part);
      if (found && !told(out, *found)) out.push_back(*found);
    }
  }
  return out;
}

}  // namespace stowpath
