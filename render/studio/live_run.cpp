#include "render/studio/live_run.h"

#include <algorithm>
#include <chrono>
#include <cmath>

#include "render/report/recording_words.h"
#include "render/report/words.h"
#include "render/sheet/recording_curves.h"
#include "sim/rehearsal/trouble.h"
#include "sim/rehearsal/what_if.h"
#include "sim/trade/figure.h"

namespace stowpath {
namespace {

constexpr double kHundredth = 100.0;  // of a second, in one [1/s]
constexpr int kStepsALook = 8;        // at the clock

using Clock = std::chrono::steady_clock;

std::string quoted(const std::string& option, const std::string& words) { return option + " \"" + words + "\""; }

std::string seconds_of(const Try& tried) { return format_decimal(Nominal{tried.time}, 2) + "s"; }

std::string words_of(const Try& tried) {
  switch (tried.kind) {
    case TryKind::let_go:
      return quoted("--let-go", seconds_of(tried));
    case TryKind::line_breaks:
      return quoted("--line-breaks", seconds_of(tried));
    case TryKind::push:
      return quoted("--push", tried.words) + " " + quoted("--when", seconds_of(tried));
    case TryKind::gust:
      return quoted("--gust", tried.words) + " " + quoted("--when", seconds_of(tried));
  }
  return {};
}

}  // namespace

std::string tried_text(const std::vector<int>& no_pins, const std::vector<Try>& tried) {
  std::vector<std::string> words;
  for (const int hinge : no_pins) words.push_back(quoted("--no-pin", std::to_string(hinge + 1)));
  for (const Try& what : tried) words.push_back(words_of(what));
  return joined(words, " ");
}

LiveRun::LiveRun(const Scene& scene, const Model& model, const RehearsalOptions& options)
    : scene_(scene), model_(model), options_(options), step_(options.step) {
  begin();
}

void LiveRun::begin() {
  stage_ = std::make_unique<Stage>(scene_, model_, options_, step_);
  done_ = events_ = 0;
  meant_.clear();
  touches_.clear();
  stage_->start();
}

void LiveRun::run(double until, double budget) {
  const auto ends = Clock::now() + std::chrono::duration<double>(budget);
  for (int steps = 1; !refused_ && stage_->time() < until; ++steps) {
    step();
    if (steps % kStepsALook == 0 && Clock::now() >= ends) return;
  }
}

void LiveRun::step() {
  for (; done_ < tried_.size() && tried_[done_].time <= stage_->time(); ++done_) {
    const Try& now = tried_[done_];
    if (now.kind == TryKind::let_go) stage_->let_go();
    if (now.kind == TryKind::line_breaks) stage_->break_line();
    if (now.kind == TryKind::push) stage_->push(now.push);
    if (now.kind == TryKind::gust) stage_->gust(now.gust);
  }
  stage_->advance();
  if (stage_->too_swift()) return halve();
  keep();
}

void LiveRun::halve() {
  step_ *= 0.5;
  refused_ = ++halvings_ > kMostHalvings;
  if (!refused_) begin();
}

// Beside each new frame what was meant then; each new touch with its place, which only the poses of now tell.
void LiveRun::keep() {
  const Recording& recording = stage_->report().recording;
  while (meant_.size() < recording.frames.size()) meant_.push_back(stage_->crew().meant());
  for (; events_ < recording.events.size(); ++events_) {
    const RecordedEvent& event = recording.events[events_];
    if (event.kind != RecordedEventKind::touch) continue;
    if (const auto place = touch_place(model_, stage_->world().poses(), event)) touches_.push_back({event, *place});
  }
}

void LiveRun::take_up(double time) {
  std::erase_if(tried_, [&](const Try& what) { return what.time >= time; });
  begin();
}

void LiveRun::add(Try what) {
  what.time = std::ceil(kHundredth * stage_->time() - 1e-6) / kHundredth;
  tried_.push_back(std::move(what));
}

std::optional<double> LiveRun::begins(int move) const {
  const auto& moves = stage_->report().moves;
  const auto found = std::find_if(moves.begin(), moves.end(), [&](const MoveRun& run) { return run.move == move; });
  return found == moves.end() ? std::nullopt : std::optional(found->begins);
}

// As a command would be told what was tried.
RehearsalOptions LiveRun::with_tries() const {
  RehearsalOptions options = options_;
  for (const Try& what : tried_) {
    if (what.kind == TryKind::let_go) options.let_go = what.time;
    if (what.kind == TryKind::line_breaks) options.line_breaks = what.time;
  }
  return options;
}

Recording LiveRun::recording() const {
  RehearsalReport report = stage_->so_far();
  const auto limits = rehearsal_limits(scene_, model_, with_tries());
  report.cautions.insert(report.cautions.begin(), limits.begin(), limits.end());
  Recording out = report.recording;
  out.account = account_of(report);
  out.options = tried_text(options_.no_pins, tried_);
  return out;
}

LiveRun::Moment LiveRun::now() const {
  Moment moment{frame_now(stage_->world(), stage_->crew()), stage_->crew().meant(), {}, 0.0};
  add_shoves(moment);
  return moment;
}

LiveRun::Moment LiveRun::at(double time) const {
  const Recording& recording = stage_->report().recording;
  if (recording.frames.empty()) return now();
  const std::size_t i = frame_at(recording, time);
  Moment moment{recording.frames[i], meant_[i], {}, 0.0};
  add_shoves(moment);
  return moment;
}

void LiveRun::add_shoves(Moment& moment) const {
  const SectionPoses sections = recorded_poses(moment.frame, model_.linkage.sections);
  for (const Try& what : tried_) {
    const double since = moment.frame.time - what.time;
    if (since < 0.0) continue;
    if (what.kind == TryKind::gust && since < what.gust.seconds) moment.gust = what.gust.speed;
    if (what.kind != TryKind::push || since >= what.push.seconds) continue;
    const PushPoint point = push_point(model_, sections, what.push.height);
    moment.push = PushSight{sections.at(static_cast<std::size_t>(point.section)) * point.at, what.push.force, false};
  }
}

}  // namespace stowpath
