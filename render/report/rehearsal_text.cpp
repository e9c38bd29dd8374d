#include <algorithm>

#include "render/report/account_words.h"
#include "render/report/hoist_words.h"
#include "render/report/page.h"
#include "render/report/recording_words.h"
#include "render/report/rehearsal_report.h"
#include "render/report/words.h"
#include "sim/trade/figure.h"

namespace stowpath {
namespace {

constexpr std::size_t kMostEvents = 60;  // lines of the list of what happened
constexpr std::size_t kMostTouches = 20;
constexpr double kTold = 0.0174532925199433;  // a stray of a degree is worth a sentence [rad]
constexpr double kSinks = 0.001;              // and a hinge that sinks so far [m]

class Writer {
 public:
  Writer(const RehearsalSubject& subject, const TextOptions& options)
      : subject_(subject), report_(subject.report), page_(options.colour), units_(options.units) {}

  std::string text() {
    page_.raw(rehearsal_verdict_text(subject_, page_.colour()));
    if (report_.refused) return refused();
    if (!report_.not_tried.empty()) page_.section("NOT TRIED", not_tried_sentence(subject_));
    if (report_.aftermath) page_.section("WHAT THEN", aftermath_sentences(subject_));
    pushed();
    section("ROLLED ALONG THE RAIL", rolls_sentences(subject_));
    touches();
    zones();
    moves();
    way_down();
    strays();
    hooks();
    events();
    page_.section("HOW GOOD THE NUMBERS ARE", bounds_sentences(report_.bounds, subject_.units));
    taken();
    page_.section("LIMITS", rehearsal_cautions());
    return page_.text();
  }

 private:
  std::string refused() {
    page_.paragraph(
        "At no step down to 1/" + format_decimal(Nominal{1.0 / report_.bounds.step}, 0) +
        " s does the world follow that rope: look whether hoist.line.strength and diameter are what you have. Nothing "
        "is recorded or drawn.");
    return page_.text();
  }

  std::string when(int move, bool back) const {
    if (move < 0) return back ? "between moves, on the way down" : "between moves";
    return move_text(subject_.model, static_cast<std::size_t>(move)) + (back ? " backwards" : "");
  }

  void pushed() {
    if (!report_.push_swing) return;
    const bool push = happened(RecordedEventKind::pushed), gust = happened(RecordedEventKind::gust);
    const std::string what = push && gust ? "push and gust" : gust ? "gust" : "push";
    std::string text =
        "The " + what + " turned a section by up to " + format_degrees(AtMost{*report_.push_swing}) + ".";
    if (report_.push_at > 0.0)
      text += " The push found the stair " + place_text(Nominal{report_.push_at}, units_) + " above the floor.";
    page_.section(push && gust ? "PUSH AND GUST" : gust ? "THE GUST" : "THE PUSH", text);
  }

  bool happened(RecordedEventKind kind) const {
    const auto& events = report_.recording.events;
    return std::any_of(events.begin(), events.end(), [kind](const RecordedEvent& event) { return event.kind == kind; });
  }

  void touches() {
    if (report_.touches.empty()) return;
    Table table;
    for (const std::size_t column : {2U, 3U, 4U, 5U}) table.figures(column);
    table.row({"part", "meets", "first at", "times", "speed", "stroke", "during"});
    for (std::size_t i = 0; i < std::min(report_.touches.size(), kMostTouches); ++i) {
      const TouchRun& run = report_.touches[i];
      table.row({run.part, run.other, seconds_text(Nominal{run.first}), std::to_string(run.times),
                 speed_text(AtMost{run.speed}, units_), energy_text(AtMost{run.energy}, units_),
                 run.after ? "what followed" : when(run.move, run.back)});
    }
    page_.table("WHAT TOUCHED, hardest first", table);
    if (report_.touches.size() > kMostTouches)
      page_.paragraph("And " + std::to_string(report_.touches.size() - kMostTouches) + " more pairs, less hard.");
  }

  void zones() {
    if (report_.zones.empty()) return;
    Table table;
    table.figures(2);
    table.row({"part", "enters", "at", "during"});
    for (const ZoneRun& run : report_.zones)
      table.row({run.part, run.zone, seconds_text(Nominal{run.time}), when(run.move, run.back)});
    page_.table("KEEP-CLEAR ZONES ENTERED", table);
  }

  void moves() {
    if (report_.moves.empty()) return;
    Table table;
    for (const std::size_t column : {1U, 2U, 3U, 4U, 5U, 6U, 7U}) table.figures(column);
    table.row({"move", "from", "takes", "pull, " + std::string(force_unit(units_)), "fold line", "slack",
               "ends at lean", "swinging"});
    for (const MoveRun& run : report_.moves)
      if (!run.back)
        table.row({when(run.move, false), seconds_text(Nominal{run.begins}),
                   seconds_text(AtMost{run.ends - run.begins}), force_figures(AtMost{run.peak_pull}, units_),
                   force_figures(AtMost{run.peak_fold}, units_), seconds_text(AtMost{run.slack}),
                   format_degrees(Nominal{run.leans[0]}), run.swing > 0.0 ? format_degrees(AtMost{run.swing}) : ""});
    page_.table("MOVES, with the greatest pull at the hand", table);
    page_.paragraph("All of it took " + seconds_text(AtMost{report_.seconds}) + ".");
  }

  void way_down() {
    Table table;
    for (const std::size_t column : {1U, 2U, 3U, 4U, 5U, 6U, 7U, 8U}) table.figures(column);
    table.row({"move", "from", "takes", "least, " + std::string(force_unit(units_)), "most", "fold line", "at the foot",
               "slack", "ends at lean"});
    bool any = false;
    for (const MoveRun& run : report_.moves) {
      if (!run.back) continue;
      any = true;
      table.row({when(run.move, false), seconds_text(Nominal{run.begins}), seconds_text(AtMost{run.ends - run.begins}),
                 force_figures(AtLeast{run.least_pull}, units_), force_figures(AtMost{run.peak_pull}, units_),
                 force_figures(AtMost{run.peak_fold}, units_), force_figures(AtMost{run.foot_pull}, units_),
                 seconds_text(AtMost{run.slack}), format_degrees(Nominal{run.leans[0]})});
    }
    if (!any) return;
    page_.table("THE WAY DOWN, moves backwards, with the pull at the hand that holds back", table);
    page_.paragraph(way_down_sentences(subject_));
  }

  void strays() {
    std::string text;
    for (const LooseRun& run : report_.loose)
      if (run.swings > kTold || std::abs(run.sinks) > kSinks)
        text += "When pin " + std::to_string(run.hinge + 1) + " was pulled, section " + std::to_string(run.hinge + 2) +
                " swung by " + format_degrees(AtMost{run.swings}) + ", to lean " +
                format_degrees(Nominal{run.to_lean}) + ", and the hinge " + (run.sinks < 0.0 ? "rose " : "sank ") +
                format_small_length(AtMost{std::abs(run.sinks)}, units_) + ". ";
    for (const MoveRun& run : report_.moves)
      if (run.stray > kTold)
        text += "In " + when(run.move, run.back) + ", section " + std::to_string(run.stray_section + 1) +
                " came to lean " + format_degrees(Nominal{run.stray_lean}) + " where " +
                format_degrees(Nominal{run.stray_meant}) + " is meant (" + seconds_text(Nominal{run.stray_time}) +
                "). ";
    for (const MoveRun& run : report_.moves)
      if (run.stalled > 0.0)
        text += "In " + when(run.move, run.back) + " the crew could not haul for " + seconds_text(AtMost{run.stalled}) +
                ". ";
    section("NOT AS MEANT", text);
  }

  void hooks() {
    std::string text;
    for (const HookSpell& spell : report_.hooks_off)
      text += "From " + seconds_text(Nominal{spell.from}) + " to " + seconds_text(Nominal{spell.to}) + " (" +
              when(spell.move, spell.back) + ") the pipe does not hold the hooks; they lift by " +
              up_to_text({spell.lift}, units_) + (spell.off ? ", off the pipe" : "") + ". ";
    for (const std::string& pair : report_.met_from_start)
      text += "The " + pair + " overlap already where they first can meet, and do not push each other. ";
    for (const SlackSpell& spell : report_.slack)
      text += "The hoist line hangs slack from " + seconds_text(Nominal{spell.from}) +
              (spell.open ? " on, and still does at the end. "
                          : " to " + seconds_text(Nominal{spell.to}) + ", and jerks with " +
                                force_text(AtMost{spell.jerk}, units_) + ". ");
    section("HOOKS AND LINE", text);
  }

  void events() {
    Table table;
    table.figures(0);
    std::size_t told = 0;
    for (const RecordedEvent& event : report_.recording.events) {
      if (!worth_telling(event) || ++told > kMostEvents) continue;
      table.row({seconds_text(Nominal{event.time}), event_sentence(event, units_)});
    }
    if (told == 0) return;
    page_.table("AS IT WENT", table);
    if (told > kMostEvents) page_.paragraph("And " + std::to_string(told - kMostEvents) + " events more.");
  }

  void taken() {
    std::string text;
    for (const std::string& caution : report_.cautions) text += caution + ". ";
    section("TAKEN FOR GRANTED", text);
  }

  // Sentences each followed by a space; nothing where there are none.
  void section(const std::string& title, const std::string& sentences) {
    if (!sentences.empty()) page_.section(title, sentences.substr(0, sentences.size() - 1));
  }

  const RehearsalSubject& subject_;
  const RehearsalReport& report_;
  ReportPage page_;
  DisplayUnits units_;
};

}  // namespace

std::string rehearsal_text(const RehearsalSubject& subject, const TextOptions& options) {
  return Writer(subject, options).text();
}

}  // namespace stowpath
