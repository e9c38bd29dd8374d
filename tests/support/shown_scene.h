#pragma once

#include <string>

#include "render/report/words.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

namespace stowpath::testing {

/// A scene of the gallery with all that a picture of it is made from.
struct ShownScene {
  Scene scene;
  Model model;
  DryFit fit;

  explicit ShownScene(const std::string& name)
      : scene(parse_scene(gallery_text(name), name)), model(build_model(scene)), fit(dry_fit(model)) {}
  Subject subject() const { return {scene, model, fit}; }
};

}  // namespace stowpath::testing
