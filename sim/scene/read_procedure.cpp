#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <optional>
#include <string>
#include <utility>

#include "sim/scene/scene_parts.h"
#include "sim/trade/figure.h"

namespace stowpath {
namespace {

using Folds = std::vector<std::optional<double>>;

constexpr std::array kSteps{std::pair{"roll", StepKind::roll},       std::pair{"lift", StepKind::lift},
                            std::pair{"fold", StepKind::fold},       std::pair{"together", StepKind::together},
                            std::pair{"drag", StepKind::drag},       std::pair{"hang", StepKind::hang},
                            std::pair{"pin", StepKind::pin},         std::pair{"unpin", StepKind::unpin},
                            std::pair{"hook on", StepKind::hook_on}, std::pair{"hook off", StepKind::hook_off}};

void check_fold(const Setting& fold, double target, std::size_t hinge, const Stair& stair) {
  if (target > stair.hinges[hinge].limit + 1e-12) {
    constexpr double kDegree = std::numbers::pi / 180.0;
    const std::string limit = format_decimal(AtLeast{stair.hinges[hinge].limit / kDegree}, 0);
    fold.fault("this is past the limit of hinge " + std::to_string(hinge + 1) + ", " + limit + " degrees",
               "fold less, or change stair.hinges[" + std::to_string(hinge) + "].limit");
  }
}

bool check_hinge(const Setting& hinge, int number, const Stair& stair) {
  if (number >= 1 && number <= static_cast<int>(stair.hinges.size())) return true;
  if (stair.hinges.size() + 1 == stair.sections.size()) {  // else the hinges themselves are at fault
    hinge.fault(
        "there is no hinge " + std::to_string(number) + ": the stair has " + std::to_string(stair.hinges.size()),
        "hinges count from the top, from 1");
  }
  return false;
}

Folds read_fold_list(const Setting& fold, const Stair& stair) {
  const std::vector<double> targets = fold.numbers();
  if (targets.size() != stair.hinges.size()) {
    fold.fault(
        "the folds given are " + std::to_string(targets.size()) + ", the hinges " + std::to_string(stair.hinges.size()),
        "give one fold for each hinge, from the top");
    return {};
  }
  const std::vector<Setting> items = fold.items();
  Folds folds;
  for (std::size_t k = 0; k < targets.size(); ++k) {
    check_fold(items[k], targets[k], k, stair);
    folds.emplace_back(targets[k]);
  }
  return folds;
}

Folds read_single_fold(const Setting& fold, const Stair& stair) {
  if (stair.hinges.size() == 2) {
    fold.fault("one fold for a stair with two hinges", "write [176, 0], or {hinge: 1, to: 176}");
    return {};
  }
  if (!check_hinge(fold, 1, stair)) return {};
  check_fold(fold, fold.number(), 0, stair);
  return {fold.number()};
}

Folds read_fold_of_hinge(const Setting& fold, const Stair& stair) {
  const int hinge = fold.at("hinge").count();
  if (!check_hinge(fold.at("hinge"), hinge, stair)) return {};
  Folds folds(stair.hinges.size());
  const auto index = static_cast<std::size_t>(hinge - 1);
  folds[index] = fold.at("to").number();
  check_fold(fold.at("to"), *folds[index], index, stair);
  return folds;
}

Folds read_folds(const Setting& fold, const Stair& stair) {
  if (!fold.given()) return {};
  if (fold.is_list()) return read_fold_list(fold, stair);
  return fold.is_map() ? read_fold_of_hinge(fold, stair) : read_single_fold(fold, stair);
}

void check_station(const Setting& station, double value, const Scene& scene) {
  if (value >= scene.rail.stations.lo && value <= scene.rail.stations.hi) return;
  if (std::isnan(value) || std::isnan(scene.rail.stations.length())) return;
  station.fault("this station lies beyond the pipe, which runs from " +
                    length_text(scene.rail.stations.lo, station.bare()) + " to " +
                    length_text(scene.rail.stations.hi, station.bare()),
                "give the station of the stair's middle");
}

void read_roll(const Setting& roll, const Scene& scene, Step& step) {
  step.to_home = roll.is_word("home");
  if (!step.to_home) {
    step.station = roll.number();
    check_station(roll, *step.station, scene);
  } else if (!scene.hoist || !scene.hoist->home) {
    roll.fault("there is no home station", "add hoist.home, or give the station to roll to");
  } else {
    step.station = scene.hoist->home;
  }
}

void read_together(const Setting& together, const Scene& scene, Step& step) {
  step.station = together.at("station").number_if_given();
  step.lean = together.at("lean").number_if_given();
  step.folds = read_folds(together.at("fold"), scene.stair);
  if (step.station) check_station(together.at("station"), *step.station, scene);
  if (together.is_map() && !step.station && !step.lean && !together.at("fold").given()) {
    together.fault("nothing moves here", "give one or more of station, lean and fold");
  }
}

double read_lean(const Setting& move) { return move.is_map() ? move.at("lean").number() : move.number(); }

void check_hoist(const Setting& hook, const Scene& scene) {
  if (!scene.hoist) hook.fault("there is no hoist", "describe it under hoist, or leave this step out");
}

void read_move(const Setting& move, const Scene& scene, Step& step) {
  switch (step.kind) {
    case StepKind::roll:
      return read_roll(move, scene, step);
    case StepKind::lift:
      return void(step.lean = move.number());
    case StepKind::fold:
      return void(step.folds = read_folds(move, scene.stair));
    case StepKind::together:
      return read_together(move, scene, step);
    case StepKind::drag:
    case StepKind::hang:
      return void(step.lean = read_lean(move));
    case StepKind::pin:
    case StepKind::unpin:
      step.hinge = move.count();
      return void(check_hinge(move, step.hinge, scene.stair));
    case StepKind::hook_on:
    case StepKind::hook_off:
      return check_hoist(move, scene);
  }
}

Step read_step(const Setting& entry, const Scene& scene) {
  Step step;
  step.at = entry.place();
  int moves = 0;
  if (entry.is_empty_map()) entry.fault("this step has no move", "write one, such as  - lift: 88");
  for (const auto& [key, kind] : kSteps) {
    const Setting move = entry.at(key);
    if (!move.given()) continue;
    if (++moves > 1) {
      move.fault("this step has another move already", "start each move with a - of its own");
      continue;
    }
    step.kind = kind;
    step.at = move.place();
    read_move(move, scene, step);
  }
  return step;
}

}  // namespace

void read_procedure(const Setting& procedure, Scene& scene) {
  for (const Setting& entry : procedure.items()) scene.procedure.push_back(read_step(entry, scene));
}

}  // namespace stowpath
