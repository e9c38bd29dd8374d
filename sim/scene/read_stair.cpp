#include <algorithm>
#include <cmath>
#include <string>

#include "sim/scene/scene_parts.h"

namespace stowpath {
namespace {

SideRails read_side_rails(const Setting& rails) {
  SideRails read;
  const BoardSize board = read_board(rails, "lumber", "the side rails have");
  read.lumber = rails.at("lumber").text();
  read.thickness = board.thickness;
  read.width = board.width;
  read.species = read_species(rails.at("species"));
  read.moisture = rails.at("moisture").number() / 100.0;
  read.front_face = rails.at("front face").number();
  read.level_foot = rails.at("foot").word() == "level";
  return read;
}

Hinge read_hinge(const Setting& hinge) {
  Hinge read;
  read.face = hinge.at("face").word() == "front" ? HingeFace::front : HingeFace::back;
  read.offset = hinge.at("offset").number();
  read.limit = hinge.at("limit").number();
  const std::vector<double> leaf = hinge.at("leaf").numbers();
  const bool inches = hinge.bare() == LengthUnit::inch;
  read.leaf = leaf.size() == 2 ? leaf[0] : inches ? 0.0762 : 0.075;
  read.leaf_thickness = leaf.size() == 2 ? leaf[1] : inches ? 0.003175 : 0.003;
  if (hinge.at("screws").given()) read.screws = read_screws(hinge.at("screws"));
  return read;
}

Lock read_lock(const Setting& lock) {
  Lock read;
  const BoardSize scab = read_board(lock, "scab", "the scab boards have");
  read.lumber = lock.at("scab").text();
  read.thickness = scab.thickness;
  read.width = scab.width;
  read.length = lock.at("length").number();
  read.spacer = lock.at("spacer").number();
  read.pin = lock.at("pin").number();
  const std::vector<double> head = lock.at("pin head").numbers();
  read.head = head.size() == 2 ? head[0] : 1.8 * read.pin;
  read.head_height = head.size() == 2 ? head[1] : 0.6 * read.pin;
  read.slotted = lock.at("hole").is_word("slotted");
  if (lock.at("screws").given()) read.screws = read_screws(lock.at("screws"));
  if (read.head < read.pin)
    lock.at("pin head")
        .items()
        .front()
        .fault("a head of " + length_text(read.head, lock.bare()) + " goes through the hole of its pin of " +
                   length_text(read.pin, lock.bare()),
               "give the head's diameter, larger than the pin's, then how far it stands out");
  return read;
}

std::string joints_text(std::size_t joints) { return joints == 1 ? "1 joint" : std::to_string(joints) + " joints"; }

// A scab reaches half its length along each of the two sections that it joins.
void check_scabs(const Setting& locks, const Stair& read) {
  const std::vector<Setting> items = locks.items();
  for (std::size_t k = 0; k < items.size(); ++k) {
    const double shorter = std::min(read.sections[k], read.sections[k + 1]);
    if (read.locks[k].length / 2 > shorter) {
      items[k].at("length").fault("half of the scab is longer than a section of " + length_text(shorter, locks.bare()),
                                  "give the whole length, half of it on each side of the joint");
    }
  }
}

void check_leaves(const Setting& hinges, const Stair& read) {
  const std::vector<Setting> items = hinges.items();
  for (std::size_t k = 0; k < items.size(); ++k) {
    const double shorter = std::min(read.sections[k], read.sections[k + 1]);
    const std::vector<Setting> leaf = items[k].at("leaf").items();
    if (read.hinges[k].leaf > shorter && !leaf.empty())
      leaf.front().fault("a leaf is longer than a section of " + length_text(shorter, hinges.bare()),
                         "give the length of one leaf, from the joint along its section, then its thickness");
  }
}

void check_joints(const Setting& stair, const Stair& read) {
  const Setting sections = stair.at("sections"), hinges = stair.at("hinges"), locks = stair.at("locks");
  if (read.sections.empty() || read.sections.size() > 3) return;
  const std::size_t joints = read.sections.size() - 1;
  if (read.hinges.size() != joints) {
    const std::string count = read.hinges.size() == 1 ? "1 hinge" : std::to_string(read.hinges.size()) + " hinges";
    hinges.fault(count + " for " + joints_text(joints) + " between sections",
                 "give one hinge for each joint, from the top, or change stair.sections");
  } else {
    check_leaves(hinges, read);
  }
  if (!read.locks.empty() && read.locks.size() != joints) {
    locks.fault("the number of locks is " + std::to_string(read.locks.size()) + " for " + joints_text(joints),
                "write none, or one lock for each hinge");
  } else {
    check_scabs(locks, read);
  }
}

Treads read_treads(const Setting& treads, const Scene& scene) {
  Treads read;
  const BoardSize board = read_board(treads, "lumber", "the treads have");
  read.lumber = treads.at("lumber").text();
  read.thickness = board.thickness;
  read.depth = board.width;
  const Setting rise = treads.at("rise");
  if (!rise.is_word("equal")) read.rise = rise.number_if_given();
  read.first = treads.at("first").number_if_given();
  read.overhang = treads.at("overhang").number();
  if (treads.at("screws").given()) read.screws = read_screws(treads.at("screws"));
  read.cleats = treads.at("held by").is_word("cleats");
  if (read.first && *read.first >= scene.loft.deck - scene.floor.level) {
    treads.at("first").fault("the lowest tread would lie above the deck", "give its height above the floor");
  }
  return read;
}

Casters read_casters(const Setting& casters, const Stair& stair) {
  Casters read;
  read.diameter = casters.at("diameter").number();
  read.width = casters.at("width").number();
  read.along = casters.at("along").number();
  read.across = casters.at("across").number();
  read.stations = casters.at("stations").numbers();
  read.plate = casters.at("plate").number();
  read.block = casters.at("block").number();
  read.mass = casters.at("mass").number();
  read.swivels = casters.at("kind").is_word("swivel");
  read.trail = read.swivels ? casters.at("trail").number_if_given().value_or(0.4 * read.diameter) : 0.0;
  if (casters.at("trail").given() && !read.swivels)
    casters.at("trail").fault("a rigid caster has no trail", "write kind: swivel, or leave it out");
  const double past = stair.sections.empty() ? 0.0 : read.along - stair.sections.back();
  if (past > read.diameter) {
    casters.at("along").fault("the axle lies " + length_text(past, casters.bare()) + " past the foot",
                              "measure along the last section, from its hinge (or the pivot)");
  }
  const std::vector<Setting> items = casters.at("stations").items();
  for (std::size_t i = 0; i < items.size(); ++i) {
    // A caster may stand beside its side rail, but not where nothing could hold it.
    if (std::abs(read.stations[i]) > stair.width / 2 + read.width + 0.2) {
      items[i].fault("this caster stands far beside a stair " + length_text(stair.width, casters.bare()) + " wide",
                     "stations of casters count from the middle of the stair's width");
    }
  }
  return read;
}

Handrails read_handrails(const Setting& handrails) {
  const std::string sides = handrails.at("sides").word();
  return {handrails.at("height").number(), handrails.at("diameter").number(),
          sides == "left"    ? Sides::left
          : sides == "right" ? Sides::right
                             : Sides::both,
          handrails.at("post every").number()};
}

Extra read_extra(const Setting& extra, const Stair& stair) {
  Extra read;
  read.name = extra.at("name").text();
  read.section = extra.at("section").count();
  read.radius = extra.at("radius").number();
  read.outline = read_outline(extra.at("outline"), read.radius);
  read.stations = extra.at("stations").interval();
  read.mass = extra.at("mass").number();
  check_section(extra.at("section"), stair);
  return read;
}

void read_weighed(const Setting& weighed, Stair& read) {
  const std::vector<Setting> items = weighed.items();
  const std::vector<double> masses = weighed.numbers();
  for (std::size_t i = 0; i < masses.size(); ++i) {
    read.weighed.push_back(items[i].text() == "none" ? std::nullopt : std::optional(masses[i]));
  }
  if (!masses.empty() && !read.sections.empty() && masses.size() != read.sections.size()) {
    weighed.fault(std::to_string(masses.size()) + (masses.size() == 1 ? " mass for " : " masses for ") +
                      std::to_string(read.sections.size()) + (read.sections.size() == 1 ? " section" : " sections"),
                  "give one for each section, from the top; none for one that was not weighed");
  }
}

void check_widths(const Setting& stair, const Stair& read) {
  if (read.width <= 2 * read.side_rails.thickness) {
    stair.at("width").fault(
        "the two side rails alone are " + length_text(2 * read.side_rails.thickness, stair.bare()) + " wide",
        "give the width over the side rails");
  }
  const std::vector<double> sections = stair.at("sections").numbers();
  if (!sections.empty() && -read.above_pivot >= sections.front()) {
    stair.at("above pivot")
        .fault("nothing of section 1 would be left", "it may be negative by less than section 1 is long");
  }
}

}  // namespace

void check_section(const Setting& section, const Stair& stair) {
  if (!section.given() || section.count() <= static_cast<int>(stair.sections.size())) return;
  if (stair.sections.empty()) return;
  section.fault("there is no section " + section.text() + ": the stair has " + std::to_string(stair.sections.size()),
                "sections count from the top, from 1");
}

void read_stair(const Setting& stair, Scene& scene) {
  Stair& read = scene.stair;
  read.width = stair.at("width").number();
  read.side_rails = read_side_rails(stair.at("side rails"));
  read.sections = stair.at("sections").numbers();
  read.above_pivot = stair.at("above pivot").number();
  for (const Setting& hinge : stair.at("hinges").items()) read.hinges.push_back(read_hinge(hinge));
  for (const Setting& lock : stair.at("locks").items()) read.locks.push_back(read_lock(lock));
  check_joints(stair, read);
  check_widths(stair, read);
  if (stair.at("treads").is_map()) read.treads = read_treads(stair.at("treads"), scene);
  read_hooks(stair.at("hooks"), scene);
  read.casters = read_casters(stair.at("casters"), read);
  if (stair.at("handrails").is_map()) read.handrails = read_handrails(stair.at("handrails"));
  for (const Setting& extra : stair.at("extras").items()) read.extras.push_back(read_extra(extra, read));
  read_weighed(stair.at("weighed"), read);
}

}  // namespace stowpath
