#include "sim/mechanism/procedure.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "sim/mechanism/haul.h"
#include "sim/mechanism/scene_fault.h"
#include "sim/trade/length.h"

namespace stowpath {

namespace {

constexpr double kSameAngle = 1e-9;    // [rad]
constexpr double kSameStation = 1e-3;  // a line hooked on this far from home still hangs plumb along the rail [m]

std::string hinge_name(int hinge) { return "hinge " + std::to_string(hinge + 1); }

/// Does one step after the other, noting each as a move.
class Performance {
 public:
  Performance(const Scene& scene, const Model& model, const Standing& standing);
  std::vector<Move> perform();

 private:
  void perform(const Step& step);
  void roll(const Step& step);
  void roll_standing(double station);
  void roll_raised(double station);
  void lift(const Step& step);
  void fold(const Step& step);
  void together(const Step& step);
  void haul_up(const Step& step);
  void pin(const Step& step);
  void unpin(const Step& step);
  void hook_on();
  void hook_off();
  void park();

  [[noreturn]] void refuse_step(const std::string& problem, const std::string& hint = "") const;
  void need_line(const std::string& what) const;
  void need_station(double station) const;
  void need_limit(int hinge, double fold) const;
  int need_hinge(const Step& step) const;
  double target_station(const Step& step) const;
  void set_folds(const Step& step, Configuration& to) const;
  int only_unpinned() const;

  bool stands() const;
  bool rolls_raised() const { return scene_.hoist && scene_.hoist->rolls; }
  Move move(MoveKind kind, ZoneState state, std::vector<Segment> segments) const;
  void add_straight(MoveKind kind, const Configuration& to);
  Segment standing_segment(double to_station) const;
  Interval astray(const Segment& segment) const;

  const Scene& scene_;
  const Model& model_;
  const Standing& standing_;
  Configuration now_;
  bool hooked_on_ = false;
  std::vector<bool> pinned_;
  std::vector<Move> moves_;
  int index_ = 0;
};

Performance::Performance(const Scene& scene, const Model& model, const Standing& standing)
    : scene_(scene), model_(model), standing_(standing), pinned_(scene.stair.hinges.size(), true) {
  now_.station = model.home.value_or(model.span.middle());
  now_.lean = standing.lean;
}

std::vector<Move> Performance::perform() {
  const Move standing = move(MoveKind::stand, ZoneState::standing, {standing_segment(now_.station)});
  for (const Step& step : scene_.procedure) {
    ++index_;
    perform(step);
  }
  const auto is = [](ZoneState state) { return [state](const Move& m) { return m.state == state; }; };
  if (std::any_of(moves_.begin(), moves_.end(), is(ZoneState::moving))) park();
  if (std::none_of(moves_.begin(), moves_.end(), is(ZoneState::standing))) moves_.insert(moves_.begin(), standing);
  return std::move(moves_);
}

void Performance::perform(const Step& step) {
  switch (step.kind) {
    case StepKind::roll:
      return roll(step);
    case StepKind::lift:
      return lift(step);
    case StepKind::fold:
      return fold(step);
    case StepKind::together:
      return together(step);
    case StepKind::drag:
    case StepKind::hang:
      return haul_up(step);
    case StepKind::pin:
      return pin(step);
    case StepKind::unpin:
      return unpin(step);
    case StepKind::hook_on:
      return hook_on();
    case StepKind::hook_off:
      return hook_off();
  }
}

void Performance::roll(const Step& step) {
  const double station = target_station(step);
  need_station(station);
  if (hooked_on_ && !rolls_raised())
    refuse_step("the stair cannot roll on the hoist line, which hangs from a fixed point",
                "write `hook off: hoist` before it, or `rolls: yes` under `hoist`");
  return stands() ? roll_standing(station) : roll_raised(station);
}

void Performance::roll_standing(double station) {
  for (std::size_t k = 0; k < pinned_.size(); ++k)
    if (!pinned_[k])
      refuse_step("the standing stair would buckle at " + hinge_name(static_cast<int>(k)) + ", which is unpinned",
                  "write `pin: " + std::to_string(k + 1) + "` before it");
  moves_.push_back(move(MoveKind::roll, ZoneState::standing, {standing_segment(station)}));
  now_.station = station;
}

void Performance::roll_raised(double station) {
  if (!rolls_raised())
    refuse_step("the stair is off the floor, and the hoist does not roll",
                "roll before lifting, or write `rolls: yes` under `hoist`");
  Configuration to = now_;
  to.station = station;
  moves_.push_back(move(MoveKind::roll, ZoneState::moving, {{SegmentKind::straight, now_, to, {}, model_.span}}));
  now_ = to;
}

void Performance::lift(const Step& step) {
  need_line("lift");
  Configuration to = now_;
  to.lean = step.lean.value_or(now_.lean);
  add_straight(MoveKind::lift, to);
}

void Performance::fold(const Step& step) {
  Configuration to = now_;
  set_folds(step, to);
  add_straight(MoveKind::fold, to);
}

void Performance::together(const Step& step) {
  if (step.lean) need_line("together");
  Configuration to = now_;
  if (step.station || step.to_home) {
    to.station = target_station(step);
    need_station(to.station);
    if (!rolls_raised())
      refuse_step("the hoist does not roll, so the stair cannot change its station while it moves",
                  "leave `station` out, or write `rolls: yes` under `hoist`");
  }
  to.lean = step.lean.value_or(now_.lean);
  set_folds(step, to);
  add_straight(MoveKind::together, to);
}

void Performance::haul_up(const Step& step) {
  const bool drags = step.kind == StepKind::drag;
  const std::string word = drags ? "drag" : "hang";
  need_line(word);
  const LowerChain chain = lower_chain(model_.linkage, standing_, model_.masses, only_unpinned());
  const double lean = step.lean.value_or(now_.lean);
  if (lean <= now_.lean)
    refuse_step("a " + word + " raises the stair, but it leans " + format_degrees(Nominal{now_.lean}) + " already",
                "give a greater lean, or `lift` to lower it");
  if (drags && !foot_stands(model_.linkage, chain, now_))
    refuse_step("the casters are off the floor already", "write `hang` instead");
  std::vector<Segment> segments = haul(model_.linkage, chain, now_, lean);
  for (const Segment& segment : segments)
    need_limit(chain.rule.hinge, segment.to.folds[static_cast<std::size_t>(chain.rule.hinge)]);
  now_ = segments.back().to;
  moves_.push_back(move(drags ? MoveKind::drag : MoveKind::hang, ZoneState::moving, std::move(segments)));
}

void Performance::pin(const Step& step) {
  const auto k = static_cast<std::size_t>(need_hinge(step));
  if (pinned_[k]) refuse_step(hinge_name(step.hinge - 1) + " is pinned already");
  if (std::abs(now_.folds[k]) > kSameAngle)
    refuse_step(
        hinge_name(step.hinge - 1) + " is folded " + format_degrees(Nominal{now_.folds[k]}) + " and cannot be pinned",
        "fold it to 0 first");
  pinned_[k] = true;
}

void Performance::unpin(const Step& step) {
  const auto k = static_cast<std::size_t>(need_hinge(step));
  if (!pinned_[k]) refuse_step(hinge_name(step.hinge - 1) + " is unpinned already");
  pinned_[k] = false;
}

void Performance::hook_on() {
  if (!scene_.hoist) refuse_step("there is no hoist to hook on", "describe it under `hoist`");
  if (hooked_on_) refuse_step("the hoist line is on already");
  if (!rolls_raised() && model_.home && std::abs(now_.station - *model_.home) > kSameStation)
    refuse_step("the stair is at station " + say_length(scene_, Nominal{now_.station}) + ", the hoist's home at " +
                    say_length(scene_, Nominal{*model_.home}),
                "write `roll: home` before it");
  hooked_on_ = true;
}

void Performance::hook_off() {
  if (!hooked_on_) refuse_step("the hoist line is off already");
  hooked_on_ = false;
}

void Performance::park() {
  Segment still{SegmentKind::straight, now_, now_, {}, {1.0, 0.0}};
  if (rolls_raised()) still.stations = model_.span;
  moves_.push_back(move(MoveKind::park, ZoneState::parked, {still}));
}

void Performance::refuse_step(const std::string& problem, const std::string& hint) const {
  const auto i = static_cast<std::size_t>(index_ - 1);
  const std::string key = "procedure[" + std::to_string(i) + "]";
  const SourcePos at = scene_.procedure[i].at;
  throw SceneError(scene_.file, {{at.line > 0 ? at : place_of(scene_, key), key, problem, hint}});
}

void Performance::need_line(const std::string& what) const {
  if (scene_.hoist && !hooked_on_)
    refuse_step("a " + what + " before the hoist line is on", "write `hook on: hoist` before it");
}

void Performance::need_station(double station) const {
  if (model_.span.contains(station)) return;
  refuse_step("station " + say_length(scene_, Nominal{station}) + " is out of the stair's reach",
              "its hooks keep it between stations " + say_length(scene_, AtMost{model_.span.lo}) + " and " +
                  say_length(scene_, AtLeast{model_.span.hi}));
}

void Performance::need_limit(int hinge, double fold) const {
  const double limit = scene_.stair.hinges[static_cast<std::size_t>(hinge)].limit;
  if (fold < -kSameAngle)
    refuse_step(
        hinge_name(hinge) + " would have to open the other way by " + format_degrees(AtMost{-fold}),
        "a joint opens only towards the face that carries its hinge: lift the stair pinned, then unpin and fold");
  if (fold > limit + kSameAngle)
    refuse_step("a fold of " + format_degrees(AtMost{fold}) + " is more than " + hinge_name(hinge) + " allows, " +
                format_degrees(AtLeast{limit}));
}

int Performance::need_hinge(const Step& step) const {
  if (step.hinge < 1 || step.hinge > static_cast<int>(pinned_.size()))
    refuse_step("there is no hinge " + std::to_string(step.hinge));
  return step.hinge - 1;
}

double Performance::target_station(const Step& step) const {
  if (step.station) return *step.station;
  if (!model_.home) refuse_step("there is no home station", "give `hoist.home`, or write the station");
  return *model_.home;
}

void Performance::set_folds(const Step& step, Configuration& to) const {
  if (step.folds.size() > pinned_.size())
    refuse_step(std::to_string(step.folds.size()) + " folds given for " + std::to_string(pinned_.size()) + " hinges");
  for (std::size_t k = 0; k < step.folds.size(); ++k) {
    if (!step.folds[k]) continue;
    const int hinge = static_cast<int>(k);
    if (pinned_[k] && std::abs(*step.folds[k] - now_.folds[k]) > kSameAngle)
      refuse_step(hinge_name(hinge) + " is pinned and cannot fold",
                  "write `unpin: " + std::to_string(k + 1) + "` before it");
    need_limit(hinge, *step.folds[k]);
    to.folds[k] = *step.folds[k];
  }
}

int Performance::only_unpinned() const {
  const auto free = std::count(pinned_.begin(), pinned_.end(), false);
  if (free != 1)
    refuse_step(
        "the foot can drag or hang only below a single unpinned hinge, but " + std::to_string(free) + " are unpinned",
        free == 0 ? "write `unpin: 1` before it" : "pin the others");
  return static_cast<int>(std::find(pinned_.begin(), pinned_.end(), false) - pinned_.begin());
}

bool Performance::stands() const {
  return std::abs(now_.lean - standing_.lean) <= kSameAngle &&
         std::all_of(now_.folds.begin(), now_.folds.end(), [](double fold) { return std::abs(fold) <= kSameAngle; });
}

Move Performance::move(MoveKind kind, ZoneState state, std::vector<Segment> segments) const {
  for (Segment& segment : segments) segment.astray = astray(segment);
  return {index_, kind, std::move(segments), state, hooked_on_, pinned_};
}

void Performance::add_straight(MoveKind kind, const Configuration& to) {
  moves_.push_back(move(kind, ZoneState::moving, {{SegmentKind::straight, now_, to, {}, {1.0, 0.0}}}));
  now_ = to;
}

/// Nobody stops a stair at its mark to the millimetre, and no stop lets it go past itself.
Interval Performance::astray(const Segment& segment) const {
  if (segment.over_stations()) return {0.0, 0.0};
  const double least = std::min(segment.from.station, segment.to.station);
  const double most = std::max(segment.from.station, segment.to.station);
  return {std::min(0.0, std::max(-model_.home_within, model_.span.lo - least)),
          std::max(0.0, std::min(model_.home_within, model_.span.hi - most))};
}

Segment Performance::standing_segment(double to_station) const {
  Segment segment{SegmentKind::straight, now_, now_, {}, model_.span};
  segment.from.lean = standing_.leans.lo;
  segment.to.lean = standing_.leans.hi;
  segment.to.station = to_station;
  return segment;
}

}  // namespace

std::vector<Move> procedure_moves(const Scene& scene, const Model& model, const Standing& standing) {
  return Performance(scene, model, standing).perform();
}

std::vector<BuildFault> procedure_faults(const Scene& scene) {
  std::vector<BuildFault> faults;
  bool hooked_on = false;
  int number = 0;
  for (const Step& step : scene.procedure) {
    ++number;
    if (step.kind == StepKind::hook_on) hooked_on = true;
    if (step.kind == StepKind::hook_off) hooked_on = false;
    if (step.kind != StepKind::unpin || hooked_on || !scene.hoist) continue;
    faults.push_back({"step " + std::to_string(number) + " pulls pin " + std::to_string(step.hinge) +
                          " while no line holds the joint: hook the line on and take up its weight first",
                      {"lock pin", "hoist line"}});
  }
  return faults;
}

}  // namespace stowpath
