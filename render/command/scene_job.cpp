#include "render/command/scene_job.h"

#include "render/command/faults.h"
#include "render/command/sheet_file.h"
#include "sim/scene/reader.h"

namespace stowpath {
namespace {

bool ends_with(const std::string& text, std::string_view end) {
  return text.size() > end.size() && text.compare(text.size() - end.size(), end.size(), end) == 0;
}

void check_scene_name(const std::string& name) {
  if (!ends_with(name, ".yaml") && !ends_with(name, ".yml"))
    throw UsageFault("-o " + name + ": with --apply a scene is written, as .yaml",
                     "give it a name that ends in .yaml, as in -o new.yaml");
}

DisplayUnits units_of(const SceneRequest& request, const Scene& scene) {
  if (request.units) return *request.units;
  return scene.units == FileUnits::inches ? DisplayUnits::imperial : DisplayUnits::metric;
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
    const DisplayUnits units = units_of(request, scene);
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
