#pragma once

#include "sim/scene/scene_error.h"

namespace stowpath::testing {

/// The first thing that `work` finds wrong with a scene; an empty one if it finds nothing.
template <class Work>
Diagnostic fault_of(Work work) {
  try {
    work();
  } catch (const SceneError& error) {
    return error.diagnostics.front();
  }
  return {};
}

}  // namespace stowpath::testing
