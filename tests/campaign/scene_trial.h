#pragma once

#include "sim/mechanism/model.h"
#include "sim/clearance/verdict.h"

namespace stowpath::testing {

/// How the dry fit of one scene stands up against the slow reference.
struct SceneAnswer {
  Verdict verdict = Verdict::undecided;
  int moves = 0, moves_clear = 0;
  bool false_clear = false;         ///< a clear move, a proven least clearance or a standing station is contradicted
  bool false_interference = false;  ///< a finding that its own pose does not show
};

SceneAnswer try_scene(const Model& model);

}  // namespace stowpath::testing
