#include "sim/remedy/narrow.h"

#include <algorithm>
#include <set>
#include <string>

#include "sim/clearance/findings.h"

namespace stowpath {
namespace {

struct Wanted {
  std::set<std::string> stair, room;
  std::set<int> moves;
  bool lead_line = false;
};

Wanted wanted_of(const std::vector<Finding>& about) {
  Wanted wanted;
  for (const Finding& f : about) {
    if (f.kind == FindingKind::build) continue;
    wanted.lead_line = wanted.lead_line || f.part_kinds[0] == PartKind::lead_line;
    wanted.stair.insert(told_as(f.part_kinds[0], f.parts[0]));
    wanted.room.insert(f.parts[1]);
    wanted.moves.insert(f.moves.begin(), f.moves.end());
    wanted.moves.insert(f.undecided_moves.begin(), f.undecided_moves.end());
  }
  return wanted;
}

}  // namespace

Model narrowed(const Model& model, const std::vector<Finding>& about) {
  const Wanted wanted = wanted_of(about);
  Model out = model;
  std::erase_if(out.moves, [&](const Move& m) { return !wanted.moves.contains(m.index); });
  std::erase_if(out.stair, [&](const StairPart& p) {
    return !wanted.stair.contains(told_as(p.kind, p.name)) && !wanted.room.contains(p.name);
  });
  std::erase_if(out.ropes, [&](const RopeRun& r) { return !wanted.stair.contains(told_as(r.kind, r.name)); });
  // The lead line is of the room, and is told of only as a whole.
  std::erase_if(out.room, [&](const RoomPart& p) {
    return p.kind == PartKind::lead_line ? !wanted.lead_line : !wanted.room.contains(p.name);
  });
  std::erase_if(out.zones, [&](const ZonePart& z) { return !wanted.room.contains(z.name); });
  return out;
}

}  // namespace stowpath
