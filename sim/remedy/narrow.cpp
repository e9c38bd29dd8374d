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
};

Wanted wanted_of(const std::vector<Finding>& about) {
  Wanted wanted;
  for (const Finding& f : about) {
    if (f.kind == FindingKind::build) continue;
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
  const auto has_thing = [&](const std::string& name) { return wanted.room.contains(name) || wanted.stair.contains(name); };
  std::erase_if(out.room, [&](const RoomPart& p) { return !has_thing(p.name); });
  std::erase_if(out.room_ropes, [&](const RoomRope& r) { return !wanted.stair.contains(r.name); });
  std::erase_if(out.zones, [&](const ZonePart& z) { return !wanted.room.contains(z.name); });
  if (!wanted.room.contains("upper block")) out.tackle.reset();
  return out;
}

}  // namespace stowpath
