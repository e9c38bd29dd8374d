#include "sim/rehearsal/stage.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stowpath {

namespace {

constexpr double kSwiftest = 0.5;       // of a rope's bouncing, times the step: see docs/method.md
constexpr double kParkedFor = 3.0;      // watched once parked [s]
constexpr double kPushAt = 1.0;         // after the start, where nothing else is said [s]
constexpr double kLongest = 900.0;      // a rehearsal that takes longer is broken off [s]
constexpr double kAfterLongest = 12.0;  // [s]
constexpr double kStillRate = 0.02, kStillSpeed = 0.01, kStillFor = 0.5;  // [rad/s, m/s, s]
constexpr double kHit = 0.1;                                              // [m/s]
constexpr double kPasses = 0.05;   // a part slower than this strikes nobody [m/s]
constexpr double kAtLimit = 0.01;  // [rad]
constexpr double kHandRoom = 0.3;  // a person takes up this much either side [m]

std::size_t index(int i) { return static_cast<std::size_t>(i); }

SideSetup setup_for(const Scene& scene, const Model& model, const RehearsalOptions& options, const Crew& crew,
                    double step) {
  constexpr double kPinRadius = 0.005;  // as in PullOptions [m]
  SideSetup setup;
  setup.step = step;
  setup.station = crew.meant().station;
  setup.masses = crew.rig() != nullptr ? crew.rig()->masses : model.masses;
  for (const Hinge& hinge : scene.stair.hinges) setup.hinge_limits.push_back(hinge.limit);
  setup.pinned.assign(scene.stair.hinges.size(), true);
  for (const int hinge : options.no_pins) setup.pinned[index(hinge)] = false;
  setup.friction = choose_friction(scene.friction, options.friction);
  setup.hook_radius = scene.stair.hooks.inside;
  setup.hinge_radius = kPinRadius;
  setup.hook_wrap = scene.stair.hooks.wrap;
  return setup;
}

Interval widened(Interval all, Interval more) { return all.empty() ? more : hull(all, more); }

std::string pair_text(const SideWorld& world, std::pair<int, int> pair) {
  return world.parts()[index(pair.first)].name + " and " + world.parts()[index(pair.second)].name;
}

}  // namespace

Stage::Stage(const Scene& scene, const Model& model, const RehearsalOptions& options, double step)
    : scene_(scene),
      model_(model),
      options_(options),
      crew_(scene, model, options.friction, options.no_pins),
      world_(model, setup_for(scene, model, options, crew_, step), crew_.meant()),
      tally_(model, scene.stair.hooks.inside, options.frame) {
  tally_.report.bounds.step = step;
  tally_.report.recording.scene = model.name;
  tally_.report.recording.step = step;
  tally_.report.recording.sections = model.linkage.sections;
}

bool Stage::run() {
  start();
  while (!over()) {
    advance();
    if (crew_.swiftest() * world_.step_length() > kSwiftest) return false;
  }
  if (tally_.report.aftermath && !tally_.report.aftermath->nothing && ended_ < 0.0) end_aftermath();
  tally_.close(world_.time());
  return true;
}

void Stage::start() {
  world_.start_from_rest();
  for (const auto& pair : world_.met_from_start()) {
    const std::string text = pair_text(world_, pair);
    auto& met = tally_.report.met_from_start;
    if (std::find(met.begin(), met.end(), text) == met.end()) met.push_back(text);
  }
  if (options_.no_pins.empty()) return;
  begin_aftermath("the stair stands without the pin of hinge " + std::to_string(options_.no_pins.front() + 1),
                  RecordedEventKind::unpinned, false);
}

bool Stage::over() const {
  const double now = world_.time();
  if (now > kLongest) return true;
  if (tally_.report.aftermath && !tally_.report.aftermath->nothing) return ended_ >= 0.0;
  const auto waits = [&](std::optional<double> at) { return at && now < *at + kParkedFor; };
  if (waits(options_.let_go) || waits(options_.line_breaks)) return false;
  if ((options_.push || options_.gust) && (!pushed_ || now < push_from_ + 3.0 * kParkedFor)) return false;
  return crew_.finished() && !tally_.report.moves.empty() ? now > tally_.report.moves.back().ends + kParkedFor
                                                          : crew_.finished() && now > kParkedFor;
}

void Stage::advance() {
  try_things();
  crew_.work(world_);
  push_now();
  const double done = crew_.done_by_crew() + push_work_;
  world_.step();
  tally_.watch(world_, crew_, tally_.report.aftermath.has_value());
  watch_push();
  watch_energy();
  done_before_ = done;
  if (tally_.report.aftermath && !tally_.report.aftermath->nothing && ended_ < 0.0) watch_aftermath();
}

void Stage::try_things() {
  const double now = world_.time();
  if (gone_) return;
  const bool lets_go = options_.let_go && now >= *options_.let_go;
  const bool breaks = options_.line_breaks && now >= *options_.line_breaks;
  if (!lets_go && !breaks) return;
  gone_ = true;
  if (breaks) return begin_aftermath("the line breaks", RecordedEventKind::line_broken, true);
  begin_aftermath("the line is let go", RecordedEventKind::let_go, true);
}

void Stage::begin_aftermath(const std::string& cause, RecordedEventKind kind, bool line_gone) {
  Aftermath after;
  after.cause = cause;
  after.begins = after.ends = still_since_ = world_.time();
  tally_.note(world_.time(), kind, "", "", kind == RecordedEventKind::unpinned ? options_.no_pins.front() + 1 : 0.0);
  const bool on = crew_.hooked_on();
  if (line_gone && kind == RecordedEventKind::let_go && on)
    after.stopped_by = holder_of_line(scene_, crew_.move() >= 0);
  if (line_gone && !on) after.stopped_by = "nothing: the line is not on";
  after.nothing = !after.stopped_by.empty();
  tally_.report.aftermath = after;
  if (line_gone && !after.nothing) crew_.let_go();
}

void Stage::push_now() {
  if (!options_.push && !options_.gust) return;
  const bool parked = crew_.finished() && !tally_.report.moves.empty();
  const bool now =
      options_.when ? world_.time() >= *options_.when : (options_.push ? world_.time() >= kPushAt : parked);
  if (!now && !pushed_) return;
  if (!pushed_) {
    pushed_ = true;
    push_from_ = world_.time();
    push_leans_ = leans_in(world_);
    if (options_.push) tally_.report.push_at = push_point(model_, world_.poses(), options_.push->height).height;
    if (options_.push) tally_.note(push_from_, RecordedEventKind::pushed, "", "", options_.push->force);
    if (options_.gust) tally_.note(push_from_, RecordedEventKind::gust, "", "", options_.gust->speed);
  }
  const double for_now = world_.time() - push_from_;
  const auto load = [&](int section, Vec2 at, Vec2 force) {
    world_.push(section, at, force);
    push_work_ += dot(force, world_.point_velocity(section, at)) * world_.step_length();
  };
  const SectionPoses X_W = world_.poses();
  if (options_.push && for_now < options_.push->seconds) {
    const PushPoint point = push_point(model_, X_W, options_.push->height);
    load(point.section, point.at, {options_.push->force, 0.0});
  }
  for (int j = 0; j < model_.linkage.sections && options_.gust && for_now < options_.gust->seconds; ++j)
    load(j, model_.masses[index(j)].centre, gust_force(face_area(model_, j), X_W[index(j)], options_.gust->speed));
}

void Stage::watch_push() {
  if (!pushed_) return;
  const auto leans = leans_in(world_);
  double swing = tally_.report.push_swing.value_or(0.0);
  for (int j = 0; j < model_.linkage.sections; ++j)
    swing = std::max(swing, std::abs(leans[index(j)] - push_leans_[index(j)]));
  if (world_.time() < push_from_ + 2.0 * kParkedFor) tally_.report.push_swing = swing;
}

// What the world holds, less what was put in, may only fall: friction and strokes take, nothing gives.
void Stage::watch_energy() {
  const auto stored = [](const LinePull& line) {
    return line.stretch > 0.0 ? 0.5 * line.stiffness * line.stretch * line.stretch : 0.0;
  };
  const double fold = crew_.fold_line_works() ? stored(crew_.fold_line()) : 0.0;
  const double ledger = world_.energy() + stored(crew_.line()) + fold - done_before_;
  RehearsalBounds& bounds = tally_.report.bounds;
  if (!ledger_begun_) ledger_least_ = ledger_ = ledger;
  ledger_begun_ = true;
  ledger_least_ = std::min(ledger_least_, ledger);
  bounds.energy_gain = std::max(bounds.energy_gain, ledger - ledger_least_);
  bounds.energy_scale = std::max(bounds.energy_scale, std::abs(world_.energy() - ledger_));
}

double Stage::kinetic() const {
  const SectionPoses X_W = world_.poses();
  double energy = 0.0;
  for (int j = 0; j < model_.linkage.sections; ++j) {
    const SectionMotion motion = world_.motion(j);
    const Vec2 velocity =
        motion.velocity + motion.rate * quarter_turn(X_W[index(j)].turn(model_.masses[index(j)].centre));
    energy += 0.5 * model_.masses[index(j)].mass * norm_squared(velocity) +
              0.5 * model_.masses[index(j)].inertia * motion.rate * motion.rate;
  }
  return energy;
}

bool Stage::still() const {
  for (int j = 0; j < model_.linkage.sections; ++j) {
    const SectionMotion motion = world_.motion(j);
    if (std::abs(motion.rate) > kStillRate || norm(motion.velocity) > kStillSpeed) return false;
  }
  return true;
}

void Stage::watch_aftermath() {
  Aftermath& after = *tally_.report.aftermath;
  const double now = world_.time();
  const int last = model_.linkage.sections - 1;
  after.top_speed =
      std::max(after.top_speed, norm(world_.point_velocity(last, {model_.linkage.length[index(last)], 0.0})));
  after.energy = std::max(after.energy, kinetic());
  for (const WorldTouch& touch : world_.new_touches()) {
    if (touch.speed < kHit || !after.first_hit.empty()) continue;
    const bool swapped = world_.parts()[index(touch.a)].section < 0;
    after.first_hit = world_.parts()[index(swapped ? touch.b : touch.a)].name;
    after.first_other = world_.parts()[index(swapped ? touch.a : touch.b)].name;
    after.hit_time = now - after.begins;
    after.hit_speed = touch.speed;
    after.hit_energy = touch.energy;
  }
  if (now >= next_look_) watch_below();
  if (!still()) still_since_ = now;
  if (now - still_since_ > kStillFor || now - after.begins > kAfterLongest) end_aftermath();
}

void Stage::watch_below() {
  Aftermath& after = *tally_.report.aftermath;
  next_look_ = world_.time() + options_.frame;
  const SectionPoses X_W = world_.poses();
  for (const WorldPart& part : world_.parts()) {
    if (part.section < 0) continue;
    const RoundedPolygon shape = placed(part.shape, X_W[index(part.section)]);
    const BoundingDisc disc = bounding_disc(part.shape);
    if (norm(world_.point_velocity(part.section, disc.centre)) < kPasses) continue;
    for (const Vec2 corner : shape.core) {
      if (corner.y - shape.radius > model_.floor_level + options_.head_height) continue;
      after.under = widened(after.under, {corner.x - shape.radius, corner.x + shape.radius});
      for (const Interval& stretch : part.stations) after.under_stations = widened(after.under_stations, stretch);
    }
  }
}

void Stage::end_aftermath() {
  Aftermath& after = *tally_.report.aftermath;
  ended_ = after.ends = world_.time();
  after.at_rest = still() && ended_ - still_since_ >= kStillFor;
  const auto& spells = tally_.report.hooks_off;
  after.hooks_left = std::any_of(spells.begin(), spells.end(), [](const HookSpell& spell) { return spell.off; });
  after.stopped_by = lies_against();
  if (after.at_rest) tally_.note(ended_, RecordedEventKind::at_rest);
  if (crew_.rig() == nullptr || after.under.empty()) return;
  const RopePoint& hand = crew_.rig()->line.points.back();
  after.hand_under = hand.section < 0 && hand.at.x > after.under.lo - kHandRoom &&
                     hand.at.x < after.under.hi + kHandRoom && hand.station > after.under_stations.lo - kHandRoom &&
                     hand.station < after.under_stations.hi + kHandRoom;
}

std::string Stage::lies_against() const {
  std::vector<std::string> names;
  const auto add = [&](const std::string& name) {
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  };
  for (const auto& [a, b] : world_.touching()) {
    if (world_.parts()[index(a)].section < 0) add(world_.parts()[index(a)].name);
    if (world_.parts()[index(b)].section < 0) add(world_.parts()[index(b)].name);
  }
  const auto leans = leans_in(world_);
  for (int k = 0; k + 1 < model_.linkage.sections; ++k) {
    const double fold = model_.linkage.fold_sign[index(k)] * (leans[index(k + 1)] - leans[index(k)]);
    const double limit = scene_.stair.hinges[index(k)].limit;
    if (!world_.pinned()[index(k)] && (fold < kAtLimit || fold > limit - kAtLimit))
      add("the stop of hinge " + std::to_string(k + 1));
  }
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
  return text;
}

}  // namespace stowpath
