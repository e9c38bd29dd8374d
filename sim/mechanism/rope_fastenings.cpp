#include "sim/mechanism/rope_fastenings.h"

#include <algorithm>

#include "sim/mechanism/prism_touch.h"
#include "sim/mechanism/line_route.h"
#include "sim/mechanism/side_rail_band.h"
#include "sim/mechanism/standing.h"
#include "sim/mechanism/supports.h"

namespace stowpath {

namespace {

constexpr double kPersonReach = 2.1;  // over what a person stands on [m]
constexpr double kArmReach = 0.6;     // out past the deck's edge, for someone on it [m]
constexpr double kWinchReach = 0.5;   // from a winch's drum to what it is fixed to, its frame and stand [m]
constexpr double kFar = 1e4;          // [m]

using Building = std::vector<const RoomPart*>;

std::string section_name(int section) { return "section " + std::to_string(section); }

bool holds_eyes(PartKind kind) {
  return kind == PartKind::side_rail || kind == PartKind::tread || kind == PartKind::scab ||
         kind == PartKind::spacer_block;
}

NearThing nearest_wood(const Model& model, const SectionPoint& point, double station) {
  const RoundedPolygon eye = make_disc({point.along, point.across}, 0.0);
  NearThing near{{}, kFar};
  for (const StairPart& part : model.stair) {
    if (part.section != point.section - 1 || !holds_eyes(part.kind)) continue;
    for (const Interval stretch : part.stations)
      if (const double away = free_distance({eye, {station, station}}, {part.outline, stretch}); away < near.distance)
        near = {part.name, away};
  }
  return near;
}

Fastening eye_link(const HoldingView& view, const std::string& kind, const std::string& place,
                   const SectionPoint& point, double station) {
  const NearThing wood = nearest_wood(view.model, point, station);
  Fastening link{kind + (place.empty() ? "" : " " + place),
                 section_name(point.section),
                 "it is fixed to the " + wood.name,
                 wood.distance <= kEyeReach,
                 wood.distance,
                 kind,
                 place};
  if (!link.ok)
    link.how = "the nearest wood of section " + std::to_string(point.section) + " is the " + wood.name + ", " +
               say_distance(view.scene, AtMost{wood.distance}) + " away, and it reaches " + say_distance(view.scene, Nominal{kEyeReach});
  return link;
}

std::string between_middles(const HoldingView& view) {
  return say_distance(view.scene, Nominal{view.scene.stair.width - view.scene.stair.side_rails.thickness});
}

void add_picks(const HoldingView& view, Fastenings& links) {
  const Hoist& hoist = *view.scene.hoist;
  std::vector<double> stations{0.0};
  if (hoist.spread > 0.0) stations = {-0.5 * hoist.spread, 0.5 * hoist.spread};
  for (const double station : stations) {
    const std::string place = hoist.spread > 0.0 ? say_place(view.scene, station) + " from the stair's middle" : "";
    Fastening link = eye_link(view, "pick", place, hoist.pick, station);
    link.remedy =
        "move it to a tread (`hoist.pick.along`, `across`), or use two picks on the side rails with "
        "`hoist.pick.spread: " +
        between_middles(view) + "`";
    links.push_back(link);
  }
  if (hoist.spreader) links.push_back({"spreader", "hoist line", "it hangs on the line, and the picks on its legs"});
}

void add_fold_line(const HoldingView& view, Fastenings& links) {
  if (!view.scene.fold_line) return;
  const FoldLine& line = *view.scene.fold_line;
  const std::string remedy = "move it to the wood (`fold line`), its `station` " +
                             say_distance(view.scene, Nominal{right_side_rail(view.scene.stair).middle()}) +
                             " being a side rail's middle";
  links.push_back(eye_link(view, "fold line's end", "", line.from, line.station));
  links.back().remedy = remedy;
  for (std::size_t i = 0; i < line.through.size(); ++i) {
    links.push_back(eye_link(view, "fold line's pulley", std::to_string(i + 1), line.through[i], line.station));
    links.back().remedy = remedy;
  }
}

// Where something of the room that carries a line is fixed.
Fastening room_link(const HoldingView& view, const std::string& name, const RoomPoint& point, double reach,
                    const Building& building) {
  const NearThing near = nearest_thing(point.at, point.station, building);
  Fastening link{name, near.name, "it is fixed to it", near.distance <= reach, near.distance, name};
  if (!link.ok)
    link.how = near.name.empty() ? "there is nothing to fix it to"
                                 : "the nearest thing that could hold it is the " + near.name + ", " +
                                       say_distance(view.scene, AtMost{near.distance}) + " away, and it reaches " +
                                       say_distance(view.scene, Nominal{reach});
  return link;
}

const char* const kTimber = ", or under `obstacles` name the beam, post or bracket that it is fixed to";

// A ceiling point that rolls needs a track over all of its way.
Fastening rolling_point_link(const HoldingView& view, const Building& building) {
  const RoomPoint& point = *view.scene.hoist->ceiling_point;
  const double beside = point.station - home_station(view.scene).value_or(point.station);
  const Interval way = view.model.span + beside;
  const IntervalSet without = stations_without(point.at, way, kSheaveReach, building);
  const double station = without.empty() ? way.lo : without.front().middle();
  Fastening link = room_link(view, "ceiling point", {point.at, station}, kSheaveReach, building);
  link.ok = without.empty();
  if (!link.ok) link.place = "where it rolls past station " + say_distance(view.scene, Nominal{station});
  return link;
}

void add_ceiling_point(const HoldingView& view, const Building& building, Fastenings& links) {
  const Hoist& hoist = *view.scene.hoist;
  if (!hoist.ceiling_point) {
    links.push_back({"hoist line",
                     "ceiling",
                     "the scene names no point from which it hangs",
                     false,
                     0.0,
                     "hoist line",
                     {},
                     "give `hoist.ceiling point`"});
    return;
  }
  Fastening link = hoist.rolls ? rolling_point_link(view, building)
                               : room_link(view, "ceiling point", *hoist.ceiling_point, kSheaveReach, building);
  link.remedy = std::string("move it up to the ceiling (`hoist.ceiling point`)") + kTimber;
  links.push_back({"hoist line", "ceiling point", "it hangs from it"});
  links.push_back(link);
}

void add_leads(const HoldingView& view, const Building& building, Fastenings& links) {
  int number = 0;
  for (const RoomPoint& lead : view.scene.hoist->line.leads) {
    Fastening link = room_link(view, "lead " + std::to_string(++number), lead, kSheaveReach, building);
    link.remedy = std::string("move it to a wall or the ceiling (`hoist.line`)") + kTimber;
    links.push_back(link);
  }
}

bool person_reaches(const Scene& scene, const RoomPoint& hand) {
  const auto within = [&](double stand) { return hand.at.y >= stand && hand.at.y <= stand + kPersonReach; };
  const bool over_deck = hand.at.x <= scene.loft.edge + kArmReach && scene.loft.stations.contains(hand.station);
  return within(scene.floor.level) || (over_deck && within(scene.loft.deck));
}

void add_hand(const HoldingView& view, const Building& building, Fastenings& links) {
  const Hoist& hoist = *view.scene.hoist;
  if (!hoist.ceiling_point) return;
  const RoomPoint hand = hand_place(view.scene);
  if (hoist.pulled_by != PulledBy::hand) {
    links.push_back(room_link(view, "winch", hand, kWinchReach, building));
    links.back().remedy = std::string("say where it stands, at a wall, floor or post (`hoist.line.hand`)") + kTimber;
    return;
  }
  Fastening link{"hand", "a person", "someone stands there", person_reaches(view.scene, hand), 0.0, "hand on the line"};
  if (!link.ok) {
    link.how = "it is " + say_distance(view.scene, Nominal{hand.at.y - view.scene.floor.level}) +
               " over the floor, where nobody can stand and pull";
    link.remedy = "lead the line to where someone stands (`hoist.line.hand`)";
  }
  links.push_back(link);
}

}  // namespace

Fastenings rope_fastenings(const HoldingView& view) {
  Fastenings links;
  add_fold_line(view, links);
  if (!view.scene.hoist) return links;
  const Building building = building_of(view.model);
  add_picks(view, links);
  add_ceiling_point(view, building, links);
  add_leads(view, building, links);
  add_hand(view, building, links);
  return links;
}

}  // namespace stowpath
