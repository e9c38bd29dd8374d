#include "render/command/dryfit_command.h"

#include <ostream>

#include "render/command/faults.h"
#include "render/command/sheet_file.h"
#include "render/report/json.h"
#include "render/report/text.h"
#include "render/sheet/dry_fit_sheet.h"
#include "sim/remedy/assess.h"

namespace stowpath {
namespace {

std::string report(const SceneRequest& request, const Model& model, const DryFit& fit, DisplayUnits units) {
  if (request.voice.json) return dry_fit_json(model, fit, units);
  if (request.voice.quiet) return verdict_text(model, fit, request.voice.colour);
  return dry_fit_text(model, fit, {units, request.voice.colour});
}

void check_sagged(const SceneJob& job) {
  if (job.scene.rail.brackets.stations.size() < 2)
    throw UsageFault("--sagged: a pipe on fewer than two brackets is no beam", "leave --sagged out");
}

}  // namespace

int run_dryfit(const SceneRequest& request, std::istream& in, std::ostream& out) {
  const SceneJob job = read_job(request, in);
  const Scene& scene = job.scene;
  const DisplayUnits units = job.units;
  if (request.sagged) check_sagged(job);
  const Assessment found = assess(scene, {request.sagged, {}});
  if (request.sheet) write_sheet(*request.sheet, make_dry_fit_sheet({scene, found.model, found.fit, units}));
  out << report(request, found.model, found.fit, units);
  return found.fit.verdict == Verdict::clear ? kExitClear : kExitFails;
}

}  // namespace stowpath
