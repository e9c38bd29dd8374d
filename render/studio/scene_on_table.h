#pragma once

#include "sim/mechanism/model.h"

namespace stowpath {

/// The scene that is worked on, put together. Both must outlive it.
struct SceneOnTable {
  const Scene& scene;
  const Model& model;
  unsigned edition = 0;  ///< another number whenever the scene is another one
};

}  // namespace stowpath
