#include "sim/rehearsal/script.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "sim/hoist/effort.h"
#include "sim/hoist/people.h"
#include "sim/hoist/rope_geometry.h"
#include "sim/trade/us_units.h"

namespace stowpath {

namespace {

constexpr int kPieces = 48;                           // of a segment
constexpr double kTurningByHand = 0.35;               // 20 degrees a second; judgement [rad/s]
constexpr double kAlongPace = 0.7;                    // of a raised stair along the rail, a slow walk [m/s]
constexpr double kSwingTime = 0.8, kSwingWait = 3.2;  // for a section that swings plumb by itself; judgement [s]

int move_of_step(const Model& model, int step) {
  for (std::size_t m = 0; m < model.moves.size(); ++m)
    if (model.moves[m].index == step && !is_state(model.moves[m].kind)) return static_cast<int>(m);
  return -1;
}

ScriptStep event_of(const Step& step) {
  switch (step.kind) {
    case StepKind::hook_on:
      return {Act::hook_on, -1, -1, false};
    case StepKind::hook_off:
      return {Act::hook_off, -1, -1, false};
    case StepKind::pin:
      return {Act::pin, -1, step.hinge - 1, false};
    case StepKind::unpin:
      return {Act::unpin, -1, step.hinge - 1, false};
    default:
      return {Act::go, -1, -1, false};
  }
}

double greatest_turn(const Linkage& linkage, const Configuration& a, const Configuration& b) {
  double turn = std::abs(b.lean - a.lean);
  for (int k = 0; k + 1 < linkage.sections; ++k)
    turn = std::max(turn, std::abs(b.folds[static_cast<std::size_t>(k)] - a.folds[static_cast<std::size_t>(k)]));
  return turn;
}

PathKnot knot_at(const LiftRig* rig, const Model& model, const Segment& segment, double u) {
  PathKnot knot;
  knot.pose = at(model.linkage, segment, u);
  if (rig == nullptr) return knot;
  knot.line = rope_length(rig->line, rig->linkage, knot.pose);
  if (rig->fold_line) knot.fold = rope_length(*rig->fold_line, rig->linkage, knot.pose);
  return knot;
}

// Between two knots, by the slowest of those at work. What hangs or drags below an unpinned hinge turns by itself.
double time_between(const LiftRig* rig, const Model& model, const Move& move, const PathKnot& a, const PathKnot& b,
                    const CrewSpeeds& speeds) {
  double time = std::abs(b.pose.station - a.pose.station) / kAlongPace;
  if (rig != nullptr) time = std::max(time, std::abs(b.line - a.line) / speeds.line);
  if (move.kind == MoveKind::drag || move.kind == MoveKind::hang) return time;
  const bool fold_line = rig != nullptr && rig->fold_line.has_value();
  if (fold_line) time = std::max(time, std::abs(b.fold - a.fold) / speeds.fold_line);
  if (!fold_line || rig == nullptr)
    time = std::max(time, greatest_turn(model.linkage, a.pose, b.pose) / speeds.turning);
  return time;
}

void add_segment(const LiftRig* rig, const Model& model, const Move& move, const Segment& segment,
                 const CrewSpeeds& speeds, std::vector<PathKnot>& path) {
  const bool swings = settles({move, segment, 0.0}), at_floor = swings || segment.kind == SegmentKind::drag;
  for (int i = 0; i <= kPieces; ++i) {
    const double v = static_cast<double>(i) / kPieces;
    PathKnot knot = knot_at(rig, model, segment, segment.kind == SegmentKind::drag ? v * (2.0 - v) : v);
    if (!path.empty() && i > 0)
      knot.time = path.back().time +
                  (swings ? kSwingTime / kPieces : time_between(rig, model, move, path.back(), knot, speeds));
    knot.at_floor = at_floor;
    if (path.empty() || i > 0) path.push_back(knot);
  }
  if (!swings) return;
  path.push_back(path.back());
  path.back().time += kSwingWait;
}

// At the drum, in its first layer. What a drive gives is not always said: then it pulls as it likes.
double winch_strength(const Hoist& hoist) {
  const Winch& winch = *hoist.winch;
  const double arm = 0.5 * drum_layer_diameter(winch.drum, hoist.line.diameter, 1);
  const double gain = winch.ratio * winch_efficiency(winch).share / arm;
  if (hoist.pulled_by == PulledBy::crank_winch && winch.crank)
    return crank_limits(hoist.hand_limit).back().force * *winch.crank * gain;
  return winch.torque ? *winch.torque * gain : INFINITY;
}

// Steps the other way round, last first: what was hooked on comes off, what was unpinned is pinned.
ScriptStep undone(const ScriptStep& step) {
  ScriptStep back = step;
  back.back = true;
  if (step.act == Act::hook_on) back.act = Act::hook_off;
  if (step.act == Act::hook_off) back.act = Act::hook_on;
  if (step.act == Act::pin) back.act = Act::unpin;
  if (step.act == Act::unpin) back.act = Act::pin;
  return back;
}

void add_way_down(std::vector<ScriptStep>& script) {
  const std::vector<ScriptStep> up = script;
  script.push_back({Act::park, -1, -1, false});
  script.push_back({Act::lower_away, -1, -1, true});
  std::transform(up.rbegin(), up.rend(), std::back_inserter(script), undone);
}

PathKnot between(const PathKnot& a, const PathKnot& b, double u) {
  PathKnot knot = a;
  knot.at_floor = a.at_floor && b.at_floor;
  knot.time += u * (b.time - a.time);
  knot.line += u * (b.line - a.line);
  knot.fold += u * (b.fold - a.fold);
  knot.pose.station += u * (b.pose.station - a.pose.station);
  knot.pose.lean += u * (b.pose.lean - a.pose.lean);
  for (std::size_t k = 0; k < knot.pose.folds.size(); ++k)
    knot.pose.folds[k] += u * (b.pose.folds[k] - a.pose.folds[k]);
  return knot;
}

}  // namespace

std::vector<ScriptStep> script_of(const Scene& scene, const Model& model, bool comes_down) {
  std::vector<ScriptStep> script;
  int number = 0;
  for (const Step& step : scene.procedure) {
    ++number;
    ScriptStep next = event_of(step);
    if (next.act == Act::go) next.move = move_of_step(model, number);
    if (next.act != Act::go || next.move >= 0) script.push_back(next);
  }
  const auto raises = [&](const ScriptStep& step) {
    return step.act == Act::go && !rolls_standing(model.moves[static_cast<std::size_t>(step.move)]);
  };
  if (comes_down && std::any_of(script.begin(), script.end(), raises)) add_way_down(script);
  return script;
}

bool rolls_standing(const Move& move) { return move.kind == MoveKind::roll && stands_over_stations(move); }

bool goes_along_raised(const Move& move) {
  return !stands_over_stations(move) &&
         std::any_of(move.segments.begin(), move.segments.end(),
                     [](const Segment& segment) { return segment.to.station != segment.from.station; });
}

CrewSpeeds crew_speeds(const Scene& scene) {
  constexpr double kMinute = 60.0;
  const double by_hand = kHandOverHand.middle() / kMinute, strongest = greatest_figure(scene.hoist ? haul_task(scene) : Effort::pull_down);
  CrewSpeeds speeds{by_hand, by_hand, kTurningByHand, strongest, strongest, kHardPull};
  if (!scene.hoist) return speeds;
  const Hoist& hoist = *scene.hoist;
  if (!hoist.winch) {
    speeds.strength = hoist.hand_limit.value_or(strongest);
    return speeds;
  }
  const double usual = hoist.pulled_by == PulledBy::crank_winch ? kUsualCrankingRate : kDrillSpeed;
  speeds.line = line_speed(*hoist.winch, hoist.line.diameter, 1, hoist.winch->speed.value_or(usual)) / kMinute;
  speeds.strength = winch_strength(hoist);
  return speeds;
}

std::vector<PathKnot> move_path(const LiftRig* rig, const Model& model, int move, const CrewSpeeds& speeds) {
  const Move& doing = model.moves[static_cast<std::size_t>(move)];
  std::vector<PathKnot> path;
  for (const Segment& segment : doing.segments) add_segment(rig, model, doing, segment, speeds, path);
  return path;
}

std::vector<PathKnot> backwards(std::vector<PathKnot> path) {
  const double whole = path.back().time;
  for (PathKnot& knot : path) knot.time = whole - knot.time;
  std::reverse(path.begin(), path.end());
  return path;
}

PathKnot on_path(const std::vector<PathKnot>& path, double time) {
  const auto next = std::find_if(path.begin(), path.end(), [&](const PathKnot& knot) { return knot.time > time; });
  if (next == path.end()) return path.back();
  if (next == path.begin()) return path.front();
  const PathKnot& before = *std::prev(next);
  return between(before, *next, (time - before.time) / (next->time - before.time));
}

bool rope_spans(const Rigging& rope, int hinge) {
  for (std::size_t i = 0; i + 1 < rope.points.size(); ++i)
    if ((rope.points[i].section <= hinge) != (rope.points[i + 1].section <= hinge)) return true;
  return false;
}

}  // namespace stowpath
