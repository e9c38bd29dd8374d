#include "render/studio/scene_reading.h"

#include <utility>

namespace stowpath {

SceneReading reading_of(std::string text, const std::string& name) {
  SceneDraft draft(std::move(text), name);
  Scene scene = draft.read();
  Model model = build_model(scene);
  return {std::move(draft), std::move(scene), std::move(model)};
}

}  // namespace stowpath
