#include <cstddef>

#include "sim/remedy/measurement_list.h"

namespace stowpath {
namespace {

void add_side_rails(const Scene& scene, std::vector<Measurement>& list) {
  const std::string key = "stair.side rails";
  const bool lumber = scene.where.contains(key + ".lumber");
  add_length(list, key + (lumber ? ".lumber" : ".size[0]"), "side rails' thickness",
             [](Scene& s) -> double& { return s.stair.side_rails.thickness; });
  add_length(list, key + (lumber ? ".lumber" : ".size[1]"), "side rails' width",
             [](Scene& s) -> double& { return s.stair.side_rails.width; });
  add_length(list, key + ".front face", "side rails' front face",
             [](Scene& s) -> double& { return s.stair.side_rails.front_face; });
}

void add_sections(const Scene& scene, std::vector<Measurement>& list) {
  const std::size_t sections = scene.stair.sections.size(), hinges = scene.stair.hinges.size();
  for (std::size_t i = 0; i < sections; ++i)
    add_length(list, indexed("stair.sections", i), of_several("section", i, sections) + "'s length",
               [i](Scene& s) -> double& { return s.stair.sections[i]; });
  add_length(list, "stair.above pivot", "side rails' length above the pivot",
             [](Scene& s) -> double& { return s.stair.above_pivot; });
  for (std::size_t i = 0; i < hinges; ++i) {
    const std::string hinge = of_several("hinge", i, hinges);
    add_length(list, indexed("stair.hinges", i, ".offset"), hinge + "'s offset",
               [i](Scene& s) -> double& { return s.stair.hinges[i].offset; });
    add_length(list, indexed("stair.hinges", i, ".leaf[0]"), hinge + "'s leaves, along",
               [i](Scene& s) -> double& { return s.stair.hinges[i].leaf; });
    add_length(list, indexed("stair.hinges", i, ".leaf[1]"), hinge + "'s leaves' thickness",
               [i](Scene& s) -> double& { return s.stair.hinges[i].leaf_thickness; });
  }
}

/// A head that is not told goes with its pin.
void add_pin(const Scene& scene, std::size_t i, std::vector<Measurement>& list) {
  const std::string key = indexed("stair.locks", i), pin = of_several("lock pin", i, scene.stair.locks.size());
  const bool told = scene.where.contains(key + ".pin head");
  list.push_back({key + ".pin", pin + "'s diameter", false, [i, told](Scene& s, double by) {
                    Lock& lock = s.stair.locks[i];
                    const double head = lock.head / lock.pin, height = lock.head_height / lock.pin;
                    lock.pin += by;
                    if (!told) lock.head += head * by, lock.head_height += height * by;
                  }});
  add_length(list, key + ".pin head[0]", pin + "'s head, across",
             [i](Scene& s) -> double& { return s.stair.locks[i].head; });
  add_length(list, key + ".pin head[1]", pin + "'s head, along the rail",
             [i](Scene& s) -> double& { return s.stair.locks[i].head_height; });
}

void add_locks(const Scene& scene, std::vector<Measurement>& list) {
  for (std::size_t i = 0; i < scene.stair.locks.size(); ++i) {
    const std::string key = indexed("stair.locks", i), words = of_several("scab", i, scene.stair.locks.size());
    const bool lumber = scene.where.contains(key + ".scab");
    add_length(list, key + (lumber ? ".scab" : ".size[0]"), words + "'s thickness",
               [i](Scene& s) -> double& { return s.stair.locks[i].thickness; });
    add_length(list, key + (lumber ? ".scab" : ".size[1]"), words + "'s width",
               [i](Scene& s) -> double& { return s.stair.locks[i].width; });
    add_length(list, key + ".length", words + "'s length",
               [i](Scene& s) -> double& { return s.stair.locks[i].length; });
    if (scene.stair.locks[i].spacer > 0.0)
      add_length(list, key + ".spacer", words + "'s spacer",
                 [i](Scene& s) -> double& { return s.stair.locks[i].spacer; });
    add_pin(scene, i, list);
  }
}

void add_treads(const Scene& scene, std::vector<Measurement>& list) {
  if (!scene.stair.treads) return;
  const std::string key = "stair.treads";
  const bool lumber = scene.where.contains(key + ".lumber");
  add_length(list, key + (lumber ? ".lumber" : ".size[0]"), "treads' thickness",
             [](Scene& s) -> double& { return s.stair.treads->thickness; });
  add_length(list, key + (lumber ? ".lumber" : ".size[1]"), "treads' depth",
             [](Scene& s) -> double& { return s.stair.treads->depth; });
  add_length(list, key + ".overhang", "treads' overhang", [](Scene& s) -> double& { return s.stair.treads->overhang; });
  if (scene.stair.treads->rise)
    add_length(list, key + ".rise", "treads' rise", [](Scene& s) -> double& { return *s.stair.treads->rise; });
  if (scene.stair.treads->first)
    add_length(list, key + ".first", "lowest tread's height",
               [](Scene& s) -> double& { return *s.stair.treads->first; });
}

void add_hook_piece(const Scene& scene, std::size_t i, std::vector<Measurement>& list) {
  const std::string key = indexed("stair.hooks.parts", i);
  const HookPiece& piece = scene.stair.hooks.pieces[i];
  for (std::size_t k = 0; k < piece.corners.size(); ++k) {
    const std::string corner = "hook " + piece.name + "'s corner " + std::to_string(k + 1);
    add_length(list, indexed(key + ".outline", k, "[0]"), corner + ", along",
               [i, k](Scene& s) -> double& { return s.stair.hooks.pieces[i].corners[k].x; });
    add_length(list, indexed(key + ".outline", k, "[1]"), corner + ", across",
               [i, k](Scene& s) -> double& { return s.stair.hooks.pieces[i].corners[k].y; });
  }
  if (piece.radius > 0.0)
    add_length(list, key + ".radius", "hook " + piece.name + "'s radius",
               [i](Scene& s) -> double& { return s.stair.hooks.pieces[i].radius; });
}

void add_roller(std::vector<Measurement>& list) {
  const std::string key = "stair.hooks.roller";
  add_length(list, key + ".diameter", "hook roller's diameter",
             [](Scene& s) -> double& { return s.stair.hooks.roller->diameter; });
  add_length(list, key + ".width", "hook roller's width",
             [](Scene& s) -> double& { return s.stair.hooks.roller->width; });
  add_angle(list, key + ".at", "hook roller's place", [](Scene& s) -> double& { return s.stair.hooks.roller->at; });
}

void add_hooks(const Scene& scene, std::vector<Measurement>& list) {
  const std::string key = "stair.hooks";
  for (std::size_t i = 0; i < scene.stair.hooks.stations.size(); ++i)
    add_length(list, indexed(key + ".stations", i),
               of_several("hook", i, scene.stair.hooks.stations.size()) + "'s station",
               [i](Scene& s) -> double& { return s.stair.hooks.stations[i]; });
  const auto size = [&](const char* of, const char* words, double Hooks::*number) {
    if (scene.stair.hooks.*number > 0.0)
      add_length(list, key + of, words, [number](Scene& s) -> double& { return s.stair.hooks.*number; });
  };
  size(".rod", "hook rod's diameter", &Hooks::rod);
  size(".inside", "hooks' inside radius", &Hooks::inside);
  size(".shank", "hook shank's length", &Hooks::shank);
  size(".shank offset", "hook shank's offset", &Hooks::shank_offset);
  add_angle(list, key + ".wrap", "hooks' wrap", [](Scene& s) -> double& { return s.stair.hooks.wrap; });
  size(".tip", "hook tip's length", &Hooks::tip);
  size(".rim", "hook plate's rim", &Hooks::rim);
  size(".thickness", "hook plate's thickness", &Hooks::thickness);
  for (std::size_t i = 0; i < scene.stair.hooks.pieces.size(); ++i) add_hook_piece(scene, i, list);
  if (scene.stair.hooks.roller) add_roller(list);
}

void add_casters(const Scene& scene, std::vector<Measurement>& list) {
  const std::string key = "stair.casters";
  const bool told = scene.where.contains(key + ".trail");
  list.push_back({key + ".diameter", "casters' diameter", false, [told](Scene& s, double by) {
                    Casters& casters = s.stair.casters;
                    const double trail = casters.trail / casters.diameter;
                    casters.diameter += by;
                    if (!told) casters.trail += trail * by;
                  }});
  if (scene.stair.casters.swivels)
    add_length(list, key + ".trail", "casters' trail", [](Scene& s) -> double& { return s.stair.casters.trail; });
  add_length(list, key + ".width", "casters' width", [](Scene& s) -> double& { return s.stair.casters.width; });
  add_length(list, key + ".along", "casters' axle, along", [](Scene& s) -> double& { return s.stair.casters.along; });
  add_length(list, key + ".across", "casters' axle, across",
             [](Scene& s) -> double& { return s.stair.casters.across; });
  for (std::size_t i = 0; i < scene.stair.casters.stations.size(); ++i)
    add_length(list, indexed(key + ".stations", i),
               of_several("caster", i, scene.stair.casters.stations.size()) + "'s station",
               [i](Scene& s) -> double& { return s.stair.casters.stations[i]; });
  if (scene.stair.casters.plate > 0.0)
    add_length(list, key + ".plate", "caster plate's thickness",
               [](Scene& s) -> double& { return s.stair.casters.plate; });
  if (scene.stair.casters.block > 0.0)
    add_length(list, key + ".block", "caster block's thickness",
               [](Scene& s) -> double& { return s.stair.casters.block; });
}

void add_handrails(const Scene& scene, std::vector<Measurement>& list) {
  if (!scene.stair.handrails) return;
  const std::string key = "stair.handrails";
  add_length(list, key + ".height", "handrails' height", [](Scene& s) -> double& { return s.stair.handrails->height; });
  add_length(list, key + ".diameter", "handrails' diameter",
             [](Scene& s) -> double& { return s.stair.handrails->diameter; });
  add_length(list, key + ".post every", "handrail posts' spacing",
             [](Scene& s) -> double& { return s.stair.handrails->post_every; });
}

void add_extra(const Extra& extra, std::size_t i, std::vector<Measurement>& list) {
  const std::string key = indexed("stair.extras", i);
  for (std::size_t k = 0; k < extra.outline.size(); ++k) {
    const std::string corner = extra.name + "'s corner " + std::to_string(k + 1);
    add_length(list, indexed(key + ".outline", k, "[0]"), corner + ", along",
               [i, k](Scene& s) -> double& { return s.stair.extras[i].outline[k].x; });
    add_length(list, indexed(key + ".outline", k, "[1]"), corner + ", across",
               [i, k](Scene& s) -> double& { return s.stair.extras[i].outline[k].y; });
  }
  if (extra.radius > 0.0)
    add_length(list, key + ".radius", extra.name + "'s radius",
               [i](Scene& s) -> double& { return s.stair.extras[i].radius; });
  add_length(list, key + ".stations[0]", extra.name + "'s left end",
             [i](Scene& s) -> double& { return s.stair.extras[i].stations.lo; });
  add_length(list, key + ".stations[1]", extra.name + "'s right end",
             [i](Scene& s) -> double& { return s.stair.extras[i].stations.hi; });
}

}  // namespace

void add_stair(const Scene& scene, std::vector<Measurement>& list) {
  add_length(list, "stair.width", "stair's width", [](Scene& s) -> double& { return s.stair.width; });
  add_side_rails(scene, list);
  add_sections(scene, list);
  add_locks(scene, list);
  add_treads(scene, list);
}

void add_fittings(const Scene& scene, std::vector<Measurement>& list) {
  add_hooks(scene, list);
  add_casters(scene, list);
  add_handrails(scene, list);
  for (std::size_t i = 0; i < scene.stair.extras.size(); ++i) add_extra(scene.stair.extras[i], i, list);
}

}  // namespace stowpath
