#include "render/report/account_json.h"
#include "render/report/json_values.h"
#include "render/report/recording_words.h"
#include "render/report/rehearsal_report.h"
#include "sim/rehearsal/trouble.h"

namespace stowpath {
namespace {

Json interval(Interval i) { return i.empty() ? Json(nullptr) : Json{json_number(i.lo), json_number(i.hi)}; }

Json move_json(const Model& model, int move) {
  if (move < 0) return nullptr;
  const Move& m = model.moves[static_cast<std::size_t>(move)];
  return {{"index", m.index}, {"kind", json_move(m.kind)}};
}

Json leans_json(const Model& model, const std::array<double, kMaxSections>& leans) {
  Json out = Json::array();
  for (int j = 0; j < model.linkage.sections; ++j) out.push_back(json_degrees(leans[static_cast<std::size_t>(j)]));
  return out;
}

Json run_json(const Model& model, const MoveRun& run) {
  return {{"move", move_json(model, run.move)},
          {"backwards", run.back},
          {"from_s", json_number(run.begins)},
          {"to_s", json_number(run.ends)},
          {"peak_pull_n", json_number(run.peak_pull)},
          {"least_pull_n", json_number(run.least_pull)},
          {"foot_pull_n", json_number(run.foot_pull)},
          {"peak_fold_line_n", json_number(run.peak_fold)},
          {"slack_s", json_number(run.slack)},
          {"stalled_s", json_number(run.stalled)},
          {"seat_deg", Json{json_degrees(run.seat.lo), json_degrees(run.seat.hi)}},
          {"least_hook_n", json_number(run.least_hook)},
          {"stray",
           {{"section", run.stray_section + 1},
            {"lean_deg", json_degrees(run.stray_lean)},
            {"meant_deg", json_degrees(run.stray_meant)},
            {"at_s", json_number(run.stray_time)}}},
          {"swing_deg", json_degrees(run.swing)},
          {"leans_deg", leans_json(model, run.leans)}};
}

Json touch_json(const Model& model, const TouchRun& run) {
  return {{"parts", {run.part, run.other}},
          {"first_s", json_number(run.first)},
          {"times", run.times},
          {"speed_m_s", json_number(run.speed)},
          {"stroke_j", json_number(run.energy)},
          {"distance_m", json_number(run.gap)},
          {"move", move_json(model, run.move)},
          {"backwards", run.back},
          {"afterwards", run.after}};
}

Json touches_json(const Model& model, const std::vector<TouchRun>& runs) {
  Json out = Json::array();
  for (const TouchRun& run : runs) out.push_back(touch_json(model, run));
  return out;
}

Json stroke_json(const std::optional<Stroke>& stroke) {
  if (!stroke) return nullptr;
  return {{"parts", {stroke->part, stroke->other}},
          {"after_s", json_number(stroke->time)},
          {"speed_m_s", json_number(stroke->speed)},
          {"stroke_j", json_number(stroke->energy)}};
}

Json aftermath_json(const RehearsalSubject& subject) {
  if (!subject.report.aftermath) return nullptr;
  const Aftermath& after = *subject.report.aftermath;
  return {{"cause", after.cause},
          {"from_s", json_number(after.begins)},
          {"to_s", json_number(after.ends)},
          {"held", after.nothing},
          {"at_rest", after.at_rest},
          {"against", after.stopped_by},
          {"top_speed_m_s", json_number(after.top_speed)},
          {"fastest", after.fastest},
          {"energy_j", json_number(after.energy)},
          {"first_stroke", stroke_json(after.first)},
          {"hardest_stroke", stroke_json(after.hardest)},
          {"hooks_off", after.hooks_left},
          {"turns_over", after.turns_over},
          {"turned_deg", json_degrees(after.turned)},
          {"swept_out_m", interval(after.under)},
          {"swept_stations_m", interval(after.under_stations)},
          {"hand_in_it", after.hand_under},
          {"text", aftermath_sentences(subject)}};
}

Json again_json(const RehearsalReport& report) {
  if (!report.again) return nullptr;
  const StandsAgain& again = *report.again;
  return {{"lean_off_deg", json_degrees(again.lean)},
          {"foot_off_m", json_number(again.foot)},
          {"hooks_off_m", json_number(again.hooks)},
          {"hooks_on_pipe", again.hooks_on_pipe}};
}

const char* end_word(RollEnd end) {
  switch (end) {
    case RollEnd::under_way:
      return "under way";
    case RollEnd::arrived:
      return "arrived";
    case RollEnd::bound:
      return "binds";
    case RollEnd::too_weak:
      return "too weak";
    case RollEnd::ran_into:
      return "runs into something";
    case RollEnd::left_pipe:
      return "leaves the pipe";
  }
  return "";
}

Json stop_json(const std::optional<RollStop>& stop) {
  if (!stop) return nullptr;
  return {{"parts", {stop->part, stop->thing}},
          {"station_m", json_number(stop->station)},
          {"speed_m_s", json_number(stop->speed)},
          {"energy_j", json_number(stop->energy)}};
}

Json tries_json(const std::vector<RollTry>& tries) {
  Json out = Json::array();
  for (const RollTry& hold : tries)
    out.push_back({{"height_m", json_number(hold.height)},
                   {"ends", end_word(hold.end)},
                   {"way_m", json_number(hold.way)},
                   {"greatest_push_n", json_number(hold.greatest_push)},
                   {"push_needed_n", json_number(hold.push_needed)},
                   {"jam_friction", json_number(hold.jam_friction)},
                   {"yaw_deg", json_degrees(hold.yaw)},
                   {"foot_aside_m", json_number(hold.foot_aside)},
                   {"stop", stop_json(hold.stop)}});
  return out;
}

Json rolls_json(const Model& model, const std::vector<RollLeg>& rolls) {
  Json out = Json::array();
  for (const RollLeg& leg : rolls)
    out.push_back({{"move", move_json(model, leg.move)},
                   {"backwards", leg.back},
                   {"from_s", json_number(leg.begins)},
                   {"to_s", json_number(leg.ends)},
                   {"from_m", json_number(leg.from)},
                   {"to_m", json_number(leg.to)},
                   {"reached_m", json_number(leg.reached)},
                   {"brought", leg.brought()},
                   {"not_tried", leg.not_tried},
                   {"hook_friction", leg.friction.hook},
                   {"tries", tries_json(leg.tries)}});
  return out;
}

Json loose_json(const std::vector<LooseRun>& runs) {
  Json out = Json::array();
  for (const LooseRun& run : runs)
    out.push_back({{"hinge", run.hinge + 1},
                   {"at_s", json_number(run.time)},
                   {"swings_deg", json_degrees(run.swings)},
                   {"to_lean_deg", json_degrees(run.to_lean)},
                   {"sinks_m", json_number(run.sinks)}});
  return out;
}

Json hooks_json(const Model& model, const std::vector<HookSpell>& spells) {
  Json out = Json::array();
  for (const HookSpell& spell : spells)
    out.push_back({{"from_s", json_number(spell.from)},
                   {"to_s", json_number(spell.to)},
                   {"lift_m", json_number(spell.lift)},
                   {"move", move_json(model, spell.move)},
                   {"backwards", spell.back},
                   {"off", spell.off}});
  return out;
}

Json slack_json(const std::vector<SlackSpell>& spells) {
  Json out = Json::array();
  for (const SlackSpell& spell : spells)
    out.push_back({{"from_s", json_number(spell.from)},
                   {"to_s", json_number(spell.to)},
                   {"jerk_n", spell.open ? Json(nullptr) : json_number(spell.jerk)},
                   {"at_the_end", spell.open}});
  return out;
}

Json events_json(const RehearsalSubject& subject) {
  Json out = Json::array();
  for (const RecordedEvent& event : subject.report.recording.events)
    if (worth_telling(event))
      out.push_back({{"at_s", json_number(event.time)}, {"text", event_sentence(event, subject.units)}});
  return out;
}

}  // namespace

std::string rehearsal_json(const RehearsalSubject& subject) {
  const RehearsalReport& report = subject.report;
  Json out{{"schema", "stowpath.rehearsal/1"},
           {"scene", subject.model.name},
           {"verdict", has_trouble(subject) ? "trouble" : "uneventful"},
           {"proves_clearance", false},
           {"refused", report.refused},
           {"seconds_s", json_number(report.seconds)}};
  out["moves"] = Json::array();
  for (const MoveRun& run : report.moves) out["moves"].push_back(run_json(subject.model, run));
  out["rolls"] = rolls_json(subject.model, report.rolls);
  out["touches"] = touches_json(subject.model, report.touches);
  out["landings"] = touches_json(subject.model, report.landings);
  out["zones"] = Json::array();
  for (const ZoneRun& run : report.zones)
    out["zones"].push_back({{"part", run.part},
                            {"zone", run.zone},
                            {"at_s", json_number(run.time)},
                            {"move", move_json(subject.model, run.move)},
                            {"backwards", run.back}});
  out["unpinned"] = loose_json(report.loose);
  out["hooks_lifted"] = hooks_json(subject.model, report.hooks_off);
  out["slack"] = slack_json(report.slack);
  out["stands_again"] = again_json(report);
  out["gave_up"] = report.gave_up.empty() ? Json(nullptr) : Json(report.gave_up);
  out["not_tried"] = report.not_tried;
  out["push_swing_deg"] = report.push_swing ? json_degrees(*report.push_swing) : Json(nullptr);
  out["what_then"] = aftermath_json(subject);
  out["met_from_start"] = report.met_from_start;
  out["events"] = events_json(subject);
  out["troubles"] = troubles_json(troubles(report), subject.units);
  out["bounds"] = bounds_json(report.bounds);
  out["taken_for_granted"] = report.cautions;
  out["cautions"] = rehearsal_cautions();
  out["text"] = rehearsal_line(subject);
  return dumped(out);
}

}  // namespace stowpath
