#include "sim/hoist/seat_findings.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "sim/trade/length.h"

namespace stowpath {
namespace {

using Losses = std::vector<const SeatLoss*>;

Losses losses_of(const SeatReport& report, SeatFault fault) {
  Losses out;
  for (const SeatLoss& loss : report.losses)
    if (loss.fault == fault && !loss.stopped()) out.push_back(&loss);
  return out;
}

/// A coefficient of friction to two places, never too high.
std::string friction_text(double friction) {
  const long hundredths = static_cast<long>(std::floor(100.0 * friction + 1e-9));
  const std::string part = std::to_string(hundredths % 100);
  return std::to_string(hundredths / 100) + (part.size() < 2 ? ".0" : ".") + part;
}

bool worse(const SeatPose& a, const SeatPose& b, SeatFault fault, const SeatReport& report) {
  const Interval arc = report.hook.arc;
  if (fault == SeatFault::off) return a.out_of_arc(arc, report.cone) > b.out_of_arc(arc, report.cone);
  if (fault == SeatFault::near_end) return a.contact.touches.hi > b.contact.touches.hi;
  return a.contact.floor_known < b.contact.floor_known;
}

const SeatLoss& worst_of(const Losses& losses, const SeatReport& report) {
  return **std::min_element(losses.begin(), losses.end(), [&](const SeatLoss* a, const SeatLoss* b) {
    return worse(a->worst, b->worst, a->fault, report);
  });
}

/// Which way the hooks go: where the pipe would have to pull, against the way that it would have to press.
std::string way_off(const SeatPose& pose, const SeatReport& report) {
  const Interval points = pose.contact.points, arc = report.hook.arc;
  const bool past_curl = points.hi - arc.hi > -report.cone.sure - points.lo;
  const double room = (past_curl ? points.hi : points.lo) + pose.pose.lean;
  // Drawn out along the shanks, the pipe would have to hold down a little too.
  if (std::sin(room) < (past_curl ? 0.0 : -std::numbers::sqrt2 / 2.0)) return "the hooks lift off the pipe";
  return past_curl ? "the hooks slip off the pipe over the curl's end"
                   : "the hooks slip off the pipe along their shanks";
}

bool drags(const Model& model, const SeatLoss& loss) {
  return model.moves[loss.from.move].segments[loss.from.segment].kind == SegmentKind::drag;
}

/// The greatest friction of the floor that is known to do no harm on any drag.
double floor_known(const Model& model, const Losses& losses, const SeatReport& report) {
  double known = report.friction.floor.hi;
  for (const SeatLoss* loss : losses)
    if (drags(model, *loss)) known = std::min(known, loss->floor_known);
  return known;
}

std::string why_off(const Model& model, const SeatReport& report, const SeatLoss& worst, const Losses& losses) {
  const std::string way = way_off(worst.worst, report);
  const double floor = floor_known(model, losses, report);
  if (drags(model, worst) && floor > 0.0)
    return way + ": the dragged foot props the stair up; they stay on up to a floor friction of " +
           friction_text(floor) + ", and the scene's range goes to " + friction_text(report.friction.floor.hi);
  if (way == "the hooks lift off the pipe")
    return way + ": the stair turns over about its pick, and the pipe would have to hold the hooks down";
  if (way == "the hooks slip off the pipe over the curl's end") return way + ": the pipe bears past the covered arc";
  return way + ": the line draws the stair towards the wall, more than the least friction holds";
}

std::string why_near(const SeatPose& pose, const SeatReport& report) {
  const auto whole = [](Figure angle) { return format_degrees(angle, 0); };
  return "the pipe bears on the hooks " + whole(AtLeast{pose.arc_left(report.hook.arc)}) +
         " from the curl's end of their " + whole(Nominal{report.hook.arc.length()}) + " of arc, nearer than the " +
         whole(Nominal{report.near_end}) + " wanted";
}

std::string why_binds(const Model& model, const Losses& losses, const SeatReport& report) {
  const double floor = floor_known(model, losses, report);
  double joints = 1.0;
  for (const SeatLoss* loss : losses)
    if (!drags(model, *loss)) joints = std::min(joints, loss->worst.contact.joints_known);
  const auto range = [](double most) { return ", and the scene's range goes to " + friction_text(most); };
  std::string text;
  if (floor < report.friction.floor.hi)
    text = "with a floor friction over " + friction_text(floor) + " the dragged foot binds" +
           range(report.friction.floor.hi);
  if (joints < 1.0)
    text += std::string(text.empty() ? "" : "; ") +
            "the line pulls so near past the pipe that with a hook friction over " +
            friction_text(joints * report.friction.hook.hi) + " the hooks bind on it" + range(report.friction.hook.hi);
  return text;
}

std::string why_unknown(const Model& model, SeatFault fault, const Losses& losses, const SeatReport& report) {
  const std::string unknown = "what the hooks bear is not known: ";
  switch (fault) {
    case SeatFault::binds:
      return unknown + why_binds(model, losses, report);
    case SeatFault::slack:
      if (std::any_of(losses.begin(), losses.end(), [&](const SeatLoss* loss) { return drags(model, *loss); }))
        return unknown + "with the least friction of the floor the line does not hold the stair, which moves by itself";
      return unknown + "the line would have to push: it does not hold the stair, which moves by itself";
    default:
      return unknown + "the scene names no `hoist.ceiling point`, from which the line pulls";
  }
}

std::string why(const Model& model, const SeatReport& report, const SeatLoss& worst, const Losses& losses) {
  const SeatFault fault = worst.fault;
  if (fault == SeatFault::off) return why_off(model, report, worst, losses);
  if (fault == SeatFault::near_end) return why_near(worst.worst, report);
  return why_unknown(model, fault, losses, report);
}

Vec2 on_hook(const Model& model, const SeatReport& report, const SeatPose& pose, double angle) {
  return model.linkage.pivot + seen_in_room(on_bend(report.hook.inside, angle), pose.pose.lean);
}

void tell_where(const Model& model, const Losses& losses, Finding& finding) {
  for (const SeatLoss* loss : losses) {
    const Move& move = model.moves[loss->from.move];
    const Segment& segment = move.segments[loss->from.segment];
    finding.stations.push_back(segment.over_stations() ? segment.stations
                                                       : Interval{loss->worst.pose.station, loss->worst.pose.station});
    const bool told =
        !finding.moves.empty() && finding.moves.back() == move.index && finding.move_kinds.back() == move.kind;
    if (told) continue;
    finding.moves.push_back(move.index);
    finding.move_kinds.push_back(move.kind);
  }
  finding.stations = unite(std::move(finding.stations));
}

Finding tell(const Model& model, const SeatReport& report, const Losses& losses) {
  const SeatLoss& loss = worst_of(losses, report);
  const SeatPose& pose = loss.worst;
  Finding finding;
  const bool unknown = is_unknown(loss.fault);
  finding.kind = unknown ? FindingKind::undecided : FindingKind::seat;
  finding.parts = {"hook", "pipe"};
  finding.part_kinds = {PartKind::hook, PartKind::pipe};
  tell_where(model, losses, finding);
  finding.from = losses.front()->from.pose;
  finding.to = losses.back()->to.pose;
  finding.worst = pose.pose;
  const bool near_end = loss.fault == SeatFault::near_end;
  finding.clearance = near_end ? report.hook.inside * pose.arc_left(report.hook.arc) : 0.0;
  finding.needed = unknown ? 0.0 : report.hook.inside * report.near_end;
  finding.witness = {finding.clearance, on_hook(model, report, pose, pose.contact.touches.hi),
                     on_hook(model, report, pose, unknown ? pose.contact.touches.hi : report.hook.arc.hi)};
  finding.note = why(model, report, loss, losses);
  finding.things = finding.things_in_all = 1;
  return finding;
}

}  // namespace

std::vector<Finding> seat_findings(const Model& model, const SeatReport& report) {
  std::vector<Finding> findings;
  for (const SeatFault fault :
       {SeatFault::off, SeatFault::near_end, SeatFault::binds, SeatFault::slack, SeatFault::no_line}) {
    const Losses losses = losses_of(report, fault);
    if (!losses.empty()) findings.push_back(tell(model, report, losses));
  }
  return findings;
}

}  // namespace stowpath
