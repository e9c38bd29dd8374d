#include "render/command/loads_command.h"

#include <ostream>

#include "render/command/faults.h"
#include "render/command/sheet_file.h"
#include "render/report/loads_report.h"
#include "render/sheet/loads_sheet.h"
#include "sim/loads/hoist_loads.h"

namespace stowpath {
namespace {

std::optional<HoistLoads> hoisted(const Scene& scene, const Model& model) {
  if (!scene.hoist || !scene.hoist->ceiling_point) return std::nullopt;
  PullOptions options;
  options.changes = false;
  return hoist_loads(scene, model, pull_through(scene, model, options));
}

std::string report(const SceneRequest& request, const LoadsSubject& subject) {
  if (request.voice.json) return loads_json(subject);
  if (request.voice.quiet) return loads_verdict_text(subject, request.voice.colour);
  return loads_text(subject, {subject.units, request.voice.colour});
}

}  // namespace

int run_loads(const SceneRequest& request, std::istream& in, std::ostream& out) {
  const auto [scene, model, units] = read_job(request, in);
  const std::optional<HoistLoads> hoist = hoisted(scene, model);
  const LoadsReport loads = look_at_loads(scene, model, hoist);
  const Weights weights = weigh(scene, model);
  const LoadsSubject subject{scene, model, loads, weights, hoist.has_value(), units};
  if (request.sheet) write_sheet(*request.sheet, make_loads_sheet(subject));
  out << report(request, subject);
  return all_bear(subject) ? kExitClear : kExitFails;
}

}  // namespace stowpath
