#include "render/report/seat_words.h"

#include <algorithm>
#include <cmath>

#include "render/report/hoist_words.h"
#include "render/report/words.h"
#include "sim/mechanism/pivot_play.h"

namespace stowpath {
namespace {

std::string degrees(Figure radians) { return format_degrees(radians, 0); }

std::string small(Figure metres, DisplayUnits units) { return format_small_length(metres, units); }

std::string forces(Interval force, DisplayUnits units) {
  const std::string least = force_figures(AtLeast{force.lo}, units), most = force_figures(AtMost{force.hi}, units);
  return least == most ? most : least + " to " + most;
}

/// "61° out, 39° in": how far off the pipe's crown, towards the room and towards the wall.
std::string off_crown_text(Interval off) {
  const double out = std::max(0.0, -off.lo), in = std::max(0.0, off.hi);
  return degrees(AtMost{out}) + " out, " + degrees(AtMost{in}) + " in";
}

std::vector<std::string> cells(const Model& model, const SeatReport& report, std::size_t m, DisplayUnits units) {
  const Move& move = model.moves[m];
  const SeatWander& seat = report.moves[m];
  const std::string no = is_state(move.kind) ? "" : std::to_string(move.index);
  if (!seat.judged) return {no, std::string(move_name(move.kind)), "not judged", "", "", "", ""};
  return {no,
          std::string(move_name(move.kind)),
          degrees(AtLeast{seat.touches.lo}) + " to " + degrees(AtMost{seat.touches.hi}),
          degrees(AtLeast{report.hook.arc.hi - seat.touches.hi}),
          off_crown_text(seat.off_crown),
          forces(seat.force, units),
          !seat.held     ? "COMES OFF"
          : seat.unknown ? "not known"
          : seat.lifted  ? "lifts: the curl holds it"
                         : ""};
}

Table moves_table(const Model& model, const SeatReport& report, DisplayUnits units) {
  Table table;
  table.row({"no", "move", "bears at", "arc left", "off the crown", "force, " + std::string(force_unit(units)), ""});
  for (std::size_t m = 0; m < report.moves.size(); ++m) table.row(cells(model, report, m, units));
  return table;
}

/// "loft meets hook crown after 54 mm at the most, too late", of one way off.
std::string way_words(const FreeTravel& way, double needed, DisplayUnits units) {
  if (!way.stopped) return "nothing stops it within " + small(AtLeast{way.at_most}, units);
  const std::string met =
      way.parts[0] + " meets " + way.parts[1] + " after " + small(AtMost{way.at_most}, units) + " at the most";
  return met + (way.at_most < needed ? ", before that" : ", too late");
}


}  // namespace

std::string seat_sentence(const Model& model, const SeatReport& report, DisplayUnits units) {
  std::string text = "The hooks cover " + degrees(Nominal{report.hook.arc.length()}) +
                     " of the pipe, from the shank (0°) over the crown of their bend (90°) to the curl's end.";
  if (!report.worst) return text + " No pose could be judged.";
  const SeatPose& worst = report.poses[*report.worst];
  const Move& move = model.moves[worst.move];
  text += " The pipe bears " + degrees(AtLeast{worst.arc_left(report.hook.arc)}) + " from that end at the least, at " +
          pose_text(model.linkage, worst.pose) + " (" + moves_text({move.index}, {move.kind}) + "), with a force of " +
          force_text(AtMost{worst.contact.force.hi}, units) + "; under " + degrees(Nominal{report.near_end}) +
          " is a finding.";
  return text + " Weight, line, fold line and floor are balanced in " +
         counted(static_cast<long long>(report.poses.size()), "pose", "poses") +
         ", raising, holding and letting down, with friction from none to the greatest: computed there, not "
         "proven between. Nobody stands on the stair.";
}

std::string hold_sentence(std::string_view state, const SeatHold& hold, DisplayUnits units) {
  return std::string(state) + " (lean " + format_degrees(Nominal{hold.pose.lean}) +
         "), its lean kept, the stair comes off the " + "pipe once it is lifted by " +
         small(AtLeast{hold.lift_needed}, units) + ": " + way_words(hold.lift, hold.lift_needed, units) +
         "; or once it is pushed " + small(AtLeast{hold.slide_needed}, units) +
         " along its shanks: " + way_words(hold.slide, hold.slide_needed, units) + ".";
}

std::string seat_range_sentence(const Model& model, const SeatReport& report, DisplayUnits units) {
  Interval most{0.0, 0.0};
  std::string further;
  for (std::size_t m = 0; m < report.moves.size(); ++m) {
    if (report.moves[m].judged) most = hull(most, report.moves[m].off_crown);
    if (!counts_further(model, model.moves[m])) continue;
    further += (further.empty() ? "" : ", ") + moves_text({model.moves[m].index}, {model.moves[m].kind});
  }
  std::string text = "The scene takes the contact to stay within " + degrees(Nominal{model.seat_range}) +
                     " of the pipe's crown, which lets the pivot wander by " + small(AtMost{model.hook_play}, units) +
                     "; by statics it goes up to " + off_crown_text(most) + ". ";
  if (further.empty()) return text + "That is less: the proof counts with the scene's range.";
  return text + "That is more in " + further + ": the proof counts there with what statics give.";
}

std::string unjudged_sentence(const Model& model, const SeatReport& report) {
  std::string unknown;
  for (std::size_t m = 0; m < report.moves.size() && m < model.moves.size(); ++m)
    if (!report.moves[m].judged)
      unknown += (unknown.empty() ? "" : ", ") + moves_text({model.moves[m].index}, {model.moves[m].kind});
  std::string text;
  if (!unknown.empty()) text = "Not judged, as the line is off or does not hold the stair: " + unknown + ". ";
  if (report.unjudged > 0)
    text += "In " + counted(report.unjudged, "pose", "poses") +
            " no forces balance the stair on its line: see `stowpath hoist`. ";
  if (report.binding > 0)
    text += "In " + counted(report.binding, "pose", "poses") +
            " the dragged foot or the hooks bind with the greatest friction: what the hooks bear then is not known. ";
  if (!text.empty()) text.pop_back();
  return text;
}

void write_seat(ReportPage& page, const Model& model, const SeatReport& report, DisplayUnits units) {
  page.table("SEAT, where the pipe bears on the hooks", moves_table(model, report, units));
  page.paragraph(seat_sentence(model, report, units));
  if (report.standing) page.paragraph(hold_sentence("Standing", *report.standing, units));
  if (report.parked) page.paragraph(hold_sentence("Parked", *report.parked, units));
  page.paragraph(seat_range_sentence(model, report, units));
  const std::string unjudged = unjudged_sentence(model, report);
  if (!unjudged.empty()) page.paragraph(unjudged);
}

}  // namespace stowpath
