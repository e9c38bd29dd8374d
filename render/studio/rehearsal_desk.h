#pragma once

#include <array>
#include <future>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "render/studio/live_run.h"
#include "render/studio/out_files.h"
#include "render/studio/scene_on_table.h"

namespace stowpath {

/// Times real time.
inline constexpr std::array<double, 5> kRehearsalSpeeds{0.25, 0.5, 1.0, 2.0, 4.0};

/// What a rehearsal page and its keys do, without a window: a live run started, paused, wound back, meddled with and
/// written out. Whatever cannot be done is said in `message`.
///
/// Two times: the run has gone up to `live_time`; the picture shows `shown_time`, which is the same unless one has
/// wound back.
class RehearsalDesk {
 public:
  RehearsalDesk() = default;
  ~RehearsalDesk();  ///< waits for a file that is being written
  RehearsalDesk(const RehearsalDesk&) = delete;
  RehearsalDesk& operator=(const RehearsalDesk&) = delete;

  // What is tried, in the trade's notation, as it stands in the page's fields.
  std::string push_words = "120N at 1.1m outward";
  std::string gust_words = "10 m/s";
  double speed = 1.0;   ///< times real time, one of kRehearsalSpeeds
  int without_pin = 0;  ///< hinge whose pin is left out from the start, from 1; 0: none

  std::string file = "rehearsal.html";  ///< what is written

  /// Puts the stair at the procedure's start; what ran before is forgotten. Where the scene cannot be rehearsed nothing
  /// is begun.
  void start_over(const SceneOnTable& table);
  /// Forgets it all.
  void clear();
  bool begun() const { return run_ != nullptr; }
  const LiveRun& run() const { return *run_; }  ///< @pre begun()
  unsigned edition() const { return edition_; }  ///< of the scene that runs

  // Running.
  bool running() const { return running_; }
  /// Starts where nothing has run yet, else pauses or goes on from the live end.
  void toggle(const SceneOnTable& table);
  /// Goes on for that much real time, if it runs. @param budget  real time that it may use up [s]
  void tick(double seconds, double budget);
  void change_speed(int by);  ///< to the next of the speeds, up or down
  /// One recorded frame on, or back; it stops running.
  void step(int frames);
  /// Runs as fast as it can until the crew begin that move; where they did already, winds back to it.
  void go_to_move(int move);
  bool winding() const { return goal_.has_value(); }  ///< on its way as fast as it can
  /// Forgets what ran and was tried after the time shown, and goes on from there.
  void take_up();
  /// Whether the run goes slower than it is told to, for want of computing time.
  bool lags() const { return running_ && lags_; }

  // Winding back.
  double live_time() const;
  double shown_time() const;
  bool wound_back() const { return shown_.has_value(); }
  void show(double time);
  void show_live() { shown_.reset(); }
  LiveRun::Moment shown() const;  ///< @pre begun()

  // Trying things; each at the live end, and not while it is winding: the end is not yet where it is to be.
  void let_go();
  void break_line();
  void push();  ///< as push_words say
  void gust();  ///< as gust_words say

  // A push by hand: taken hold of at a point of the side view, pulled to another, let loose.
  /// @returns whether there is something to take hold of
  bool aim(Vec2 at, double reach);
  void aim_to(Vec2 to, double newtons_per_metre);
  void give();  ///< the push that is aimed
  void drop() { aimed_.reset(); }
  const std::optional<PushSight>& aimed() const { return aimed_; }

  /// Writes what was recorded to `file`, in the background, by the name's ending: .txt as `rehearse --record` does;
  /// .html, .webp, .svg, .pdf, .png drawn. A file that is there already is written over when asked once more.
  void write(DisplayUnits units);
  bool writing() const { return written_.valid(); }

  /// What followed when the line was gone or a pin left out, as far as it has gone; empty before.
  std::string what_then() const;
  const std::string& message() const { return message_; }

 private:
  struct Goal {
    int move = -1;      // until the crew begin it; -1: until the time
    double time = 0.0;  // [s]
  };
  void go_on(double until, double budget);
  void wind(double budget);
  bool reached(const Goal& goal) const;
  void watch_end();
  void check_pin(const Scene& scene);
  bool can_try(bool needs_line);
  void try_it(const Try& what);
  void push_as(const std::string& words);

  std::unique_ptr<LiveRun> run_;
  unsigned edition_ = 0;
  bool running_ = false, lags_ = false, finished_ = false;
  double wanted_ = 0.0;          // how far the run should have gone [s]
  std::optional<double> shown_;  // wound back to [s]
  std::optional<Goal> goal_;
  std::optional<PushSight> aimed_;
  std::future<std::string> written_;
  OutFiles out_files_;
  std::string message_;
};

}  // namespace stowpath
