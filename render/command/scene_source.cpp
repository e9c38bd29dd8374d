#include "render/command/scene_source.h"

#include "render/command/demo_scene.h"
#include "render/command/files.h"

namespace stowpath {

SceneText read_scene_text(const std::optional<std::string>& scene, std::istream& in) {
  if (!scene) return {"the built-in demo", std::string(demo_scene_text())};
  return {*scene == "-" ? "standard input" : *scene, read_text(*scene, in)};
}

}  // namespace stowpath
