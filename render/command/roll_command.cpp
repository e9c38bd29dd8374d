#include "render/command/roll_command.h"

#include <ostream>
#include <stdexcept>

#include "render/command/faults.h"
#include "render/command/hand_push.h"
#include "render/report/roll_report.h"
#include "render/report/words.h"

namespace stowpath {
namespace {

const char* const kHint = "write it as \"120N at 1.1m\", or \"-27 lbf at 3ft 7in\"; negative pushes to the left";

// A hand above the rail or under the floor, or a stair that stands in something: said of the scene at hand.
void check_roll(const Scene& scene, const Model& model, const PushOptions& push) {
  const Interval reach{model.floor_level, model.linkage.pivot.y};
  if (!reach.contains(push.height))
    throw UsageFault("--roll: the hand must be between the floor and the rail",
                     "a height from " + place_text(reach.lo, DisplayUnits::metric) + " to " +
                         place_text(reach.hi, DisplayUnits::metric));
  if (scene.stair.casters.stations.empty())
    throw UsageFault("--roll: this stair has no casters to roll on", "give them under stair.casters.stations");
  if (free_stations(span_site(scene, model), model.span).empty())
    throw UsageFault("--roll: the standing stair meets something at every station", "dryfit says what");
}

std::string report_of(const SceneRequest& request, const RollSubject& subject) {
  if (request.voice.json) return roll_json(subject);
  if (request.voice.quiet) return roll_verdict_text(subject, request.voice.colour);
  return roll_text(subject, {subject.units, request.voice.colour});
}

}  // namespace

PushOptions roll_push_options(const std::string& text) {
  const auto hand = read_hand_push(text);
  if (!hand) throw UsageFault("--roll: \"" + text + "\" cannot be read", kHint);
  if (!(hand->size > 0.0)) throw UsageFault("--roll: a push of nothing moves nothing", kHint);
  PushOptions options;
  options.force = hand->force();
  options.height = hand->height;
  return options;
}

int run_roll(const SceneRequest& request, const std::string& push, std::istream& in, std::ostream& out) {
  const PushOptions options = roll_push_options(push);
  const auto [scene, model, units] = read_job(request, in);
  check_roll(scene, model, options);
  const RollReport report = roll_push(scene, model, options);
  const RollSubject subject{scene, model, report, units};
  out << report_of(request, subject);
  return rolls_freely(subject) ? kExitClear : kExitFails;
}

}  // namespace stowpath
