#include "render/report/seat_json.h"

#include "render/report/seat_words.h"
#include "render/report/words.h"
#include "sim/mechanism/pivot_play.h"

namespace stowpath {
namespace {

Json degrees_range(Interval range) { return {json_degrees(range.lo), json_degrees(range.hi)}; }

Json force_range(Interval force) { return {json_number(force.lo), json_number(force.hi)}; }

Json way_json(const FreeTravel& way, double needed, bool stopped) {
  return {{"needed_m", json_number(needed)},
          {"free_at_most_m", json_number(way.at_most)},
          {"met", way.stopped ? Json(way.parts) : Json(nullptr)},
          {"stopped_before_off", stopped}};
}

Json hold_json(const Model& model, std::string_view state, const SeatHold& hold, DisplayUnits units) {
  Json out = json_placed_pose(model.linkage, hold.pose);
  out["lift"] = way_json(hold.lift, hold.lift_needed, hold.lift_stopped());
  out["slide"] = way_json(hold.slide, hold.slide_needed, hold.slide_stopped());
  out["text"] = hold_sentence(state, hold, units);
  return out;
}

Json move_json(const Model& model, const SeatReport& report, const Move& move, const SeatWander& seat) {
  Json out{{"index", move.index}, {"kind", json_move(move.kind)}, {"judged", seat.judged}};
  if (!seat.judged) return out;
  out["held"] = seat.held;
  out["known"] = !seat.unknown;
  out["by_curl_alone"] = seat.held && seat.lifted;
  out["contact_deg"] = degrees_range(seat.touches);
  out["arc_left_deg"] = json_degrees(report.hook.arc.hi - seat.touches.hi);
  out["off_crown_deg"] = degrees_range(seat.off_crown);
  out["force_N"] = force_range(seat.force);
  out["counted_by_proof"] = counts_further(model, move);
  return out;
}

Json worst_json(const Model& model, const SeatReport& report) {
  if (!report.worst) return nullptr;
  const SeatPose& worst = report.poses[*report.worst];
  Json out = json_placed_pose(model.linkage, worst.pose);
  out["move"] = model.moves[worst.move].index;
  out["contact_deg"] = degrees_range(worst.contact.touches);
  out["arc_left_deg"] = json_degrees(worst.arc_left(report.hook.arc));
  out["force_N"] = force_range(worst.contact.force);
  return out;
}

}  // namespace

Json seat_json(const Model& model, const SeatReport& report, DisplayUnits units) {
  Json out{{"covered_arc_deg", json_degrees(report.hook.arc.length())},
           {"near_end_deg", json_degrees(report.near_end)}};
  out["worst"] = worst_json(model, report);
  out["moves"] = Json::array();
  for (std::size_t m = 0; m < report.moves.size(); ++m)
    out["moves"].push_back(move_json(model, report, model.moves[m], report.moves[m]));
  out["standing"] = report.standing ? hold_json(model, "Standing", *report.standing, units) : Json(nullptr);
  out["parked"] = report.parked ? hold_json(model, "Parked", *report.parked, units) : Json(nullptr);
  out["poses"] = report.poses.size();
  out["unjudged_poses"] = report.unjudged;
  out["binding_poses"] = report.binding;
  out["text"] = seat_sentence(model, report, units);
  out["range_text"] = seat_range_sentence(model, report, units);
  return out;
}

}  // namespace stowpath
