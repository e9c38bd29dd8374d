#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "render/studio/rehearsal_picture.h"
#include "sim/rehearsal/stage.h"

namespace stowpath {

/// What is tried on a stair while its rehearsal runs.
enum class TryKind { let_go, line_breaks, push, gust };
struct Try {
  TryKind kind = TryKind::let_go;
  double time = 0.0;    ///< from the rehearsal's start; where it is tried live, a whole hundredth [s]
  std::string words{};  ///< of a push or gust, as on the command line: "120N at 1.1m for 2s"
  Push push{};
  Gust gust{};
};

/// `--let-go "12.34s"`: what was tried, as `stowpath rehearse` is told it. It takes one thing of a kind; more stand one
/// after the other.
/// @param no_pins  hinges without their pins, from 0
std::string tried_text(const std::vector<int>& no_pins, const std::vector<Try>& tried);

/// A rehearsal that runs as one looks on, step by step, and can be meddled with.
///
/// It keeps a copy of what it runs, so that the scene can be changed meanwhile. What is tried takes effect at the next
/// whole hundredth of a second: its time can then be written down, and `stowpath rehearse` told of the same things at
/// the same times records the same bits. Where a rope is too stiff for the step it starts over with half of it, as
/// `rehearse` does, with what was tried.
class LiveRun {
 public:
  /// @param options  what is asked for beforehand; step and frame too
  LiveRun(const Scene& scene, const Model& model, const RehearsalOptions& options);
  LiveRun(const LiveRun&) = delete;
  LiveRun& operator=(const LiveRun&) = delete;

  /// Runs on until the time is reached, or so much real time is used up: the step at which that happens is finished.
  /// @param budget  [s]
  void run(double until, double budget);
  /// Runs it from the start again, with what was tried before that time alone.
  void take_up(double time);

  /// Tries that at the next whole hundredth of a second, which becomes its time.
  void add(Try what);
  const std::vector<Try>& tried() const { return tried_; }

  double time() const { return stage_->time(); }  ///< how far it has run [s]
  bool finished() const { return stage_->finished(); }
  bool refused() const { return refused_; }  ///< a rope is too stiff at every step tried: nothing can be rehearsed
  /// When the crew began a move; none while they have not [s].
  std::optional<double> begins(int move) const;

  const Scene& scene() const { return scene_; }
  const Model& model() const { return model_; }
  const RehearsalReport& report() const { return stage_->report(); }
  /// What has been recorded so far, as it is written out: with what was tried in its options.
  Recording recording() const;
  const std::vector<HappenedAt>& touches() const { return touches_; }

  /// One instant, as a picture wants it.
  struct Moment {
    RecordedFrame frame;
    Configuration meant;  ///< where the crew means the stair to be
    std::optional<PushSight> push;
    double gust = 0.0;  ///< [m/s]
  };
  Moment now() const;
  Moment at(double time) const;  ///< the last recorded frame up to then

 private:
  RehearsalOptions with_tries() const;
  void begin();
  void step();
  void keep();
  void halve();
  void add_shoves(Moment& moment) const;

  Scene scene_;
  Model model_;
  RehearsalOptions options_;
  double step_;
  int halvings_ = 0;
  bool refused_ = false;
  std::unique_ptr<Stage> stage_;
  std::vector<Try> tried_;            // ascending in time
  std::size_t done_ = 0;              // of them
  std::vector<Configuration> meant_;  // beside the recording's frames
  std::vector<HappenedAt> touches_;
  std::size_t events_ = 0;  // looked at for touches
};

}  // namespace stowpath
