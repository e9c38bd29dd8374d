#include "sim/rehearsal/roll_push.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

#include "sim/hoist/jam.h"

namespace stowpath {
namespace {

constexpr double kPressing = 0.75;  // until a hand gives its whole force: a jerk would free the hooks [s]
constexpr double kPressed = 0.9;    // and it has had time to jam after all [s]
constexpr double kTrialTime = 1.5;  // of one push, when it is asked whether the stair moves [s]
constexpr double kLastPart = 0.25;  // of it, in which the stair must not slow down [s]
constexpr double kTrialStep = 1 / 480.0;
constexpr double kCreep = 0.002;        // slower is at rest [m/s]
constexpr double kRunsAway = 1.0;       // faster certainly moves [m/s]
constexpr int kHalvings = 12;           // of the push needed, from kMostPush to kPushFound
constexpr double kLongestPush = 5.0;    // until the hand lets go [s]
constexpr double kLongestCoast = 60.0;  // [s]
constexpr double kLongestRoll = 120.0;  // to the end of the rail [s]
constexpr double kFreeRail = 90.0;      // each way from where a stair starts that is to meet nothing [m]

void check(const PushOptions& options, const Model& model) {
  const bool numbers = std::isfinite(options.force) && std::isfinite(options.across) && std::isfinite(options.turned);
  if (!numbers || options.force == 0.0) throw std::invalid_argument("push: its force must be a number and not 0");
  if (std::abs(options.turned) >= 0.5 * std::numbers::pi - 0.01)
    throw std::invalid_argument("push: it must have a part along the rail");
  if (!(options.height >= model.floor_level && options.height <= model.linkage.pivot.y))
    throw std::invalid_argument("push: the hand must be between the floor and the rail");
  if (!(options.pace > 0.0 && options.pace <= 3.0))
    throw std::invalid_argument("push: the pace must be over 0 and at most 3 m/s");
}

// The hand lies on the datum line, at its height.
SpanPush in_plan(const PushOptions& options, const Model& model) {
  const double out = (model.linkage.pivot.y - options.height) * std::tan(model.working_lean);
  const double along = std::copysign(std::cos(options.turned), options.force);
  return {{options.across, out}, std::abs(options.force) * Vec2{along, std::sin(options.turned)}};
}

double mean(Interval range) { return range.middle(); }

// Casters that scrub hard hold the stair in line, so that counts as easy.
std::array<SpanFriction, 3> frictions(const Frictions& range) {
  return {SpanFriction{range.hook.lo, range.floor.hi, kCasterArm.lo},
          SpanFriction{mean(range.hook), mean(range.floor), mean(kCasterArm)},
          SpanFriction{range.hook.hi, range.floor.lo, kCasterArm.hi}};
}

double nearest_free(const IntervalSet& free, double wanted) {
  double best = std::numeric_limits<double>::quiet_NaN(), least = std::numeric_limits<double>::infinity();
  for (const Interval& stretch : free) {
    const double at = std::clamp(wanted, stretch.lo, stretch.hi);
    if (std::abs(at - wanted) < least) best = at, least = std::abs(at - wanted);
  }
  if (std::isnan(best)) throw std::invalid_argument("push: the standing stair meets something at every station");
  return best;
}

// Where the hand is as far out as the racking rule allows at the most friction.
double free_height(const Scene& scene, const Model& model, const SpanStair& stair) {
  const double up =
      model.linkage.pivot.y - jam_offset(stair.spacing(), scene.friction.hook.hi) / std::tan(model.working_lean);
  return std::max(model.floor_level, up);
}

SpanPush with_force(const SpanPush& push, double force) { return {push.at, force / norm(push.force) * push.force}; }

SpanPush pressed(const SpanPush& push, double time) { return {push.at, std::min(1.0, time / kPressing) * push.force}; }

SpanPush the_other_way(const SpanPush& push) { return {push.at, {-push.force.x, push.force.y}}; }

/// One friction, looked at from every side.
class Roll {
 public:
  Roll(const RollReport& report, const SpanSite& site, const SpanFriction& friction)
      : report_(report), site_(site), friction_(friction), forward_(std::copysign(1.0, report.push.force.x)) {}

  RollRun run() {
    RollRun out;
    out.friction = friction_;
    out.rolls = moves(norm(report_.push.force));
    out.push_needed = push_needed();
    out.push_by_moments = moving_push(report_.stair, friction_, report_.push, kMostPush);
    coast(out);
    out.stops = roll_on(report_.push);
    for (RollStop& stop : roll_on(the_other_way(report_.push))) out.stops.push_back(std::move(stop));
    return out;
  }

 private:
  SpanWorld on_free_rail(double step) const {
    return {report_.stair, {{-kFreeRail, kFreeRail}, {}}, friction_, 0.0, step};
  }

  bool moves(double force) const {
    SpanWorld world = on_free_rail(kTrialStep);
    const SpanPush push = with_force(report_.push, force);
    double before = 0.0;
    while (world.time() < kTrialTime) {
      if (world.time() < kTrialTime - kLastPart) before = forward_ * world.state().speed;
      world.advance(pressed(push, world.time()));
      if (world.time() > kPressed && forward_ * world.state().speed > kRunsAway) return true;
    }
    const double speed = forward_ * world.state().speed;
    return speed > kCreep && speed >= before;
  }

  std::optional<double> push_needed() const {
    if (!moves(kMostPush)) return std::nullopt;
    double low = 0.0, high = kMostPush;
    for (int i = 0; i < kHalvings; ++i) {
      const double middle = 0.5 * (low + high);
      (moves(middle) ? high : low) = middle;
    }
    return high;
  }

  // A hand that walks: it presses while the stair is slower than its pace, and never holds back.
  std::optional<SpanPush> hand(const SpanWorld& world, const SpanPush& push) const {
    const double along = std::copysign(1.0, push.force.x) * world.state().speed;
    if (along >= report_.asked.pace) return std::nullopt;
    return pressed(push, world.time());
  }

  void coast(RollRun& out) const {
    const double coarse = coast_once(out, report_.asked.step);
    RollRun finer = out;
    out.coasting = coast_once(finer, 0.5 * report_.asked.step);
    out.coasting_error = std::abs(out.coasting - coarse);
  }

  double coast_once(RollRun& out, double step) const {
    SpanWorld world = on_free_rail(step);
    while (world.time() < kLongestPush) {
      const auto push = hand(world, report_.push);
      if (!push) break;
      world.advance(push);
      watch(world, out);
    }
    out.speed = std::abs(world.state().speed);
    return come_to_rest(world, out);
  }

  double come_to_rest(SpanWorld& world, RollRun& out) const {
    const double from = world.state().station, begun = world.time();
    double lowest = world.energy();
    while (world.time() - begun < kLongestCoast && std::abs(world.state().speed) > kCreep) {
      world.advance();
      watch(world, out);
      out.energy_gained = std::max(out.energy_gained, world.energy() - lowest);
      lowest = std::min(lowest, world.energy());
    }
    return std::abs(world.state().station - from);
  }

  void watch(const SpanWorld& world, RollRun& out) const {
    out.yaw = std::max(out.yaw, std::abs(world.state().yaw));
    for (const SpanCaster& caster : report_.stair.casters)
      out.foot_aside = std::max(out.foot_aside, caster.at.y * std::abs(std::sin(world.state().yaw)));
  }

  // On and on, until it meets something, runs off the pipe or stands still.
  std::vector<RollStop> roll_on(const SpanPush& push) const {
    SpanWorld world(report_.stair, site_, friction_, report_.start, report_.asked.step);
    double energy = 0.0;
    while (world.time() < kLongestRoll && world.touches().empty()) {
      energy = world.energy();
      world.advance(hand(world, push));
      const SpanState at = world.state();
      if (off_the_pipe(at.station)) return {{"", "", at.station, std::abs(at.speed), energy}};
      if (world.time() > kTrialTime && std::abs(at.speed) < kCreep && world.touches().empty()) return {};
    }
    if (world.touches().empty()) return {};
    const SpanTouch& touch = world.touches().front();
    const SpanBump& bump = site_.bumps[static_cast<std::size_t>(touch.bump)];
    return {{bump.part, bump.thing, touch.station, touch.speed, energy}};
  }

  bool off_the_pipe(double station) const {
    return std::any_of(report_.stair.hooks.begin(), report_.stair.hooks.end(),
                       [&](const SpanHook& hook) { return !site_.pipe.contains(station + hook.x); });
  }

  const RollReport& report_;
  const SpanSite& site_;
  SpanFriction friction_;
  double forward_;
};

}  // namespace

RollReport roll_push(const Scene& scene, const Model& model, const PushOptions& options) {
  check(options, model);
  RollReport report;
  report.asked = options;
  report.stair = span_stair(scene, model);
  report.push = in_plan(options, model);
  const SpanSite site = span_site(scene, model);
  report.free = free_stations(site, model.span);
  report.start = nearest_free(report.free, model.home.value_or(model.span.middle()));
  report.offset = push_offset(report.stair, report.push);
  report.jam_friction = jam_friction(report.stair.spacing(), report.offset);
  report.free_height = free_height(scene, model, report.stair);
  report.tips_when_jammed = tipping_push(report.stair, options.height, model.linkage.pivot.y);
  report.tips_when_blocked = tipping_push(report.stair, options.height, model.floor_level);
  const auto range = frictions(scene.friction);
  for (std::size_t i = 0; i < range.size(); ++i) report.runs.at(i) = Roll(report, site, range.at(i)).run();
  return report;
}

}  // namespace stowpath
