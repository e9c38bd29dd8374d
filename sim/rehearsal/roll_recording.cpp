#include "sim/rehearsal/roll_recording.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>
#include <utility>

#include "sim/rehearsal/trouble.h"

namespace stowpath {

std::optional<RecordedEvent> end_event(const RollTrip& trip, double push) {
  const double station = trip.state().station;
  switch (trip.end()) {
    case RollEnd::bound:
      return RecordedEvent{trip.time(), RecordedEventKind::binds, "", "", push, 0.0};
    case RollEnd::too_weak:
      return RecordedEvent{trip.time(), RecordedEventKind::stays, "", "", push, 0.0};
    case RollEnd::ran_into:
      return RecordedEvent{trip.time(),        RecordedEventKind::touch, trip.stop()->part,
                           trip.stop()->thing, trip.stop()->speed,       trip.stop()->energy};
    case RollEnd::left_pipe:
      return RecordedEvent{trip.time(), RecordedEventKind::leaves_pipe, "", "", station, trip.stop()->energy};
    case RollEnd::arrived:
      return RecordedEvent{trip.time(), RecordedEventKind::stands, "", "", station, 0.0};
    case RollEnd::under_way:
      break;
  }
  return std::nullopt;
}

RecordedFrame standing_frame(const Model& model, const SpanStair& stair) {
  const Configuration stands{0.0, model.working_lean, {}};
  const SectionPoses poses = place_sections(model.linkage, stands);
  const auto leans = section_leans(model.linkage, stands);
  RecordedFrame frame;
  for (int j = 0; j < model.linkage.sections; ++j) {
    const auto k = static_cast<std::size_t>(j);
    frame.sections.at(k) = {poses.at(k).p, leans.at(k) - 0.5 * std::numbers::pi};
  }
  for (const SpanHook& hook : stair.hooks) frame.hook_force.y += hook.load;
  return frame;
}

void add_roll(RecordedFrame& frame, const RollTrip& trip) {
  frame.station = trip.state().station;
  frame.yaw = trip.state().yaw;
  frame.push = trip.push();
}

namespace {

RollPlan plan_of(const Scene& scene, const Model& model, const RollReport& report, double step) {
  return {report.stair,      span_site(scene, model), span_frictions(scene.friction)[1], report.push,
          report.asked.pace, report.start,            {},                                step};
}

double greatest_push(RollPlan plan) {
  RollTrip trip(std::move(plan));
  while (trip.end() == RollEnd::under_way) trip.advance();
  return trip.greatest_push();
}

// Of the push at all its frictions: the frames show the middle one.
Account account_of(const RollReport& report) {
  Account out;
  out.bounds.step = report.asked.step;
  for (const RollRun& run : report.runs) out.bounds.energy_gain = std::max(out.bounds.energy_gain, run.energy_gained);
  out.bounds.energy_scale = 0.5 * report.stair.mass * report.asked.pace * report.asked.pace;
  out.troubles = troubles(report);
  return out;
}

}  // namespace

Recording record_roll(const Scene& scene, const Model& model, const RollReport& report, double frame) {
  if (!(frame > 0.0)) throw std::invalid_argument("roll: the time between frames must be over 0");
  RollTrip trip(plan_of(scene, model, report, report.asked.step));
  Recording out{model.name, "", report.asked.step, model.linkage.sections, {}, {}, {}};
  out.events.push_back({0.0, RecordedEventKind::takes_hold, "", "", report.asked.height - model.floor_level, 0.0});
  RecordedFrame now = standing_frame(model, report.stair);
  double next = 0.0;
  for (;; trip.advance()) {
    const bool over = trip.end() != RollEnd::under_way;
    if (!over && trip.time() < next) continue;
    next += frame;
    now.time = trip.time();
    add_roll(now, trip);
    out.frames.push_back(now);
    if (over) break;
  }
  out.events.push_back(*end_event(trip, norm(report.push.force)));
  out.account = account_of(report);
  out.account->bounds.compared = true;
  out.account->bounds.push =
      std::abs(trip.greatest_push() - greatest_push(plan_of(scene, model, report, 0.5 * report.asked.step)));
  return out;
}

}  // namespace stowpath
