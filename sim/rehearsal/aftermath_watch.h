#pragma once

#include <vector>

#include "sim/rehearsal/crew.h"
#include "sim/rehearsal/rehearsal.h"
#include "sim/rehearsal/side_world.h"

namespace stowpath {

/// How far out the outline reaches where it is lower than a height, itself seen from the room; empty where it is
/// nowhere so low. What lies within the outline's rounding of that height counts as lower. [m]
Interval out_below(const RoundedPolygon& outline, double height);

/// Watches what follows when the line is let go or breaks, or the stair stands without a pin: how fast, what it
/// strikes, over whom it sweeps, and what it lies against when it is at rest.
class AftermathWatch {
 public:
  /// @param look  between looks at what passes lower than `head_height` above the floor [s, m]
  AftermathWatch(const Scene& scene, const Model& model, double look, double head_height)
      : scene_(scene), model_(model), look_(look), head_height_(head_height) {}

  /// From now on.
  void begin(const SideWorld& world);
  /// The stair has been set moving once more: it is waited for anew.
  void go_on(const SideWorld& world);
  /// After each step of the world.
  void watch(const SideWorld& world, Aftermath& after);
  /// At rest for half a second, or twelve seconds after it began or went on.
  bool over(const SideWorld& world) const;
  /// Closes the account. @param spells  of the hooks so far
  void end(const SideWorld& world, const Crew& crew, const std::vector<HookSpell>& spells, Aftermath& after) const;

 private:
  void watch_ends(const SideWorld& world, Aftermath& after) const;
  void watch_strokes(const SideWorld& world, Aftermath& after) const;
  void watch_below(const SideWorld& world, Aftermath& after) const;
  double kinetic(const SideWorld& world) const;
  bool still(const SideWorld& world) const;
  std::string lies_against(const SideWorld& world) const;

  const Scene& scene_;
  const Model& model_;
  double look_ = 0.0, head_height_ = 0.0;
  std::array<double, kMaxSections> leans_{};  // when it began
  double begun_ = 0.0, still_since_ = 0.0, next_look_ = 0.0;
};

}  // namespace stowpath
