#include <string>

#include "sim/scene/scene_parts.h"

namespace stowpath {
namespace {

Margins read_margins(const Setting& margin) {
  return {margin.at("default").number(), margin.at("hook").number(), margin.at("self").number()};
}

LoftGuard read_guard(const Setting& guard, const Loft& loft) {
  LoftGuard read;
  read.height = guard.at("height").number();
  read.thickness = guard.at("thickness").number();
  read.out = guard.at("out").number_if_given().value_or(loft.edge);
  read.openings = guard.at("openings").intervals();
  const std::vector<Setting> items = guard.at("openings").items();
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Interval opening = read.openings[i];
    if (opening.hi < loft.stations.lo || opening.lo > loft.stations.hi) {
      items[i].fault("this opening lies beside the loft, which runs from " +
                         length_text(loft.stations.lo, guard.bare()) + " to " +
                         length_text(loft.stations.hi, guard.bare()),
                     "give stations along the rail, as in loft.stations");
    }
  }
  return read;
}

/// @param member  the key under which its size stands
Framing read_framing(const Setting& framing, const char* member) {
  const Setting size = framing.at(member);
  if (!(size.given() && size.text() == "truss")) read_lumber(size);
  Framing read;
  read.member = size.text();
  read.every = framing.at("every").number_if_given();
  read.species = read_species(framing.at("species"));
  if (framing.at("direction").is_word("along the rail")) read.direction = FramingDirection::along_rail;
  read.first = framing.at("first").number_if_given();
  return read;
}

/// A member that lies nowhere in the room is a slip of the pen: its place is a station, or counts from the back wall.
void check_first(const Setting& framing, const std::optional<Framing>& read, const Room& room) {
  if (!read || !read->first) return;
  const bool out = read->direction == FramingDirection::out;
  const double end = out ? room.length : room.depth;
  if (*read->first < 0.0 || *read->first > end)
    framing.at("first").fault("this member lies outside the room, which ends at " + length_text(end, framing.bare()),
                              out ? "members that run out are placed by a station along the rail"
                                  : "members that run along the rail are placed out from the back wall");
}

Loft read_loft(const Setting& loft) {
  Loft read;
  read.edge = loft.at("edge").number();
  read.deck = loft.at("deck").number();
  read.thickness = loft.at("thickness").number();
  read.stations = loft.at("stations").interval();
  if (loft.at("guard").given()) read.guard = read_guard(loft.at("guard"), read);
  if (loft.at("framing").given()) read.framing = read_framing(loft.at("framing"), "joist");
  return read;
}

void check_loft(const Setting& loft, const Scene& scene) {
  const LengthUnit bare = loft.bare();
  if (scene.loft.edge >= scene.room.depth) {
    loft.at("edge").fault("the loft reaches " + length_text(scene.loft.edge, bare) + " out in a room " +
                              length_text(scene.room.depth, bare) + " deep",
                          "give the loft's front edge, out from the back wall");
  }
  if (scene.loft.deck >= scene.room.ceiling) {
    loft.at("deck").fault("the deck is at " + length_text(scene.loft.deck, bare) + ", the ceiling at " +
                              length_text(scene.room.ceiling, bare),
                          "both are heights above the same zero");
  }
  if (scene.loft.deck - scene.loft.thickness < scene.floor.level) {
    loft.at("thickness").fault("the loft's underside would lie below the floor", "give deck and framing together");
  }
  if (scene.loft.stations.hi > scene.room.length) {
    loft.at("stations")
        .fault("the loft ends at " + length_text(scene.loft.stations.hi, bare) + " in a room " +
                   length_text(scene.room.length, bare) + " long",
               "stations count from the left side wall");
  }
}

}  // namespace

void read_room(const Setting& file, Scene& scene) {
  scene.margin = read_margins(file.at("margin"));
  const Setting room = file.at("room");
  scene.room = {room.at("length").number(), room.at("depth").number(), room.at("ceiling").number()};
  scene.floor = {file.at("floor").at("level").number(), file.at("floor").at("uneven").number()};
  scene.tolerance = file.at("tolerances").at("default").number();
  if (scene.floor.level >= scene.room.ceiling) {
    file.at("floor").at("level").fault("the floor is above the ceiling", "both are heights above the same zero");
  }
  if (room.at("framing").given()) scene.ceiling_framing = read_framing(room.at("framing"), "member");
  scene.loft = read_loft(file.at("loft"));
  check_first(room.at("framing"), scene.ceiling_framing, scene.room);
  check_first(file.at("loft").at("framing"), scene.loft.framing, scene.room);
  check_loft(file.at("loft"), scene);
}

}  // namespace stowpath
