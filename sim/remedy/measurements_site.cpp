#include <cstddef>
#include <optional>

#include "sim/remedy/measurement_list.h"

namespace stowpath {
namespace {

void add_guard(const Scene& scene, std::vector<Measurement>& list) {
  if (!scene.loft.guard) return;
  const std::string key = "loft.guard";
  add_length(list, key + ".height", "guard's height", [](Scene& s) -> double& { return s.loft.guard->height; });
  add_length(list, key + ".thickness", "guard's thickness",
             [](Scene& s) -> double& { return s.loft.guard->thickness; });
  if (scene.where.contains(key + ".out"))
    add_length(list, key + ".out", "guard's face", [](Scene& s) -> double& { return s.loft.guard->out; });
  for (std::size_t i = 0; i < scene.loft.guard->openings.size(); ++i) {
    const std::string opening = indexed(key + ".openings", i);
    const std::string words = of_several("guard opening", i, scene.loft.guard->openings.size());
    add_length(list, opening + "[0]", words + "'s left end",
               [i](Scene& s) -> double& { return s.loft.guard->openings[i].lo; });
    add_length(list, opening + "[1]", words + "'s right end",
               [i](Scene& s) -> double& { return s.loft.guard->openings[i].hi; });
  }
}

// A guard whose place is not given stands at the loft's edge.
void add_edge(const Scene& scene, std::vector<Measurement>& list) {
  const bool guard_follows = scene.loft.guard && !scene.where.contains("loft.guard.out");
  list.push_back({"loft.edge", "loft's edge", false, [guard_follows](Scene& s, double by) {
                    s.loft.edge += by;
                    if (guard_follows) s.loft.guard->out += by;
                  }});
}

// Couplings and stops whose diameters are not given are so much more than the pipe's.
void add_pipe(const Scene& scene, std::vector<Measurement>& list) {
  const bool stops_follow = !scene.where.contains("rail.stops.diameter");
  const bool joints_follow = !scene.where.contains("rail.joints.diameter");
  std::vector<std::size_t> joints;
  for (std::size_t i = 0; joints_follow && i < scene.rail.joints.size(); ++i) {
    if (!scene.where.contains(indexed("rail.joints", i, ".diameter"))) joints.push_back(i);
  }
  list.push_back({given_key(scene, "rail.pipe.diameter", "rail.pipe"), "pipe's diameter", false,
                  [stops_follow, joints](Scene& s, double by) {
                    s.rail.pipe.diameter += by;
                    if (stops_follow) s.rail.stops.diameter += by;
                    for (const std::size_t i : joints) s.rail.joints[i].diameter += by;
                  }});
}

// Sizes that go for all joints are one measurement; those of a joint's own, or taken for it, are its own.
void add_joint_sizes(const Scene& scene, std::size_t i, std::vector<Measurement>& list) {
  const std::string key = indexed("rail.joints", i), words = of_several("pipe joint", i, scene.rail.joints.size());
  if (!scene.where.contains("rail.joints.diameter"))
    add_length(list, key + ".diameter", words + "'s diameter",
               [i](Scene& s) -> double& { return s.rail.joints[i].diameter; });
  if (!scene.where.contains("rail.joints.length"))
    add_length(list, key + ".length", words + "'s length",
               [i](Scene& s) -> double& { return s.rail.joints[i].length; });
}

void add_size_of_all(std::vector<Measurement>& list, const std::string& key, const std::string& words,
                     double PipeJoint::*size) {
  list.push_back({key, words, false, [size](Scene& s, double by) {
                    for (PipeJoint& joint : s.rail.joints) joint.*size += by;
                  }});
}

void add_joints(const Scene& scene, std::vector<Measurement>& list) {
  const std::string at = given_key(scene, "rail.joints.at", "rail.joints");
  for (std::size_t i = 0; i < scene.rail.joints.size(); ++i) {
    add_length(list, indexed(at, i), of_several("pipe joint", i, scene.rail.joints.size()) + "'s station",
               [i](Scene& s) -> double& { return s.rail.joints[i].station; });
    add_joint_sizes(scene, i, list);
  }
  if (scene.where.contains("rail.joints.diameter"))
    add_size_of_all(list, "rail.joints.diameter", "pipe joints' diameter", &PipeJoint::diameter);
  if (scene.where.contains("rail.joints.length"))
    add_size_of_all(list, "rail.joints.length", "pipe joints' length", &PipeJoint::length);
}

void add_bracket_stations(const Scene& scene, std::vector<Measurement>& list) {
  const std::string key = "rail.brackets";
  if (scene.where.contains(key + ".every")) {
    list.push_back({key + ".first", "first bracket's station", false, [](Scene& s, double by) {
                      for (double& station : s.rail.brackets.stations) station += by;
                    }});
    list.push_back({key + ".every", "brackets' spacing", false, [](Scene& s, double by) {
                      double times = 0.0;
                      for (double& station : s.rail.brackets.stations) station += by * times++;
                    }});
    return;
  }
  for (std::size_t i = 0; i < scene.rail.brackets.stations.size(); ++i)
    add_length(list, indexed(key + ".at", i), "bracket " + std::to_string(i + 1) + "'s station",
               [i](Scene& s) -> double& { return s.rail.brackets.stations[i]; });
}

/// One size of the brackets; those that a bracket does without are 0.
void add_bracket_size(const Scene& scene, std::vector<Measurement>& list, const std::string& key,
                      const std::string& words, double Brackets::*size) {
  if (scene.rail.brackets.*size > 0.0)
    add_length(list, "rail.brackets." + key, words, [size](Scene& s) -> double& { return s.rail.brackets.*size; });
}

void add_heads(std::vector<Measurement>& list, const std::string& key, const std::string& words,
               const ScrewHeads& heads, std::optional<ScrewHeads> Brackets::*which) {
  const auto size = [&](const std::string& of, const std::string& name, double ScrewHeads::*number) {
    add_length(list, key + of, words + name,
               [which, number](Scene& s) -> double& { return (*(s.rail.brackets.*which)).*number; });
  };
  size(".diameter", "' diameter", &ScrewHeads::diameter);
  size(".height", "' height", &ScrewHeads::height);
  if (heads.apart > 0.0) size(".apart", "' spacing", &ScrewHeads::apart);
  for (std::size_t i = 0; i < heads.at.size(); ++i)
    add_length(list, indexed(key + ".at", i), words + "' row " + std::to_string(i + 1),
               [which, i](Scene& s) -> double& { return (*(s.rail.brackets.*which)).at[i]; });
}

void add_post(const Scene& scene, std::vector<Measurement>& list) {
  const auto& post = scene.rail.brackets.post;
  if (!post) return;
  const auto size = [&](const std::string& key, const std::string& words, double BracketPost::*number) {
    add_length(list, "rail.brackets.post." + key, "bracket post's " + words,
               [number](Scene& s) -> double& { return (*s.rail.brackets.post).*number; });
  };
  size("size[0]", "depth", &BracketPost::depth);
  size("size[1]", "width", &BracketPost::width);
  if (post->beside) size("above", "top above the arm", &BracketPost::above);
  if (scene.where.contains("rail.brackets.post.foot")) size("foot", "foot", &BracketPost::foot);
}

void add_bracket_sizes(const Scene& scene, std::vector<Measurement>& list) {
  const auto size = [&](const char* key, const char* words, double Brackets::*number) {
    add_bracket_size(scene, list, key, words, number);
  };
  size("projection", "brackets' projection", &Brackets::projection);
  size("drop", "brackets' drop", &Brackets::drop);
  size("arm", "bracket arm's diameter", &Brackets::arm);
  size("bend", "bracket arm's bend", &Brackets::bend);
  size("saddle[0]", "saddle's length", &Brackets::saddle_length);
  size("saddle[1]", "saddle's thickness", &Brackets::saddle_thickness);
  size("flat", "pipe's flat at the saddle", &Brackets::flat);
  size("plate[0]", "bracket plate's width", &Brackets::plate_width);
  size("plate[1]", "bracket plate's height", &Brackets::plate_height);
  size("plate[2]", "bracket plate's thickness", &Brackets::plate_thickness);
  size("strap[0]", "strap's width", &Brackets::strap_width);
  size("strap[1]", "strap's thickness", &Brackets::strap_thickness);
  if (scene.rail.brackets.shape == BracketShape::strap)
    add_angle(list, "rail.brackets.arc", "strap's arc", [](Scene& s) -> double& { return s.rail.brackets.strap_arc; });
  const Brackets& brackets = scene.rail.brackets;
  if (brackets.saddle_heads)
    add_heads(list, "rail.brackets.saddle heads", "saddle screw heads", *brackets.saddle_heads,
              &Brackets::saddle_heads);
  if (brackets.plate_heads)
    add_heads(list, "rail.brackets.plate heads", "plate screw heads", *brackets.plate_heads, &Brackets::plate_heads);
  add_post(scene, list);
}

void add_pieces(const Scene& scene, std::vector<Measurement>& list) {
  for (std::size_t i = 0; i < scene.rail.brackets.pieces.size(); ++i) {
    const std::string key = indexed("rail.brackets.parts", i);
    const std::string words = "bracket " + scene.rail.brackets.pieces[i].name;
    for (std::size_t k = 0; k < scene.rail.brackets.pieces[i].corners.size(); ++k) {
      const std::string corner = words + "'s corner " + std::to_string(k + 1);
      add_length(list, indexed(key + ".outline", k, "[0]"), corner + ", out",
                 [i, k](Scene& s) -> double& { return s.rail.brackets.pieces[i].corners[k].x; });
      add_length(list, indexed(key + ".outline", k, "[1]"), corner + ", up",
                 [i, k](Scene& s) -> double& { return s.rail.brackets.pieces[i].corners[k].y; });
    }
    if (scene.rail.brackets.pieces[i].radius > 0.0)
      add_length(list, key + ".radius", words + "'s radius",
                 [i](Scene& s) -> double& { return s.rail.brackets.pieces[i].radius; });
    add_length(list, key + ".width", words + "'s width",
               [i](Scene& s) -> double& { return s.rail.brackets.pieces[i].width; });
  }
}

}  // namespace

void add_site(const Scene& scene, std::vector<Measurement>& list) {
  add_length(list, "room.length", "room's length", [](Scene& s) -> double& { return s.room.length; });
  add_length(list, "room.depth", "room's depth", [](Scene& s) -> double& { return s.room.depth; });
  add_length(list, "room.ceiling", "ceiling's height", [](Scene& s) -> double& { return s.room.ceiling; });
  const bool posts_follow = !scene.where.contains("rail.brackets.post.foot");
  list.push_back({"floor.level", "floor's level", false, [posts_follow](Scene& s, double by) {
                    s.floor.level += by;
                    if (posts_follow && s.rail.brackets.post) s.rail.brackets.post->foot += by;
                  }});
  add_length(list, "floor.uneven", "floor's unevenness", [](Scene& s) -> double& { return s.floor.uneven; });
  add_edge(scene, list);
  add_length(list, "loft.deck", "deck's height", [](Scene& s) -> double& { return s.loft.deck; });
  add_length(list, "loft.thickness", "loft's thickness", [](Scene& s) -> double& { return s.loft.thickness; });
  add_length(list, "loft.stations[0]", "loft's left end", [](Scene& s) -> double& { return s.loft.stations.lo; });
  add_length(list, "loft.stations[1]", "loft's right end", [](Scene& s) -> double& { return s.loft.stations.hi; });
  add_guard(scene, list);
}

void add_rail(const Scene& scene, std::vector<Measurement>& list) {
  add_pipe(scene, list);
  add_length(list, "rail.at.out", "pipe's distance from the back wall",
             [](Scene& s) -> double& { return s.rail.at.x; });
  add_length(list, "rail.at.up", "pipe's height", [](Scene& s) -> double& { return s.rail.at.y; });
  add_length(list, "rail.stations[0]", "pipe's left end", [](Scene& s) -> double& { return s.rail.stations.lo; });
  add_length(list, "rail.stations[1]", "pipe's right end", [](Scene& s) -> double& { return s.rail.stations.hi; });
  add_length(list, "rail.stops.diameter", "rail stops' diameter",
             [](Scene& s) -> double& { return s.rail.stops.diameter; });
  add_length(list, "rail.stops.width", "rail stops' width", [](Scene& s) -> double& { return s.rail.stops.width; });
  add_joints(scene, list);
  add_bracket_stations(scene, list);
  add_bracket_sizes(scene, list);
  add_pieces(scene, list);
}

}  // namespace stowpath
