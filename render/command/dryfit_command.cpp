#include "render/command/dryfit_command.h"

#include <ostream>

#include "render/command/faults.h"
#include "render/command/files.h"
#include "render/command/scene_source.h"
#include "render/paint/svg.h"
#include "render/report/json.h"
#include "render/report/text.h"
#include "render/sheet/dry_fit_sheet.h"
#include "sim/scene/reader.h"

namespace stowpath {
namespace {

bool ends_with(const std::string& text, std::string_view end) {
  return text.size() > end.size() && text.compare(text.size() - end.size(), end.size(), end) == 0;
}

void check_sheet_name(const std::string& name) {
  if (!ends_with(name, ".svg"))
    throw UsageFault("-o " + name + ": a sheet is written as .svg",
                     "give it a name that ends in .svg, as in -o sheet.svg");
}

struct Assembled {
  Scene scene;
  Model model;
};

Assembled assembled(SceneText source) {
  try {
    Scene scene = parse_scene(source.text, source.name);
    Model model = build_model(scene);
    return {std::move(scene), std::move(model)};
  } catch (const SceneError& error) {
    throw SceneFault(error, std::move(source.text));
  }
}

DisplayUnits units_of(const DryfitRequest& request, const Scene& scene) {
  if (request.units) return *request.units;
  return scene.units == FileUnits::inches ? DisplayUnits::imperial : DisplayUnits::metric;
}

std::string report(const DryfitRequest& request, const Model& model, const DryFit& fit, DisplayUnits units) {
  if (request.voice.json) return dry_fit_json(model, fit, units);
  if (request.voice.quiet) return verdict_text(model, fit, request.voice.colour);
  return dry_fit_text(model, fit, {units, request.voice.colour});
}

}  // namespace

int run_dryfit(const DryfitRequest& request, std::istream& in, std::ostream& out) {
  if (request.sheet) check_sheet_name(*request.sheet);
  const auto [scene, model] = assembled(read_scene_text(request.scene, in));
  const DryFit fit = dry_fit(model);
  const DisplayUnits units = units_of(request, scene);
  if (request.sheet) write_whole(*request.sheet, paint_svg(make_dry_fit_sheet({scene, model, fit, units})));
  out << report(request, model, fit, units);
  return fit.verdict == Verdict::clear ? kExitClear : kExitFails;
}

}  // namespace stowpath
