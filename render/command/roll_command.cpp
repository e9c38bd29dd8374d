#include "render/command/roll_command.h"

#include <cmath>
#include <ostream>

#include "render/command/faults.h"
#include "render/command/recording_file.h"
#include "render/report/roll_report.h"
#include "render/report/words.h"
#include "sim/rehearsal/roll_recording.h"

namespace stowpath {
namespace {

// A hand above the rail or under the floor, or a stair that stands in something: said of the scene at hand.
void check_roll(const Scene& scene, const Model& model, const PushOptions& push, DisplayUnits units) {
  const Interval reach{model.floor_level, model.linkage.pivot.y};
  if (!reach.contains(push.height))
    throw UsageFault("--push: the hand must be between the floor and the rail",
                     "a height above the floor of up to " + place_text(AtLeast{reach.length()}, units));
  const double half = 0.5 * scene.stair.width;
  if (std::abs(push.across) > half)
    throw UsageFault("--push: the hand is beside the stair",
                     "an offset of at most " + place_text(AtLeast{half}, units) + " either way");
  if (scene.stair.casters.stations.empty())
    throw UsageFault("--push: this stair has no casters to roll on", "give them under stair.casters.stations");
  if (free_stations(span_site(scene, model), model.span).empty())
    throw UsageFault("--push: the standing stair meets something at every station", "dryfit says what");
}

std::string report_of(const SceneRequest& request, const RollSubject& subject) {
  if (request.voice.json) return roll_json(subject);
  if (request.voice.quiet) return roll_verdict_text(subject, request.voice.colour);
  return roll_text(subject, {subject.units, request.voice.colour});
}

}  // namespace

PushOptions roll_push_options(const HandPush& hand, const Model& model) {
  PushOptions options;
  options.force = hand.force;
  options.height = model.floor_level + hand.height;
  options.across = hand.offset;
  return options;
}

int run_roll(const SceneRequest& request, const std::string& push, const RehearsalFiles& files, std::istream& in,
             std::ostream& out) {
  const HandPush hand = asked_push(push);
  check_rehearsal_files(request, files);
  const auto [scene, model, units] = read_job(request, in);
  const PushOptions options = roll_push_options(hand, model);
  check_roll(scene, model, options, units);
  const RollReport report = roll_push(scene, model, options);
  if (!files.record.empty() || !files.drawing.empty()) {
    Recording recording = record_roll(scene, model, report);
    recording.options = "--push \"" + push + "\"";
    if (!files.record.empty()) write_recording_file(files.record, recording);
    if (!files.drawing.empty()) write_drawing(files.drawing, {scene, model, recording, units});
  }
  const RollSubject subject{scene, model, report, units};
  out << report_of(request, subject);
  return rolls_freely(subject) ? kExitClear : kExitFails;
}

}  // namespace stowpath
