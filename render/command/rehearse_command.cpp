#include "render/command/rehearse_command.h"

#include <algorithm>
#include <ostream>

#include "render/command/faults.h"
#include "render/command/files.h"
#include "render/command/hand_push.h"
#include "render/command/output_names.h"
#include "render/command/progress.h"
#include "render/command/recording_file.h"
#include "render/report/words.h"
#include "sim/rehearsal/stage.h"
#include "sim/trade/figure.h"
#include "sim/trade/length.h"
#include "sim/trade/measure.h"

namespace stowpath {
namespace {

[[noreturn]] void refuse(const std::string& option, const std::string& text, const std::string& hint) {
  throw UsageFault(option + ": \"" + text + "\" cannot be read", hint);
}

double number(const std::string& option, const std::string& text, const std::string& figures, const std::string& hint) {
  const Measure read = parse_number(trimmed(figures));
  if (!read.value) refuse(option, text, hint);
  return *read.value;
}

double seconds(const std::string& option, const std::string& text) {
  const auto time = read_seconds(text);
  if (!time) refuse(option, text, "write it as 12s, or 1.5 min");
  return *time;
}

// After the rehearsal is broken off nothing is tried any more.
double moment(const std::string& option, const std::string& text) {
  const double time = seconds(option, text);
  if (time > kLongestRehearsal)
    throw UsageFault(option + ": " + text + " is after the end: no rehearsal is watched for longer than " +
                         format_decimal(Nominal{kLongestRehearsal / 60.0}, 0) + " min",
                     "run it without " + option + " first: the report says how long the procedure takes");
  return time;
}

// Cuts "... for 2s" off the end.
double cut_duration(const std::string& option, std::string& text) {
  const auto at = text.find(" for ");
  if (at == std::string::npos) return 1.0;
  const double time = seconds(option, text.substr(at + 5));
  text = text.substr(0, at);
  return time;
}

Push outward_push(const HandPush& hand) { return {hand.force, hand.height, hand.seconds.value_or(1.0)}; }

Gust read_gust(const std::string& text) {
  const std::string hint = "write it as \"10 m/s\", or \"-8 m/s for 3s\"; it blows against the climber's face";
  std::string rest = text;
  Gust gust;
  gust.seconds = cut_duration("--gust", rest);
  rest = trimmed(rest);
  if (!rest.ends_with("m/s")) refuse("--gust", text, hint);
  gust.speed = number("--gust", text, rest.substr(0, rest.size() - 3), hint);
  return gust;
}

void check_no_pins(const Scene& scene, const WhatIfs& asked) {
  const auto hinges = static_cast<int>(scene.stair.hinges.size());
  for (const int hinge : asked.no_pins)
    if (hinge < 1 || hinge > hinges)
      throw UsageFault("--no-pin " + std::to_string(hinge) + ": there is no such hinge",
                       hinges == 0   ? "this stair has none"
                       : hinges == 1 ? "it has one: hinge 1"
                                     : "its hinges are 1 to " + std::to_string(hinges));
}

void check_line(const Scene& scene, const WhatIfs& asked) {
  if (asked.let_go.empty() && asked.line_breaks.empty()) return;
  if (!scene.hoist || !scene.hoist->ceiling_point)
    throw UsageFault("this scene has no hoist line to let go", "describe one under hoist, with its ceiling point");
}

std::string report_of(const SceneRequest& request, const RehearsalSubject& subject) {
  if (request.voice.json) return rehearsal_json(subject);
  if (request.voice.quiet) return rehearsal_verdict_text(subject, request.voice.colour);
  return rehearsal_text(subject, {subject.units, request.voice.colour});
}

// A long procedure takes a while, and runs twice to see what the step does.
RehearsalReport watched(RehearsalOptions options, const Scene& scene, const Model& model, const Voice& voice) {
  Progress progress(voice.progress);
  options.progress = [&](double time) {
    progress.tell("rehearsing: " + format_decimal(Nominal{time}, 0) + " s of the work have run");
  };
  return rehearse(scene, model, options);
}

}  // namespace

void check_rehearsal_files(const SceneRequest& request, const RehearsalFiles& files) {
  check_apart({{"", request.scene.value_or("")}, {"--replay", files.replay}},
              {{"--record", files.record}, {"-o", files.drawing}});
  if (!files.record.empty()) check_recording_name(files.record);
  if (!files.drawing.empty()) check_drawing_name(files.drawing);
  for (const std::string& name : {files.record, files.drawing})
    if (!name.empty()) check_can_write(name);
}

HandPush asked_push(const std::string& text) {
  const HandPushRead read = read_hand_push(text);
  if (!read.push) throw UsageFault("--push: \"" + text + "\": " + read.problem, read.hint);
  return *read.push;
}

RehearsalOptions rehearsal_options(const WhatIfs& asked) {
  RehearsalOptions options;
  if (!asked.let_go.empty()) options.let_go = moment("--let-go", asked.let_go);
  if (!asked.line_breaks.empty()) options.line_breaks = moment("--line-breaks", asked.line_breaks);
  if (!asked.push.empty()) options.push = outward_push(asked_push(asked.push));
  if (!asked.gust.empty()) options.gust = read_gust(asked.gust);
  if (!asked.when.empty()) options.when = moment("--when", asked.when);
  options.comes_down = !asked.only_up;
  options.hand_at_foot = !asked.alone;
  for (const int hinge : asked.no_pins) options.no_pins.push_back(hinge - 1);
  if (options.let_go && options.line_breaks)
    throw UsageFault("the line is let go or it breaks, not both",
                     "leave --let-go or --line-breaks out: run it once with each");
  if (!options.no_pins.empty() && (options.let_go || options.line_breaks))
    throw UsageFault("--no-pin has the stair stand without a pin, and nobody hooks the line on: there is none to lose",
                     "leave --no-pin out, or " + std::string(options.let_go ? "--let-go" : "--line-breaks"));
  if (asked.only_up && asked.alone)
    throw UsageFault("--alone is about the way down, and --only-up leaves that out", "leave one of them out");
  if (options.when && !options.push && !options.gust)
    throw UsageFault("--when says when to push or blow, and neither is asked", "write --push or --gust with it");
  return options;
}

double station_at_first(const std::string& text, const Model& model, DisplayUnits units) {
  if (text.empty()) return far_station(model);
  if (!rolls_standing(model))
    throw UsageFault("--from: this procedure does not roll the stair, so it stands where the work is done",
                     "leave it out, or begin the procedure with a roll");
  if (trimmed(text) == "home") {
    if (!model.home) throw UsageFault("--from: there is no home station", "write a station, as in --from 2.5m");
    return *model.home;
  }
  const Measure read = parse_length(text, LengthUnit::none);
  if (!read.value)
    throw UsageFault("--from: \"" + text + "\": " + read.problem, "write a station, as in 2.5m, or home");
  if (!model.span.contains(*read.value))
    throw UsageFault("--from: the stair cannot stand at station " + place_text(Nominal{*read.value}, units),
                     "its hooks keep it between stations " + place_text(AtMost{model.span.lo}, units) + " and " +
                         place_text(AtLeast{model.span.hi}, units));
  return *read.value;
}

std::string what_ifs_text(const WhatIfs& asked) {
  std::string text;
  const auto add_flag = [&](const char* flag, bool set) {
    if (set) text += (text.empty() ? "" : " ") + std::string(flag);
  };
  const auto add = [&](const std::string& option, const std::string& value) {
    if (!value.empty()) text += (text.empty() ? "" : " ") + option + " \"" + value + "\"";
  };
  add_flag("--only-up", asked.only_up);
  add_flag("--alone", asked.alone);
  add("--let-go", asked.let_go);
  add("--line-breaks", asked.line_breaks);
  for (const int hinge : asked.no_pins) add("--no-pin", std::to_string(hinge));
  add("--push", asked.push);
  add("--gust", asked.gust);
  add("--when", asked.when);
  add("--from", asked.from);
  return text;
}

void keep_run(const RehearsalSubject& subject, const RehearsalFiles& files) {
  if (subject.report.refused) return;
  const Recording& recording = subject.report.recording;
  if (!files.record.empty()) write_recording_file(files.record, recording);
  if (!files.drawing.empty()) write_drawing(files.drawing, {subject.scene, subject.model, recording, subject.units});
}

// Without a pin nobody rolls the stair: it stands where the work is done, unless it is said to stand elsewhere.
std::optional<double> first_station(const WhatIfs& asked, const Model& model, DisplayUnits units) {
  if (asked.from.empty() && !asked.no_pins.empty()) return std::nullopt;
  return station_at_first(asked.from, model, units);
}

int run_rehearse(const SceneRequest& request, const WhatIfs& asked, const RehearsalFiles& files, std::istream& in,
                 std::ostream& out) {
  RehearsalOptions options = rehearsal_options(asked);
  check_rehearsal_files(request, files);
  const auto [scene, model, units] = read_job(request, in);
  check_no_pins(scene, asked);
  check_line(scene, asked);
  options.from = first_station(asked, model, units);
  RehearsalReport report = watched(options, scene, model, request.voice);
  report.recording.options = what_ifs_text(asked);
  const RehearsalSubject subject{scene, model, report, units};
  keep_run(subject, files);
  out << report_of(request, subject);
  return has_trouble(subject) ? kExitFails : kExitClear;
}

}  // namespace stowpath
