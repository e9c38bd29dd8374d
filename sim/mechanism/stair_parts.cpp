#include "sim/mechanism/stair_parts.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "sim/mechanism/round_slabs.h"
#include "sim/mechanism/scene_fault.h"
#include "sim/mechanism/side_rail_band.h"

namespace stowpath {

namespace {

constexpr double kBarSetback = 0.1;  // a handrail's bar stops this far short of its section's ends [m]

// Leaf widths differ from maker to maker: the barrel is drawn as large as its stand-off lets it lie on the face, up to
// the usual 16 mm of a strap hinge (common practice, no source).
double barrel_radius(const Hinge& hinge) {
  constexpr double kLargest = 0.008, kLeast = 0.002, kLetIn = 0.004;  // [m]
  return hinge.offset > 0.0 ? std::clamp(hinge.offset, kLeast, kLargest) : kLetIn;
}

RoundedPolygon side_rail_outline(const Scene& scene, double start, double length, double foot_slope) {
  const Interval band = across_band(scene.stair);
  const double back_end = length + band.lo * foot_slope, front_end = length + band.hi * foot_slope;
  if (std::min(back_end, front_end) <= start)
    refuse(scene, "stair.sections",
           "a section of " + say_length(scene, Nominal{length}) + " is too short for its side rails");
  return make_rounded_polygon({{start, band.lo}, {back_end, band.lo}, {front_end, band.hi}, {start, band.hi}}, 0.0);
}

// A leaf lies on the face that carries the hinge; one thicker than the hinge stands off is let in, and shows nothing.
void add_leaf(const Stair& stair, int k, int section, Interval along, std::vector<StairPart>& parts) {
  const Hinge& hinge = stair.hinges[static_cast<std::size_t>(k)];
  if (hinge.leaf_thickness <= 0.0 || hinge.offset < hinge.leaf_thickness) return;
  const Interval band = across_band(stair);
  const Interval across = hinge.face == HingeFace::back ? Interval{band.lo - hinge.leaf_thickness, band.lo}
                                                        : Interval{band.hi, band.hi + hinge.leaf_thickness};
  parts.push_back({PartKind::hinge, "hinge leaf", section, make_box({along.lo, across.lo}, {along.hi, across.hi}),
                   both_sides(right_side_rail(stair)), false, k});
}

void add_hinge(const Scene& scene, const Linkage& linkage, int k, std::vector<StairPart>& stair) {
  const Hinge& hinge = scene.stair.hinges[static_cast<std::size_t>(k)];
  stair.push_back({PartKind::hinge, "hinge", k, make_disc(linkage.distal(k), barrel_radius(hinge)),
                   both_sides(right_side_rail(scene.stair)), false, k});
  const double joint = linkage.length[static_cast<std::size_t>(k)];
  add_leaf(scene.stair, k, k, {joint - hinge.leaf, joint}, stair);
  add_leaf(scene.stair, k, k + 1, {0.0, hinge.leaf}, stair);
}

// The pin goes through side rail and scab, and its heads lie on their outermost faces.
void add_pin(const Stair& stair, int k, Vec2 axis, Interval through, std::vector<StairPart>& parts) {
  const Lock& lock = stair.locks[static_cast<std::size_t>(k)];
  parts.push_back({PartKind::lock_pin, "lock pin", k, make_disc(axis, 0.5 * lock.pin), both_sides(through), true, k});
  const double high = lock.head_height;
  if (high <= 0.0) return;
  parts.push_back({PartKind::lock_pin,
                   "lock pin head",
                   k,
                   make_disc(axis, 0.5 * lock.head),
                   {{-through.hi - high, -through.hi},
                    {-through.lo, -through.lo + high},
                    {through.lo - high, through.lo},
                    {through.hi, through.hi + high}},
                   true,
                   k});
}

void add_lock(const Scene& scene, const Linkage& linkage, int k, std::vector<StairPart>& stair) {
  const Lock& lock = scene.stair.locks[static_cast<std::size_t>(k)];
  const double joint = linkage.length[static_cast<std::size_t>(k)], middle = across_band(scene.stair).middle();
  const double half = 0.5 * lock.width, face = 0.5 * scene.stair.width, inner = face + lock.spacer;
  const Vec2 least{joint - 0.5 * lock.length, middle - half}, greatest{joint + 0.5 * lock.length, middle + half};
  stair.push_back(
      {PartKind::scab, "scab", k, make_box(least, greatest), both_sides({inner, inner + lock.thickness}), false, k});
  if (lock.spacer > 0.0)
    stair.push_back({PartKind::spacer_block, "spacer block", k, make_box(least, {joint, greatest.y}),
                     both_sides({face, inner}), false, k});
  add_pin(scene.stair, k, {joint + 0.25 * lock.length, middle},
          {right_side_rail(scene.stair).lo, inner + lock.thickness}, stair);
}

// A caster's plate and block lie against the side rail's face that looks towards the wheel.
struct Mounting {
  std::vector<Interval> block, plate;
};

Mounting mount(const Stair& stair) {
  Mounting mounting;
  const Casters& casters = stair.casters;
  const Interval rail = right_side_rail(stair);
  for (const double station : casters.stations) {
    const bool outside = std::abs(station) >= rail.middle();
    const double face = outside ? rail.hi : rail.lo, way = outside ? 1.0 : -1.0, side = station < 0.0 ? -1.0 : 1.0;
    const auto layer = [&](double from, double to) {
      const double a = side * (face + way * from), b = side * (face + way * to);
      return Interval{std::min(a, b), std::max(a, b)};
    };
    mounting.block.push_back(layer(0.0, casters.block));
    mounting.plate.push_back(layer(casters.block, casters.block + casters.plate));
  }
  return mounting;
}

// A square on the side rail, ending at the axle, or before it where its lower corner would else hang below the axle.
RoundedPolygon plate_outline(const Stair& stair, double working_lean) {
  const Casters& casters = stair.casters;
  const Interval band = across_band(stair);
  const double half = 0.5 * std::min(casters.diameter, band.length());
  const double back = band.middle() - half;
  const double end = std::min(casters.along, casters.along - (casters.across - back) * std::tan(working_lean));
  return make_box({end - casters.diameter, back}, {end, band.middle() + half});
}

std::vector<Interval> stretches(const std::vector<double>& middles, double width) {
  std::vector<Interval> out;
  for (const double middle : middles) out.push_back({middle - 0.5 * width, middle + 0.5 * width});
  return out;
}

std::vector<Interval> handrail_stations(const Stair& stair) {
  const double middle = right_side_rail(stair).middle();
  std::vector<double> sides;
  if (stair.handrails->sides != Sides::right) sides.push_back(-middle);
  if (stair.handrails->sides != Sides::left) sides.push_back(middle);
  return stretches(sides, stair.handrails->diameter);
}

// A box that stands upright in the working pose, in the section's frame.
RoundedPolygon upright_box(Vec2 middle, double half_width, double half_height, double working_lean) {
  const double s = std::sin(working_lean), c = std::cos(working_lean);
  const Vec2 out{half_width * s, half_width * c}, up{-half_height * c, half_height * s};
  return make_rounded_polygon({middle - out - up, middle + out - up, middle + out + up, middle - out + up}, 0.0);
}

// A wheel that rolls along the rail, seen on edge: slabs of stations, each as high as the wheel's greatest chord in it.
void add_rigid_wheels(const Casters& casters, int section, double working_lean, std::vector<StairPart>& stair) {
  for (const RoundSlab& slab : round_slabs(0.5 * casters.diameter)) {
    std::vector<Interval> stations;
    for (const double station : casters.stations)
      for (const Interval& stretch : both_ways(slab, station)) stations.push_back(stretch);
    stair.push_back({PartKind::caster, "caster", section,
                     upright_box({casters.along, casters.across}, 0.5 * casters.width, slab.half, working_lean),
                     std::move(stations), false, -1, slab.excess});
  }
}

// How far a swivel's wheel sweeps about the upright axis: out to the far corners of its tread.
double sweep_of(const Casters& casters) {
  return std::hypot(casters.trail + 0.5 * casters.diameter, 0.5 * casters.width);
}

// The room that a swivel takes, whichever way it points.
void add_swivels(const Casters& casters, int section, double working_lean, std::vector<StairPart>& stair) {
  const double sweep = sweep_of(casters);
  stair.push_back({PartKind::caster, "caster", section,
                   upright_box({casters.along, casters.across}, sweep, 0.5 * casters.diameter, working_lean),
                   stretches(casters.stations, 2.0 * sweep)});
}

void add_handrail(const Stair& stair, const Linkage& linkage, int section, std::vector<StairPart>& parts) {
  const Handrails& rails = *stair.handrails;
  const double radius = 0.5 * rails.diameter, foot = stair.side_rails.front_face, bar = foot + rails.height;
  const double top = section == 0 ? std::max(0.0, -stair.above_pivot) : 0.0;
  const double first = top + kBarSetback + radius;
  const double last = linkage.length[static_cast<std::size_t>(section)] - kBarSetback - radius;
  if (last <= first) return;
  const auto stations = handrail_stations(stair);
  parts.push_back({PartKind::handrail, "handrail", section,
                   make_box({first - radius, bar - radius}, {last + radius, bar + radius}), stations});
  const int posts = rails.post_every > 0.0 ? 1 + static_cast<int>((last - first) / rails.post_every + 1e-9) : 0;
  for (int i = 0; i < posts; ++i) {
    const double along = first + i * rails.post_every;
    parts.push_back(
        {PartKind::handrail, "handrail post", section, make_capsule({along, foot}, {along, bar}, radius), stations});
  }
}

}  // namespace

void add_side_rails(const Scene& scene, const Linkage& linkage, double working_lean, std::vector<StairPart>& stair) {
  for (int k = 0; k < linkage.sections; ++k) {
    const bool foot = k + 1 == linkage.sections && scene.stair.side_rails.level_foot;
    const RoundedPolygon outline =
        side_rail_outline(scene, k == 0 ? -scene.stair.above_pivot : 0.0, linkage.length[static_cast<std::size_t>(k)],
                          foot ? std::tan(working_lean) : 0.0);
    stair.push_back({PartKind::side_rail, "side rail", k, outline, both_sides(right_side_rail(scene.stair))});
  }
}

void add_joints(const Scene& scene, const Linkage& linkage, std::vector<StairPart>& stair) {
  for (int k = 0; k + 1 < linkage.sections; ++k) {
    add_hinge(scene, linkage, k, stair);
    if (!scene.stair.locks.empty()) add_lock(scene, linkage, k, stair);
  }
}

void add_casters(const Scene& scene, const Linkage& linkage, double working_lean, std::vector<StairPart>& stair) {
  const Casters& casters = scene.stair.casters;
  if (casters.stations.empty()) return;
  const int last = linkage.sections - 1;
  (casters.swivels ? add_swivels : add_rigid_wheels)(casters, last, working_lean, stair);
  const Mounting mounting = mount(scene.stair);
  const RoundedPolygon outline = plate_outline(scene.stair, working_lean);
  if (casters.block > 0.0) stair.push_back({PartKind::caster_block, "caster block", last, outline, mounting.block});
  if (casters.plate > 0.0) stair.push_back({PartKind::caster_plate, "caster plate", last, outline, mounting.plate});
}

Wheels wheels_of(const Stair& stair) {
  const Casters& casters = stair.casters;
  const double radius = 0.5 * casters.diameter, sweep = sweep_of(casters);
  return {static_cast<int>(stair.sections.size()) - 1,
          {casters.along, casters.across},
          radius,
          casters.swivels ? sweep : 0.5 * casters.width,
          stretches(casters.stations, 2.0 * (casters.swivels ? sweep : radius))};
}

void add_handrails(const Scene& scene, const Linkage& linkage, std::vector<StairPart>& stair) {
  if (!scene.stair.handrails) return;
  for (int k = 0; k < linkage.sections; ++k) add_handrail(scene.stair, linkage, k, stair);
}

void add_extras(const Scene& scene, std::vector<StairPart>& stair) {
  for (std::size_t i = 0; i < scene.stair.extras.size(); ++i) {
    const Extra& extra = scene.stair.extras[i];
    const std::string key = "stair.extras[" + std::to_string(i) + "]";
    if (extra.section < 1 || extra.section > static_cast<int>(scene.stair.sections.size()))
      refuse(scene, key + ".section", "there is no section " + std::to_string(extra.section));
    stair.push_back({PartKind::extra,
                     extra.name,
                     extra.section - 1,
                     outline_of(scene, key + ".outline", extra.outline, extra.radius),
                     {extra.stations}});
  }
}

}  // namespace stowpath
