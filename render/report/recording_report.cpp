#include "render/report/recording_report.h"

#include "render/report/account_json.h"
#include "render/report/account_words.h"
#include "render/report/json_values.h"
#include "render/report/page.h"
#include "render/report/recording_words.h"
#include "render/report/words.h"
#include "render/report/wrap.h"
#include "sim/rehearsal/recording_text.h"

namespace stowpath {
namespace {

Json event_json(const RecordedEvent& event, DisplayUnits units) {
  return {{"time_s", json_number(event.time)},
          {"kind", event_word(event.kind)},
          {"what", event.what},
          {"other", event.other},
          {"value", json_number(event.value)},
          {"energy_j", json_number(event.energy)},
          {"text", event_sentence(event, units)}};
}

Json account_json(const Account& account, DisplayUnits units) {
  return {{"bounds", bounds_json(account.bounds)},
          {"troubles", troubles_json(account.troubles, units)},
          {"taken_for_granted", account.cautions}};
}

}  // namespace

std::string recording_line_text(const RecordingSubject& subject) {
  return wrapped(recording_answer(subject.recording, subject.units), kPageWidth, "", "  ");
}

std::string recording_text(const RecordingSubject& subject, const TextOptions& options) {
  ReportPage page(options.colour);
  page.raw(recording_line_text(subject));
  Table table;
  table.figures(0);
  for (const RecordedEvent& event : told_events(subject.recording))
    table.row({time_text(Nominal{event.time}), event_sentence(event, options.units)});
  page.table("WHAT HAPPENED, as recorded", table);
  page.section("HOW GOOD THE NUMBERS ARE", account_sentences(subject.recording, options.units));
  const std::string taken = taken_for_granted(subject.recording);
  if (!taken.empty()) page.section("TAKEN FOR GRANTED", taken);
  page.section("LIMITS", recording_cautions());
  return page.text();
}

std::string recording_json(const RecordingSubject& subject) {
  const Recording& recording = subject.recording;
  Json out{{"schema", "stowpath.recording/1"}, {"scene", recording.scene}, {"options", recording.options}};
  out["step_s"] = json_number(recording.step);
  out["frames"] = recording.frames.size();
  out["events"] = Json::array();
  for (const RecordedEvent& event : recording.events) out["events"].push_back(event_json(event, subject.units));
  out["proves_clearance"] = false;
  out["verdict"] = has_trouble(recording) ? "trouble" : "uneventful";
  out["account"] = recording.account ? account_json(*recording.account, subject.units) : Json(nullptr);
  out["cautions"] = recording_cautions();
  return dumped(out);
}

}  // namespace stowpath
