#pragma once

#include <iosfwd>
#include <optional>
#include <stdexcept>
#include <string>

#include "sim/scene/scene.h"
#include "sim/scene/scene_error.h"

namespace stowpath {

/// A scene's text with the name that messages give it.
struct SceneText {
  std::string name, text;
};

/// From a file, from standard input for "-", or the built-in demo for none. @throws FileFault
SceneText read_scene_text(const std::optional<std::string>& scene, std::istream& in);

/// A scene that cannot be used, with its text: the messages quote it.
struct SceneFault : std::runtime_error {
  SceneFault(const SceneError& error, std::string its_text)
      : std::runtime_error(error.what()), scene(error), text(std::move(its_text)) {}
  SceneError scene;
  std::string text;
};

}  // namespace stowpath
