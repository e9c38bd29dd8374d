#include "tests/campaign/scene_draw.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <string>

#include "tests/support/random_outlines.h"

namespace stowpath::testing {
namespace {

constexpr double kSpan = 6.0;

class SceneDraw {
 public:
  explicit SceneDraw(std::uint64_t seed) : random_(static_cast<std::mt19937::result_type>(seed * 2654435761u + 17u)) {}

  Model model() {
    model_.span = model_.loft_span = {0.4, kSpan - 0.4};
    model_.margin = {0.012, 0.003, 0.003};
    if (chance(0.3)) model_.hook_play = between(0.0, 0.004);
    chain();
    for (int j = 0; j < model_.linkage.sections; ++j) section(j);
    hooks();
    line();
    moves();
    room();
    return model_;
  }

 private:
  double between(double lo, double hi) { return uniform(random_, lo, hi); }
  bool chance(double share) { return between(0.0, 1.0) < share; }

  void chain() {
    Linkage& l = model_.linkage;
    l.pivot = {1.0, 2.9};
    l.sections = 1 + static_cast<int>(between(0.0, 2.999));
    for (std::size_t k = 0; k < 3; ++k) l.length[k] = between(0.8, 1.8);
    for (std::size_t k = 0; k < 2; ++k) {
      l.fold_sign[k] = chance(0.5) ? 1.0 : -1.0;
      l.hinge_across[k] = l.fold_sign[k] * between(0.08, 0.12);
    }
  }

  void part(PartKind kind, int j, RoundedPolygon outline, std::vector<Interval> stations) {
    model_.stair.push_back(
        {kind, "part " + std::to_string(model_.stair.size()), j, std::move(outline), std::move(stations), false, -1});
  }

  void section(int j) {
    const double length = model_.linkage.length[static_cast<std::size_t>(j)];
    part(PartKind::side_rail, j, make_box({0.03, -0.07}, {length - 0.03, 0.07}), {{-0.28, -0.24}, {0.24, 0.28}});
    for (int k = 0; k < 2; ++k) {
      const double at = between(0.1, length - 0.3);
      part(PartKind::tread, j, make_box({at, -0.07}, {at + 0.03, 0.07}), {{-0.24, 0.24}});
    }
    if (chance(0.5)) {
      const Vec2 at{between(0.1, length - 0.1), chance(0.5) ? 0.12 : -0.12};
      const double radius = between(0.01, 0.04);
      part(PartKind::extra, j, make_disc(at, radius), {{-0.3, between(-0.29, 0.3)}});
    }
  }

  void hooks() {
    part(PartKind::hook, 0, make_capsule({-0.03, -0.03}, {-0.035, 0.01}, 0.006), {{-0.27, -0.25}, {0.25, 0.27}});
  }

  /// A line from the ceiling or from a trolley that rolls along; some run aslant along the rail.
  void line() {
    now_.station = between(1.5, kSpan - 1.5);
    const bool rolls = chance(0.5), aslant = chance(0.1);
    const double pick = between(-0.2, 0.2), top = pick + (aslant ? between(-0.4, 0.4) : 0.0);
    const double s = top + (rolls ? 0.0 : now_.station);
    const int picked = static_cast<int>(between(0.0, model_.linkage.sections - 0.001));
    RopeRun run{PartKind::line, "line", {-1, {2.4, 4.1}, {s, s}, rolls}, {picked, {0.7, 0.0}, {pick, pick}},
                0.004,          LineState::hooked_on};
    run.id = 0;
    model_.ropes.push_back(run);
    // What the line is tied to: the rule's disc is smaller than what the reference leaves out.
    ContactRule tied{"tied", {0}, {}, ContactTime::line_on, -1, picked, {0.7, 0.0}, 0.1};
    tied.depth = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < model_.stair.size(); ++i) {
      model_.stair[i].id = 1 + static_cast<int>(i);
      if (model_.stair[i].section == picked) tied.b.push_back(model_.stair[i].id);
    }
    model_.contacts.push_back(tied);
  }

  void step(MoveKind kind, Segment segment) {
    Move move;
    move.index = static_cast<int>(model_.moves.size()) + 1;
    move.kind = kind;
    move.state = kind == MoveKind::roll   ? ZoneState::standing
                 : kind == MoveKind::park ? ZoneState::parked
                                          : ZoneState::moving;
    move.pinned = {false, false};
    const bool rolls = segment.over_stations() || segment.from.station != segment.to.station;
    move.hooked_on = kind != MoveKind::roll && (!rolls || model_.ropes.front().a.rolls);
    if (!segment.over_stations() && chance(0.5)) segment.astray = {-0.01, 0.01};
    move.segments = {segment};
    now_ = at(model_.linkage, segment, 1.0);
    model_.moves.push_back(move);
  }

  Segment from_here() const {
    Segment s;
    s.from = s.to = now_;
    return s;
  }

  void moves() {
    now_.lean = between(0.2, 0.4);
    Segment stand = from_here();
    stand.to.lean += 0.004;
    stand.stations = model_.span;
    step(MoveKind::roll, stand);
    const bool folds = model_.linkage.sections > 1;
    if (folds && chance(0.4)) drag();
    Segment lift = from_here();
    lift.to.lean = between(0.8, 1.5);
    step(MoveKind::lift, lift);
    if (folds) {
      Segment fold = from_here();
      for (std::size_t k = 0; k + 1 < static_cast<std::size_t>(model_.linkage.sections); ++k) {
        fold.to.folds[k] = between(0.5, 2.9);
      }
      if (chance(0.3)) fold.to.lean += between(-0.2, 0.2);
      step(MoveKind::fold, fold);
    }
    Segment together = from_here();
    together.to.lean = between(1.3, 1.6);
    together.to.station += between(-1.0, 1.0);
    step(MoveKind::together, together);
    step(MoveKind::park, from_here());
  }

  /// The foot slides outward until its section is near plumb.
  void drag() {
    Segment s = from_here();
    s.kind = SegmentKind::drag;
    const Linkage& l = model_.linkage;
    s.drag.hinge = 0;
    s.drag.axle = {l.length[1] - 0.05, 0.02};
    const HingeSwing swing = hinge_swing(l, s.from, 0);
    const auto height = [&](double lean) { return l.pivot.y - swing.reach * std::cos(lean + swing.phase); };
    const double foot = norm(s.drag.axle - l.proximal(1));
    s.drag.axle_height = (place_sections(l, now_)[1] * s.drag.axle).y;
    const double top = s.drag.axle_height + foot * (chance(0.3) ? 1.0 : between(0.97, 1.0));
    if (height(s.from.lean) >= top) return;
    s.to.lean = std::acos(std::clamp((l.pivot.y - top) / swing.reach, -1.0, 1.0)) - swing.phase;
    if (s.to.lean <= s.from.lean || std::abs(at(l, s, 0.0).folds[0]) > 1e-6) return;  // the other side of plumb
    step(MoveKind::drag, s);
  }

  void thing(PartKind kind, RoundedPolygon outline, std::vector<Interval> stations) {
    const int number = static_cast<int>(model_.room.size());
    model_.room.push_back({kind, "thing " + std::to_string(number), std::move(outline), std::move(stations),
                           chance(0.1) ? 5e-5 : 0.0, number});
  }

  /// Things stand anywhere, mostly off the stair's way; brackets by the rail.
  void room() {
    thing(PartKind::wall, make_box({-0.2, 0.0}, {0.0, 4.0}), {{-0.2, kSpan + 0.2}});
    std::vector<Interval> brackets;
    for (double s = 0.3; s < kSpan; s += 0.9) brackets.push_back({s, s + 0.006});
    if (chance(0.7)) thing(PartKind::bracket, make_box({0.6, 3.0}, {0.9, 3.012}), brackets);
    for (int k = 0; k < 3; ++k) {
      RoundedPolygon shape = random_outline(random_);
      const double away = between(0.3, 6.0);
      const Vec2 from = shape.core.front(), to = model_.linkage.pivot + away * unit();
      for (Vec2& v : shape.core) v = 0.5 * (v - from) + to;
      shape.radius *= 0.5;
      const double lo = between(0.0, kSpan);
      thing(PartKind::obstacle, shape, {{lo, lo + between(0.001, 1.5)}});
    }
    const Vec2 corner{between(1.5, 3.5), between(0.0, 4.0)};
    model_.zones.push_back({"zone",
                            {chance(0.5) ? ZoneState::parked : ZoneState::standing},
                            make_box(corner, corner + Vec2{0.8, 0.8}),
                            {between(0.0, 3.0), between(3.0, 6.0)}});
  }

  Vec2 unit() {
    const double angle = between(0.0, 6.283185307179586);
    return {std::cos(angle), std::sin(angle)};
  }

  std::mt19937 random_;
  Model model_;
  Configuration now_;
};

}  // namespace

Model draw_scene(std::uint64_t seed) { return SceneDraw(seed).model(); }

}  // namespace stowpath::testing
