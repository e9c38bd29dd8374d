#include "sim/remedy/measurement.h"

#include <algorithm>

#include "sim/remedy/measurement_list.h"

namespace stowpath {
namespace {

/// Moves the side of a box that lies at its least (or greatest) x or y.
void shift_side(Obstacle& box, double Vec2::*axis, bool greatest, double by) {
  double end = box.outline.front().*axis;
  for (const Vec2 v : box.outline) end = greatest ? std::max(end, v.*axis) : std::min(end, v.*axis);
  for (Vec2& v : box.outline) {
    if (v.*axis == end) v.*axis += by;
  }
}

void add_sides(const std::string& key, const std::string& name, std::vector<ThingMeasurement>& list) {
  const auto side = [&](const char* end, const char* words, double Vec2::*axis, bool greatest) {
    list.push_back(
        {key + end, name + words, [axis, greatest](Obstacle& box, double by) { shift_side(box, axis, greatest, by); }});
  };
  side(".box.out[0]", "'s back face", &Vec2::x, false);
  side(".box.out[1]", "'s front face", &Vec2::x, true);
  side(".box.up[0]", "'s bottom", &Vec2::y, false);
  side(".box.up[1]", "'s top", &Vec2::y, true);
}

void add_corners(const std::string& key, const Obstacle& thing, std::vector<ThingMeasurement>& list) {
  for (std::size_t i = 0; i < thing.outline.size(); ++i) {
    const std::string corner = indexed(key + ".outline", i);
    const std::string words = thing.name + "'s corner " + std::to_string(i + 1);
    list.push_back({corner + "[0]", words + ", out", [i](Obstacle& o, double by) { o.outline[i].x += by; }});
    list.push_back({corner + "[1]", words + ", up", [i](Obstacle& o, double by) { o.outline[i].y += by; }});
  }
}

void shift_all(Obstacle& thing, double Vec2::*axis, double by) {
  for (Vec2& v : thing.outline) v.*axis += by;
}

/// Grows a post about its centre line, out and along the rail.
void grow(Obstacle& post, double out, double along) {
  shift_side(post, &Vec2::x, false, -0.5 * out);
  shift_side(post, &Vec2::x, true, 0.5 * out);
  post.stations = {post.stations.lo - 0.5 * along, post.stations.hi + 0.5 * along};
}

void add_post(const std::string& key, const Obstacle& thing, std::vector<ThingMeasurement>& list) {
  const std::string& name = thing.name;
  list.push_back({key + ".post.out", name + "'s distance from the back wall",
                  [](Obstacle& post, double by) { shift_all(post, &Vec2::x, by); }});
  list.push_back({key + ".post.station", name + "'s station",
                  [](Obstacle& post, double by) { post.stations = post.stations + by; }});
  if (thing.round_post) {
    list.push_back({key + ".post.diameter", name + "'s diameter", [](Obstacle& post, double by) {
                      *post.round_post += by;
                      grow(post, by, by);
                    }});
  } else {
    list.push_back(
        {key + ".post.size[0]", name + "'s depth, out", [](Obstacle& post, double by) { grow(post, by, 0.0); }});
    list.push_back({key + ".post.size[1]", name + "'s width", [](Obstacle& post, double by) { grow(post, 0.0, by); }});
  }
  list.push_back(
      {key + ".up[0]", name + "'s bottom", [](Obstacle& post, double by) { shift_side(post, &Vec2::y, false, by); }});
  list.push_back(
      {key + ".up[1]", name + "'s top", [](Obstacle& post, double by) { shift_side(post, &Vec2::y, true, by); }});
}

std::vector<ThingMeasurement> of_thing(const Scene& scene, const std::string& key, const Obstacle& thing) {
  std::vector<ThingMeasurement> list;
  if (thing.round_post || scene.where.contains(key + ".post")) {
    add_post(key, thing, list);
    return list;
  }
  scene.where.contains(key + ".outline") ? add_corners(key, thing, list) : add_sides(key, thing.name, list);
  if (thing.radius > 0.0)
    list.push_back({key + ".radius", thing.name + "'s radius", [](Obstacle& o, double by) { o.radius += by; }});
  list.push_back(
      {key + ".stations[0]", thing.name + "'s left end", [](Obstacle& o, double by) { o.stations.lo += by; }});
  list.push_back(
      {key + ".stations[1]", thing.name + "'s right end", [](Obstacle& o, double by) { o.stations.hi += by; }});
  return list;
}

}  // namespace

std::string indexed(const std::string& list, std::size_t index, const std::string& key) {
  return list + "[" + std::to_string(index) + "]" + key;
}

std::string of_several(const std::string& name, std::size_t index, std::size_t count) {
  return count > 1 ? name + " " + std::to_string(index + 1) : name;
}

std::string given_key(const Scene& scene, const std::string& key, const std::string& otherwise) {
  return scene.where.contains(key) ? key : otherwise;
}

std::vector<Measurement> measurements(const Scene& scene) {
  std::vector<Measurement> list;
  add_site(scene, list);
  add_rail(scene, list);
  add_stair(scene, list);
  add_fittings(scene, list);
  add_hoist(scene, list);
  add_procedure(scene, list);
  return list;
}

Obstacle as_obstacle(const Zone& zone) { return {zone.name, zone.outline, 0.0, zone.stations, {}}; }

std::vector<ThingMeasurement> obstacle_measurements(const Scene& scene, int number) {
  const auto i = static_cast<std::size_t>(number);
  return of_thing(scene, indexed("obstacles", i), scene.obstacles.at(i));
}

std::vector<ThingMeasurement> zone_measurements(const Scene& scene, int number) {
  const auto i = static_cast<std::size_t>(number);
  return of_thing(scene, indexed("keep clear", i), as_obstacle(scene.zones.at(i)));
}

}  // namespace stowpath
