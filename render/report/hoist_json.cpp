#include "render/report/hardware_words.h"
#include "render/report/hoist_report.h"
#include "render/report/hoist_words.h"
#include "render/report/json_values.h"
#include "render/report/masses_words.h"
#include "render/report/words.h"
#include "sim/hoist/drive_pull.h"

namespace stowpath {
namespace {

std::string_view verdict_name(EffortVerdict verdict) {
  switch (verdict) {
    case EffortVerdict::within:
      return "within";
    case EffortVerdict::over:
      return "over";
    case EffortVerdict::cannot:
      return "cannot";
    case EffortVerdict::unknown:
      break;
  }
  return "unknown";
}

std::string_view pulled_by_name(PulledBy by) {
  if (by == PulledBy::hand) return "hand";
  return by == PulledBy::crank_winch ? "crank winch" : "powered winch";
}

std::string_view person_name(Person person) {
  if (person == Person::neither) return "neither";
  return person == Person::weak ? "weak" : "strong";
}

std::string_view holding_name(LetGo by) {
  switch (by) {
    case LetGo::nothing:
      return "nothing";
    case LetGo::cleat:
      return "cleat";
    case LetGo::winch:
      return "winch";
    case LetGo::friction:
      break;
  }
  return "friction";
}

Json source_json(const Source& source) {
  return {{"id", source.id}, {"title", source.title}, {"status", status_text(source.status)}};
}

Json move_place(const Model& model, std::size_t move, double progress) {
  const Move& m = model.moves[move];
  return {{"index", m.index}, {"kind", json_move(m.kind)}, {"progress", json_number(progress)}};
}

Json point(Vec2 v) { return {json_number(v.x), json_number(v.y)}; }

Json sample_json(const Model& model, const PullSample& s) {
  Json out{{"move", move_place(model, s.move, s.progress)}};
  out.update(json_placed_pose(model.linkage, s.pose));
  out["raising_n"] = json_number(s.hand_raising);
  out["holding_n"] = json_number(s.hand_holding);
  out["lowering_n"] = json_number(s.hand_lowering);
  out["segments_n"] = Json::array();
  for (const double tension : s.segments) out["segments_n"].push_back(json_number(tension));
  out["hook_n"] = point(s.reactions.hook);
  out["hinges_n"] = Json::array();
  for (int k = 0; k + 1 < model.linkage.sections; ++k) {
    out["hinges_n"].push_back(point(s.reactions.hinge.at(static_cast<std::size_t>(k))));
  }
  out["floor_n"] = point(s.reactions.floor);
  out["fold_line_n"] = json_number(s.fold_pull);
  out["turning_nm"] = json_number(s.turning);
  out["side_n"] = {{"out", json_number(s.side_out)}, {"along", json_number(s.side_along)}};
  out["line_m"] = json_number(s.line_length);
  out["slack"] = s.slack;
  out["on_floor"] = s.on_floor;
  out["solvable"] = s.solvable;
  return out;
}

Json peak_json(const HoistSubject& subject, const std::optional<std::size_t>& peak, double PullSample::*force) {
  if (!peak) return nullptr;
  const PullSample& s = subject.pull.samples[*peak];
  Json out{{"force_n", json_number(s.*force)}, {"move", move_place(subject.model, s.move, s.progress)}};
  out.update(json_placed_pose(subject.model.linkage, s.pose));
  return out;
}

Json pull_json(const HoistSubject& subject) {
  const PullReport& pull = subject.pull;
  return {{"raising", peak_json(subject, pull.peak_raising, &PullSample::hand_raising)},
          {"holding", peak_json(subject, pull.peak_holding, &PullSample::hand_holding)},
          {"lowering", peak_json(subject, pull.peak_lowering, &PullSample::hand_lowering)},
          {"raising_least_friction_n", json_number(pull.least_friction_peak)},
          {"raising_most_friction_n", json_number(pull.most_friction_peak)}};
}

Json moves_json(const HoistSubject& subject) {
  Json out = Json::array();
  for (const MovePull& move : pulls_by_move(subject.pull)) {
    const Move& m = subject.model.moves[move.move];
    const PullSample& peak = subject.pull.samples[move.peak];
    Json row{{"index", m.index},
             {"kind", json_move(m.kind)},
             {"raising_n", json_number(move.raising)},
             {"holding_n", json_number(move.holding)},
             {"lowering_n", json_number(move.lowering)},
             {"hauled_m", json_number(move.hauled)},
             {"slack", move.slack}};
    row["peak_at"] = json_placed_pose(subject.model.linkage, peak.pose);
    out.push_back(row);
  }
  return out;
}

Json limits_json(const HoistEffort& effort) {
  Json out = Json::array();
  for (const LimitMargin& m : effort.limits) {
    out.push_back({{"name", m.limit.name},
                   {"force_n", json_number(m.limit.force)},
                   {"margin_n", json_number(m.margin)},
                   {"share", json_number(m.share)},
                   {"person", person_name(m.limit.person)},
                   {"hands", hands_text(m.limit.hands)},
                   {"for", lasting_text(m.limit.lasting)},
                   {"counts", !effort.own_limit || m.limit.source.id == "given"},
                   {"source", source_json(m.limit.source)}});
  }
  return out;
}

Json left_out_json(const HoistEffort& effort) {
  Json out = Json::array();
  for (const UnfitFigure& unfit : effort.left_out)
    out.push_back({{"name", unfit.figure.posture},
                   {"force_n", json_number(unfit.figure.force)},
                   {"why", unfit.why},
                   {"source", source_json(unfit.figure.source)}});
  return out;
}

Json snag_json(const HoistSubject& subject) {
  const DrivePull drive = drive_pull(subject.scene);
  return {{"line_n", json_number(drive.force)},
          {"known", drive.known},
          {"limited", drive.limited},
          {"text", snag_sentence(subject)}};
}

Json winch_json(const WinchRun& run, double speed) {
  Json out{{"turns", json_number(run.turns)},
           {"input_turns_per_min", json_number(speed)},
           {"minutes", json_number(run.minutes)},
           {"torque_nm", json_number(run.torque)},
           {"torque_given_nm", json_number(run.torque_given)},
           {"handle_n", json_number(run.handle_force)},
           {"layers", run.layers},
           {"layers_known", run.layers_known},
           {"efficiency", json_number(run.efficiency.share)},
           {"efficiency_source", source_json(run.efficiency.source)},
           {"self_locking", run.self_locking},
           {"hold", run.hold_text}};
  return out;
}

Json events_json(const HoistSubject& subject) {
  Json out = Json::array();
  for (const PullEvent& event : subject.pull.events) {
    Json row{{"text", event_text(event.kind)}, {"move", move_place(subject.model, event.move, event.progress)}};
    row.update(json_placed_pose(subject.model.linkage, event.pose));
    out.push_back(row);
  }
  return out;
}

Json changes_json(const HoistSubject& subject) {
  Json out = Json::array();
  for (const PullChange& change : subject.pull.changes) {
    out.push_back({{"change", change.text},
                   {"peak_n", json_number(change.peak)},
                   {"benefit_n", json_number(change.benefit)},
                   {"haul_m", json_number(change.haul_length)},
                   {"side_n", json_number(change.side_pull)},
                   {"lifts", change.lifts}});
  }
  return out;
}

Json work_json(const WorkBook& work) {
  Json losses = Json::array();
  for (const PullLoss& loss : work.losses)
    losses.push_back({{"place", loss.place}, {"lost_j", json_number(loss.energy)}});
  return {{"hand_j", json_number(work.hand)},       {"fold_hand_j", json_number(work.fold_hand)},
          {"turning_j", json_number(work.turning)}, {"gain_j", json_number(work.gain)},
          {"lost_j", json_number(work.lost())},     {"losses", losses}};
}

}  // namespace

std::string hoist_json(const HoistSubject& subject) {
  const PullReport& pull = subject.pull;
  Json out{{"schema", "stowpath.hoist/1"},
           {"scene", subject.model.name},
           {"verdict", holds_up(subject) || subject.effort.verdict != EffortVerdict::within
                           ? verdict_name(subject.effort.verdict)
                           : "over"},
           {"text", hoist_line(subject)},
           {"pulled_by", pulled_by_name(subject.effort.by)}};
  out["pull"] = pull_json(subject);
  out["limits"] = limits_json(subject.effort);
  out["limits_left_out"] = left_out_json(subject.effort);
  out["snag"] = snag_json(subject);
  out["moves"] = moves_json(subject);
  out["line"] = {
      {"haul_m", json_number(pull.haul_length)},
      {"rope_m", json_number(pull.rope_needed)},
      {"tail_m", json_number(pull.line.tail)},
      {"knot_m", json_number(pull.line.knot)},
      {"fold_haul_m", json_number(pull.fold_haul_length)},
      {"fold_rope_m", json_number(pull.fold_rope_needed)},
      {"hand_minutes", {json_number(subject.effort.hand_minutes.lo), json_number(subject.effort.hand_minutes.hi)}},
      {"text", haul_sentence(subject)}};
  out["holds"] = {{"by", holding_name(subject.holding.by)}, {"text", holding_sentence(subject)}};
  out["winch"] = subject.effort.winch ? winch_json(*subject.effort.winch, subject.effort.input_speed) : Json(nullptr);
  out["drill"] = subject.effort.drill ? winch_json(*subject.effort.drill, kDrillSpeed) : Json(nullptr);
  out["events"] = events_json(subject);
  out["changes"] = changes_json(subject);
  out["hardware"] = hardware_json(subject.hardware);
  out["masses"] = masses_json(subject.weights, subject.model);
  out["work"] = work_json(pull.work);
  out["friction"] = {{"hook", pull.friction.hook}, {"hinge", pull.friction.hinge}, {"floor", pull.friction.floor}};
  out["assumptions"] = pull.assumptions;
  out["cautions"] = hoist_cautions();
  out["samples"] = Json::array();
  for (const PullSample& sample : pull.samples) out["samples"].push_back(sample_json(subject.model, sample));
  return dumped(out);
}

}  // namespace stowpath
