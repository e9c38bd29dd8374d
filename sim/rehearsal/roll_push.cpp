#include "sim/rehearsal/roll_push.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

#include "sim/rehearsal/roll_work.h"

namespace stowpath {
namespace {

constexpr double kTrialTime = 1.5;      // until a stair that does not move stands still [s]
constexpr double kLongestPush = 5.0;    // until the hand lets go [s]
constexpr double kLongestCoast = 60.0;  // [s]
constexpr double kLongestRoll = 120.0;  // to the end of the rail [s]

SpanPush the_other_way(const SpanPush& push) { return {push.at, {-push.force.x, push.force.y}}; }

/// One friction, looked at from every side.
class Roll {
 public:
  Roll(const RollReport& report, const SpanSite& site, const SpanFriction& friction)
      : report_(report), site_(site), friction_(friction) {}

  RollRun run() {
    RollRun out;
    out.friction = friction_;
    out.rolls = moves_under(report_.stair, friction_, report_.push, norm(report_.push.force));
    out.push_needed = push_needed(report_.stair, friction_, report_.push);
    out.push_by_moments = moving_push(report_.stair, friction_, report_.push, kMostPush);
    coast(out);
    out.stops = roll_on(report_.push);
    for (RollStop& stop : roll_on(the_other_way(report_.push))) out.stops.push_back(std::move(stop));
    return out;
  }

 private:
  SpanWorld on_free_rail(double step) const { return {report_.stair, free_rail(), friction_, 0.0, step}; }

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
    while (world.time() - begun < kLongestCoast && std::abs(world.state().speed) > kRollCreep) {
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
      if (off_the_pipe(report_.stair, site_, at.station)) return {{"", "", at.station, std::abs(at.speed), energy}};
      if (world.time() > kTrialTime && std::abs(at.speed) < kRollCreep && world.touches().empty()) return {};
    }
    if (world.touches().empty()) return {};
    const SpanTouch& touch = world.touches().front();
    const SpanBump& bump = site_.bumps[static_cast<std::size_t>(touch.bump)];
    return {{bump.part, bump.thing, touch.station, touch.speed, energy}};
  }

  const RollReport& report_;
  const SpanSite& site_;
  SpanFriction friction_;
};

}  // namespace

RollReport roll_push(const Scene& scene, const Model& model, const PushOptions& options) {
  check_hand(options, model);
  RollReport report;
  report.asked = options;
  report.floor_level = model.floor_level;
  report.stair = span_stair(scene, model);
  report.push = in_plan(options, model);
  const SpanSite site = span_site(scene, model);
  report.free = free_stations(site, model.span);
  report.start = free_station(scene, model, nearest_free(report.free, model.home.value_or(model.span.middle())));
  report.offset = push_offset(report.stair, report.push);
  report.jam_friction = racking_friction(report.stair, kRollerArm.hi, report.offset);
  report.free_height = free_height(model, report.stair, span_frictions(scene.friction).back());
  const double along = report.push.force.x;
  report.tips_when_jammed = tipping_push(report.stair, along, options.height, model.linkage.pivot.y);
  report.tips_when_blocked = tipping_push(report.stair, along, options.height, model.floor_level);
  const auto range = span_frictions(scene.friction);
  for (std::size_t i = 0; i < range.size(); ++i) report.runs.at(i) = Roll(report, site, range.at(i)).run();
  return report;
}

}  // namespace stowpath
