#include "render/studio/rehearsal_desk.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <exception>
#include <limits>
#include <utility>

#include "render/command/faults.h"
#include "render/command/recording_file.h"
#include "render/command/rehearse_command.h"
#include "render/report/recording_words.h"
#include "render/report/rehearsal_report.h"
#include "render/report/words.h"
#include "render/sheet/recording_curves.h"
#include "render/studio/grip.h"
#include "sim/trade/figure.h"

namespace stowpath {
namespace {

constexpr double kBehind = 0.25;  // how far a run may lag before it goes slower than it is told [s]
constexpr double kWindOn = 0.04;  // of the run between two looks at whether the goal is reached [s]
constexpr double kEasiest = 1.0;  // a push of less is none [N]
constexpr double kFrame = 0.04;   // of a single step: as in RehearsalOptions [s]

constexpr double kForever = std::numeric_limits<double>::infinity();

bool is_recording(const std::string& name) { return name.ends_with(".txt"); }

std::string told(const UsageFault& fault) {
  return std::string(fault.what()) + (fault.hint.empty() ? "" : ": " + fault.hint);
}

std::string cannot(const std::exception& fault) {
  return std::string("This cannot be rehearsed: ") + fault.what() + ".";
}

/// What is written in the background, with all that it needs.
struct Keepsake {
  std::string name;
  Scene scene;
  Model model;
  Recording recording;
  DisplayUnits units;

  std::string write() const {
    try {
      if (is_recording(name)) {
        write_recording_file(name, recording);
      } else {
        write_drawing(name, {scene, model, recording, units});
      }
      return "Written: " + name;
    } catch (const UsageFault& fault) {
      return told(fault);
    } catch (const FileFault& fault) {
      return fault.file + ": " + fault.what();
    } catch (const std::exception& fault) {  // out of the background it would end the window
      return name + ": not written: " + fault.what();
    }
  }
};

}  // namespace

RehearsalDesk::~RehearsalDesk() {
  if (written_.valid()) written_.wait();
}

void RehearsalDesk::start_over(const SceneOnTable& table) {
  clear();
  edition_ = table.edition;
  RehearsalOptions options;
  check_pin(table.scene);
  if (without_pin > 0) {
    options.no_pins.push_back(without_pin - 1);
  } else {
    options.from = station_at_first("", table.model);
  }
  try {
    run_ = std::make_unique<LiveRun>(table.scene, table.model, options);
  } catch (const std::exception& fault) {
    message_ = cannot(fault);
  }
}

// It may have been chosen in another scene.
void RehearsalDesk::check_pin(const Scene& scene) {
  if (without_pin <= static_cast<int>(scene.stair.hinges.size())) return;
  message_ = "This stair has no hinge " + std::to_string(without_pin) + ": every pin is in.";
  without_pin = 0;
}

void RehearsalDesk::clear() {
  run_.reset();
  running_ = lags_ = finished_ = false;
  wanted_ = 0.0;
  shown_.reset();
  goal_.reset();
  aimed_.reset();
  message_.clear();
}

void RehearsalDesk::toggle(const SceneOnTable& table) {
  if (!run_) start_over(table);
  if (!run_) return;
  running_ = !running_ && !winding();
  goal_.reset();
  shown_.reset();
  wanted_ = live_time();
}

void RehearsalDesk::tick(double seconds, double budget) {
  if (written_.valid() && written_.wait_for(std::chrono::seconds(0)) == std::future_status::ready)
    message_ = written_.get();
  if (!run_ || aimed_) return;
  if (goal_) return wind(budget);
  if (!running_) return;
  wanted_ = std::min(wanted_ + speed * seconds, live_time() + kBehind);
  go_on(wanted_, budget);
  lags_ = live_time() < wanted_;
  watch_end();
}

void RehearsalDesk::change_speed(int by) {
  const auto now = std::find(kRehearsalSpeeds.begin(), kRehearsalSpeeds.end(), speed) - kRehearsalSpeeds.begin();
  const auto last = static_cast<std::ptrdiff_t>(kRehearsalSpeeds.size()) - 1;
  speed = kRehearsalSpeeds.at(static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(now + by, 0, last)));
}

// Where a rope is too stiff for the step the run has begun again: it is brought to where it was.
void RehearsalDesk::go_on(double until, double budget) {
  const double before = live_time();
  try {
    run_->run(until, budget);
  } catch (const std::exception& fault) {
    running_ = false;
    goal_.reset();
    message_ = cannot(fault);
    return;
  }
  if (run_->refused()) {
    running_ = false;
    goal_.reset();
    message_ = "A rope is too stiff for the physics world: nothing can be rehearsed.";
  } else if (live_time() < before) {
    if (!goal_) goal_ = Goal{-1, before};
    message_ = "A rope is stiff: run again from the start at half the step.";
  }
}

void RehearsalDesk::watch_end() {
  const bool before = std::exchange(finished_, run_->finished());
  if (before || !finished_) return;
  running_ = false;
  message_ = "It has run out, and the crew stand by. Going on shows what else happens.";
}

void RehearsalDesk::wind(double budget) {
  const auto ends = std::chrono::steady_clock::now() + std::chrono::duration<double>(budget);
  while (goal_ && std::chrono::steady_clock::now() < ends) {
    if (reached(*goal_)) {
      goal_.reset();
    } else if (goal_->move >= 0 && run_->finished()) {
      message_ = "It has run out, and the crew never came to that move.";
      goal_.reset();
    } else {
      go_on(goal_->move < 0 ? std::min(goal_->time, live_time() + kWindOn) : live_time() + kWindOn, budget);
    }
  }
  wanted_ = live_time();
}

bool RehearsalDesk::reached(const Goal& goal) const {
  return goal.move < 0 ? live_time() >= goal.time : run_->begins(goal.move).has_value();
}

void RehearsalDesk::step(int frames) {
  if (!run_) return;
  running_ = false;
  const auto& recorded = run_->report().recording.frames;
  if (frames < 0 && !recorded.empty()) {
    const std::size_t now = frame_at(run_->report().recording, shown_time()), by = static_cast<std::size_t>(-frames);
    const bool between = recorded[now].time < shown_time();
    show(recorded[now + (between ? 1U : 0U) >= by ? now + (between ? 1U : 0U) - by : 0U].time);
  } else if (shown_) {
    const std::size_t next = frame_at(run_->report().recording, *shown_) + static_cast<std::size_t>(frames);
    show(next < recorded.size() ? recorded[next].time : live_time());
  } else {
    go_on(live_time() + frames * kFrame, kForever);
  }
  if (!shown_) wanted_ = live_time();
}

void RehearsalDesk::go_to_move(int move) {
  if (!run_) return;
  running_ = false;
  if (const auto begins = run_->begins(move)) return show(*begins);
  show_live();
  goal_ = Goal{move, 0.0};
}

void RehearsalDesk::take_up() {
  if (!run_ || !shown_) return;
  const double time = *shown_;
  run_->take_up(time);
  shown_.reset();
  finished_ = running_ = false;
  goal_ = Goal{-1, time};
}

double RehearsalDesk::live_time() const { return run_ ? run_->time() : 0.0; }
double RehearsalDesk::shown_time() const { return shown_.value_or(live_time()); }

void RehearsalDesk::show(double time) {
  running_ = false;
  shown_.reset();
  if (time < live_time()) shown_ = std::max(0.0, time);
}

LiveRun::Moment RehearsalDesk::shown() const {
  LiveRun::Moment moment = shown_ ? run_->at(*shown_) : run_->now();
  if (aimed_) moment.push = aimed_;
  return moment;
}

bool RehearsalDesk::can_try(bool needs_line) {
  if (!run_ || run_->refused()) return false;
  if (winding()) {
    message_ = "It is still running on to another time: wait until it is there, or stop it first.";
    return false;
  }
  const auto& hoist = run_->scene().hoist;
  if (needs_line && !(hoist && hoist->ceiling_point)) {
    message_ = "This scene has no hoist line to let go: describe one under hoist, with its ceiling point.";
    return false;
  }
  const auto& after = run_->report().aftermath;
  if (needs_line && after && !after->nothing) {
    message_ = after->turns_over ? "The stair has turned over: a line let go after that is not looked at."
                                 : "Nobody holds the line now.";
    return false;
  }
  if (needs_line && !run_->now().frame.hoist.on) {
    message_ = "The line is not hooked on: nobody holds it.";
    return false;
  }
  return true;
}

void RehearsalDesk::try_it(const Try& what) {
  show_live();
  run_->add(what);
  running_ = true;
  wanted_ = std::max(wanted_, live_time());
  message_.clear();
}

void RehearsalDesk::let_go() {
  if (can_try(true)) try_it({TryKind::let_go});
}

void RehearsalDesk::break_line() {
  if (can_try(true)) try_it({TryKind::line_breaks});
}

void RehearsalDesk::push() { push_as(push_words); }

// Along the rail a push rolls the stair, which no side view shows.
void RehearsalDesk::push_as(const std::string& words) {
  WhatIfs asked;
  asked.push = words;
  try {
    if (asked_push(words).way != PushWay::outward)
      throw UsageFault("a push along the rail is not run in this view",
                       "write it as \"120N at 1.1m outward\", or rehearse it with --push");
    if (can_try(false)) try_it({TryKind::push, 0.0, words, *rehearsal_options(asked).push, {}});
  } catch (const UsageFault& fault) {
    message_ = told(fault);
  }
}

void RehearsalDesk::gust() {
  WhatIfs asked;
  asked.gust = gust_words;
  try {
    if (can_try(false)) try_it({TryKind::gust, 0.0, gust_words, {}, *rehearsal_options(asked).gust});
  } catch (const UsageFault& fault) {
    message_ = told(fault);
  }
}

bool RehearsalDesk::aim(Vec2 at, double reach) {
  if (!can_try(false) || shown_) return false;
  if (!nearest_part(run_->model(), recorded_poses(run_->now().frame, run_->model().linkage.sections), at, reach))
    return false;
  aimed_ = PushSight{at, 0.0, true};
  return true;
}

void RehearsalDesk::aim_to(Vec2 to, double newtons_per_metre) {
  if (aimed_) aimed_->force = std::round((to.x - aimed_->at.x) * newtons_per_metre);
}

void RehearsalDesk::give() {
  if (!aimed_) return;
  const PushSight push = *aimed_;
  aimed_.reset();
  if (std::abs(push.force) < kEasiest) return;
  push_as(format_decimal(Nominal{push.force}, 0) + "N at " +
          format_decimal(Nominal{push.at.y - run_->model().floor_level}, 2) + "m outward");
}

std::string RehearsalDesk::what_then() const {
  if (!run_) return {};
  const RehearsalSubject subject{run_->scene(), run_->model(), run_->report(), units_of(run_->scene())};
  const std::string untried = not_tried_sentence(subject);
  if (!run_->report().aftermath) return untried;
  return aftermath_sentences(subject) + (untried.empty() ? "" : " " + untried);
}

void RehearsalDesk::write(DisplayUnits units) {
  if (!run_ || written_.valid()) return;
  const std::string name = file;
  try {
    if (!is_recording(name)) check_drawing_name(name);
  } catch (const UsageFault& fault) {
    message_ = told(fault);
    return;
  }
  if (!out_files_.may_write(name)) {
    message_ = name + " is there already: write once more to replace it.";
    return;
  }
  out_files_.wrote(name);
  message_ = "Writing " + name + " ...";
  written_ = std::async(std::launch::async, [keepsake = Keepsake{name, run_->scene(), run_->model(), run_->recording(),
                                                                 units}] { return keepsake.write(); });
}

}  // namespace stowpath
