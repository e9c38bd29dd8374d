#include "sim/rehearsal/rehearsal.h"


#include "sim/rehearsal/run_difference.h"
#include "sim/rehearsal/stage.h"
#include "sim/rehearsal/trouble.h"

namespace stowpath {

namespace {

RehearsalReport run_at(const Scene& scene, const Model& model, const RehearsalOptions& options, double step) {
  RehearsalReport refused;
  refused.refused = true;
  for (int halving = 0; halving <= kMostHalvings; ++halving, step *= 0.5) {
    refused.bounds.step = step;
    Stage stage(scene, model, options, step);
    if (stage.run()) return stage.report();
  }
  return refused;
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
    all.push_back(
        "Rollers in the hooks carry what presses within 45 degrees of them, the hook itself the rest: one at the crown makes "
        "a push lighter, and the hooks jam from the same friction as without");
  if (const std::string raised = raised_rolls(model); !raised.empty()) all.push_back(raised);
  if (scene.hoist)
    all.push_back(
        "The rope's stretch is our estimate, seven times its breaking strength for a whole length: a stretchier "
        "line gives more and jerks less");
  if (scene.hoist || scene.fold_line)
    all.push_back(
        "The lines touch nothing: a rope passes through whatever is in its way, and a dry fit says what it meets");
  if (options.let_go || options.line_breaks)
    all.push_back("As the line goes, everybody lets go: of a fold line and of joints held by hand too");
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
  if (options.compare && !report.refused)
    lay_beside(report, run_at(scene, model, options, 0.5 * report.bounds.step));
  const std::vector<std::string> general = rehearsal_limits(scene, model, options);
  report.cautions.insert(report.cautions.begin(), general.begin(), general.end());
  report.recording.account = account_of(report);
  return report;
}

}  // namespace stowpath
