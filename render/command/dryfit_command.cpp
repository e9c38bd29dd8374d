#include "render/command/dryfit_command.h"

#include <ostream>

#include "render/command/apply_command.h"
#include "render/command/faults.h"
#include "render/command/moves_file.h"
#include "render/command/output_names.h"
#include "render/command/remedy_job.h"
#include "render/command/sheet_file.h"
#include "render/report/json.h"
#include "render/report/text.h"
#include "render/sheet/dry_fit_sheet.h"
#include "render/sheet/hook_sheet.h"
#include "sim/remedy/sensitivity.h"

namespace stowpath {
namespace {

// Measurements are told for the straight pipe: how a bent one changes with them is a question of the loads.
std::vector<TightPlace> places_of(const SceneRequest& request, const Scene& scene, const Assessment& found) {
  if (request.sagged || (request.voice.quiet && !request.voice.json)) return {};
  return tight_places(scene, found.model, found.fit);
}

std::string report(const SceneRequest& request, const Scene& scene, const Assessment& found,
                   const std::vector<Cures>& cures, DisplayUnits units) {
  const std::vector<TightPlace> places = places_of(request, scene, found);
  const MeasureTwice twice{places, scene.tolerance};
  if (request.voice.json) return dry_fit_json(found.model, found.fit, units, twice, &found.seat, cures);
  if (request.voice.quiet) return verdict_text(found.model, found.fit, request.voice.colour);
  return dry_fit_text(found.model, found.fit, {units, request.voice.colour, twice, &found.seat, request.contacts}, cures);
}

// The moves can be written as well as the sheet.
void check_dryfit_outputs(SceneRequest request) {
  if (!request.apply && request.sheet && is_moves_name(*request.sheet)) request.sheet.reset();
  check_outputs(request);
}

void check_sagged(const SceneRequest& request, const SceneJob& job) {
  if (request.apply)
    throw UsageFault("--apply: cures are not looked for with --sagged",
                     "leave --sagged out, and run it on the new scene");
  if (job.scene.rail.brackets.stations.size() < 2)
    throw UsageFault("--sagged: a pipe on fewer than two brackets is no beam", "leave --sagged out");
}

void check_detail(const SceneRequest& request, const Model& model) {
  if (request.detail && request.sheet && same_file(*request.detail, *request.sheet))
    throw UsageFault("-o and --detail both write " + *request.sheet, "give them two names");
  if (request.detail && !has_hook_and_bracket(model))
    throw UsageFault("--detail: the scene has no hook at a bracket to draw", "leave --detail out");
}

// Drawn with the pipe straight; the trim is proven as the rest is.
void write_detail(const SceneRequest& request, const SceneJob& job, const Assessment& found,
                  const AssessOptions& options) {
  const auto trim = meets_bracket(found.fit) ? trim_that_clears(job.scene, kLeastArc, options) : std::nullopt;
  const HookSubject subject{job.scene, job.model, found.fit, job.units, least_hook_gap(job.model), trim};
  write_sheet(*request.detail, make_hook_sheet(subject));
}

void write_drawing_of(const std::string& name, const Subject& subject) {
  if (is_moves_name(name)) return write_moves(name, subject);
  write_sheet(name, make_dry_fit_sheet(subject));
}

}  // namespace

int run_dryfit(const SceneRequest& request, std::istream& in, std::ostream& out) {
  check_dryfit_outputs(request);
  const SceneText source = read_scene_text(request.scene, in);
  const SceneJob job = assemble_job(request, source);
  const Scene& scene = job.scene;
  const DisplayUnits units = job.units;
  if (request.sagged) check_sagged(request, job);
  check_detail(request, job.model);
  const AssessOptions options{request.sagged, {}};
  const Assessment found = assess_job(job, source, options);
  if (request.apply) return run_apply(request, job, source, found, options, out);
  if (request.sheet) write_drawing_of(*request.sheet, {scene, found.model, found.fit, units});
  if (request.detail) write_detail(request, job, found, options);
  std::vector<Cures> cures;
  if (request.remedies && !request.sagged && !request.voice.quiet)
    cures = cure_job(job, source, found, options, request.voice);
  out << report(request, scene, found, cures, units);
  return found.fit.verdict == Verdict::clear ? kExitClear : kExitFails;
}

}  // namespace stowpath
