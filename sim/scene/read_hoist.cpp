#include <string>

#include "sim/scene/scene_parts.h"

namespace stowpath {
namespace {

RoomPoint read_room_point(const Setting& point) {
  return {{point.at("out").number(), point.at("up").number()}, point.at("station").number()};
}

SectionPoint read_section_point(const Setting& point, const Stair& stair) {
  check_section(point.at("section"), stair);
  return {point.at("section").count(), point.at("along").number(), point.at("across").number()};
}

SheaveKind sheave_kind(const std::string& word) {
  if (word == "roller") return SheaveKind::roller;
  return word == "ball" ? SheaveKind::ball : SheaveKind::plain;
}

SheaveFriction sheave_friction(const std::string& word) {
  if (word == "additive") return SheaveFriction::additive;
  return word == "ideal" ? SheaveFriction::ideal : SheaveFriction::geometric;
}

void read_leads(const Setting& line, HoistLine& read) {
  const Setting lead = line.at("lead"), leads = line.at("leads");
  if (lead.given() && leads.given()) leads.fault("the line has both lead and leads", "put every sheave under leads");
  if (lead.given()) read.leads.push_back(read_room_point(lead));
  for (const Setting& sheave : leads.items()) read.leads.push_back(read_room_point(sheave));
}

/// Sizes of blocks for fibre rope go with the rope: sheaves of six diameters (common practice, no source).
std::optional<Blocks> read_blocks(const Setting& blocks, const HoistLine& line) {
  if (blocks.given() && line.parts < 2)
    blocks.fault("a line of one part runs through no blocks", "leave it out, or give hoist.line.parts");
  if (blocks.given()) return Blocks{blocks.at("length").number(), blocks.at("width").number()};
  if (line.parts < 2) return std::nullopt;
  return Blocks{15.0 * line.diameter, 7.0 * line.diameter};
}

HoistLine read_line(const Setting& line) {
  HoistLine read;
  read.parts = line.at("parts").count();
  read.sheaves = sheave_kind(line.at("sheaves").word());
  read.diameter = line.at("diameter").number();
  read.strength = line.at("strength").number_if_given();
  read_leads(line, read);
  read.friction = sheave_friction(line.at("friction").word());
  read.tail = line.at("tail").number();
  read.knot = line.at("knot").word();
  read.blocks = read_blocks(line.at("blocks"), read);
  if (line.at("hand").given()) read.hand = read_room_point(line.at("hand"));
  read.hangs_to = line.at("hangs to").number_if_given();
  return read;
}

Winch read_winch(const Setting& winch) {
  Winch read;
  read.drum = winch.at("drum").number();
  read.ratio = winch.at("ratio").number();
  read.crank = winch.at("crank").number_if_given();
  read.efficiency = winch.at("efficiency").number_if_given();
  read.speed = winch.at("speed").number_if_given();
  if (winch.at("torque").is_known()) read.torque = winch.at("torque").number_if_given();
  if (winch.at("stall").is_known()) read.stall = winch.at("stall").number_if_given();
  read.drum_length = winch.at("drum length").number_if_given();
  if (winch.at("worm").given()) read.worm_lead = winch.at("worm").at("lead angle").number();
  read.worm_friction = winch.at("worm").at("friction").number();
  if (read.efficiency && read.worm_lead) {
    winch.at("efficiency")
        .fault("a worm's efficiency follows from its lead angle and friction", "leave one of them out");
  }
  return read;
}

Spreader read_spreader(const Setting& spreader, const Hoist& hoist) {
  if (hoist.spread == 0.0) {
    spreader.fault("a spreader parts the line to two picks, and there is one",
                   "give hoist.pick.spread, the distance between the picks");
  }
  return {spreader.at("length").number(), spreader.at("drop").number(), spreader.at("mass").number(),
          spreader.at("thickness").number()};
}

EyeKind read_eye_kind(const Setting& kind) {
  if (kind.is_word("swivel")) return EyeKind::swivel;
  return kind.is_word("shoulder eye") ? EyeKind::shoulder : EyeKind::plain;
}

EyeAxis read_eye_axis(const Setting& axis) {
  if (axis.is_word("out")) return EyeAxis::out;
  return axis.is_word("along the rail") ? EyeAxis::along_rail : EyeAxis::plumb;
}

void read_eye(const Setting& ceiling_point, Hoist& read) {
  read.eye_kind = read_eye_kind(ceiling_point.at("kind"));
  read.eye_axis = read_eye_axis(ceiling_point.at("axis"));
  read.eye_members = ceiling_point.at("members").count();
  if (ceiling_point.at("eye").given()) read.eye = read_screws(ceiling_point.at("eye"));
}

void read_pulled_by(const Setting& pulled_by, Hoist& read) {
  if (!pulled_by.is_map()) return;
  const Setting crank = pulled_by.at("crank winch"), powered = pulled_by.at("powered winch");
  if (crank.given() == powered.given()) {
    pulled_by.fault(crank.given() ? "the line has two winches" : "there is no winch here",
                    "write hand, or one of crank winch and powered winch");
    return;
  }
  read.pulled_by = crank.given() ? PulledBy::crank_winch : PulledBy::powered_winch;
  const Setting winch = crank.given() ? crank : powered;
  read.winch = read_winch(winch);
  if (read.winch->drum_length && *read.winch->drum_length < read.line.diameter) {
    winch.at("drum length").fault("the drum takes not one turn of the line", "give its length between the flanges");
  }
}

void check_ceiling_point(const Setting& hoist, const Hoist& read, const Scene& scene) {
  const Setting point = hoist.at("ceiling point");
  if (!read.ceiling_point) return;
  const LengthUnit bare = hoist.bare();
  if (read.ceiling_point->at.y > scene.room.ceiling) {
    point.at("up").fault("the point lies above the ceiling at " + length_text(scene.room.ceiling, bare),
                         "give the height that the line hangs from");
  }
  if (read.ceiling_point->at.x < 0 || read.ceiling_point->at.x > scene.room.depth) {
    point.at("out").fault("the point lies outside the room", "out counts from the back wall");
  }
  if (read.ceiling_point->station < 0 || read.ceiling_point->station > scene.room.length) {
    point.at("station").fault("the point lies outside the room", "stations count from the left side wall");
  }
}

void check_home(const Setting& home, const Scene& scene) {
  if (!home.given()) return;
  const double station = home.number();
  if (station < scene.rail.stations.lo || station > scene.rail.stations.hi) {
    home.fault("the home station lies beyond the pipe, which runs from " +
                   length_text(scene.rail.stations.lo, home.bare()) + " to " +
                   length_text(scene.rail.stations.hi, home.bare()),
               "give the station of the stair's middle");
  }
}

Hoist read_hoist_proper(const Setting& hoist, const Scene& scene) {
  Hoist read;
  if (hoist.at("ceiling point").given()) read.ceiling_point = read_room_point(hoist.at("ceiling point"));
  read.home = hoist.at("home").number_if_given();
  read.rolls = hoist.at("rolls").flag();
  read.pick = read_section_point(hoist.at("pick"), scene.stair);
  read.spread = hoist.at("pick").at("spread").number();
  read.pick_kind = read_eye_kind(hoist.at("pick").at("kind"));
  read.overload = hoist.at("overload").number_if_given();
  read.line = read_line(hoist.at("line"));
  if (hoist.at("spreader").given()) read.spreader = read_spreader(hoist.at("spreader"), read);
  read.hand_limit = hoist.at("hand limit").number_if_given();
  read.cleat = hoist.at("cleat").flag();
  read_eye(hoist.at("ceiling point"), read);
  read_pulled_by(hoist.at("pulled by"), read);
  check_ceiling_point(hoist, read, scene);
  check_home(hoist.at("home"), scene);
  return read;
}

FoldLine read_fold_line(const Setting& line, const Stair& stair) {
  FoldLine read;
  read.from = read_section_point(line.at("from"), stair);
  for (const Setting& pulley : line.at("through").items()) read.through.push_back(read_section_point(pulley, stair));
  read.diameter = line.at("diameter").number();
  read.station = line.at("station").number();
  read.strength = line.at("strength").number_if_given();
  return read;
}

}  // namespace

void read_hoist(const Setting& file, Scene& scene) {
  scene.home_within = file.at("hoist").at("home within").number();
  if (file.at("hoist").given()) scene.hoist = read_hoist_proper(file.at("hoist"), scene);
  if (file.at("fold line").given()) scene.fold_line = read_fold_line(file.at("fold line"), scene.stair);
}

}  // namespace stowpath
