#include "render/command/scene_job.h"

#include "render/command/faults.h"
#include "render/command/sheet_file.h"
#include "render/report/words.h"
#include "sim/scene/reader.h"

namespace stowpath {
namespace {

void check_scene_name(const std::string& name) {
  if (!ends_with(name, ".yaml") && !ends_with(name, ".yml"))
    throw UsageFault("-o " + name + ": with --apply a scene is written, as .yaml",
                     "give it a name that ends in .yaml, as in -o new.yaml");
}

DisplayUnits shown_units(const SceneRequest& request, const Scene& scene) {
  return request.units.value_or(units_of(scene));
}

}  // namespace

void check_outputs(const SceneRequest& request) {
  if (request.apply && !request.sheet)
    throw UsageFault("--apply does not say where to write the changed scene", "name a new file: -o new.yaml");
  if (request.sheet) request.apply ? check_scene_name(*request.sheet) : check_sheet_name("-o", *request.sheet);
  if (request.detail) check_sheet_name("--detail", *request.detail);
}

SceneJob assemble_job(const SceneRequest& request, const SceneText& source) {
  try {
    Scene scene = parse_scene(source.text, source.name);
    Model model = build_model(scene);
    const DisplayUnits units = shown_units(request, scene);
    return {std::move(scene), std::move(model), units};
  } catch (const SceneError& error) {
    throw SceneFault(error, source.text);
  }
}

SceneJob read_job(const SceneRequest& request, std::istream& in) {
  check_outputs(request);
  return assemble_job(request, read_scene_text(request.scene, in));
}

}  // namespace stowpath
