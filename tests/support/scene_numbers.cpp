#include "tests/support/scene_numbers.h"

#include <initializer_list>
#include <optional>

namespace stowpath::testing {
namespace {

class Collector {
 public:
  std::vector<double> all;

  void add(std::initializer_list<double> numbers) { all.insert(all.end(), numbers); }
  void add(const std::vector<double>& numbers) { all.insert(all.end(), numbers.begin(), numbers.end()); }
  void add(const std::optional<double>& number) {
    if (number) all.push_back(*number);
  }
  void add(Interval stretch) { add({stretch.lo, stretch.hi}); }
  void add(const std::vector<Vec2>& points) {
    for (const Vec2 p : points) add({p.x, p.y});
  }

  void add(const std::optional<Screws>& screws) {
    if (screws) add({screws->diameter, screws->thread});
  }

  void add(const std::optional<Framing>& framing) {
    if (!framing) return;
    add(framing->every);
    add(framing->first);
  }

  void add(const Loft& loft) {
    add({loft.edge, loft.deck, loft.thickness});
    add(loft.stations);
    add(loft.framing);
    if (!loft.guard) return;
    add({loft.guard->height, loft.guard->thickness, loft.guard->out});
    for (const Interval opening : loft.guard->openings) add(opening);
  }

  void add(const Brackets& b) {
    add(b.stations);
    add({b.projection, b.drop, b.arm, b.saddle_length, b.saddle_thickness});
    add({b.plate_width, b.plate_height, b.plate_thickness, b.bend, b.flat});
    add({b.strap_width, b.strap_thickness, b.strap_arc});
    for (const auto& heads : {b.plate_heads, b.saddle_heads}) {
      if (!heads) continue;
      add({heads->diameter, heads->height, heads->apart});
      add(heads->at);
    }
    if (b.post) add({b.post->depth, b.post->width, b.post->above, b.post->foot});
    add(b.screws);
    for (const BracketPiece& piece : b.pieces) {
      add(piece.corners);
      add({piece.radius, piece.width});
    }
  }

  void add(const Rail& rail) {
    add({rail.pipe.diameter, rail.pipe.wall, rail.at.x, rail.at.y, rail.stops.diameter, rail.stops.width});
    add(rail.stations);
    for (const PipeJoint& joint : rail.joints) add({joint.station, joint.diameter, joint.length});
    add(rail.brackets);
  }

  void add(const Stair& stair) {
    add({stair.width, stair.above_pivot, stair.side_rails.thickness, stair.side_rails.width});
    add({stair.side_rails.front_face, stair.side_rails.moisture});
    add(stair.sections);
    for (const Hinge& hinge : stair.hinges) {
      add({hinge.offset, hinge.limit, hinge.leaf, hinge.leaf_thickness});
      add(hinge.screws);
    }
    for (const auto& mass : stair.weighed) add(mass);
    for (const Lock& lock : stair.locks) {
      add({lock.thickness, lock.width, lock.length, lock.spacer, lock.pin, lock.head, lock.head_height});
    }
    add(stair.hooks.stations);
    add({stair.hooks.rod, stair.hooks.inside, stair.hooks.shank, stair.hooks.wrap, stair.hooks.tip});
    add({stair.hooks.seat_range, stair.hooks.shank_offset, stair.hooks.rim, stair.hooks.thickness});
    for (const HookPiece& piece : stair.hooks.pieces) {
      add(piece.corners);
      add({piece.radius});
    }
    if (stair.hooks.roller) add({stair.hooks.roller->diameter, stair.hooks.roller->width, stair.hooks.roller->at});
    add(stair.hooks.screws);
    add_fittings(stair);
  }

  void add_fittings(const Stair& stair) {
    const Casters& casters = stair.casters;
    add(casters.stations);
    add({casters.diameter, casters.width, casters.along, casters.across, casters.plate, casters.block, casters.mass});
    add({casters.trail});
    if (stair.treads) {
      add({stair.treads->thickness, stair.treads->depth, stair.treads->overhang});
      add(stair.treads->rise);
      add(stair.treads->first);
    }
    if (stair.handrails) add({stair.handrails->height, stair.handrails->diameter, stair.handrails->post_every});
    for (const Extra& extra : stair.extras) {
      add(extra.outline);
      add(extra.stations);
      add({extra.radius, extra.mass});
    }
  }

  void add(const RoomPoint& point) { add({point.at.x, point.at.y, point.station}); }
  void add(const SectionPoint& point) { add({point.along, point.across}); }

  void add(const Hoist& hoist) {
    if (hoist.ceiling_point) add(*hoist.ceiling_point);
    add(hoist.home);
    add(hoist.pick);
    add({hoist.spread, hoist.line.diameter});
    add(hoist.line.strength);
    for (const RoomPoint& lead : hoist.line.leads) add(lead);
    add({hoist.line.tail});
    if (hoist.line.blocks) add({hoist.line.blocks->length, hoist.line.blocks->width});
    if (hoist.line.hand) add(*hoist.line.hand);
    add(hoist.line.hangs_to);
    if (hoist.spreader) {
      add({hoist.spreader->length, hoist.spreader->drop, hoist.spreader->mass, hoist.spreader->thickness});
    }
    add(hoist.hand_limit);
    add(hoist.overload);
    add(hoist.eye);
    if (hoist.winch) add(*hoist.winch);
  }

  void add(const Winch& winch) {
    add({winch.drum, winch.ratio, winch.worm_friction});
    for (const auto& number :
         {winch.crank, winch.efficiency, winch.speed, winch.torque, winch.stall, winch.drum_length, winch.worm_lead}) {
      add(number);
    }
  }

  void add(const FoldLine& line) {
    add(line.from);
    for (const SectionPoint& pulley : line.through) add(pulley);
    add({line.diameter, line.station});
    add(line.strength);
  }

  void add(const Step& step) {
    add(step.station);
    add(step.lean);
    for (const auto& fold : step.folds) add(fold);
  }
};

}  // namespace

std::vector<double> numbers_of(const Scene& scene) {
  Collector found;
  found.add({scene.margin.standard, scene.margin.hook, scene.margin.self, scene.tolerance});
  found.add({scene.room.length, scene.room.depth, scene.room.ceiling, scene.floor.level, scene.floor.uneven});
  found.add(scene.loft);
  found.add(scene.rail);
  found.add(scene.stair);
  for (const Obstacle& obstacle : scene.obstacles) {
    found.add(obstacle.outline);
    found.add(obstacle.stations);
    found.add({obstacle.radius});
    found.add(obstacle.round_post);
  }
  for (const Zone& zone : scene.zones) {
    found.add(zone.outline);
    found.add(zone.stations);
  }
  if (scene.hoist) found.add(*scene.hoist);
  found.add({scene.home_within});
  if (scene.fold_line) found.add(*scene.fold_line);
  for (const Step& step : scene.procedure) found.add(step);
  found.add({scene.climber.mass, scene.dynamic_factor});
  for (const Interval range : {scene.friction.hook, scene.friction.hinge, scene.friction.floor}) found.add(range);
  for (const Rating& rating : scene.ratings) {
    found.add({rating.force});
    found.add(rating.factor);
  }
  found.add(scene.ceiling_framing);
  return found.all;
}

}  // namespace stowpath::testing
