#include "sim/hoist/seat_hold.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/hoist/pull_pose.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kTravel = 0.5;             // travel beyond this is not told apart [m]
constexpr double kFinest = 0.01 * kDegree;  // a piece over which nothing turns more is not halved again
constexpr double kCoarse = 2.0 * kDegree;   // not held at ends and middle, a piece this wide is not looked at closer

std::size_t index(int j) { return static_cast<std::size_t>(j); }

/// What may differ from the pose that is looked at, for it to stand for others.
struct Spread {
  Interval stations;
  double lean = 0.0;   ///< either way [rad]
  double parts = 0.0;  ///< farthest that any part moves [m]
};

/// Farthest that the hook reaches from its circle's centre, the shank left out [m].
double curl_reach(const HookShape& hook) {
  double reach = hook.outer;
  for (const Vec2 corner : hook.end) reach = std::max(reach, norm(corner));
  for (const RoundedPolygon& plate : hook.plates)
    for (const Vec2 corner : plate.core) reach = std::max(reach, norm(corner) + plate.radius);
  return reach;
}

/// The least that any lean of the spread needs: the curl's lowest point rises no faster than it turns, and whether the
/// hook reaches over the pipe's top at all is decided at the least lean.
double least_lift(const HookShape& hook, double lean, double spread, double radius, double slack) {
  const double middle = lift_to_unhook(hook, lean, radius, -slack);
  return spread > 0.0
             ? std::min(middle, lift_to_unhook(hook, lean - spread, radius, -slack)) - spread * curl_reach(hook)
             : middle;
}

/// The two ways off, as they are asked for over a spread.
struct Ways {
  double lift_needed = 0.0, slide_needed = 0.0;
  Shift up, along;

  Ways(const Scene& scene, const Model& model, const Configuration& pose, const Spread& spread) {
    const HookShape hook = hook_shape(scene.stair.hooks);
    const double radius = 0.5 * scene.rail.pipe.diameter, slack = model.hook_slack, lean = pose.lean;
    lift_needed = least_lift(hook, lean, spread.lean, radius, slack);
    slide_needed = lift_to_unhook(hook, 0.0, radius, -slack * std::cos(lean)) - slack * spread.lean;
    // What the stair may begin off its seat shortens way and need alike, but for what it is to the side.
    const double play = 2.0 * slack + spread.parts;
    up = {pose, {0.0, 1.0}, kTravel, spread.stations, play};
    along = {pose, {-std::sin(lean), std::cos(lean)}, kTravel, spread.stations, play + kTravel * spread.lean};
  }
};

/// Farthest that any part of a section reaches from its own upper joint [m].
double own_reach(const Model& model, int section) {
  double reach = 0.0;
  for (const StairPart& part : model.stair) {
    if (part.section != section) continue;
    for (const Vec2 corner : part.outline.core)
      reach = std::max(reach, norm(corner - model.linkage.proximal(section)) + part.outline.radius);
  }
  return reach;
}

/// Farthest that any part moves while the joints turn by no more than that: each joint's turn times what can be reached
/// from it with the folds anywhere [m].
double parts_move(const Model& model, const Turns& turns) {
  double most = 0.0;
  for (int section = 0; section < model.linkage.sections; ++section) {
    double reach = own_reach(model, section), move = turns.joint[index(section)] * reach;
    for (int j = section; j-- > 0;) {
      reach += norm(model.linkage.distal(j) - model.linkage.proximal(j));
      move += turns.joint[index(j)] * reach;
    }
    most = std::max(most, move);
  }
  return most;
}

/// Whether the stair is stopped both ways; the second is looked at only where the first is.
bool stopped_over(const Scene& scene, const Model& model, std::size_t move, const Configuration& pose,
                  const Spread& spread) {
  const Ways ways(scene, model, pose, spread);
  SeatHold hold{move, pose, ways.lift_needed, {}, ways.slide_needed, {}};
  hold.lift = free_travel(model, model.moves[move], ways.up);
  if (!hold.lift_stopped()) return false;
  hold.slide = free_travel(model, model.moves[move], ways.along);
  return hold.slide_stopped();
}

class PieceSplit {
 public:
  PieceSplit(const Scene& scene, const Model& model, std::size_t move, std::size_t segment)
      : scene_(scene), model_(model), move_(move), segment_(model.moves[move].segments[segment]) {}

  void look(double from, double to);
  std::vector<HeldPiece> pieces;

 private:
  Turns turns(double from, double to) const {
    return half_turns(model_.linkage, segment_, place_on(segment_, from), place_on(segment_, to));
  }
  Configuration pose(double u) const { return at(model_.linkage, segment_, u); }
  bool held_over(double from, double to) const;
  bool held_at(double v) const;
  void add(double from, double to, bool held);

  const Scene& scene_;
  const Model& model_;
  std::size_t move_;
  const Segment& segment_;
};

bool PieceSplit::held_over(double from, double to) const {
  const Turns half = turns(from, to);
  const Configuration middle = pose(0.5 * (place_on(segment_, from) + place_on(segment_, to)));
  const Interval here{middle.station - half.station, middle.station + half.station};
  const Spread spread{segment_.over_stations() ? segment_.stations : here, half.section[0], parts_move(model_, half)};
  return stopped_over(scene_, model_, move_, middle, spread);
}

bool PieceSplit::held_at(double v) const {
  const Configuration here = pose(place_on(segment_, v));
  const Interval stations = segment_.over_stations() ? segment_.stations : Interval{here.station, here.station};
  return stopped_over(scene_, model_, move_, here, {stations, 0.0, 0.0});
}

void PieceSplit::add(double from, double to, bool held) {
  if (!pieces.empty() && pieces.back().held == held) {
    pieces.back().to = to;
  } else {
    pieces.push_back({from, to, held});
  }
}

void PieceSplit::look(double from, double to) {
  const double middle = 0.5 * (from + to);
  const bool held_there = held_at(middle);
  if (held_there && held_over(from, to)) return add(from, to, true);
  const Turns half = turns(from, to);
  const double turn = 2.0 * *std::max_element(half.section.begin(), half.section.end());
  const bool plainly_not = turn <= kCoarse && !held_there && !held_at(from) && !held_at(to);
  if (turn <= kFinest || plainly_not) return add(from, to, false);
  look(from, middle);
  look(middle, to);
}

}  // namespace

SeatHold hold_at(const Scene& scene, const Model& model, std::size_t move, const Configuration& pose,
                 Interval stations) {
  const Ways ways(scene, model, pose, {stations, 0.0, 0.0});
  const Move& its = model.moves[move];
  return {move,
          pose,
          ways.lift_needed,
          free_travel(model, its, ways.up),
          ways.slide_needed,
          free_travel(model, its, ways.along)};
}

std::vector<HeldPiece> held_pieces(const Scene& scene, const Model& model, std::size_t move, std::size_t segment,
                                   double from, double to) {
  PieceSplit split(scene, model, move, segment);
  split.look(from, to);
  return split.pieces;
}

}  // namespace stowpath
