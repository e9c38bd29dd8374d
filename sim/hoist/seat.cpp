#include "sim/hoist/seat.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <functional>
#include <numbers>
#include <span>

namespace stowpath {
namespace {

constexpr double kQuarter = 0.5 * std::numbers::pi;
constexpr double kFastTurn = 0.02;                           // of the force between two poses: they are halved [rad]
constexpr int kMostHalvings = 8;                             // of a step
constexpr int kDragSteps = 8;                                // of a drag, to one of what moves freely
constexpr int kFrictionHalvings = 12;                        // of the floor's friction: below a thousandth
constexpr int kEdgeHalvings = 24;                            // of what is left of one: below 1e-6 rad from 4 degrees
constexpr double kBetween = 0.5 * std::numbers::pi / 180.0;  // for what lies between the poses looked at [rad]

/// Whether the stair hangs on the line in a move.
bool hangs(const Move& move) { return move.hooked_on && !stands_over_stations(move); }

/// The contact at places of one segment.
using Look = std::function<SeatPose(double v)>;

class SeatWalk {
 public:
  SeatWalk(const Scene& scene, const Model& model, const SeatOptions& options, SeatReport& report)
      : scene_(scene), model_(model), options_(options), report_(report) {
    if (scene.hoist && scene.hoist->ceiling_point)
      rig_ = lift_rig(scene, model, FrictionEnd::most, options.hinge_radius);
  }

  void go();

 private:
  std::optional<Look> look_along(std::size_t move, std::size_t segment) const;
  void go_along(std::size_t move, std::size_t segment);
  void go_between(const Look& look, const SeatPose& before, const SeatPose& after, int halvings);
  void tell(std::size_t move, std::size_t first);
  void find_losses(const Look& look, SeatFault fault, std::size_t first);
  double floor_known(const SeatLoss& loss, std::span<const SeatPose> poses) const;
  void add_loss(SeatLoss loss, std::size_t first, std::size_t last);
  SeatPose edge(const Look& look, SeatFault fault, const SeatPose& good, const SeatPose& bad) const;
  bool is(SeatFault fault, const SeatPose& pose) const;
  bool worse(SeatFault fault, const SeatPose& a, const SeatPose& b) const;

  const Scene& scene_;
  const Model& model_;
  const SeatOptions& options_;
  SeatReport& report_;
  std::optional<LiftRig> rig_;
};

std::optional<Look> SeatWalk::look_along(std::size_t move, std::size_t segment) const {
  const Move& its = model_.moves[move];
  const Segment& along = its.segments[segment];
  const auto at_pose = [=, this](double v) {
    return SeatPose{move, segment, v, at(model_.linkage, along, place_on(along, v)), {}};
  };
  if (stands_over_stations(its)) {
    return [=, this](double v) {
      SeatPose here = at_pose(v);
      const double lean = here.pose.lean;
      here.contact = standing_contact(standing_balance(scene_, model_, lean), lean, scene_.friction.floor.hi,
                                      report_.cone, report_.hook.arc);
      return here;
    };
  }
  if (!hangs(its)) return std::nullopt;
  if (!rig_) return at_pose;
  return [=, this](double v) {
    SeatPose here = at_pose(v);
    here.contact = hauled_contact(*rig_, {model_.moves[move], model_.moves[move].segments[segment], place_on(along, v)},
                                  report_.cone, report_.hook.arc, scene_.friction.floor.lo);
    return here;
  };
}

void SeatWalk::go() {
  report_.moves.resize(model_.moves.size());
  for (std::size_t m = 0; m < model_.moves.size(); ++m)
    for (std::size_t s = 0; s < model_.moves[m].segments.size(); ++s) go_along(m, s);
}

void SeatWalk::go_along(std::size_t move, std::size_t segment) {
  const auto look = look_along(move, segment);
  if (!look) return;
  const std::size_t first = report_.poses.size();
  const Segment& along = model_.moves[move].segments[segment];
  const double step = along.kind == SegmentKind::drag ? options_.step / kDragSteps : options_.step;
  const int steps = steps_along(model_.linkage, along, step);
  report_.poses.push_back((*look)(0.0));
  for (int i = 1; i <= steps; ++i) {
    const SeatPose before = report_.poses.back(), after = (*look)(static_cast<double>(i) / steps);
    go_between(*look, before, after, kMostHalvings);
    report_.poses.push_back(after);
  }
  tell(move, first);
  for (const SeatFault fault :
       {SeatFault::near_end, SeatFault::off, SeatFault::binds, SeatFault::slack, SeatFault::no_line})
    find_losses(*look, fault, first);
}

/// Halves a step over which the force turns fast: as it comes near to nothing it turns through all directions.
void SeatWalk::go_between(const Look& look, const SeatPose& before, const SeatPose& after, int halvings) {
  const Interval a = before.contact.points, b = after.contact.points;
  const bool known = before.contact.judged && after.contact.judged;
  const double turn = std::max(std::abs(b.lo - a.lo), std::abs(b.hi - a.hi));
  if (!known || halvings == 0 || turn <= kFastTurn) return;
  const SeatPose middle = look(0.5 * (before.v + after.v));
  go_between(look, before, middle, halvings - 1);
  report_.poses.push_back(middle);
  go_between(look, middle, after, halvings - 1);
}

void SeatWalk::tell(std::size_t move, std::size_t first) {
  SeatWander& seat = report_.moves[move];
  for (std::size_t i = first; i < report_.poses.size(); ++i) {
    const SeatPose& pose = report_.poses[i];
    seat.unknown = seat.unknown || !pose.contact.judged || pose.contact.binds || pose.contact.slack;
    if (!pose.contact.judged) {
      seat.unjudged_in = true;
      ++report_.unjudged;
      continue;
    }
    if (pose.contact.binds) ++report_.binding;
    const Interval off{pose.off_crown().lo - kBetween, pose.off_crown().hi + kBetween};
    seat.off_crown = seat.judged ? hull(seat.off_crown, off) : off;
    seat.touches = seat.judged ? hull(seat.touches, pose.contact.touches) : pose.contact.touches;
    seat.force = seat.judged ? hull(seat.force, pose.contact.force) : pose.contact.force;
    seat.judged = true;
    seat.held = seat.held && pose.contact.held;
    seat.lifted = seat.lifted || (pose.contact.lifted && !stands_over_stations(model_.moves[move]));
    if (!report_.worst || worse(SeatFault::near_end, pose, report_.poses[*report_.worst])) report_.worst = i;
  }
}

bool SeatWalk::is(SeatFault fault, const SeatPose& pose) const {
  const HookContact& contact = pose.contact;
  switch (fault) {
    case SeatFault::near_end:
      return contact.judged && contact.held && pose.arc_left(report_.hook.arc) < report_.near_end;
    case SeatFault::off:
      return contact.judged && !contact.held;
    case SeatFault::binds:
      return contact.binds;
    case SeatFault::slack:
      return contact.slack;
    case SeatFault::no_line:
      return !contact.judged && !contact.slack;
  }
  return true;
}

/// Off is the worse the further the contact lies outside of the arc, near the end the less arc is left, binding the
/// less friction does it.
bool SeatWalk::worse(SeatFault fault, const SeatPose& a, const SeatPose& b) const {
  if (fault == SeatFault::off)
    return a.out_of_arc(report_.hook.arc, report_.cone) > b.out_of_arc(report_.hook.arc, report_.cone);
  if (is_unknown(fault)) return a.contact.floor_known < b.contact.floor_known;
  return a.contact.touches.hi > b.contact.touches.hi;
}

SeatPose SeatWalk::edge(const Look& look, SeatFault fault, const SeatPose& good, const SeatPose& bad) const {
  SeatPose out = bad;
  double from = good.v;
  for (int i = 0; i < kEdgeHalvings; ++i) {
    const SeatPose middle = look(0.5 * (from + out.v));
    if (is(fault, middle)) {
      out = middle;
    } else {
      from = middle.v;
    }
  }
  return out;
}

void SeatWalk::find_losses(const Look& look, SeatFault fault, std::size_t first) {
  const std::vector<SeatPose>& poses = report_.poses;
  for (std::size_t i = first; i < poses.size(); ++i) {
    if (!is(fault, poses[i])) continue;
    std::size_t last = i;
    while (last + 1 < poses.size() && is(fault, poses[last + 1])) ++last;
    const SeatPose from = i > first ? edge(look, fault, poses[i - 1], poses[i]) : poses[i];
    const SeatPose to = last + 1 < poses.size() ? edge(look, fault, poses[last + 1], poses[last]) : poses[last];
    if (fault != SeatFault::off) {
      add_loss({fault, from, to, from}, i, last);
    } else {
      for (const HeldPiece& piece : held_pieces(scene_, model_, from.move, from.segment, from.v, to.v))
        add_loss({fault, look(piece.from), look(piece.to), from, {}, 0.0, piece.held}, i, last);
    }
    i = last;
  }
}

/// The greatest friction of the floor with which no pose of a loss on a drag is at fault.
double SeatWalk::floor_known(const SeatLoss& loss, std::span<const SeatPose> poses) const {
  LiftRig rig = *rig_;
  const Move& move = model_.moves[loss.from.move];
  const Segment& along = move.segments[loss.from.segment];
  const auto fails = [&](double v, double floor) {
    rig.friction.floor = floor;
    SeatPose pose = loss.from;
    pose.contact = hauled_contact(rig, {move, along, place_on(along, v)}, report_.cone, report_.hook.arc);
    return is(loss.fault, pose);
  };
  double known = scene_.friction.floor.hi;
  const auto lessen = [&](double v) {
    double least = 0.0;
    if (!fails(v, known)) return;
    for (int i = 0; i < kFrictionHalvings; ++i) {
      const double middle = 0.5 * (least + known);
      (fails(v, middle) ? known : least) = middle;
    }
    known = least;
  };
  // Nearer to full stretch less friction does harm, mostly: from there on few poses lessen it again.
  lessen(loss.to.v);
  for (std::size_t i = poses.size(); i-- > 0;)
    if (poses[i].v >= loss.from.v && poses[i].v <= loss.to.v) lessen(poses[i].v);
  lessen(loss.from.v);
  return known;
}

/// The worst pose is one of those looked at from `first` to `last` that lie in the loss, or one of its ends.
void SeatWalk::add_loss(SeatLoss loss, std::size_t first, std::size_t last) {
  loss.worst = loss.from;
  const auto offer = [&](const SeatPose& pose) {
    if (worse(loss.fault, pose, loss.worst)) loss.worst = pose;
  };
  const std::span<const SeatPose> poses(report_.poses.begin() + static_cast<std::ptrdiff_t>(first), last - first + 1);
  for (const SeatPose& pose : poses)
    if (pose.v >= loss.from.v && pose.v <= loss.to.v) offer(pose);
  offer(loss.to);
  const bool drags = model_.moves[loss.from.move].segments[loss.from.segment].kind == SegmentKind::drag;
  if (drags && !loss.held && (loss.fault == SeatFault::off || loss.fault == SeatFault::binds))
    loss.floor_known = floor_known(loss, poses);
  report_.losses.push_back(std::move(loss));
}

Interval stations_of(const Segment& segment, const Configuration& pose) {
  return segment.over_stations() ? segment.stations : Interval{pose.station, pose.station};
}

std::optional<SeatHold> state_hold(const Scene& scene, const Model& model, bool (*is_state)(const Move&)) {
  for (std::size_t m = 0; m < model.moves.size(); ++m) {
    if (!is_state(model.moves[m])) continue;
    SeatPose pose{m, 0, 1.0, model.moves[m].segments[0].to, {}};
    if (stands_over_stations(model.moves[m])) pose.pose.lean = model.working_lean;
    return hold_at(scene, model, m, pose.pose, stations_of(model.moves[m].segments[0], pose.pose));
  }
  return std::nullopt;
}

void add_holds(const Scene& scene, const Model& model, SeatReport& report) {
  report.standing = state_hold(scene, model, stands_over_stations);
  report.parked = state_hold(scene, model, [](const Move& move) { return move.kind == MoveKind::park; });
  for (SeatLoss& loss : report.losses) {
    const Segment& segment = model.moves[loss.worst.move].segments[loss.worst.segment];
    if (loss.fault == SeatFault::off)
      loss.hold = hold_at(scene, model, loss.worst.move, loss.worst.pose, stations_of(segment, loss.worst.pose));
  }
}

}  // namespace

Interval SeatPose::off_crown() const { return contact.touches + (pose.lean - kQuarter); }

SeatReport look_at_seat(const Scene& scene, const Model& model, const SeatOptions& options) {
  const auto start = std::chrono::steady_clock::now();
  SeatReport report;
  report.hook = hook_shape(scene.stair.hooks);
  report.cone = hook_cone(scene.friction);
  report.friction = scene.friction;
  report.near_end = options.near_end;
  SeatWalk(scene, model, options, report).go();
  add_holds(scene, model, report);
  report.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  return report;
}

}  // namespace stowpath
