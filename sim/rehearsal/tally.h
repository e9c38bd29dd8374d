#pragma once

#include <deque>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "sim/rehearsal/crew.h"
#include "sim/rehearsal/rehearsal.h"
#include "sim/rehearsal/side_world.h"

namespace stowpath {

/// The stair, its lines and its hooks now, as a recording keeps them.
RecordedFrame frame_now(const SideWorld& world, const Crew& crew);

/// Watches a rehearsal step by step and keeps what is worth telling.
class Tally {
 public:
  /// @param hook_inside  radius of the hooks' bend [m]
  Tally(const Model& model, double hook_inside, double frame)
      : model_(model), hook_inside_(hook_inside), frame_(frame) {}

  /// Before the first.
  void begin(const SideWorld& world) { pinned_ = world.pinned(); }
  /// After each step of the world.
  /// @param after  what followed a line let go, or the like
  void watch(const SideWorld& world, const Crew& crew, bool after);
  /// When all is over.
  void close(double time);
  /// Something happened; events stand in order of time, later notes behind earlier ones of the same time.
  void note(double time, RecordedEventKind kind, std::string what = "", std::string other = "", double value = 0.0,
            double energy = 0.0);

  RehearsalReport report;

 private:
  void watch_script(const SideWorld& world, const Crew& crew);
  void watch_roll(const Crew& crew);
  void watch_move(const SideWorld& world, const Crew& crew);
  void watch_pins(const SideWorld& world);
  void watch_line(const SideWorld& world, const Crew& crew, bool after);
  void begin_loose(const SideWorld& world, int hinge);
  void watch_loose(const SideWorld& world, const Crew& crew);
  void watch_touches(const SideWorld& world, const Crew& crew, bool after);
  void watch_zones(const SideWorld& world, const Crew& crew, bool after);
  void watch_slack(const SideWorld& world, const Crew& crew);
  void watch_hooks(const SideWorld& world, const Crew& crew);
  void end_slack();
  void keep_open_slack(double time);
  void end_lift();
  void end_move();
  Interval last_leans(std::size_t section, double from) const;

  const Model& model_;
  double hook_inside_, frame_, next_frame_ = 0.0;
  int move_ = -2;
  std::vector<bool> pinned_;
  bool on_ = false;
  bool slack_ = false, strayed_ = false;
  bool slack_told_ = false, jerk_open_ = false, lift_open_ = false;
  double slack_since_ = 0.0;
  std::map<std::pair<std::string, std::string>, double> touched_;  // when last
  std::set<std::pair<std::string, std::string>> zones_;
  std::array<double, kMaxSections> leans_{};
  struct Loose {
    std::size_t run = 0;              // which of report.loose
    double lean = 0.0, height = 0.0;  // of the section below, and of the hinge, when its pin was pulled [rad, m]
  };
  std::vector<Loose> loose_;  // those still watched
};

}  // namespace stowpath
