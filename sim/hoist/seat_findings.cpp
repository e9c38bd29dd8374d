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

const SeatLoss& worst_of(const Losses& losses) {
  return **std::min_element(losses.begin(), losses.end(), [](const SeatLoss* a, const SeatLoss* b) {
    if (a->fault == SeatFault::off) return a->worst.contact.force.hi > b->worst.contact.force.hi;
    return a->worst.contact.touches.hi > b->worst.contact.touches.hi;
  });
}

/// Which way the hooks go: where the pipe would have to pull, against the way that it would have to press.
std::string why_off(const SeatPose& pose, Interval arc) {
  const Interval points = pose.contact.points;
  const double beyond = points.hi > arc.hi ? points.hi : points.lo;
  const double room = beyond + pose.pose.lean;
  if (std::sin(room) < 0.0)
    return "the hooks lift off the pipe: the stair turns over about its pick, and the pipe would have to hold the "
           "hooks down";
  if (beyond > arc.hi) return "the hooks slip off the pipe over the curl's end: the pipe bears past the covered arc";
  return "the hooks slip off the pipe along their shanks: the line draws the stair towards the wall, more than the "
         "least friction holds";
}

std::string why_near(const SeatPose& pose, const SeatReport& report) {
  const auto whole = [](Figure angle) { return format_degrees(angle, 0); };
  return "the pipe bears on the hooks " + whole(AtLeast{pose.arc_left(report.hook.arc)}) +
         " from the curl's end of their " + whole(Nominal{report.hook.arc.length()}) + " of arc, nearer than the " +
         whole(Nominal{report.near_end}) + " wanted";
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
  const SeatLoss& loss = worst_of(losses);
  const SeatPose& pose = loss.worst;
  Finding finding;
  finding.kind = FindingKind::seat;
  finding.parts = {"hook", "pipe"};
  finding.part_kinds = {PartKind::hook, PartKind::pipe};
  tell_where(model, losses, finding);
  finding.from = losses.front()->from.pose;
  finding.to = losses.back()->to.pose;
  finding.worst = pose.pose;
  const bool off = loss.fault == SeatFault::off;
  finding.clearance = off ? 0.0 : report.hook.inside * pose.arc_left(report.hook.arc);
  finding.needed = report.hook.inside * report.near_end;
  finding.witness = {finding.clearance, on_hook(model, report, pose, pose.contact.touches.hi),
                     on_hook(model, report, pose, report.hook.arc.hi)};
  finding.note = off ? why_off(loss.from, report.hook.arc) : why_near(pose, report);
  finding.things = finding.things_in_all = 1;
  return finding;
}

}  // namespace

std::vector<Finding> seat_findings(const Model& model, const SeatReport& report) {
  std::vector<Finding> findings;
  for (const SeatFault fault : {SeatFault::off, SeatFault::near_end}) {
    const Losses losses = losses_of(report, fault);
    if (!losses.empty()) findings.push_back(tell(model, report, losses));
  }
  return findings;
}

}  // namespace stowpath
