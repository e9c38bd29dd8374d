#include "render/command/hoist_command.h"

#include <ostream>

#include "render/command/faults.h"
#include "render/command/sheet_file.h"
#include "render/report/hoist_report.h"
#include "render/report/hoist_words.h"
#include "render/sheet/hoist_sheet.h"
#include "sim/loads/hoist_loads.h"

namespace stowpath {
namespace {

void check_hoist(const Scene& scene) {
  if (!scene.hoist) throw UsageFault("this scene has no hoist", "describe one under hoist, with its ceiling point");
  if (!scene.hoist->ceiling_point)
    throw UsageFault("this scene's hoist has no ceiling point", "give hoist.ceiling point: {out, up, station}");
}

std::string report(const SceneRequest& request, const HoistSubject& subject) {
  if (request.voice.json) return hoist_json(subject);
  if (request.voice.quiet) return hoist_verdict_text(subject, request.voice.colour);
  return hoist_text(subject, {subject.units, request.voice.colour});
}

}  // namespace

int run_hoist(const SceneRequest& request, std::istream& in, std::ostream& out) {
  const auto [scene, model, units] = read_job(request, in);
  check_hoist(scene);
  const PullReport pull = pull_through(scene, model);
  const HoistEffort effort = reckon_effort(scene, pull);
  const Holding holding = what_holds(scene, pull, effort);
  const Weights weights = weigh(scene, model);
  const std::vector<HardwareItem> hardware =
      hoist_hardware_list({scene, model, climb(scene, model), {}, hoist_loads(scene, model, pull)});
  const HoistSubject subject{scene, model, pull, effort, holding, weights, hardware, units};
  if (request.sheet) write_sheet(*request.sheet, make_hoist_sheet(subject));
  out << report(request, subject);
  return effort.verdict == EffortVerdict::within && holds_up(subject) ? kExitClear : kExitFails;
}

}  // namespace stowpath
