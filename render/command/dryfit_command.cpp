#include "render/command/dryfit_command.h"

#include <ostream>

#include "render/command/faults.h"
#include "render/command/files.h"
#include "render/paint/svg.h"
#include "render/report/json.h"
#include "render/report/text.h"
#include "render/sheet/dry_fit_sheet.h"
#include "sim/loads/sag.h"

namespace stowpath {
namespace {

std::string report(const SceneRequest& request, const Model& model, const DryFit& fit, DisplayUnits units) {
  if (request.voice.json) return dry_fit_json(model, fit, units);
  if (request.voice.quiet) return verdict_text(model, fit, request.voice.colour);
  return dry_fit_text(model, fit, {units, request.voice.colour});
}

Model bent(const SceneJob& job) {
  if (job.scene.rail.brackets.stations.size() < 2)
    throw UsageFault("--sagged: a pipe on fewer than two brackets is no beam", "leave --sagged out");
  return sagged(job.scene, job.model);
}

}  // namespace

int run_dryfit(const SceneRequest& request, std::istream& in, std::ostream& out) {
  const SceneJob job = read_job(request, in);
  const Scene& scene = job.scene;
  const Model model = request.sagged ? bent(job) : job.model;
  const DisplayUnits units = job.units;
  const DryFit fit = dry_fit(model);
  if (request.sheet) write_whole(*request.sheet, paint_svg(make_dry_fit_sheet({scene, model, fit, units})));
  out << report(request, model, fit, units);
  return fit.verdict == Verdict::clear ? kExitClear : kExitFails;
}

}  // namespace stowpath
