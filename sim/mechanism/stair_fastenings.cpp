#include "sim/mechanism/stair_fastenings.h"

#include <algorithm>
#include <cmath>

#include "sim/geometry/distance.h"
#include "sim/mechanism/prism_touch.h"
#include "sim/mechanism/side_rail_band.h"

namespace stowpath {

namespace {

constexpr double kLeastShare = 0.5;  // of a tread or a plate that lies on wood
constexpr double kFar = 1e4;         // [m]

std::string section_name(int section) { return "section " + std::to_string(section + 1); }

const StairPart& side_rail_of(const Model& model, int section) {
  return *std::find_if(model.stair.begin(), model.stair.end(), [&](const StairPart& part) {
    return part.kind == PartKind::side_rail && part.section == section;
  });
}

bool is_wood(PartKind kind) {
  return kind == PartKind::side_rail || kind == PartKind::tread || kind == PartKind::scab ||
         kind == PartKind::spacer_block || kind == PartKind::caster_block || kind == PartKind::handrail;
}

bool is_attached(PartKind kind) {
  return kind == PartKind::scab || kind == PartKind::spacer_block || kind == PartKind::caster_block ||
         kind == PartKind::caster_plate || kind == PartKind::handrail || kind == PartKind::extra;
}

// What a part goes by in the chains: side rails and treads are the section itself.
std::string chain_name(const StairPart& part) {
  const std::string section = section_name(part.section);
  return is_attached(part.kind) ? part.name + " of " + section : section;
}

/// One stretch of a part: the left scab, the left handrail.
struct Piece {
  const StairPart* part = nullptr;
  Interval stations;
  std::string held_by{};  // a part of its section that holds it; empty while none does
};

double between(const Piece& a, const Piece& b) {
  return free_distance({a.part->outline, a.stations}, {b.part->outline, b.stations});
}

std::vector<Piece> pieces_of(const Model& model, int section) {
  std::vector<Piece> pieces;
  for (const StairPart& part : model.stair) {
    if (part.section != section || !(is_wood(part.kind) || is_attached(part.kind))) continue;
    for (const Interval stretch : part.stations) pieces.push_back({&part, stretch});
  }
  return pieces;
}

// From the side rails outward: what touches something that is held is held by it.
void spread_out(std::vector<Piece>& pieces) {
  std::vector<std::size_t> from;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (is_attached(pieces[i].part->kind)) continue;
    pieces[i].held_by = chain_name(*pieces[i].part);
    from.push_back(i);
  }
  for (std::size_t next = 0; next < from.size(); ++next) {
    const Piece& holder = pieces[from[next]];
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      if (!pieces[i].held_by.empty() || gap(pieces[i].stations, holder.stations) > kOnFace) continue;
      if (between(pieces[i], holder) > kOnFace) continue;
      pieces[i].held_by = chain_name(*holder.part);
      from.push_back(i);
    }
  }
}

// The nearest thing that is held, and so could hold it.
const Piece* nearest_held(const Piece& loose, const std::vector<Piece>& pieces, double& away) {
  const Piece* nearest = nullptr;
  away = kFar;
  for (const Piece& piece : pieces)
    if (!piece.held_by.empty() && between(loose, piece) < away) nearest = &piece, away = between(loose, piece);
  return nearest;
}

std::string key_of(PartKind kind) {
  if (kind == PartKind::extra) return "stair.extras";
  if (kind == PartKind::handrail) return "stair.handrails";
  return kind == PartKind::caster_plate || kind == PartKind::caster_block ? "stair.casters" : "stair.locks";
}

Fastening loose_link(const HoldingView& view, const Piece& piece, const std::vector<Piece>& pieces) {
  double away = kFar;
  const Piece* nearest = nearest_held(piece, pieces, away);
  const std::string section = section_name(piece.part->section);
  Fastening link{chain_name(*piece.part), nearest ? nearest->part->name : section, {}, false, away};
  link.kind = piece.part->name;
  link.place = "of " + section;
  link.how = "it touches no wood of " + section + "; the nearest is the " + link.holder + ", " +
             say_distance(view.scene, AtMost{away}) + " away";
  link.remedy =
      "draw it against the wood, or name what joins the two as another extra (`" + key_of(piece.part->kind) + "`)";
  return link;
}

void add_attached(const HoldingView& view, int section, Fastenings& links) {
  std::vector<Piece> pieces = pieces_of(view.model, section);
  if (std::none_of(pieces.begin(), pieces.end(), [](const Piece& p) { return is_attached(p.part->kind); })) return;
  spread_out(pieces);
  for (const Piece& piece : pieces) {
    if (!is_attached(piece.part->kind)) continue;
    if (piece.held_by.empty()) {
      links.push_back(loose_link(view, piece, pieces));
    } else {
      links.push_back({chain_name(*piece.part), piece.held_by, "it lies on wood"});
    }
  }
}

// What share of a part's side view lies on its section's side rails; 0 where it does not reach them along the rail.
double share_on_rails(const Model& model, const StairPart& part, Interval stations, bool both) {
  const StairPart& rails = side_rail_of(model, part.section);
  int touched = 0;
  for (const Interval rail : rails.stations) touched += gap(rail, stations) <= kOnFace ? 1 : 0;
  if (touched < (both ? 2 : 1)) return 0.0;
  const double whole = corner_area(drawn_corners(part.outline, 1e-4));
  return whole > 0.0 ? corner_area(common_corners(part.outline, rails.outline)) / whole : 0.0;
}

std::string per_cent(double share) { return std::to_string(static_cast<int>(std::floor(100.0 * share))) + " %"; }

void add_treads(const HoldingView& view, Fastenings& links) {
  int number = 0;
  for (const StairPart& part : view.model.stair) {
    if (part.kind != PartKind::tread) continue;
    const std::string section = section_name(part.section);
    const double share = share_on_rails(view.model, part, part.stations.front(), true);
    const double along = reach_x(part.outline.core).middle();
    Fastening link{"tread " + std::to_string(++number),
                   section,
                   "its ends lie between the side rails",
                   share >= kLeastShare,
                   0.0,
                   "tread",
                   say_place(view.scene, along) + " along " + section};
    if (!link.ok) {
      link.distance = free_distance({part.outline, {0, 0}}, {side_rail_of(view.model, part.section).outline, {0, 0}});
      link.in_part = share > 0.0;
      link.how = "only " + per_cent(share) + " of its side view lies between the side rails";
      link.remedy = "make it less deep, or let it stand out less (`stair.treads`)";
    }
    links.push_back(link);
  }
}

// How much of the wood an along-stretch on one face leaves uncovered [m].
double off_wood(const RoundedPolygon& rail, double across, Interval along) {
  const double thin = across > reach_y(rail.core).middle() ? -1e-6 : 1e-6;
  const RoundedPolygon face =
      make_box({-kFar, std::min(across, across + thin)}, {kFar, std::max(across, across + thin)});
  const Interval wood = reach_x(common_corners(face, rail));
  return std::max({0.0, wood.lo - along.lo, along.hi - wood.hi});
}

// By how much the leaves of a hinge are longer than the wood on either side of the joint [m].
double leaf_off_wood(const HoldingView& view, int k) {
  const Hinge& hinge = view.scene.stair.hinges[static_cast<std::size_t>(k)];
  const Interval band = across_band(view.scene.stair);
  const double across = hinge.face == HingeFace::back ? band.lo : band.hi;
  const double length = view.model.linkage.length[static_cast<std::size_t>(k)];
  return std::max(off_wood(side_rail_of(view.model, k).outline, across, {length - hinge.leaf, length}),
                  off_wood(side_rail_of(view.model, k + 1).outline, across, {0.0, hinge.leaf}));
}

Fastening hinge_link(const HoldingView& view, int k) {
  const std::string name = "hinge " + std::to_string(k + 1);
  Fastening link{name, section_name(k), "its leaves lie on the side rails", true, 0.0, name};
  link.distance = leaf_off_wood(view, k);
  if (link.distance <= kOnFace) return link;
  link.ok = false;
  link.in_part = true;
  link.how = "a leaf runs " + say_distance(view.scene, AtMost{link.distance}) + " past the end of its side rail";
  link.remedy = "take a shorter leaf (`stair.hinges[" + std::to_string(k) + "].leaf`)";
  return link;
}

Fastening lock_link(const HoldingView& view, int k) {
  const Lock& lock = view.scene.stair.locks[static_cast<std::size_t>(k)];
  const Vec2 pin{0.25 * lock.length, across_band(view.scene.stair).middle()};
  const double out = distance(make_disc(pin, 0.5 * lock.pin), {}, side_rail_of(view.model, k + 1).outline, {});
  Fastening link{"lock pin " + std::to_string(k + 1), section_name(k + 1), "it goes through scab and side rail"};
  link.distance = std::max(0.0, out);
  if (out <= -lock.pin + 1e-6) return link;
  link.ok = false;
  link.kind = link.part;
  link.how = "it does not go whole through the side rail of " + section_name(k + 1);
  link.remedy = "take a shorter scab: its pin stands at a quarter of its length (`stair.locks[" + std::to_string(k) +
                "].length`)";
  return link;
}

void add_joints(const HoldingView& view, Fastenings& links) {
  for (int k = 0; k + 1 < view.model.linkage.sections; ++k) {
    links.push_back(hinge_link(view, k));
    links.push_back({section_name(k + 1), "hinge " + std::to_string(k + 1), "it hangs on it"});
    if (!view.scene.stair.locks.empty()) links.push_back(lock_link(view, k));
  }
}

void add_plates(const HoldingView& view, Fastenings& links) {
  for (const StairPart& part : view.model.stair) {
    if (part.kind != PartKind::caster_plate && part.kind != PartKind::caster_block) continue;
    const double whole = corner_area(part.outline.core);
    const double share =
        corner_area(common_corners(part.outline, side_rail_of(view.model, part.section).outline)) / whole;
    if (share >= kLeastShare || share <= 0.0) continue;  // one that touches nothing is told as such
    links.push_back({part.name + " of " + section_name(part.section),
                     section_name(part.section),
                     "only " + per_cent(share) + " of it lies on the side rail",
                     false,
                     0.0,
                     part.name,
                     {},
                     "move the casters up the section (`stair.casters.along`), or make the last section longer",
                     true});
  }
}

// A wheel in the working pose: its axle lies in the side view, its tread is plumb.
RoundedPolygon wheel_outline(const HoldingView& view) {
  const Casters& casters = view.scene.stair.casters;
  const double half = 0.5 * casters.width, radius = 0.5 * casters.diameter, lean = view.model.working_lean;
  const Vec2 level{std::sin(lean), std::cos(lean)}, down{std::cos(lean), -std::sin(lean)};
  const Vec2 axle{casters.along, casters.across};
  std::vector<Vec2> corners;
  for (const auto& [l, d] : {std::pair{-1.0, -1.0}, {-1.0, 1.0}, {1.0, 1.0}, {1.0, -1.0}})
    corners.push_back(axle + l * half * level + d * radius * down);
  if (corner_area(corners) < 0.0) std::reverse(corners.begin(), corners.end());
  return make_rounded_polygon(corners, 0.0);
}

struct Carrier {
  std::string name, chain;
  double beside = kFar, in_view = kFar;  // from the wheel, along the rail and in the side view [m]
};

Carrier carrier_of(const HoldingView& view, const RoundedPolygon& wheel, Interval stations, double side_reach,
                   double view_reach) {
  Carrier best;
  for (const StairPart& part : view.model.stair) {
    if (part.section != view.model.linkage.sections - 1) continue;
    if (!is_wood(part.kind) && part.kind != PartKind::caster_plate && part.kind != PartKind::extra) continue;
    if (part.kind == PartKind::handrail) continue;
    for (const Interval stretch : part.stations) {
      const Carrier here{part.name, chain_name(part), gap(stretch, stations),
                         std::max(0.0, distance(wheel, {}, part.outline, {}))};
      const auto lacks = [&](const Carrier& c) { return std::max(c.beside - side_reach, c.in_view - view_reach); };
      if (lacks(here) < lacks(best)) best = here;
    }
  }
  return best;
}

void add_wheels(const HoldingView& view, Fastenings& links) {
  const Casters& casters = view.scene.stair.casters;
  if (casters.stations.empty()) return;
  const RoundedPolygon wheel = wheel_outline(view);
  const double side_reach = 0.5 * casters.width, radius = 0.5 * casters.diameter;
  for (const double station : casters.stations) {
    const Interval at{station - radius, station + radius};
    const Carrier carrier = carrier_of(view, wheel, at, side_reach, radius);
    const std::string place = say_place(view.scene, station) + " from the stair's middle";
    Fastening link{
        "caster " + place, carrier.chain, "its fork is fixed to it", true, std::hypot(carrier.beside, carrier.in_view),
        "caster",          place};
    link.ok = carrier.beside <= side_reach + 1e-9 && carrier.in_view <= radius + 1e-9;
    if (!link.ok) {
      link.how = "the wheel is " + say_distance(view.scene, AtMost{link.distance}) + " away from the " + carrier.name +
                 ", the nearest thing that could carry it";
      link.remedy =
          "set it beside a side rail (`stair.casters.stations`, `along`, `across`), or give a `block` that "
          "reaches it";
    }
    links.push_back(link);
  }
}

}  // namespace

Fastenings stair_fastenings(const HoldingView& view) {
  Fastenings links;
  add_joints(view, links);
  add_treads(view, links);
  for (int section = 0; section < view.model.linkage.sections; ++section) add_attached(view, section, links);
  add_plates(view, links);
  add_wheels(view, links);
  return links;
}

}  // namespace stowpath
