#include "sim/loads/standing_state.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "sim/mechanism/scene_fault.h"
#include "sim/mechanism/side_rail_band.h"
#include "sim/trade/us_units.h"

namespace stowpath {

namespace {

/// What a set of weights and pushes does to the stair as a whole, in the side view.
struct SideView {
  double floor = 0.0;               // on all casters, upward [N]
  double hooks = 0.0;               // on all hooks, upward [N]
  double thrust = 0.0;              // on all hooks, outward [N]
  std::vector<double> moments;      // about each hinge of what is below it; positive where it sags [N m]
  std::vector<AlongAcross> passed;  // by each joint to what is below it
};

// A force on a section of the standing stair.
struct Push {
  int section = 0;
  Vec2 at;     // [m]
  Vec2 force;  // out, up [N]
};

std::vector<Push> pushes_of(const std::vector<Weight>& weights) {
  std::vector<Push> out;
  for (const Weight& weight : weights) out.push_back({weight.section, weight.at, {0.0, -weight.force}});
  return out;
}

AlongAcross split(const StandingStair& stair, Vec2 force) {
  return {dot(force, {stair.sine, -stair.cosine}), dot(force, {stair.cosine, stair.sine})};
}

SideView side_view(const StandingStair& stair, const std::vector<Push>& pushes) {
  const Vec2 pivot = stair.model.linkage.pivot;
  Vec2 total;
  double turning = 0.0;
  for (const Push& push : pushes) total = total + push.force, turning -= cross(push.at - pivot, push.force);
  SideView view{turning / (stair.axle.x - pivot.x), 0.0, -total.x, {}, {}};
  view.hooks = -total.y - view.floor;
  for (int k = 0; k + 1 < stair.model.linkage.sections; ++k) {
    const Vec2 axis = stair.room(k, stair.model.linkage.distal(k));
    Vec2 below{0.0, view.floor};
    double moment = view.floor * (stair.axle.x - axis.x);
    for (const Push& push : pushes) {
      if (push.section <= k) continue;
      below = below + push.force;
      moment += cross(push.at - axis, push.force);
    }
    view.moments.push_back(moment);
    view.passed.push_back(split(stair, -1.0 * below));
  }
  return view;
}

/// One person, in one case, at one place.
struct Posture {
  const LoadCase& load;
  const Standpoint& stands;
  double aside = 0.0;    // positive to the right [m]
  double outward = 0.0;  // level push on the stair [N]
};

std::vector<Push> pushes_of(const StandingStair& stair, const Posture& posture) {
  const Standpoint& stands = posture.stands;
  const Vec2 at = stair.room(stands.section, stands.at) + Vec2{posture.load.beyond, 0.0};
  return {{stands.section, at, {posture.outward, -posture.load.mass * kGravity}}};
}

/// How the outermost hooks and casters share, by the right one of each.
struct Share {
  double right_hook = 0.0, right_caster = 0.0;  // [N]
};

/// Across the stair: what its feet carry together, and the moment about its middle.
struct FrontView {
  double hooks = 0.0, floor = 0.0, moment = 0.0;  // [N], [N], [N m]
  Interval hook, caster;                          // outermost stations [m]

  double right_hook(double right_caster) const {
    const double casters = right_caster * caster.hi + (floor - right_caster) * caster.lo;
    return hook.length() > 0.0 ? (moment - casters - hooks * hook.lo) / hook.length() : hooks;
  }
  double right_caster(double right_hook) const {
    const double on_hooks = right_hook * hook.hi + (hooks - right_hook) * hook.lo;
    return caster.length() > 0.0 ? (moment - on_hooks - floor * caster.lo) / caster.length() : floor;
  }
  Share with(double q) const { return {right_hook(q), q}; }
};

Interval outermost(const std::vector<double>& stations) {
  if (stations.empty()) return {0.0, 0.0};
  const auto [lo, hi] = std::minmax_element(stations.begin(), stations.end());
  return {*lo, *hi};
}

/// What the right caster may carry so that nothing pulls; where it cannot be, the nearest that floor allows.
Interval right_caster_range(const FrontView& front) {
  if (!(front.caster.length() > 0.0)) return {front.floor, front.floor};
  if (!(front.hook.length() > 0.0)) {
    const double q = std::clamp(front.right_caster(front.hooks), 0.0, std::max(0.0, front.floor));
    return {q, q};
  }
  const double floor = std::max(0.0, front.floor);
  const double lo = std::clamp(front.right_caster(front.hooks), 0.0, floor);
  const double hi = std::clamp(front.right_caster(0.0), 0.0, floor);
  return {std::min(lo, hi), std::max(lo, hi)};
}

std::vector<double> spread_to(const std::vector<double>& stations, double all, double right) {
  std::vector<double> out(stations.size(), 0.0);
  if (stations.empty()) return out;
  const auto [lo, hi] = std::minmax_element(stations.begin(), stations.end());
  out[static_cast<std::size_t>(lo - stations.begin())] += all - right;
  out[static_cast<std::size_t>(hi - stations.begin())] += right;
  return out;
}

/// By how much of everything each side rail carries: of the person, and of the stair itself.
struct SideShare {
  double person = 0.5, own = 0.5;
};

SideShare right_side_share(const StandingStair& stair, double aside) {
  const Stair& built = stair.scene.stair;
  const double apart = built.width - built.side_rails.thickness;
  return {std::clamp(0.5 + aside / apart, 0.0, 1.0), 0.5};
}

class StateMaker {
 public:
  StateMaker(const StandingStair& stair, const Posture& posture)
      : stair_(stair),
        posture_(posture),
        own_(side_view(stair, pushes_of(own_weights(stair)))),
        person_(side_view(stair, pushes_of(stair, posture))),
        front_{own_.hooks + person_.hooks, own_.floor + person_.floor, posture.load.mass * kGravity * posture.aside,
               outermost(stair.scene.stair.hooks.stations), outermost(stair.scene.stair.casters.stations)} {}

  void add_to(std::vector<StandingState>& states) const {
    const Interval range = right_caster_range(front_);
    const SideShare right = right_side_share(stair_, posture_.aside);
    const double even = person_.floor * right.person + own_.floor * right.own;
    states.push_back(state(std::clamp(even, range.lo, range.hi), right));
    if (!(range.length() > 1e-9 * std::abs(front_.floor))) return;
    for (const double q : {range.lo, range.hi}) {
      const double share = q / front_.floor;
      states.push_back(state(q, {share, share}));
      states.back().where += uneven_text(q);
    }
  }

 private:
  std::string uneven_text(double right_caster) const {
    const double slight = 1e-6 * front_.floor;
    if (right_caster <= slight) return ", right caster in the air";
    if (right_caster >= front_.floor - slight) return ", left caster in the air";
    return front_.right_hook(right_caster) < 0.5 * front_.hooks ? ", right hook in the air" : ", left hook in the air";
  }

  std::string where() const {
    std::string text = posture_.load.name + " on " + posture_.stands.name;
    if (posture_.aside == 0.0) return text;
    return text + ", " + say_length(stair_.scene, Nominal{std::abs(posture_.aside)}) +
           (posture_.aside < 0.0 ? " to the left" : " to the right");
  }

  StandingState state(double right_caster, SideShare right) const {
    const Stair& built = stair_.scene.stair;
    StandingState out;
    out.where = where();
    out.ultimate = posture_.load.ultimate;
    out.on_tread = posture_.load.mass * kGravity;
    out.hooks = spread_to(built.hooks.stations, front_.hooks, front_.right_hook(right_caster));
    out.casters = spread_to(built.casters.stations, front_.floor, right_caster);
    out.floor = front_.floor;
    out.along = posture_.load.push;
    out.thrust = own_.thrust + person_.thrust;
    out.lifts = std::max(0.0, -person_.hooks);
    out.held_down = own_.hooks;
    look_at_tipping(out);
    out.sides[0] = side({1.0 - right.person, 1.0 - right.own});
    out.sides[1] = side(right);
    return out;
  }

  /// The side of the stand runs from the outermost hook to the outermost caster; the rail and the floor hold no side
  /// down.
  void look_at_tipping(StandingState& out) const {
    if (posture_.aside == 0.0 || stair_.scene.stair.casters.stations.empty()) return;
    const double way = posture_.aside < 0.0 ? -1.0 : 1.0;
    const double pivot = stair_.model.linkage.pivot.x;
    const Vec2 hook{pivot, std::abs(way < 0.0 ? front_.hook.lo : front_.hook.hi)};
    const Vec2 caster{stair_.axle.x, std::abs(way < 0.0 ? front_.caster.lo : front_.caster.hi)};
    const double length = norm(caster - hook);
    const auto inside = [&](Vec2 p) { return cross(p - hook, caster - hook) / length; };
    const Push person = pushes_of(stair_, posture_).front();
    out.tips = std::max(0.0, person.force.y * inside({person.at.x, std::abs(posture_.aside)}));
    for (const Weight& weight : own_weights(stair_)) out.tipping_held += weight.force * inside({weight.at.x, 0.0});
  }

  SideLoad side(SideShare share) const {
    const BeamPeaks peaks = rail_peaks(share);
    const double one_of_two = 2.0;  // the beam is as stiff as both side rails together
    SideLoad out{std::max(peaks.sagging.value, peaks.hogging.value),
                 peaks.shear.value,
                 one_of_two * std::max(peaks.down.value, peaks.up.value),
                 {}};
    for (int k = 0; k + 1 < stair_.model.linkage.sections; ++k) {
      const auto i = static_cast<std::size_t>(k);
      const double moment = share.person * person_.moments[i] + share.own * own_.moments[i];
      const AlongAcross &p = person_.passed[i], &o = own_.passed[i];
      out.joints.push_back(
          joint_load(stair_, k, moment,
                     {share.person * p.along + share.own * o.along, share.person * p.across + share.own * o.across}));
    }
    return out;
  }

  BeamPeaks rail_peaks(SideShare share) const {
    Beam beam = stair_.beam;
    for (SpreadLoad& own : beam.spread) own.per_length *= share.own;
    const double at = std::clamp(posture_.stands.along, beam.ends.lo, beam.ends.hi);
    const double across = posture_.load.mass * kGravity * stair_.sine - posture_.outward * stair_.cosine;
    return beam_peaks(solve_beam(beam, std::vector<PointLoad>{{at, share.person * across}}));
  }

  const StandingStair& stair_;
  const Posture& posture_;
  SideView own_, person_;
  FrontView front_;
};

std::vector<double> to_each_side(double size) {
  if (!(size > 0.0)) return {0.0};
  return {0.0, -size, size};
}

}  // namespace

JointLoad joint_load(const StandingStair& stair, int hinge, double moment, AlongAcross passed) {
  const Stair& built = stair.scene.stair;
  const Vec2 axis = stair.model.linkage.distal(hinge);
  const Interval band = across_band(built);
  const double size = std::abs(moment), along = std::abs(passed.along), across = std::abs(passed.across);
  const double far_face = std::max(std::abs(axis.y - band.lo), std::abs(axis.y - band.hi));
  JointLoad joint;
  joint.hinge = hinge;
  joint.moment = moment;
  joint.hinge_butted = {size / far_face + along, across};
  joint.hinge_unlocked = size / far_face + std::hypot(along, across);
  joint.hinge_force = joint.hinge_unlocked;
  joint.hinge_pinned = joint.hinge_butted;
  if (built.locks.empty()) return joint;
  const Vec2 arm = Vec2{axis.x + 0.25 * built.locks[static_cast<std::size_t>(hinge)].length, band.middle()} - axis;
  joint.arm = norm(arm);
  joint.pin = size / joint.arm;
  joint.pin_across = joint.pin * std::abs(arm.x) / joint.arm;
  joint.scab = size;
  joint.hinge_force = joint.pin + std::hypot(along, across);
  joint.hinge_pinned = {joint.pin * std::abs(arm.y) / joint.arm + along, joint.pin_across + across};
  return joint;
}

double sum_of(const std::vector<double>& forces) { return std::accumulate(forces.begin(), forces.end(), 0.0); }

std::vector<StandingState> standing_states_at(const StandingStair& stair, const LoadCase& load,
                                              const Standpoint& point) {
  std::vector<StandingState> states;
  for (const double outward : to_each_side(load.push))
    for (const double aside : to_each_side(load.aside))
      StateMaker(stair, Posture{load, point, aside, outward}).add_to(states);
  return states;
}

std::vector<StandingState> standing_states(const StandingStair& stair, const std::vector<LoadCase>& cases) {
  std::vector<StandingState> states;
  const std::vector<Standpoint> points = standpoints(stair);
  for (std::size_t c = 0; c < cases.size(); ++c) {
    const LoadCase& load = cases[c];
    for (std::size_t i = load.top_only && !points.empty() ? points.size() - 1 : 0; i < points.size(); ++i) {
      for (StandingState& state : standing_states_at(stair, load, points[i])) {
        state.load_case = c;
        states.push_back(std::move(state));
      }
    }
  }
  return states;
}

}  // namespace stowpath
