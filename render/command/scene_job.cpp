#include "render/command/scene_job.h"

#include "render/command/scene_source.h"
#include "render/command/sheet_file.h"
#include "sim/scene/reader.h"

namespace stowpath {
namespace {

DisplayUnits units_of(const SceneRequest& request, const Scene& scene) {
  if (request.units) return *request.units;
  return scene.units == FileUnits::inches ? DisplayUnits::imperial : DisplayUnits::metric;
}

}  // namespace

SceneJob read_job(const SceneRequest& request, std::istream& in) {
  if (request.sheet) check_sheet_name("-o", *request.sheet);
  if (request.detail) check_sheet_name("--detail", *request.detail);
  SceneText source = read_scene_text(request.scene, in);
  try {
    Scene scene = parse_scene(source.text, source.name);
    Model model = build_model(scene);
    const DisplayUnits units = units_of(request, scene);
    return {std::move(scene), std::move(model), units};
  } catch (const SceneError& error) {
    throw SceneFault(error, std::move(source.text));
  }
}

}  // namespace stowpath
