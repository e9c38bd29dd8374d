#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/hoist/pull_pose.h"
#include "sim/rehearsal/recording.h"
#include "sim/rehearsal/roll_trip.h"

namespace stowpath {

/// How high a hand takes hold from the floor, at most: overhead, standing; judgement [m].
inline constexpr double kHighestHold = 2.0;

/// One hold of the hand, and what came of it.
struct RollTry {
  double height = 0.0;  ///< of the hand above the floor [m]
  RollEnd end = RollEnd::under_way;
  double way = 0.0;                   ///< that it went along the rail [m]
  double greatest_push = 0.0;         ///< that the hand gave, either way [N]
  std::optional<double> push_needed;  ///< to set it moving, in the world; none: it binds [N]
  double jam_friction = 0.0;          ///< of hook on pipe, from which no push with this hold moves it
  double yaw = 0.0;                   ///< greatest, either way [rad]
  double foot_aside = 0.0;            ///< how far that takes the casters along the rail [m]
  std::optional<RollStop> stop;       ///< what it ran into, or the pipe's end
};

/// A roll of the procedure as it went.
struct RollLeg {
  int move = 0;                             ///< which of Model::moves
  bool back = false;                        ///< on the way down, to where it was rolled from
  double from = 0.0, to = 0.0;              ///< stations, where it stood and where it has to go [m]
  double reached = 0.0;                     ///< where the hand left it [m]
  double begins = 0.0, ends = 0.0;          ///< [s]
  std::vector<RollTry> tries;               ///< none where it stood there already, or was not tried
  std::string not_tried;                    ///< why the world cannot roll it; empty: it can
  SpanFriction friction;                    ///< of this run

  /// Whether it is as though it had been brought there: the run went on from `to` all the same.
  bool brought() const { return !not_tried.empty() || (!tries.empty() && tries.back().end != RollEnd::arrived); }
};

/// Whether the procedure rolls the standing stair at all.
bool rolls_standing(const Model& model);

/// That end of the stair's span which is farther from where the procedure rolls it first: where a roll is worth seeing
/// from. Where it rolls nowhere, home, or the middle of the span. [m]
double far_station(const Model& model);

/// The nearest station at which the standing stair meets nothing, with a little air; the wanted one where there is none.
double free_station(const Scene& scene, const Model& model, double wanted);

/// The person who rolls the standing stair from station to station, as the procedure says. A stair that binds is taken
/// hold of once more, higher, where the racking rule promises that it slides, if a hand reaches there. What cannot be
/// rolled is taken as brought to where it has to go. Where it rolled once, it is taken hold of the next time.
class RollWork {
 public:
  /// @param hand  its greatest force, its height in the first try, its place across, its pace, and the world's step
  RollWork(const Scene& scene, const Model& model, FrictionEnd friction, const PushOptions& hand);

  /// Which roll, from where to where.
  struct Order {
    int move = 0;
    bool back = false;
    double from = 0.0, to = 0.0;  ///< stations [m]
  };
  /// Sets about it. @param now  [s]
  void begin(const Order& order, double now);
  bool under_way() const { return under_way_; }
  /// One step, while it is under way.
  void advance();

  double station() const;                               ///< of the stair's middle [m]
  double yaw() const;                                   ///< [rad]
  double push() const;                                  ///< of the hand along the rail [N]
  const RollLeg& leg() const { return leg_; }           ///< the last one begun
  /// What happened since it was last cleared.
  const std::vector<RecordedEvent>& news() const { return news_; }
  void clear_news() { news_.clear(); }

 private:
  void take_hold(double height);
  void end_try();
  std::optional<double> higher_hold(double height) const;
  void finish();
  void note(RecordedEventKind kind, double value);
  RollPlan plan(double height) const;

  const Model& model_;
  PushOptions hand_;
  std::optional<SpanStair> stair_;
  SpanSite site_;
  SpanFriction friction_;
  std::string cannot_;
  RollLeg leg_;
  std::optional<RollTrip> trip_;
  std::vector<RecordedEvent> news_;
  bool under_way_ = false;
  double now_ = 0.0, walks_until_ = 0.0, next_height_ = 0.0;
};

}  // namespace stowpath
