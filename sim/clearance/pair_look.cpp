#include "sim/clearance/pair_look.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/clearance/cast.h"
#include "sim/clearance/proof.h"

namespace stowpath {
namespace {

template <class List>
const auto& entry(const List& list, int index) {
  return list.at(static_cast<std::size_t>(index));
}

const Segment& segment_of(const Model& model, const PairPlace& place) {
  return entry(entry(model.moves, place.move).segments, place.segment);
}

/// Whether the piece lies where the hinge beyond the base is folded by a quarter turn or more.
bool folded(const Model& model, const PairPlace& place) {
  const Segment& segment = segment_of(model, place);
  const auto hinge = static_cast<std::size_t>(std::clamp(place.base, 0, kMaxSections - 2));
  return segment.kind == SegmentKind::straight &&
         at(model.linkage, segment, place.piece.middle()).folds[hinge] >= 0.5 * std::numbers::pi;
}

/// A stage with what stands on it.
struct Scenery {
  Segment segment;
  MoverCast movers;
  TargetCast targets;
  NeedTable needs;

  ProofStage stage(const Model& model, int base) const {
    return {model.linkage, segment, base, movers.movers, targets.targets, needs};
  }
};

Scenery scenery_of(const Model& model, const PairPlace& place) {
  const Move& move = entry(model.moves, place.move);
  Segment segment = segment_of(model, place);
  const double station = segment.from.station;
  if (place.base == kRoom)
    return {segment, stair_cast(model, move, station), room_cast(model, move.state), room_needs(model)};
  segment.stations = {0.0, 0.0};  // both ride on the stair
  return {segment, further_cast(model, move, station, place.base), section_cast(model, move, place.base),
          section_needs(model, folded(model, place))};
}

bool is_rope(PartKind kind) { return kind == PartKind::line || kind == PartKind::fold_line; }

}  // namespace

Mover mover_of(const Model& model, const PairEnd& end, double station) {
  if (is_rope(end.kind)) return rope_mover(entry(model.ropes, end.index), station, end.rope_from, end.rope_to);
  return part_mover(model, entry(model.stair, end.index));
}

const std::string& name_of(const Model& model, const PairEnd& end) {
  if (end.kind == PartKind::zone) return entry(model.zones, end.index).name;
  if (is_rope(end.kind)) return entry(model.ropes, end.index).name;
  return end.section < 0 ? entry(model.room, end.index).name : entry(model.stair, end.index).name;
}

std::vector<PairPlace> tied_pairs(const Model& model, const PairPlace& place, double clearance, double tie) {
  const Scenery scenery = scenery_of(model, place);
  const ProofStage stage = scenery.stage(model, place.base);
  const Snapshot now = snapshot(stage, place.u);
  const bool of_zone = place.target.kind == PartKind::zone;
  std::vector<PairPlace> out;
  Outline placed;
  for (std::size_t m = 0; m < stage.movers.size(); ++m) {
    const Mover& mover = stage.movers[m];
    place_mover(now, mover, placed);
    for (std::size_t t = 0; t < stage.targets.all().size(); ++t) {
      const Target& target = stage.targets.all()[t];
      const Need& need = stage.needs.at(mover.group, target.group);
      const BoundingDisc a = placed.disc(), b = target.outline.disc();
      const bool counts = of_zone ? scenery.targets.roles[t].kind == PartKind::zone : !need.silent;
      if (!need.check || !counts) continue;
      if (norm(a.centre - b.centre) - a.radius - b.radius > clearance + tie) continue;
      if (std::abs(look_at_pair(stage, mover, target, place.u).clearance - clearance) > tie) continue;
      out.push_back(place);
      out.back().mover = end_of(mover, scenery.movers.roles[m]);
      out.back().target = end_of(scenery.targets.roles[t]);
    }
  }
  return out;
}

Target target_of(const Model& model, const PairEnd& end) {
  if (end.kind == PartKind::zone) {
    const ZonePart& zone = entry(model.zones, end.index);
    return {Outline(zone.outline), {zone.stations}};
  }
  if (end.section < 0) {
    const RoomPart& part = entry(model.room, end.index);
    return {Outline(part.outline), part.stations, part.excess};
  }
  const StairPart& part = entry(model.stair, end.index);
  return {Outline(part.outline), part.stations};
}

}  // namespace stowpath
