#include "sim/rehearsal/roll_work.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "sim/rehearsal/roll_recording.h"
#include "sim/rehearsal/script.h"

namespace stowpath {
namespace {

constexpr double kOffThings = 0.005;  // that a stair stands away from what it could run into [m]
constexpr double kNewHold = 2.0;      // to let go and take hold elsewhere [s]
constexpr double kSurely = 0.1;       // above the height from which the rule promises that it slides [m]

const Move* first_roll(const Model& model) {
  const auto roll =
      std::find_if(model.moves.begin(), model.moves.end(), [](const Move& move) { return rolls_standing(move); });
  return roll == model.moves.end() ? nullptr : &*roll;
}

// With some air to what ends each stretch.
IntervalSet airy(const IntervalSet& free) {
  IntervalSet out;
  for (const Interval& stretch : free) {
    if (stretch.length() > 2.0 * kOffThings) out.push_back({stretch.lo + kOffThings, stretch.hi - kOffThings});
  }
  return out;
}

std::size_t index_of(FrictionEnd end) {
  return end == FrictionEnd::least ? 0 : end == FrictionEnd::mean ? 1 : 2;
}

}  // namespace

bool rolls_standing(const Model& model) { return first_roll(model) != nullptr; }

double far_station(const Model& model) {
  const Move* roll = first_roll(model);
  if (roll == nullptr) return model.home.value_or(model.span.middle());
  const double to = roll->segments.front().to.station;
  return to - model.span.lo > model.span.hi - to ? model.span.lo : model.span.hi;
}

double free_station(const Scene& scene, const Model& model, double wanted) {
  const IntervalSet free = airy(free_stations(span_site(scene, model), model.span));
  return free.empty() ? wanted : nearest_free(free, wanted);
}

RollWork::RollWork(const Scene& scene, const Model& model, FrictionEnd friction, const PushOptions& hand)
    : model_(model), hand_(hand), friction_(span_frictions(scene.friction).at(index_of(friction))) {
  if (!rolls_standing(model)) return;
  try {
    check_hand(hand_, model);
    stair_ = span_stair(scene, model);
    site_ = span_site(scene, model);
  } catch (const std::invalid_argument& problem) {
    cannot_ = problem.what();
  }
}

void RollWork::begin(const Order& order, double now) {
  leg_ = {};
  leg_.move = order.move;
  leg_.back = order.back;
  leg_.from = leg_.reached = order.from;
  leg_.to = order.to;
  leg_.begins = leg_.ends = now_ = now;
  leg_.friction = friction_;
  leg_.not_tried = cannot_;
  trip_.reset();
  under_way_ = true;
  if (!cannot_.empty() || std::abs(leg_.to - leg_.from) < kOnMark) return finish();
  take_hold(hand_.height);
}

RollPlan RollWork::plan(double height) const {
  PushOptions hand = hand_;
  hand.height = height;
  hand.force = std::copysign(hand.force, leg_.to - leg_.reached);
  return {*stair_,      site_,  friction_, in_plan(hand, model_), hand.pace,
          leg_.reached, leg_.to, hand.step};
}

void RollWork::take_hold(double height) {
  try {
    trip_.emplace(plan(height));
  } catch (const std::invalid_argument& problem) {
    leg_.not_tried = problem.what();
    return finish();
  }
  RollTry hold;
  hold.height = height - model_.floor_level;
  const SpanPush push = plan(height).push;
  hold.push_needed = push_needed(*stair_, friction_, push);
  hold.jam_friction = racking_friction(*stair_, friction_.roller_arm, push_offset(*stair_, push));
  leg_.tries.push_back(hold);
  note(RecordedEventKind::takes_hold, hold.height);
}

void RollWork::advance() {
  if (!under_way_) return;
  now_ += hand_.step;
  if (!trip_) {
    if (now_ >= walks_until_) take_hold(next_height_);
    return;
  }
  trip_->advance();
  if (trip_->end() != RollEnd::under_way) end_try();
}

void RollWork::end_try() {
  RollTry& hold = leg_.tries.back();
  hold.end = trip_->end();
  hold.greatest_push = trip_->greatest_push();
  hold.yaw = trip_->greatest_yaw();
  for (const SpanCaster& caster : stair_->casters)
    hold.foot_aside = std::max(hold.foot_aside, caster.at.y * std::sin(hold.yaw));
  hold.stop = trip_->stop();
  hold.way = std::abs(trip_->state().station - leg_.reached);
  leg_.reached = trip_->state().station;
  RecordedEvent event = *end_event(*trip_, std::abs(hand_.force));
  event.time = now_;
  news_.push_back(std::move(event));
  if (hold.end == RollEnd::arrived) hand_.height = hold.height + model_.floor_level;
  const auto higher = higher_hold(hold.height + model_.floor_level);
  trip_.reset();
  if (hold.end != RollEnd::bound || leg_.tries.size() > 1 || !higher) return finish();
  next_height_ = *higher;
  walks_until_ = now_ + kNewHold;
}

std::optional<double> RollWork::higher_hold(double height) const {
  const double slides = free_height(model_, *stair_, friction_) + kSurely;
  const bool reached = slides <= model_.floor_level + kHighestHold && slides < model_.linkage.pivot.y;
  return reached && slides > height ? std::optional(slides) : std::nullopt;
}

void RollWork::finish() {
  under_way_ = false;
  trip_.reset();
  leg_.ends = now_;
  if (leg_.brought()) return note(RecordedEventKind::brought, leg_.to);
  if (leg_.tries.empty()) note(RecordedEventKind::stands, leg_.to);
}

void RollWork::note(RecordedEventKind kind, double value) { news_.push_back({now_, kind, "", "", value, 0.0}); }

double RollWork::station() const {
  if (trip_) return trip_->state().station;
  return under_way_ ? leg_.reached : leg_.to;
}

double RollWork::yaw() const { return trip_ ? trip_->state().yaw : 0.0; }

double RollWork::push() const { return trip_ ? trip_->push() : 0.0; }

}  // namespace stowpath
