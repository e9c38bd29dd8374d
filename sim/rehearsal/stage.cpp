#include "sim/rehearsal/stage.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>
#include <utility>

#include "sim/hoist/pull.h"
#include "sim/rehearsal/what_if.h"
#include "sim/trade/figure.h"

namespace stowpath {

namespace {

constexpr double kSwiftest = 0.5;                  // of a rope's bouncing, times the step: see docs/method.md
constexpr double kParkedFor = 3.0;                 // watched once parked [s]
constexpr double kShovedFor = 9.0;                 // watched after a push [s]
constexpr double kPushAt = 1.0;                    // after the start, or the roll, where nothing else is said [s]
constexpr double kTurnsOver = 0.3490658503988659;  // by so much off the way meant: 20 degrees; judgement [rad]
constexpr double kSameStation = 1e-9;              // [m]

std::size_t index(int i) { return static_cast<std::size_t>(i); }

// Whoever drives the stage: what is not there would be looked up outside of the scene's lists.
RehearsalOptions checked(const Scene& scene, RehearsalOptions options, double step) {
  if (!(step > 0.0 && options.frame > 0.0)) throw std::invalid_argument("a step must be greater than 0");
  for (const auto& time : {options.let_go, options.line_breaks, options.when})
    if (time && !(*time >= 0.0)) throw std::invalid_argument("a time must not be negative");
  for (const int hinge : options.no_pins)
    if (hinge < 0 || hinge >= static_cast<int>(scene.stair.hinges.size()))
      throw std::invalid_argument("there is no hinge " + std::to_string(hinge + 1));
  return options;
}

// A gust that waits for the stair to be parked is watched there.
Crew::Orders orders_for(const Model& model, const RehearsalOptions& options, double step) {
  const bool blown_parked = options.gust && !options.push && !options.when;
  PushOptions hand = options.hand;
  hand.height += model.floor_level;
  hand.step = step;
  return {options.no_pins,      options.comes_down, blown_parked ? kShovedFor : kParkedFor,
          options.hand_at_foot, options.from,       hand};
}

SideSetup setup_for(const Scene& scene, const Model& model, const RehearsalOptions& options, const Crew& crew,
                    double step) {
  SideSetup setup;
  setup.step = step;
  setup.station = crew.meant().station;
  setup.masses = crew.rig() != nullptr ? crew.rig()->masses : model.masses;
  for (const Hinge& hinge : scene.stair.hinges) setup.hinge_limits.push_back(hinge.limit);
  setup.pinned.assign(scene.stair.hinges.size(), true);
  for (const int hinge : options.no_pins) setup.pinned[index(hinge)] = false;
  setup.friction = choose_friction(scene.friction, options.friction);
  setup.hook_radius = scene.stair.hooks.inside;
  setup.hinge_radius = PullOptions{}.hinge_radius;
  setup.hook_wrap = scene.stair.hooks.wrap;
  return setup;
}

std::string pair_text(const SideWorld& world, std::pair<int, int> pair) {
  return world.parts()[index(pair.first)].name + " and " + world.parts()[index(pair.second)].name;
}

// "the pin of hinge 1", "the pins of hinges 1 and 2".
std::string pins_text(const std::vector<int>& hinges) {
  const std::set<int> all(hinges.begin(), hinges.end());
  std::string text;
  for (const int hinge : all)
    text += (text.empty() ? "" : hinge == *all.rbegin() ? " and " : ", ") + std::to_string(hinge + 1);
  return (all.size() > 1 ? "the pins of hinges " : "the pin of hinge ") + text;
}

// That a taut line holds [J].
double stored(const LinePull& line) {
  return line.stretch > 0.0 ? 0.5 * line.stiffness * line.stretch * line.stretch : 0.0;
}

}  // namespace

Stage::Stage(const Scene& scene, const Model& model, RehearsalOptions options, double step)
    : scene_(scene),
      model_(model),
      options_(checked(scene, std::move(options), step)),
      crew_(scene, model, options_.friction, orders_for(model, options_, step)),
      world_(model, setup_for(scene, model, options_, crew_, step), crew_.meant()),
      tally_(model, scene.stair.hooks.inside, options_.frame),
      shoves_(model),
      aftermath_(scene, model, options_.frame, options_.head_height) {
  tally_.report.bounds.step = step;
  tally_.report.recording.scene = model.name;
  tally_.report.recording.step = step;
  tally_.report.recording.sections = model.linkage.sections;
}

bool Stage::run() {
  start();
  double told = 0.0;
  while (!finished()) {
    advance();
    if (too_swift()) return false;
    if (options_.progress && time() >= told + 1.0) options_.progress(told = std::floor(time()));
  }
  close();
  return true;
}

void Stage::start() {
  world_.start_from_rest();
  tally_.begin(world_);
  stood_ = world_.poses();
  stood_leans_ = leans_in(world_);
  note_met();
  if (options_.no_pins.empty()) return;
  for (const int hinge : options_.no_pins) tally_.note(world_.time(), RecordedEventKind::unpinned, "", "", hinge + 1);
  Aftermath after;
  after.cause = "the stair stands without " + pins_text(options_.no_pins);
  begin_aftermath(after);
}

void Stage::note_met() {
  for (const auto& pair : world_.met_from_start()) {
    const std::string text = pair_text(world_, pair);
    auto& met = tally_.report.met_from_start;
    if (std::find(met.begin(), met.end(), text) == met.end()) met.push_back(text);
  }
}

// Where the crew have taken the stair along the rail, other things can be met.
void Stage::follow_along_rail() {
  if (crew_.along_rail()) {
    rolled_until_ = world_.time();
    return;
  }
  if (std::abs(world_.station() - crew_.meant().station) < kSameStation) return;
  world_.move_to(crew_.meant().station);
  note_met();
}

void Stage::advance(int steps) {
  for (int i = 0; i < steps; ++i) step();
}

void Stage::close() {
  if (follows()) end_aftermath();
  if (crew_.going_down() && crew_.finished() && crew_.gave_up().empty() && !has_aftermath()) stand_again();
  if (world_.time() > kLongestRehearsal && !crew_.finished())
    tally_.report.gave_up = "it takes more than 40 minutes, and is not watched further";
  say_what_was_not_tried();
  tally_.close(world_.time());
}

RehearsalReport Stage::so_far() const {
  Tally now = tally_;
  now.close(world_.time());
  return now.report;
}

void Stage::stand_again() {
  const int last = model_.linkage.sections - 1;
  const Vec2 foot{model_.linkage.length[index(last)], 0.0};
  const SectionPoses X_W = world_.poses();
  const auto leans = leans_in(world_);
  StandsAgain again;
  for (std::size_t j = 0; j < leans.size(); ++j)
    again.lean = std::max(again.lean, std::abs(leans[j] - stood_leans_[j]));
  again.hooks = norm(X_W[0].p - stood_[0].p);
  again.foot = norm(X_W[index(last)] * foot - stood_[index(last)] * foot);
  again.hooks_on_pipe = world_.hooks_on_pipe();
  tally_.report.again = again;
}

// Something followed that is not held.
bool Stage::has_aftermath() const { return tally_.report.aftermath && !tally_.report.aftermath->nothing; }

bool Stage::too_swift() const { return crew_.swiftest() * world_.step_length() > kSwiftest; }

// Once something has followed, there is no line left to lose.
bool Stage::waits_for_line() const {
  const auto waits = [&](std::optional<double> at) { return at && world_.time() < *at + kParkedFor; };
  return !has_aftermath() && (waits(options_.let_go) || waits(options_.line_breaks));
}

// A gust that waits for the stair to be parked does not come where the crew stop before.
bool Stage::waits_for_shove() const {
  const bool asked = (options_.push || options_.gust) && !shoves_tried_;
  return asked && (options_.when || options_.push || !crew_.stopped());
}

bool Stage::shoved() const { return shoves_.last_begun() && world_.time() < *shoves_.last_begun() + kShovedFor; }

bool Stage::finished() const {
  const double now = world_.time();
  if (now > kLongestRehearsal) return true;
  if (waits_for_line() || waits_for_shove() || shoved()) return false;
  if (has_aftermath()) return ended_;
  return done_at_ && now > *done_at_ + kParkedFor;
}

// The world has to be where the crew have taken it before it is loaded.
void Stage::step() {
  try_what_is_asked();
  follow_along_rail();
  crew_.work(world_);
  shoves_.load(world_);
  const double done = crew_.done_by_crew() + shoves_.work();
  world_.step();
  note_met();
  tally_.watch(world_, crew_, has_aftermath());
  watch_shoves();
  watch_energy();
  watch_crew();
  watch_turning_over();
  done_before_ = done;
  if (!has_aftermath()) return;
  aftermath_.watch(world_, *tally_.report.aftermath);
  if (!ended_ && !shoved() && aftermath_.over(world_)) end_aftermath();
}

void Stage::try_what_is_asked() {
  const double now = world_.time();
  const auto due = [&](std::optional<double> at) { return at && now >= *at; };
  if (!line_tried_ && due(options_.line_breaks)) break_line();
  if (!line_tried_ && due(options_.let_go)) let_go();
  if (waits_for_shove()) shove_if_due();
}

void Stage::shove_if_due() {
  const double now = world_.time(), push_at = rolled_until_ + kPushAt;
  const bool works = !crew_.parked() && !crew_.finished();
  if (options_.when ? now < *options_.when : (options_.push ? now < push_at : works)) return;
  shoves_tried_ = true;
  if (options_.push) push(*options_.push);
  if (options_.gust) gust(*options_.gust);
}

void Stage::leave_untried(const std::string& what, double when, const std::string& why) {
  tally_.report.not_tried.push_back(what + " at " + format_decimal(Nominal{when}, 1) + " s (" + why + ")");
}

// What was asked for at a time that the run did not come to.
void Stage::say_what_was_not_tried() {
  const std::string over = "the run ends before that";
  const std::string why = has_aftermath() ? "before that, " + tally_.report.aftermath->cause : over;
  if (!line_tried_ && options_.let_go) leave_untried("the line let go", *options_.let_go, why);
  if (!line_tried_ && options_.line_breaks) leave_untried("the line's breaking", *options_.line_breaks, why);
  if (shoves_tried_) return;
  if (options_.push) leave_untried("the push", options_.when.value_or(rolled_until_ + kPushAt), over);
  if (!options_.gust) return;
  if (options_.when) return leave_untried("the gust", *options_.when, over);
  tally_.report.not_tried.push_back("the gust, once parked (the stair never was)");
}

void Stage::let_go() { lose_line("the line is let go", RecordedEventKind::let_go); }

void Stage::break_line() { lose_line("the line breaks", RecordedEventKind::line_broken); }

void Stage::lose_line(const std::string& cause, RecordedEventKind kind) {
  line_tried_ = true;
  const bool lets_go = kind == RecordedEventKind::let_go;
  const std::string what = lets_go ? "the line let go" : "the line's breaking";
  if (has_aftermath()) return leave_untried(what, world_.time(), "before that, " + tally_.report.aftermath->cause);
  if (!crew_.hooked_on()) return leave_untried(what, world_.time(), "it is not on then");
  tally_.note(world_.time(), kind);
  Aftermath after;
  after.cause = cause;
  if (lets_go) after.stopped_by = holder_of_line(scene_, crew_.on_cleat());
  after.nothing = !after.stopped_by.empty();
  begin_aftermath(after);
  if (!after.nothing) crew_.let_go();
}

void Stage::begin_aftermath(Aftermath after) {
  after.begins = after.ends = world_.time();
  tally_.report.aftermath = std::move(after);
  aftermath_.begin(world_);
}

// What followed is still to be watched.
bool Stage::follows() const { return has_aftermath() && !ended_; }

void Stage::end_aftermath() {
  ended_ = true;
  Aftermath& after = *tally_.report.aftermath;
  aftermath_.end(world_, crew_, tally_.report.hooks_off, after);
  if (after.at_rest) tally_.note(after.ends, RecordedEventKind::at_rest);
}

// What followed is watched anew where the stair is shoved once more.
void Stage::go_on_watching() {
  ended_ = false;
  aftermath_.go_on(world_);
}

void Stage::push(const Push& push) {
  go_on_watching();
  shoves_.push(world_, push);
  tally_.note(world_.time(), RecordedEventKind::pushed, "", "", push.force);
}

void Stage::gust(const Gust& gust) {
  go_on_watching();
  shoves_.gust(world_, gust);
  tally_.note(world_.time(), RecordedEventKind::gust, "", "", gust.speed);
}

void Stage::watch_shoves() {
  shoves_.watch(world_);
  tally_.report.push_swing = shoves_.swing();
  tally_.report.push_at = shoves_.found_at().value_or(0.0);
}

void Stage::watch_crew() {
  if (done_at_ || !crew_.finished()) return;
  done_at_ = world_.time();
  RehearsalReport& report = tally_.report;
  report.gave_up = crew_.gave_up();
  if (!report.gave_up.empty()) tally_.note(*done_at_, RecordedEventKind::gives_up, report.gave_up);
}

// Off the pipe and up on a taut line, the section on it turns about the pick. The crew stop, and hold what they hold.
void Stage::watch_turning_over() {
  if (has_aftermath() || !crew_.hooked_on()) return;
  const int held = scene_.hoist->pick.section - 1;
  const double strays = leans_in(world_)[index(held)] - section_leans(model_.linkage, crew_.meant())[index(held)];
  const bool off = !world_.hooks_on_pipe() && world_.hook_lift() > scene_.stair.hooks.inside && crew_.line().hand > 0.0;
  if (!off || std::abs(strays) < kTurnsOver) return;
  tally_.note(world_.time(), RecordedEventKind::turns_over, "", "", std::abs(strays));
  Aftermath after;
  after.cause = "the stair turns over about its pick";
  after.turns_over = true;
  begin_aftermath(after);
  crew_.stand_by();
}

// What the world holds, less what was put in, may only fall: friction and strokes take, nothing gives.
void Stage::watch_energy() {
  const double fold = crew_.fold_line_works() ? stored(crew_.fold_line()) : 0.0;
  const double ledger = world_.energy() + stored(crew_.line()) + fold - done_before_;
  RehearsalBounds& bounds = tally_.report.bounds;
  if (!ledger_begun_) ledger_least_ = ledger_ = ledger;
  ledger_begun_ = true;
  ledger_least_ = std::min(ledger_least_, ledger);
  bounds.energy_gain = std::max(bounds.energy_gain, ledger - ledger_least_);
  bounds.energy_scale = std::max(bounds.energy_scale, std::abs(world_.energy() - ledger_));
}

}  // namespace stowpath
