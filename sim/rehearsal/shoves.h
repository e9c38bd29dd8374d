#pragma once

#include <array>
#include <optional>
#include <vector>

#include "sim/rehearsal/rehearsal.h"
#include "sim/rehearsal/side_world.h"

namespace stowpath {

/// Hands and air at work on the stair, each for as long as it was asked, and what they do to it.
class Shoves {
 public:
  explicit Shoves(const Model& model) : model_(model) {}

  /// From now on someone leans on the stair.
  void push(const SideWorld& world, const Push& push);
  /// From now on the air blows.
  void gust(const SideWorld& world, const Gust& gust);

  /// Loads the world with those that last, for its next step.
  void load(SideWorld& world);
  /// After the step: how far the sections turn.
  void watch(const SideWorld& world);

  double work() const { return work_; }                         ///< done by all of them so far [J]
  std::optional<double> last_begun() const { return begun_; }   ///< when the last of them began [s]
  std::optional<double> swing() const { return swing_; }        ///< farthest turn in the six seconds after one [rad]
  std::optional<double> found_at() const { return found_at_; }  ///< height at which the last push found the stair [m]

 private:
  struct Hand {
    Push push;
    double from = 0.0;  // [s]
  };
  struct Air {
    Gust gust;
    double from = 0.0;  // [s]
  };
  void begin(const SideWorld& world);
  void load_one(SideWorld& world, int section, Vec2 at, Vec2 force);

  const Model& model_;
  std::vector<Hand> hands_;
  std::vector<Air> airs_;
  std::array<double, kMaxSections> leans_{};  // when the last of them began
  double work_ = 0.0;
  std::optional<double> begun_, swing_, found_at_;
};

}  // namespace stowpath
