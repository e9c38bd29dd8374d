#include "sim/rehearsal/rehearsal.h"

#include <algorithm>
#include <cmath>

#include "sim/rehearsal/stage.h"
#include "sim/rehearsal/trouble.h"

namespace stowpath {

namespace {

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
    for (std::size_t j = 0; j < a.about.size(); ++j)
      bounds.lean = std::max(bounds.lean, std::abs(a.about[j] - b.about[j]));
    bounds.swing = std::max(bounds.swing, std::abs(a.swing - b.swing));
  }
  for (std::size_t r = 0; r < std::min(report.rolls.size(), finer.rolls.size()); ++r) {
    const auto &a = report.rolls[r].tries, &b = finer.rolls[r].tries;
    for (std::size_t t = 0; t < std::min(a.size(), b.size()); ++t)
      bounds.push = std::max(bounds.push.value_or(0.0), std::abs(a[t].greatest_push - b[t].greatest_push));
  }
  if (report.aftermath && finer.aftermath)
    bounds.speed = std::abs(report.aftermath->top_speed - finer.aftermath->top_speed);
  bounds.touch_gap = std::max(bounds.touch_gap, finer.bounds.touch_gap);
}

std::string raised_rolls(const Model& model) {
  std::string moves;
  for (const Move& move : model.moves)
    if (goes_along_raised(move)) moves += (moves.empty() ? "" : ", ") + std::to_string(move.index);
  return moves.empty() ? "" : "The raised stair is taken along the rail in step " + moves +
                                  " at a walk, and not rehearsed on the way: what the hooks and the hoist's trolley drag "
                                  "then is not known. What it meets is looked at where it arrives";
}

}  // namespace

std::vector<std::string> rehearsal_limits(const Scene& scene, const Model& model, const RehearsalOptions& options) {
  std::vector<std::string> all;
  if (rolls_standing(model) && options.no_pins.empty())
    all.push_back(
        "While the stair is rolled it is seen from above alone: the side view has it stand where it was, and meets what is "
        "there. Keep-clear zones on the way are not looked at: the dry fit does that");
  if (rolls_standing(model) && scene.stair.hooks.roller)
    all.push_back("The hooks' rollers are not counted: rolled along, hooks slide on the pipe");
  if (const std::string raised = raised_rolls(model); !raised.empty()) all.push_back(raised);
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

RehearsalReport rehearse(const Scene& scene, const Model& model, const RehearsalOptions& options) {
  RehearsalReport report = run_at(scene, model, options, options.step);
  if (options.compare && !report.refused) {
    const RehearsalReport finer = run_at(scene, model, options, 0.5 * report.bounds.step);
    if (!finer.refused) compare(report, finer);
  }
  const std::vector<std::string> general = rehearsal_limits(scene, model, options);
  report.cautions.insert(report.cautions.begin(), general.begin(), general.end());
  report.recording.account = account_of(report);
  return report;
}

}  // namespace stowpath
