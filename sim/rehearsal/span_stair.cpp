#include "sim/rehearsal/span_stair.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "sim/clearance/pairs.h"
#include "sim/geometry/distance.h"
#include "sim/mechanism/hook_shape.h"
#include "sim/mechanism/mass.h"
#include "sim/mechanism/standing.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

// A bump's faces are widened by this many plays of the hooks, so that nothing slips by because the stair stands aside
// or askew: its own play, and what the yaw that it allows makes of it at the width's ends.
constexpr double kAside = 3.0;

constexpr double kOverrun = 0.02;  // past the span's ends, where stops are met [m]

double squared(double value) { return value * value; }

// Mass with its first and second moment along the rail.
struct AlongRail {
  double mass = 0.0, first = 0.0, second = 0.0;

  void add(double m, Interval stretch) {
    mass += m;
    first += m * stretch.middle();
    second += m * (squared(stretch.middle()) + squared(stretch.length()) / 12.0);
  }
};

void add_stretches(AlongRail& sum, double mass, const std::vector<Interval>& stations) {
  const double length = total_length(stations);
  for (const Interval& stretch : stations) sum.add(mass * stretch.length() / length, stretch);
}

bool belongs(const MassItem& item, const StairPart& part) {
  return item.name == part.name && item.kind == part.kind && item.section == part.section;
}

// At points along the rail, in equal shares.
void add_points(AlongRail& sum, double mass, const std::vector<double>& at) {
  for (const double x : at) sum.add(mass / static_cast<double>(at.size()), {x, x});
}

// The items stand in the order of the parts that they come from; hooks cut from plate, casters and extras follow.
AlongRail along_rail(const Scene& scene, const Model& model) {
  const std::vector<MassItem> items = mass_items(scene, model.stair);
  const std::vector<double> factor = weighing_factors(scene, items, model.linkage.sections);
  const auto used = [&](const MassItem& item) {
    return factor.at(static_cast<std::size_t>(item.section)) * item.all.mass;
  };
  AlongRail sum;
  auto item = items.begin();
  for (const StairPart& part : model.stair) {
    if (item == items.end() || part.kind == PartKind::caster || !belongs(*item, part)) continue;
    add_stretches(sum, used(*item++), part.stations);
  }
  auto extra = scene.stair.extras.begin();
  for (; item != items.end(); ++item) {
    if (item->kind == PartKind::hook) {
      add_points(sum, used(*item), scene.stair.hooks.stations);
    } else if (item->kind == PartKind::caster) {
      add_points(sum, used(*item), scene.stair.casters.stations);
    } else {
      sum.add(used(*item), (extra++)->stations);
    }
  }
  return sum;
}

// Of the stair's middle, where a stretch of it and one of the room overlap.
Interval met_stations(const Interval& moving, const Interval& fixed) {
  return {fixed.lo - moving.hi, fixed.hi - moving.lo};
}

SectionPoses working_poses(const Model& model) { return place_sections(model.linkage, {0.0, model.working_lean, {}}); }

// Mass, and its first and second moment out from the pivot.
AlongRail out_from_pivot(const Model& model) {
  AlongRail sum;
  const SectionPoses poses = working_poses(model);
  for (std::size_t j = 0; j < model.masses.size(); ++j) {
    const SectionMass& section = model.masses[j];
    const double out = (poses.at(j) * section.centre - model.linkage.pivot).x;
    sum.add(section.mass, {out, out});
    sum.second += section.inertia * squared(std::sin(model.working_lean));
  }
  return sum;
}

// What each of several supports in a row carries of a load whose middle lies at `middle`: as a rigid beam on equal
// springs.
std::vector<double> shares(const std::vector<double>& at, double middle) {
  const auto count = static_cast<double>(at.size());
  double mean = 0.0, spread = 0.0;
  for (const double x : at) mean += x / count;
  for (const double x : at) spread += squared(x - mean);
  std::vector<double> out;
  for (const double x : at) {
    const double tilt = spread > 0.0 ? (middle - mean) * (x - mean) / spread : 0.0;
    out.push_back(std::max(0.0, 1.0 / count + tilt));
  }
  return out;
}

/// Where the roller's tread faces, seen from the pipe, in the room.
RollerSide roller_side(const Model& model, double at) {
  const Vec2 outward = seen_in_room(on_bend(1.0, at), model.working_lean);
  if (outward.y >= std::abs(outward.x)) return RollerSide::crown;
  if (-outward.y > std::abs(outward.x)) return RollerSide::below;
  return outward.x < 0.0 ? RollerSide::wall : RollerSide::room;
}

void load_supports(SpanStair& stair, const Scene& scene, const Model& model) {
  const Vec2 axle = working_poses(model).at(static_cast<std::size_t>(model.linkage.sections - 1)) *
                        Vec2{scene.stair.casters.along, scene.stair.casters.across} -
                    model.linkage.pivot;
  const double weight = stair.mass * kGravity, on_floor = weight * stair.centre.y / axle.x;
  const std::vector<double> hooks = shares(scene.stair.hooks.stations, stair.centre.x);
  for (std::size_t i = 0; i < hooks.size(); ++i) {
    stair.hooks.push_back({scene.stair.hooks.stations[i], hooks[i] * (weight - on_floor)});
  }
  const std::vector<double> wheels = shares(scene.stair.casters.stations, stair.centre.x);
  for (std::size_t i = 0; i < wheels.size(); ++i) {
    stair.casters.push_back({{scene.stair.casters.stations[i], axle.x}, wheels[i] * on_floor});
  }
}

Interval outs(const Outline& outline) {
  Interval out{1e9, -1e9};
  for (const Vec2& corner : outline.core()) out = hull(out, {corner.x, corner.x});
  return {out.lo - outline.radius(), out.hi + outline.radius()};
}

bool stops(PartKind part, PartKind thing) {
  if (part == PartKind::hook) return thing != PartKind::pipe && thing != PartKind::zone;
  return thing != PartKind::zone && !(part == PartKind::caster && thing == PartKind::floor);
}

Interval grown(Interval stretch, double by) { return {stretch.lo - by, stretch.hi + by}; }

// Hooks are drawn of many pieces: those of one name over the same stretches are one bump.
void add_bump(SpanSite& site, SpanBump bump) {
  for (SpanBump& known : site.bumps) {
    if (known.part != bump.part || known.thing != bump.thing) continue;
    if (!(known.moving == bump.moving && known.fixed == bump.fixed)) continue;
    known.out = hull(known.out, bump.out);
    return;
  }
  site.bumps.push_back(std::move(bump));
}

// Things that the rail's ends and stops keep the stair from are left out.
bool in_reach(const Model& model, const Interval& moving, const Interval& fixed) {
  const Interval met = met_stations(moving, fixed);
  return met.lo <= model.span.hi + kOverrun && met.hi >= model.span.lo - kOverrun;
}

// Side walls are solid for as far as anything can reach; the engine, which reckons with float, is given a metre of
// them.
Interval near_room(const Model& model, const Interval& stretch) {
  const Interval along = model.inside.along;
  return along.length() > 0.0 ? meet(stretch, grown(along, 1.0)) : stretch;
}

void add_bumps(SpanSite& site, const Model& model, const StairPart& part, const RoomPart& thing) {
  if (!stops(part.kind, thing.kind)) return;
  Outline mover;
  mover.place(Outline(part.outline), working_poses(model).at(static_cast<std::size_t>(part.section)));
  const Outline target(thing.outline);
  if (signed_distance(mover, target) >= 0.0) return;
  const Interval out = grown(meet(outs(mover), outs(target)) + -model.linkage.pivot.x, kAside * model.hook_slack);
  for (const Interval& moving : part.stations) {
    for (const Interval& fixed : thing.stations) {
      const Interval met = near_room(model, fixed);
      if (in_reach(model, moving, met)) add_bump(site, {part.name, thing.name, moving, met, out});
    }
  }
}

}  // namespace

double SpanStair::spacing() const {
  const auto less = [](const SpanHook& a, const SpanHook& b) { return a.x < b.x; };
  const auto [least, most] = std::minmax_element(hooks.begin(), hooks.end(), less);
  return hooks.empty() ? 0.0 : most->x - least->x;
}

SpanStair span_stair(const Scene& scene, const Model& model) {
  const AlongRail along = along_rail(scene, model), out = out_from_pivot(model);
  if (!(out.mass > 0.0)) throw std::invalid_argument("plan of the stair: nothing weighs");
  if (scene.stair.casters.stations.empty()) throw std::invalid_argument("plan of the stair: no casters");
  SpanStair stair;
  stair.mass = out.mass;
  stair.centre = {along.first / along.mass, out.first / out.mass};
  stair.inertia = out.second - out.mass * squared(stair.centre.y) + along.second - along.mass * squared(stair.centre.x);
  stair.hook_rod = scene.stair.hooks.width();
  stair.hook_inside = scene.stair.hooks.inside;
  stair.pipe_radius = 0.5 * scene.rail.pipe.diameter;
  stair.caster_radius = 0.5 * scene.stair.casters.diameter;
  if (const auto& roller = scene.stair.hooks.roller)
    stair.roller = SpanRoller{0.5 * roller->diameter, roller_side(model, roller->at)};
  load_supports(stair, scene, model);
  return stair;
}

SpanSite span_site(const Scene& scene, const Model& model) {
  SpanSite site{scene.rail.stations, {}};
  for (const StairPart& part : model.stair) {
    for (const RoomPart& thing : model.room) add_bumps(site, model, part, thing);
  }
  return site;
}

IntervalSet free_stations(const SpanSite& site, Interval span) {
  IntervalSet taken;
  for (const SpanBump& bump : site.bumps) {
    taken.push_back(met_stations(bump.moving, bump.fixed));
  }
  return subtract(span, unite(std::move(taken)));
}

}  // namespace stowpath
