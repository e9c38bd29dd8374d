#include "render/report/json_values.h"
#include "render/report/roll_report.h"

namespace stowpath {
namespace {

Json stop_json(const RollStop& stop) {
  return {{"part", stop.part},
          {"thing", stop.part.empty() ? "pipe's end" : stop.thing},
          {"station_m", json_number(stop.station)},
          {"speed_m_s", json_number(stop.speed)},
          {"energy_j", json_number(stop.energy)}};
}

Json run_json(const RollRun& run) {
  Json out{{"friction", {{"hook", run.friction.hook}, {"floor", run.friction.floor}}},
           {"rolling_arm_m", json_number(run.friction.rolling_arm)},
           {"rolls", run.rolls},
           {"binds", !run.push_needed},
           {"push_needed_n", json_number(run.push_needed)},
           {"push_by_moments_n", json_number(run.push_by_moments)},
           {"speed_m_s", json_number(run.speed)},
           {"yaw_deg", json_degrees(run.yaw)},
           {"foot_aside_m", json_number(run.foot_aside)},
           {"coasting_m", json_number(run.coasting)},
           {"coasting_error_m", json_number(run.coasting_error)},
           {"energy_gained_j", json_number(run.energy_gained)}};
  out["stops"] = Json::array();
  for (const RollStop& stop : run.stops) out["stops"].push_back(stop_json(stop));
  return out;
}

}  // namespace

std::string roll_json(const RollSubject& subject) {
  const RollReport& report = subject.report;
  const double floor = subject.model.floor_level;
  Json out{{"schema", "stowpath.roll/1"},
           {"scene", subject.model.name},
           {"rolls_freely", rolls_freely(subject)},
           {"proves_clearance", false}};
  out["text"] = roll_line(subject);
  out["push"] = {{"force_n", json_number(report.asked.force)},
                 {"height_m", json_number(report.asked.height - floor)},
                 {"across_m", json_number(report.asked.across)},
                 {"turned_deg", json_degrees(report.asked.turned)},
                 {"offset_m", json_number(report.offset)}};
  out["hook_spacing_m"] = json_number(report.stair.spacing());
  out["jam_friction"] = json_number(report.jam_friction);
  out["free_height_m"] = json_number(report.free_height - floor);
  out["tips_when_jammed_n"] = json_number(report.tips_when_jammed);
  out["tips_when_blocked_n"] = json_number(report.tips_when_blocked);
  out["start_m"] = json_number(report.start);
  out["free_stations_m"] = json_stretches(report.free);
  out["step_s"] = json_number(report.asked.step);
  out["runs"] = Json::array();
  for (const RollRun& run : report.runs) out["runs"].push_back(run_json(run));
  out["cautions"] = roll_cautions();
  return dumped(out);
}

}  // namespace stowpath
