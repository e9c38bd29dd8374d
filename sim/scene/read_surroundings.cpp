#include <map>
#include <string>

#include "sim/scene/scene_parts.h"

namespace stowpath {
namespace {

Interval centred(double middle, double width) { return {middle - width / 2, middle + width / 2}; }

Interval post_height(const Setting& obstacle, const Scene& scene) {
  const Setting up = obstacle.at("up");
  return up.given() ? up.interval() : Interval{scene.floor.level, scene.room.ceiling};
}

void read_post(const Setting& obstacle, const Scene& scene, Obstacle& read) {
  const Setting post = obstacle.at("post");
  const bool round = post.at("diameter").given(), square = post.at("size").given();
  if (post.is_map() && round == square) {
    post.fault(round ? "a post has a diameter or a size, not both" : "this post has no diameter and no size",
               "give diameter for a round post, size: [out, along] for a square one");
  }
  std::vector<double> size = post.at("size").numbers();
  if (round) {
    read.round_post = post.at("diameter").number();
    size = {*read.round_post, *read.round_post};
  }
  if (size.size() != 2) return;
  const Interval out = centred(post.at("out").number(), size[0]), up = post_height(obstacle, scene);
  read.outline = {{out.lo, up.lo}, {out.hi, up.lo}, {out.hi, up.hi}, {out.lo, up.hi}};
  read.stations = centred(post.at("station").number(), size[1]);
  if (up.lo >= up.hi) obstacle.at("up").fault("the post ends below its start", "give where it starts and ends");
}

void check_shape_keys(const Setting& obstacle) {
  int shapes = 0;
  for (const char* shape : {"box", "outline", "post"}) shapes += obstacle.at(shape).given() ? 1 : 0;
  if (shapes != 1) {
    obstacle.fault(shapes == 0 ? "this obstacle has no shape" : "this obstacle has more than one shape",
                   "give one of box, outline and post");
  }
  const bool post = obstacle.at("post").given();
  const auto misplaced = [&](const char* key, const std::string& where) {
    if (obstacle.at(key).given()) obstacle.at(key).fault("this does not go with the shape given", where);
  };
  if (shapes == 1 && post) misplaced("stations", "a post has its own station");
  if (shapes == 1 && !post) misplaced("up", "only a post takes it; a box has its own up");
  if (shapes == 1 && !obstacle.at("outline").given()) misplaced("radius", "only an outline takes it");
  if (shapes == 1 && !post && !obstacle.at("stations").given()) {
    obstacle.at("stations").missing("add stations: [300, 2300], where it runs along the rail");
  }
}

Obstacle read_obstacle(const Setting& obstacle, const Scene& scene) {
  Obstacle read;
  if (!obstacle.is_map()) return read;
  read.name = obstacle.at("name").text();
  check_shape_keys(obstacle);
  read.stations = obstacle.at("stations").interval();
  read.radius = obstacle.at("radius").number();
  if (obstacle.at("post").given()) {
    read_post(obstacle, scene, read);
  } else if (obstacle.at("box").given()) {
    read.outline = read_box(obstacle.at("box"));
  } else {
    read.outline = read_outline(obstacle.at("outline"), read.radius);
  }
  return read;
}

ZoneState zone_state(const std::string& word) {
  if (word == "standing") return ZoneState::standing;
  if (word == "moving") return ZoneState::moving;
  return word == "parked" ? ZoneState::parked : ZoneState::always;
}

Zone read_zone(const Setting& zone) {
  Zone read;
  if (!zone.is_map()) return read;
  read.name = zone.at("name").text();
  const Setting when = zone.at("when");
  for (const Setting& item : when.items()) read.when.push_back(zone_state(item.text()));
  if (!when.is_list()) read.when.push_back(zone_state(when.word()));
  const bool box = zone.at("box").given(), outline = zone.at("outline").given();
  if (box == outline) {
    zone.fault(box ? "this zone has both a box and an outline" : "this zone has no box and no outline",
               "give one of them");
  }
  read.outline = box ? read_box(zone.at("box")) : read_outline(zone.at("outline"), 0.0);
  read.stations = zone.at("stations").interval();
  return read;
}

// Reports name things, so two of a name could not be told apart.
void refuse_same_names(const std::vector<Setting>& things) {
  std::map<std::string, int> first;
  for (std::size_t i = 0; i < things.size(); ++i) {
    const Setting name = things[i].at("name");
    if (!name.given()) continue;
    const auto [known, fresh] = first.emplace(name.text(), name.place().line);
    if (!fresh) {
      name.fault("this name is taken",
                 "it is first given on line " + std::to_string(known->second) + "; reports go by the names");
    }
  }
}

}  // namespace

void read_surroundings(const Setting& file, Scene& scene) {
  const std::vector<Setting> obstacles = file.at("obstacles").items(), zones = file.at("keep clear").items();
  for (const Setting& obstacle : obstacles) scene.obstacles.push_back(read_obstacle(obstacle, scene));
  for (const Setting& zone : zones) scene.zones.push_back(read_zone(zone));
  refuse_same_names(obstacles);
  refuse_same_names(zones);
}

}  // namespace stowpath
