#include "tests/campaign/procedure_trial.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <string>
#include <vector>

#include "sim/rehearsal/side_world.h"
#include "tests/support/random_outlines.h"
#include "tests/support/touch_proof.h"

namespace stowpath::testing {
namespace {

constexpr double kStep = 1.0 / 960.0;
constexpr double kPace = 0.6;    // of the joint that turns most [rad/s]
constexpr double kLeast = 0.5;   // a move takes no less [s]
constexpr double kFirm = 60.0;   // how firmly the hands hold a joint: its free frequency [rad/s]
constexpr double kAstray = 0.1;  // from the meant turn of a joint, where they give up [rad]
constexpr double kPlumb = -0.5 * std::numbers::pi;

std::size_t index(int i) { return static_cast<std::size_t>(i); }

std::vector<SectionMass> random_masses(const Linkage& linkage, std::mt19937& random) {
  std::vector<SectionMass> masses;
  for (int j = 0; j < linkage.sections; ++j) {
    const double length = linkage.length[index(j)], mass = uniform(random, 6.0, 16.0);
    masses.push_back({mass, {0.5 * length, 0.0}, mass * length * length / 12.0});
  }
  return masses;
}

// Hands on every joint, which bear the weight and bring the joint to where it is meant.
class Hands {
 public:
  Hands(const Linkage& linkage, const std::vector<SectionMass>& masses) : linkage_(linkage), masses_(masses) {}

  // @param later  the pose meant a step later
  void hold(SideWorld& world, const Configuration& meant, const Configuration& later) const {
    for (int joint = 0; joint < linkage_.sections; ++joint) {
      const double rate = (turn_in(later, joint) - turn_in(meant, joint)) / kStep;
      const double upper_rate = joint == 0 ? 0.0 : world.motion(joint - 1).rate;
      const Load load = borne(world, joint);
      const double lag = turn_in(meant, joint) - turned(world, joint);
      const double slip = rate - (world.motion(joint).rate - upper_rate);
      world.turn(joint - 1, load.moment + load.inertia * kFirm * (kFirm * lag + 2.0 * slip));
    }
  }

  bool astray(const SideWorld& world, const Configuration& meant) const {
    for (int joint = 0; joint < linkage_.sections; ++joint)
      if (std::abs(turned(world, joint) - turn_in(meant, joint)) > kAstray) return true;
    return false;
  }

 private:
  struct Load {
    double moment = 0.0, inertia = 0.0;  // of all that hangs on a joint, about it [N m, kg m2]
  };

  Load borne(const SideWorld& world, int joint) const {
    const SectionPoses X_W = world.poses();
    const Vec2 centre = X_W[index(joint)] * linkage_.proximal(joint);
    Load load;
    for (int j = joint; j < linkage_.sections; ++j) {
      const SectionMass& mass = masses_[index(j)];
      const Vec2 arm = X_W[index(j)] * mass.centre - centre;
      load.moment += mass.mass * kGravity * arm.x;
      load.inertia += mass.inertia + mass.mass * norm_squared(arm);
    }
    return load;
  }

  double turn_in(const Configuration& pose, int joint) const {
    if (joint == 0) return pose.lean;
    return linkage_.fold_sign[index(joint - 1)] * pose.folds[index(joint - 1)];
  }

  static double turned(const SideWorld& world, int joint) {
    const auto turns = world.turns();
    return turns[index(joint)] - (joint == 0 ? kPlumb : turns[index(joint - 1)]);
  }

  const Linkage& linkage_;
  const std::vector<SectionMass>& masses_;
};

double greatest_turn(const Linkage& linkage, const Segment& segment) {
  const Configuration a = at(linkage, segment, 0.0), b = at(linkage, segment, 1.0);
  double most = std::abs(b.lean - a.lean);
  for (std::size_t k = 0; k < a.folds.size(); ++k) most = std::max(most, std::abs(b.folds[k] - a.folds[k]));
  return most;
}

class MoveRehearsal {
 public:
  MoveRehearsal(const Model& model, int move, const MoveTrial& proven, ProcedureAnswer& answer)
      : model_(model), move_(move), proven_(proven), answer_(answer) {}

  void run(std::mt19937& random) {
    ++answer_.moves;
    for (const Segment& segment : model_.moves[index(move_)].segments) run(segment, random);
  }

 private:
  void run(const Segment& segment, std::mt19937& random) {
    SideSetup setup;
    setup.step = kStep;
    setup.station = segment.from.station;
    setup.masses = random_masses(model_.linkage, random);
    const Hands hands(model_.linkage, setup.masses);
    SideWorld world(model_, setup, at(model_.linkage, segment, 0.0));
    const double whole = std::max(kLeast, 1.5 * greatest_turn(model_.linkage, segment) / kPace);
    const auto meant = [&](double time) {
      const double v = std::clamp(time / whole, 0.0, 1.0);
      return at(model_.linkage, segment, v * v * (3.0 - 2.0 * v));
    };
    while (world.time() < whole && !hands.astray(world, meant(world.time()))) {
      hands.hold(world, meant(world.time()), meant(world.time() + kStep));
      const SectionPoses X_W = world.poses();
      world.step();
      for (const WorldTouch& touch : world.new_touches()) take(world, touch, X_W, setup.station);
    }
  }

  void take(const SideWorld& world, const WorldTouch& touch, const SectionPoses& X_W, double station) {
    const auto section = [&](int part) { return world.parts()[index(part)].section; };
    const int a = section(touch.a) > section(touch.b) ? touch.a : touch.b, b = a == touch.a ? touch.b : touch.a;
    if (world.parts()[index(b)].kind == PartKind::zone) return;
    const TouchAndProof both =
        lay_beside(model_, move_, proven_, {a, world.parts()[index(a)], world.parts()[index(b)], X_W, station});
    ++answer_.touches;
    answer_.contradicted += both.contradicted();
    answer_.deciding += both.breaks_margin();
    if (both.off > kOnCourse) return;
    ++answer_.on_course;
    answer_.farthest = std::max(answer_.farthest, both.off);
  }

  const Model& model_;
  int move_;
  const MoveTrial& proven_;
  ProcedureAnswer& answer_;
};

// The side world does not roll: neither does the hoist, then.
void stay_at(Model& model, double station) {
  for (Move& move : model.moves)
    for (Segment& segment : move.segments) segment.from.station = segment.to.station = station;
}

// Somewhere in the way that a section takes in the move, or close by it.
RoomPart thing_in_the_way(const Model& model, const Segment& segment, int number, std::mt19937& random) {
  const Configuration pose = at(model.linkage, segment, uniform(random, 0.05, 1.0));
  const int section = static_cast<int>(uniform(random, 0.0, model.linkage.sections - 1e-9));
  const Vec2 on_section{uniform(random, 0.1, model.linkage.length[index(section)]), uniform(random, -0.1, 0.1)};
  const Vec2 there = place_sections(model.linkage, pose)[index(section)] * on_section;
  RoundedPolygon shape = random_outline(random);
  const Vec2 from = shape.core.front();
  for (Vec2& corner : shape.core) corner = there + 0.2 * (corner - from);
  shape.radius *= 0.2;
  const double lo = pose.station + uniform(random, -0.4, 0.3);
  return {PartKind::obstacle, "thing in the way " + std::to_string(number), shape, {{lo, lo + 0.1}}, 0.0,
          1000 + number};
}

void put_in_the_way(Model& model, std::mt19937& random) {
  for (const Move& move : model.moves)
    if (!is_state(move.kind)) model.room.push_back(thing_in_the_way(model, move.segments.front(), move.index, random));
}

}  // namespace

ProcedureAnswer try_procedure(Model model, std::uint64_t seed, double bound_scale) {
  std::mt19937 random(static_cast<std::mt19937::result_type>(seed * 1181783497U + 7U));
  stay_at(model, model.moves.back().segments.back().from.station);
  put_in_the_way(model, random);
  DryFitOptions options;
  options.least = false;
  options.bound_scale = bound_scale;
  Trial trial(model, options);
  ProcedureAnswer answer;
  for (int move = 0; move < static_cast<int>(model.moves.size()); ++move) {
    if (is_state(model.moves[index(move)].kind)) continue;
    const MoveTrial proven = trial.run(move);
    MoveRehearsal(model, move, proven, answer).run(random);
  }
  return answer;
}

}  // namespace stowpath::testing
