#include "render/report/json.h"

#include <cmath>

#include "render/report/contact_words.h"
#include "render/report/json_values.h"
#include "render/report/remedy_json.h"
#include "render/report/seat_json.h"
#include "render/report/words.h"

namespace stowpath {
namespace {

std::string_view verdict_name(Verdict verdict) {
  switch (verdict) {
    case Verdict::clear:
      return "clear";
    case Verdict::interference:
      return "interference";
    case Verdict::undecided:
      return "undecided";
  }
  return "";
}

std::string_view kind_name(FindingKind kind) {
  switch (kind) {
    case FindingKind::interference:
      return "interference";
    case FindingKind::margin:
      return "margin";
    case FindingKind::seat:
      return "seat";
    case FindingKind::zone:
      return "zone";
    case FindingKind::undecided:
      return "undecided";
    case FindingKind::build:
      return "build";
  }
  return "";
}

Json names(const std::array<std::string, 2>& parts) {
  Json out = Json::array();
  for (const std::string& part : parts) {
    if (!part.empty()) out.push_back(part);
  }
  return out;
}

Json move_json(const Model& model, const MoveResult& move, DisplayUnits units) {
  Json out{{"index", move.index},
           {"kind", json_move(move.kind)},
           {"verdict", verdict_name(move.verdict)},
           {"clearance_at_least_m", json_number(move.at_least)},
           {"clearance_at_most_m", json_number(move.at_most)},
           {"clearance_text",
            !move.closest[0].empty() ? format_small_length(AtLeast{move.at_least}, units) : "nothing near"}};
  if (move.closest[0].empty()) {
    out["closest"] = nullptr;
    return out;
  }
  Json closest{{"parts", names(move.closest)}};
  closest.update(json_placed_pose(model.linkage, move.closest_at));
  out["closest"] = closest;
  return out;
}

void add_place(Json& out, const Model& model, const Finding& finding, DisplayUnits units) {
  out["stations_m"] = json_stretches(finding.stations);
  out["stations_text"] = stretches_around(finding.stations, units);
  out["from"] = json_pose(model.linkage, finding.from);
  out["to"] = json_pose(model.linkage, finding.to);
  out["worst"] = json_placed_pose(model.linkage, finding.worst);
  out["worst"]["on_parts_m"] = {{json_number(finding.witness.on_a.x), json_number(finding.witness.on_a.y)},
                                {json_number(finding.witness.on_b.x), json_number(finding.witness.on_b.y)}};
  out["clearance_m"] = json_number(finding.clearance);
  out["clearance_at_least_m"] = json_number(finding.proven_clearance());
  out["needed_m"] = json_number(finding.needed);
  out["play_m"] = json_number(finding.play);
  out["depth_m"] = json_number(finding.depth());
  out["places"] = {{"met", finding.things}, {"of", finding.things_in_all}};
}

Json finding_json(const Model& model, const Finding& finding, DisplayUnits units, const std::vector<Cures>& cures) {
  Json out{
      {"id", finding.id}, {"kind", kind_name(finding.kind)}, {"parts", names(finding.parts)}, {"moves", finding.moves}};
  Json kinds = Json::array();
  for (const MoveKind kind : finding.move_kinds) kinds.push_back(json_move(kind));
  out["move_kinds"] = kinds;
  out["also"] = finding.also;
  out["undecided_moves"] = finding.undecided_moves;
  if (finding.kind != FindingKind::build) add_place(out, model, finding, units);
  out["text"] = finding_sentence(finding, units);
  out["remedies"] = remedies_json(cures, finding, units);
  return out;
}

}  // namespace

std::string dry_fit_json(const Model& model, const DryFit& fit, DisplayUnits units, const MeasureTwice& twice,
                         const SeatReport* seat, const std::vector<Cures>& cures) {
  Json out{{"schema", "stowpath.dryfit/1"}, {"scene", model.name}, {"verdict", verdict_name(fit.verdict)}};
  out["text"] = verdict_line(model, fit);
  out["margins_m"] = {{"default", json_number(model.margin.standard)},
                      {"hook", json_number(model.margin.hook)},
                      {"self", json_number(model.margin.self)}};
  out["moves"] = Json::array();
  for (const MoveResult& move : fit.moves) out["moves"].push_back(move_json(model, move, units));
  out["findings"] = Json::array();
  for (const Finding& finding : fit.findings) out["findings"].push_back(finding_json(model, finding, units, cures));
  if (!twice.places.empty()) out["measure_twice"] = measure_twice_json(model, twice);
  if (seat) out["seat"] = seat_json(model, *seat, units);
  out["contacts"] = contacts_json(model, units);
  const Reach& reach = fit.reach;
  out["reach"] = {{"span_m", json_number(reach.span.empty() ? 0.0 : reach.span.length())},
                  {"rail_stations_m", {json_number(reach.rail_span.lo), json_number(reach.rail_span.hi)}},
                  {"standing_stations_m", json_stretches(reach.standing)},
                  {"text", reach_sentence(reach, units)}};
  out["assumed"] = {{"working_lean_deg", json_degrees(model.working_lean)},
                    {"seat_range_deg", json_degrees(model.seat_range)},
                    {"hook_play_m", json_number(model.hook_play)},
                    {"floor_uneven_m", json_number(model.floor_uneven)},
                    {"pipe_sag_m", json_number(model.pipe_sag)},
                    {"arc_tolerance_m", json_number(model.arc_tolerance)},
                    {"text", assumed_sentence(model, units)}};
  out["work"] = {
      {"distances", fit.work.distances}, {"rejects", fit.work.rejects}, {"seconds", json_number(fit.work.seconds)}};
  return dumped(out);
}

std::string applied_json(const Remedy& remedy, const Finding& finding, const std::string& file, const Model& model,
                         const DryFit& fit, DisplayUnits units) {
  return dumped({{"schema", "stowpath.apply/1"},
                 {"written", file},
                 {"remedy", remedy_json(remedy, finding, units)},
                 {"verdict", verdict_name(fit.verdict)},
                 {"text", verdict_line(model, fit)}});
}

std::string errors_json(const std::vector<ReportedError>& errors) {
  Json out{{"schema", "stowpath.error/1"}, {"errors", Json::array()}};
  for (const ReportedError& error : errors) {
    out["errors"].push_back({{"file", error.file},
                             {"line", error.line},
                             {"column", error.column},
                             {"key", error.key},
                             {"problem", error.problem},
                             {"hint", error.hint}});
  }
  return dumped(out);
}

}  // namespace stowpath
