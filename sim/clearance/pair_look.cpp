#include "sim/clearance/pair_look.h"

#include <algorithm>
#include <cmath>

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
  const Segment& segment = segment_of(model, place);
  const Wander wander = wander_in(model, move);
  const double middle = place.piece.middle();
  if (place.base == kRoom) {
    Scenery out{segment, stair_cast(model, move, segment), room_cast(model, move.state, move.hooked_on),
                room_needs(model, wander)};
    const ContactState state = stretch_at(room_stretches(model, move, segment), middle).state;
    allow_contacts(model, state, out.needs, out.targets, out.movers);
    return out;
  }
  Scenery out{riding_along(segment), beyond_cast(model, move, segment, place.base), section_cast(model, move, place.base),
              section_needs(model, wander)};
  const ContactState state = stretch_at(section_stretches(model, move, segment, place.base), middle).state;
  allow_contacts(model, state, out.needs, out.targets, out.movers);
  return out;
}

bool is_rope(PartKind kind) { return kind == PartKind::line || kind == PartKind::fold_line; }

}  // namespace

Mover mover_of(const Model& model, const PairPlace& place) {
  const PairEnd& end = place.mover;
  const Segment& segment = segment_of(model, place);
  const double station = segment.from.station;
  const Interval stations = place.base == kRoom ? Interval{station, station} : middles(segment);
  const Mover whole = is_rope(end.kind) ? rope_mover(model, segment, entry(model.ropes, end.index), stations,
                                                     end.rope_from, end.rope_to)
                                        : part_mover(model, entry(model.stair, end.index));
  if (end.rules.empty()) return whole;
  // In a scene that is a hair different a sliver of a piece may be gone: the whole stands for it.
  const std::vector<Mover> pieces = outside_rules(model, whole, end.rules);
  return end.piece < static_cast<int>(pieces.size()) ? entry(pieces, end.piece) : whole;
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
      const Need need = stage.need(static_cast<int>(m), static_cast<int>(t));
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
    return {Outline(part.outline), part.stations, part.excess, 0, part.aslant};
  }
  const StairPart& part = entry(model.stair, end.index);
  return {Outline(part.outline), part.stations};
}

}  // namespace stowpath
