#include <algorithm>

#include "sim/clearance/findings.h"

namespace stowpath {
namespace {

/// What the line may run along: the ceiling and walls that it is led by, and the floor it ends above.
bool led_by(PartKind kind) {
  return kind == PartKind::ceiling || kind == PartKind::wall || kind == PartKind::floor || kind == PartKind::lead_line;
}

/// The first and the last slab hold the line's ends, which are made fast to something.
std::vector<const RoomPart*> free_slabs(const Model& model) {
  std::vector<const RoomPart*> slabs;
  for (const RoomPart& part : model.room) {
    if (part.kind == PartKind::lead_line) slabs.push_back(&part);
  }
  if (slabs.size() <= 2) return {};
  return {slabs.begin() + 1, slabs.end() - 1};
}

struct Nearest {
  const RoomPart* slab = nullptr;
  double clearance = 0.0;
  double excess = 0.0;
};

Nearest nearest_slab(const std::vector<const RoomPart*>& slabs, const RoomPart& part) {
  Nearest best{nullptr, 1e9, 0.0};
  const Outline fixed(part.outline);
  for (const RoomPart* slab : slabs) {
    const Gaps gaps = rail_gaps(slab->stations, part.stations, {0.0, 0.0}, true);
    const double c = prism_clearance(signed_distance(Outline(slab->outline), fixed), gaps.least, gaps.overlap);
    if (c < best.clearance) best = {slab, c, slab->excess + part.excess};
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

Finding tell(const Model& model, const RoomPart& part, const Nearest& near) {
  const bool sure = near.clearance + near.excess < model.margin.standard;
  Finding f;
  f.kind = !sure                                ? FindingKind::undecided
           : near.clearance + near.excess < 0.0 ? FindingKind::interference
                                                : FindingKind::margin;
  f.parts = {near.slab->name, part.name};
  f.part_kinds = {PartKind::lead_line, part.kind};
  f.stations = beside(*near.slab, part);
  f.worst.station = f.stations.front().middle();
  f.clearance = near.clearance;
  f.needed = model.margin.standard;
  f.things = f.things_in_all = 1;
  f.from.lean = f.to.lean = f.worst.lean = model.working_lean;
  f.witness = separation(Outline(near.slab->outline), Outline(part.outline));
  f.outlines = {drawn_corners(near.slab->outline, 2e-4), drawn_corners(part.outline, 2e-4)};
  if (!sure) f.note = "the line runs aslant, and is known there only to within its enclosure";
  return f;
}

}  // namespace

std::vector<Finding> lead_line_findings(const Model& model) {
  std::vector<Finding> out;
  const std::vector<const RoomPart*> slabs = free_slabs(model);
  if (slabs.empty()) return out;
  for (const RoomPart& part : model.room) {
    if (led_by(part.kind)) continue;
    const Nearest near = nearest_slab(slabs, part);
    const bool told = std::any_of(out.begin(), out.end(), [&](const Finding& f) { return f.parts[1] == part.name; });
    if (near.slab && near.clearance < model.margin.standard && !told) out.push_back(tell(model, part, near));
  }
  return out;
}

}  // namespace stowpath
