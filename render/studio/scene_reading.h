#pragma once

#include <string>

#include "sim/mechanism/model.h"
#include "sim/scene/draft.h"

namespace stowpath {

/// A scene's text with all that is made of it before anything is proven.
struct SceneReading {
  SceneDraft draft;
  Scene scene;
  Model model;
};

/// Takes a text apart, reads it and puts the stair together. @throws SceneError
SceneReading reading_of(std::string text, const std::string& name);

}  // namespace stowpath
