#include "sim/rehearsal/roll_trip.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stowpath {
namespace {

constexpr double kHaste = 0.7;          // gain of speed at the start, and loss before the mark; judgement [m/s2]
constexpr double kCareful = 0.06;       // slowest walk towards the mark [m/s]
constexpr double kFirm = 4.0;           // how swiftly the hand answers a lag [rad/s]
constexpr double kStrained = 1.5;       // pressed its hardest for so long, a stair that stays will not move [s]
constexpr double kGetsOn = 0.01;        // less way than this is none [m]
constexpr double kResting = 0.5;        // at rest on the mark [s]
constexpr double kLongestRoll = 240.0;  // [s]

}  // namespace

RollTrip::RollTrip(RollPlan plan)
    : plan_(std::move(plan)),
      world_(plan_.stair, plan_.site, plan_.friction, plan_.from, plan_.step),
      forward_(std::copysign(1.0, plan_.to ? *plan_.to - plan_.from : plan_.push.force.x)),
      most_(norm(plan_.push.force)) {}

// It starts as a walker does, and stops so that it comes to rest on the mark.
double RollTrip::wanted_speed() const {
  const double starting = kCareful + kHaste * world_.time();
  if (!plan_.to) return forward_ * std::min(plan_.pace, starting);
  const double left = *plan_.to - world_.state().station;
  if (std::abs(left) < kOnMark) return 0.0;
  const double stopping = std::max(kCareful, std::sqrt(2.0 * kHaste * std::abs(left)));
  return std::copysign(std::min({plan_.pace, starting, stopping}), left);
}

// Proportional to the lag, and to how long it has lasted; no harder than the hand can, and no sudden jerks.
void RollTrip::press() {
  const double wanted = wanted_speed(), lag = wanted - world_.state().speed;
  const double most = std::min(1.0, world_.time() / kPressing) * most_;
  if (wanted == 0.0) held_ = 0.0;
  const double asks = held_ + 2.0 * plan_.stair.mass * kFirm * lag;
  push_ = std::clamp(asks, -most, most);
  const bool at_most = push_ != asks && asks * lag > 0.0;  // what it cannot give it does not store up
  if (!at_most) held_ = std::clamp(held_ + plan_.stair.mass * kFirm * kFirm * lag * plan_.step, -most, most);
  if (wanted == 0.0 && std::abs(world_.state().speed) < kRollCreep) push_ = 0.0;
  greatest_ = std::max(greatest_, std::abs(push_));
  const double towards = std::copysign(1.0, plan_.push.force.x);
  world_.advance(SpanPush{plan_.push.at, towards * push_ / most_ * plan_.push.force});
}

void RollTrip::advance() {
  if (end_ != RollEnd::under_way) return;
  energy_ = world_.energy();
  press();
  watch();
}

void RollTrip::watch() {
  const SpanState at = world_.state();
  yaw_ = std::max(yaw_, std::abs(at.yaw));
  if (!world_.touches().empty()) return hit();
  if (off_the_pipe(plan_.stair, plan_.site, at.station)) {
    stop_ = RollStop{"", "", at.station, std::abs(at.speed), energy_};
    end_ = RollEnd::left_pipe;
    return;
  }
  const bool stands = std::abs(at.speed) < kRollCreep;
  resting_ = stands && plan_.to && std::abs(*plan_.to - at.station) < kOnMark ? resting_ + plan_.step : 0.0;
  if (resting_ > kResting) end_ = RollEnd::arrived;
  if (world_.time() > kLongestRoll) end_ = RollEnd::too_weak;
  if (!stuck(at.station)) return;
  const bool never = !moves_under(plan_.stair, plan_.friction, plan_.push, kMostPush);
  end_ = never ? RollEnd::bound : RollEnd::too_weak;
}

// A jammed stair trembles, so that its way counts, not its speed.
bool RollTrip::stuck(double station) {
  if (std::abs(push_) < 0.999 * most_ || std::abs(station - strained_at_) > kGetsOn) {
    strained_ = 0.0;
    strained_at_ = station;
    return false;
  }
  strained_ += plan_.step;
  return strained_ > kStrained;
}

void RollTrip::hit() {
  const SpanTouch& touch = world_.touches().front();
  const SpanBump& bump = plan_.site.bumps[static_cast<std::size_t>(touch.bump)];
  stop_ = RollStop{bump.part, bump.thing, touch.station, touch.speed, energy_};
  end_ = RollEnd::ran_into;
}

double walking_time(double distance, double pace) {
  const double way = std::abs(distance);
  const double ends = pace * pace / kHaste;  // way spent in gaining speed and losing it again
  if (way < ends) return 2.0 * std::sqrt(way / kHaste);
  return (way - ends) / pace + 2.0 * pace / kHaste;
}

}  // namespace stowpath
