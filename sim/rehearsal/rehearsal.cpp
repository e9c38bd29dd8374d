#include "sim/rehearsal/rehearsal.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "sim/rehearsal/stage.h"

namespace stowpath {

namespace {

void check(const Scene& scene, const RehearsalOptions& options) {
  if (!(options.step > 0.0 && options.frame > 0.0)) throw std::invalid_argument("a step must be greater than 0");
  for (const auto& time : {options.let_go, options.line_breaks, options.when})
    if (time && !(*time >= 0.0)) throw std::invalid_argument("a time must not be negative");
  for (const int hinge : options.no_pins)
    if (hinge < 0 || hinge >= static_cast<int>(scene.stair.hinges.size()))
      throw std::invalid_argument("there is no hinge " + std::to_string(hinge + 1));
}

RehearsalReport run_at(const Scene& scene, const Model& model, const RehearsalOptions& options, double step) {
  for (int halving = 0; halving <= kMostHalvings; ++halving, step *= 0.5) {
    Stage stage(scene, model, options, step);
    if (stage.run()) return stage.report();
  }
  RehearsalReport refused;
  refused.refused = true;
  refused.bounds.step = step;
  return refused;
}

void compare(RehearsalReport& report, const RehearsalReport& finer) {
  RehearsalBounds& bounds = report.bounds;
  bounds.compared = true;
  const std::size_t moves = std::min(report.moves.size(), finer.moves.size());
  for (std::size_t m = 0; m < moves; ++m) {
    const MoveRun &a = report.moves[m], &b = finer.moves[m];
    bounds.pull = std::max({bounds.pull, std::abs(a.peak_pull - b.peak_pull), std::abs(a.peak_fold - b.peak_fold)});
    for (std::size_t j = 0; j < a.leans.size(); ++j)
      bounds.lean = std::max(bounds.lean, std::abs(a.leans[j] - b.leans[j]));
  }
  if (report.aftermath && finer.aftermath)
    bounds.speed = std::abs(report.aftermath->top_speed - finer.aftermath->top_speed);
  bounds.touch_gap = std::max(bounds.touch_gap, finer.bounds.touch_gap);
}

bool rolls(const Scene& scene) {
  return std::any_of(scene.procedure.begin(), scene.procedure.end(),
                     [](const Step& step) { return step.kind == StepKind::roll; });
}

std::vector<std::string> cautions(const Scene& scene, const RehearsalOptions& options) {
  std::vector<std::string> all;
  if (rolls(scene)) all.push_back("Rolls run across this view and are left out: the stair is at home from the start");
  if (scene.hoist)
    all.push_back(
        "The rope's stretch is our estimate, seven times its breaking strength for a whole length: a stretchier "
        "line gives more and jerks less");
  if (options.let_go && scene.hoist && scene.hoist->winch)
    all.push_back(
        "A winch that is let go, and that no worm holds, is taken to run free: its gears would slow the fall");
  if (!scene.stair.hinges.empty() && !scene.fold_line)
    all.push_back("No fold line is described: a joint that turns, or stays bent, is held by hand");
  all.push_back("The hooks' play on the pipe is left out as long as they stay on it");
  return all;
}

}  // namespace

RehearsalReport rehearse(const Scene& scene, const Model& model, const RehearsalOptions& options) {
  check(scene, options);
  RehearsalReport report = run_at(scene, model, options, options.step);
  if (report.refused) return report;
  if (options.compare) {
    const RehearsalReport finer = run_at(scene, model, options, 0.5 * report.bounds.step);
    if (!finer.refused) compare(report, finer);
  }
  const std::vector<std::string> general = cautions(scene, options);
  report.cautions.insert(report.cautions.begin(), general.begin(), general.end());
  return report;
}

}  // namespace stowpath
