#include "render/report/hardware_words.h"
#include "render/report/json_values.h"
#include "render/report/loads_report.h"
#include "render/report/masses_words.h"

namespace stowpath {
namespace {

Json moving_peak(const MovingPeak& peak, const char* unit) {
  return {{unit, json_number(peak.value)}, {"at_m", json_number(peak.at)}, {"stair_m", json_number(peak.position)}};
}

Json series(const RailCase& rail) {
  Json out = Json::array();
  for (const RailPlace& place : rail.places) {
    Json sag = Json::array();
    for (const double metres : place.sag) sag.push_back(json_number(metres));
    out.push_back({{"station_m", json_number(place.station)},
                   {"stress_pa", json_number(place.stress)},
                   {"most_sag_m", json_number(place.most_sag)},
                   {"hooks_sag_m", sag}});
  }
  return out;
}

Json rail_json(const Scene& scene, const RailCase& rail) {
  Json shares = Json::array();
  for (const double share : rail.forces.share) shares.push_back(json_number(share));
  return {{"state", rail_name(scene, rail.forces)},
          {"hooks_n", {json_number(rail.forces.total.x), json_number(rail.forces.total.y)}},
          {"shares", shares},
          {"stations_m", {json_number(rail.forces.stations.lo), json_number(rail.forces.stations.hi)}},
          {"sagging", moving_peak(rail.peaks.sagging, "moment_nm")},
          {"hogging", moving_peak(rail.peaks.hogging, "moment_nm")},
          {"deflection", moving_peak(rail.peaks.down, "deflection_m")},
          {"stress_pa", json_number(rail.stress)},
          {"design_stress_pa", json_number(rail.design_stress)},
          {"hinged_stress_pa", json_number(rail.hinged_stress)},
          {"series", series(rail)}};
}

Json joint_json(const JointLoad& joint) {
  return {{"hinge", joint.hinge + 1},
          {"moment_nm", json_number(joint.moment)},
          {"pin_n", json_number(joint.pin)},
          {"scab_nm", json_number(joint.scab)},
          {"hinge_n", json_number(joint.hinge_force)},
          {"hinge_unlocked_n", json_number(joint.hinge_unlocked)}};
}

Json place_json(const ClimberReport& report, const ClimberPlace& place) {
  Json joints = Json::array();
  for (const JointLoad& joint : place.joints) joints.push_back(joint_json(joint));
  return {{"on", place.name},
          {"along_m", json_number(place.along)},
          {"height_m", json_number(place.height)},
          {"hooks_n", json_number(place.hooks)},
          {"floor_n", json_number(place.floor)},
          {"one_hook_n", json_number(place.worst_hook)},
          {"one_caster_n", json_number(place.worst_caster)},
          {"bending_pa", json_number(report.bending_stress(place))},
          {"shear_pa", json_number(report.shear_stress(place))},
          {"joints", joints}};
}

Json climber_json(const ClimberReport& report) {
  Json places = Json::array();
  for (const ClimberPlace& place : report.places) places.push_back(place_json(report, place));
  Json out{{"mass_kg", json_number(report.mass)}, {"places", places}, {"tread", nullptr}};
  if (report.tread) {
    out["tread"] = {{"span_m", json_number(report.tread->span)},
                    {"moment_nm", json_number(report.tread->moment)},
                    {"stress_pa", json_number(report.tread->stress)},
                    {"shear_pa", json_number(report.tread->shear)},
                    {"deflection_m", json_number(report.tread->deflection)}};
  }
  return out;
}

Json framing_json(const FramingLoad& load) {
  Json members = Json::array();
  for (const MemberShare& member : load.members)
    members.push_back({{"at_m", json_number(member.at)}, {"load_n", json_number(member.force)}});
  return {{"point", load.point.name},
          {"load_n", json_number(load.point.force)},
          {"worst", load.point.where},
          {"said", load.place != FramingPlace::not_said},
          {"off_nearest_m", json_number(load.off)},
          {"members", members}};
}

}  // namespace

std::string loads_json(const LoadsSubject& subject) {
  const LoadsReport& loads = subject.loads;
  Json out{{"schema", "stowpath.loads/1"},
           {"scene", subject.model.name},
           {"verdict", verdict_key(loads_verdict(subject))},
           {"text", loads_line(subject)},
           {"hoisted", subject.hoisted}};
  out["hardware"] = hardware_json(loads.hardware);
  out["pipe"] = {{"yield_pa", json_number(loads.pipe.yield)},
                 {"allowable_pa", json_number(loads.pipe.allowable)},
                 {"status", status_text(loads.pipe.status)}};
  out["rail_problem"] = loads.rail_problem.empty() ? Json(nullptr) : Json(loads.rail_problem);
  out["sag"] = {{"most_m", json_number(loads.sag.most)},
                {"least_m", json_number(loads.sag.least)},
                {"station_m", json_number(loads.sag.station)},
                {"difference_m", json_number(loads.sag.difference)}};
  out["climber"] = climber_json(loads.climber);
  out["framing"] = Json::array();
  for (const FramingLoad& load : loads.framing) out["framing"].push_back(framing_json(load));
  out["masses"] = masses_json(subject.weights, subject.model);
  out["assumed"] = loads_assumed(subject);
  out["cautions"] = loads_cautions();
  out["rail"] = Json::array();
  for (const RailCase& rail : loads.rails) out["rail"].push_back(rail_json(subject.scene, rail));
  return dumped(out);
}

}  // namespace stowpath
