#pragma once

#include <optional>
#include <string>

#include "sim/rehearsal/span_hand.h"

namespace stowpath {

/// How a roll by hand ended.
enum class RollEnd {
  under_way,
  arrived,    ///< at rest on its mark
  bound,      ///< the hooks jam: no push moves it, with the hand there
  too_weak,   ///< a harder push would move it, or sooner than in four minutes
  ran_into,   ///< something stands in its way
  left_pipe   ///< a hook is past the pipe's end
};

/// Something that the stair runs into, pushed on at a walk.
struct RollStop {
  std::string part, thing;  ///< empty part: the hooks leave the pipe's end
  double station = 0.0;     ///< of the stair's middle [m]
  double speed = 0.0;       ///< [m/s]
  double energy = 0.0;      ///< of motion then [J]
};

/// A stair that is to be rolled, and the hand that does it.
struct RollPlan {
  SpanStair stair;
  SpanSite site;
  SpanFriction friction;
  SpanPush push;               ///< the hand's greatest; its direction where `to` is not given
  double pace = 0.7;           ///< [m/s]
  double from = 0.0;           ///< station [m]
  std::optional<double> to{};  ///< its mark; none: on and on [m]
  double step = 1.0 / 960.0;   ///< of the world [s]
};

/// The standing stair rolled by one hand, step by step, in the plan.
///
/// The hand walks: it wants the pace, more slowly at the beginning and near the mark, presses harder the longer the
/// stair lags behind, up to its greatest, and holds back as hard where the stair runs ahead. On the mark, within
/// kOnMark, it lets go.
class RollTrip {
 public:
  /// @throws std::invalid_argument as SpanWorld
  explicit RollTrip(RollPlan plan);

  void advance();
  RollEnd end() const { return end_; }

  double time() const { return world_.time(); }        ///< from its beginning [s]
  SpanState state() const { return world_.state(); }
  double push() const { return push_; }                ///< along the rail, in the last step [N]
  double greatest_push() const { return greatest_; }   ///< so far, either way [N]
  double greatest_yaw() const { return yaw_; }         ///< so far, either way [rad]
  const std::optional<RollStop>& stop() const { return stop_; }  ///< what it ran into

 private:
  double wanted_speed() const;
  void press();
  void watch();
  bool stuck(double station);
  void hit();

  RollPlan plan_;
  SpanWorld world_;
  RollEnd end_ = RollEnd::under_way;
  double forward_ = 1.0, most_ = 0.0;
  double push_ = 0.0, held_ = 0.0, greatest_ = 0.0, yaw_ = 0.0, energy_ = 0.0;
  double strained_ = 0.0, resting_ = 0.0;  // how long [s]
  double strained_at_ = 0.0;               // station [m]
  std::optional<RollStop> stop_;
};

/// How far from its mark a stair is left standing, at most [m].
inline constexpr double kOnMark = 0.005;

/// Time of a roll at the hand's pace, without the waits at its ends: up to speed, on, and down to rest as the trip's
/// hand goes about it [s].
double walking_time(double distance, double pace);

}  // namespace stowpath
