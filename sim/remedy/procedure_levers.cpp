#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "sim/remedy/lever.h"

namespace stowpath {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;
constexpr double kMostTurn = 20.0 * kDegree;  // farther, it is another procedure

const char* step_word(StepKind kind) {
  switch (kind) {
    case StepKind::lift:
      return "lift";
    case StepKind::fold:
      return "fold";
    case StepKind::drag:
      return "drag";
    case StepKind::hang:
      return "hang";
    case StepKind::together:
      return "together";
    default:
      return "";
  }
}

// Where the file may say to which angle a step goes.
std::vector<std::string> angle_keys(StepKind kind, const std::string& step) {
  const std::string key = step + "." + step_word(kind);
  switch (kind) {
    case StepKind::lift:
      return {key};
    case StepKind::fold:
      return {key, key + "[0]", key + "[1]", key + ".to"};
    case StepKind::drag:
    case StepKind::hang:
      return {key, key + ".lean"};
    case StepKind::together:
      return {key + ".lean", key + ".fold", key + ".fold[0]", key + ".fold[1]"};
    default:
      return {};
  }
}

bool turns(const Step& step) { return *step_word(step.kind) != '\0'; }

// How the first of the finding's poses comes about: what is done before it decides, what comes after does not.
struct Onset {
  std::size_t last = 0;  ///< no step from here on has a part in it
  bool within = false;   ///< it begins in the course of the last of those steps
};

Onset onset_of(const LeverSite& site, const Finding& finding) {
  const std::size_t all = site.scene.procedure.size();
  if (finding.moves.empty() || finding.move_kinds.front() == MoveKind::park) return {all, false};
  const auto first = static_cast<std::size_t>(std::max(0, finding.moves.front()));
  return {std::min(first, all), true};
}

// A move that ends earlier keeps its course up to there: it has to end before the finding begins.
int first_steps(const LeverSite& site, const Finding& finding, const std::string& key, const Lever& lever) {
  const bool fold = lever.thing == "fold";
  const std::size_t hinge = key.find("[1]", key.find(".fold")) != std::string::npos ? 1 : 0;
  const double begins = fold ? finding.from.folds[hinge] : finding.from.lean;
  const double turn = site.draft.number(key).value_or(begins) - begins;
  return std::max(1, static_cast<int>(std::floor(turn / lever.step - 1e-6)));
}

Lever stop_lever(const std::string& key, std::size_t step, StepKind kind) {
  Lever lever;
  lever.kind = ChangeKind::stop_move;
  lever.labour = Labour::setting;
  lever.way = Way::more;
  lever.thing = step_word(kind);
  lever.number = static_cast<int>(step) + 1;
  lever.angle = true;
  lever.step = kDegree;
  lever.most = kMostTurn;
  lever.values = {{key, 1.0}};
  return lever;
}

}  // namespace

void add_procedure_levers(const LeverSite& site, const Finding& finding, std::vector<Lever>& levers) {
  if (finding.kind == FindingKind::build || finding.part_kinds[0] == PartKind::lead_line) return;
  const Onset onset = onset_of(site, finding);
  for (std::size_t i = 0; i < onset.last; ++i) {
    const Step& step = site.scene.procedure[i];
    if (!turns(step)) continue;
    const bool within = onset.within && i + 1 == onset.last && step.kind != StepKind::together;
    for (const std::string& key : angle_keys(step.kind, "procedure[" + std::to_string(i) + "]")) {
      const Lever more = stop_lever(key, i, step.kind);
      if (!has_values(site, more)) continue;
      Lever less = reversed(more, Way::less);
      if (within) less.first = first_steps(site, finding, key, more);
      levers.push_back(std::move(less));
      if (!within) levers.push_back(more);  // a longer course still holds all of the shorter one
    }
  }
}

}  // namespace stowpath
