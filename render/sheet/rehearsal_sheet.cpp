#include "render/sheet/rehearsal_sheet.h"

#include <algorithm>

#include "render/report/recording_words.h"
#include "render/sheet/plot_sheet.h"
#include "render/sheet/roll_drawing.h"

namespace stowpath {
namespace {

constexpr double kViewShare = 0.5;       // of the height, for the views
constexpr double kRollViewShare = 0.42;  // of the height, where there are more plots
constexpr double kSideShare = 0.45;      // of the width, for the side view where another stands beside it
constexpr double kBetween = 4.0;         // each side of where they part [mm]
constexpr double kWordsOver = 5.5;       // the side view [mm]

// Middle of the box, standing on its lower edge, as large as it fits: a sheet of curves is no drawing to measure from.
ViewFrame lay_view(const PaperBox& room, const PaperBox& extent, bool flipped) {
  const Vec2 paper = room.greatest - room.least, model = extent.greatest - extent.least;
  ViewFrame frame{{}, {1000.0 * std::max(model.x / paper.x, model.y / paper.y), ""}, flipped};
  const double left = 0.5 * (paper.x - frame.scale.paper(model.x));
  const double lowest = flipped ? -extent.greatest.y : extent.least.y;
  frame.zero = {room.least.x + left - frame.scale.paper(extent.least.x), room.greatest.y + frame.scale.paper(lowest)};
  return frame;
}

/// What happened once or more often, told by its gravest.
struct Occurrence {
  RecordedEvent gravest;
  std::vector<double> times;  // [s]
};

// How hard it was differs from time to time.
bool is_hard(RecordedEventKind kind) {
  return kind == RecordedEventKind::touch || kind == RecordedEventKind::slack_ends;
}

bool same_thing(const RecordedEvent& a, const RecordedEvent& b) {
  return a.kind == b.kind && a.what == b.what && a.other == b.other && (a.value == b.value || is_hard(a.kind));
}

// Those that have to be looked at, gravest first; each thing once.
std::vector<Occurrence> grave_ones(const std::vector<RecordedEvent>& events) {
  std::vector<Occurrence> out;
  for (const RecordedEvent& event : events) {
    if (!is_trouble(event)) continue;
    const auto known =
        std::find_if(out.begin(), out.end(), [&](const Occurrence& o) { return same_thing(o.gravest, event); });
    Occurrence& of = known == out.end() ? out.emplace_back(Occurrence{event, {}}) : *known;
    of.times.push_back(event.time);
    if (graver(event, of.gravest)) of.gravest = event;
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Occurrence& a, const Occurrence& b) { return graver(a.gravest, b.gravest); });
  return out;
}

std::vector<Occurrence> other_ones(const std::vector<RecordedEvent>& events) {
  std::vector<Occurrence> out;
  for (const RecordedEvent& event : events)
    if (!is_trouble(event)) out.push_back({event, {event.time}});
  return out;
}

std::string occurrence_text(const Occurrence& of, DisplayUnits units) {
  const std::size_t more = of.times.size() - 1;
  std::string text = time_text(Nominal{of.times.front()});
  if (more > 0) text += more == 1 ? " and once more" : " and " + std::to_string(more) + " times more";
  return text + "  " + event_sentence(of.gravest, units) + (more > 0 && is_hard(of.gravest.kind) ? " at most" : "");
}

/// What happened under its headings, as much of it as there is room for; the rest is counted.
class NoteList {
 public:
  NoteList(PlotSheet& sheet, const RecordingSubject& subject, std::size_t all)
      : sheet_(sheet), subject_(subject), left_(all) {}

  void write(const std::string& heading, const std::vector<Occurrence>& things, Ink ink) {
    for (std::size_t i = 0; i < things.size() && !full_; ++i) {
      const std::string words = occurrence_text(things[i], subject_.units);
      full_ = !sheet_.fits(words, i == 0, left_ > 1 ? 1 : 0);
      if (full_) return sheet_.note(std::to_string(left_) + " more: see the written report", Ink::soft);
      if (i == 0) sheet_.note_heading(heading);
      sheet_.note(words, ink);
      --left_;
    }
  }

 private:
  PlotSheet& sheet_;
  const RecordingSubject& subject_;
  std::size_t left_;
  bool full_ = false;
};

// Where the paper is too small for all of it, what has to be looked at comes first.
void write_notes(PlotSheet& sheet, const RecordingSubject& subject) {
  sheet.cautions(recording_cautions());
  const std::string taken = taken_for_granted(subject.recording);
  if (!taken.empty()) sheet.foot_note("Taken for granted", taken);
  sheet.foot_note("How good the numbers are", account_sentences(subject.recording, subject.units));
  const std::vector<RecordedEvent> events = told_events(subject.recording);
  const std::vector<Occurrence> grave = grave_ones(events), others = other_ones(events);
  NoteList list(sheet, subject, grave.size() + others.size());
  list.write("To look into, gravest first", grave, Ink::red);
  list.write("What happened besides", others, Ink::line);
}

void draw_view(PlotSheet& sheet, const RecordingSubject& subject, PaperBox room) {
  const bool up = drawn_until(subject.recording) < ends_at(subject.recording);
  const std::string words = up ? "as it went up, one ghost after the other" : "as it went, one ghost after the other";
  sheet.labels().fix(sheet.list(), {{room.least.x, room.least.y + kNotes}, words, kNotes, Anchor::start, Ink::soft});
  room.least.y += kWordsOver;
  const ViewFrame frame = lay_view(room, rehearsal_extent(subject), false);
  draw_rehearsal_room(sheet.list(), subject, frame);
  draw_strip(sheet.list(), sheet.labels(), subject, frame, room, true);
  label_rehearsal_room(sheet.list(), sheet.labels(), subject, frame);
}

void draw_from_above(PlotSheet& sheet, const RecordingSubject& subject, const PaperBox& room) {
  const ViewFrame frame = lay_view(room, roll_extent(subject), true);
  draw_roll_room(sheet.list(), subject, frame);
  draw_roll_strip(sheet.list(), sheet.labels(), subject, frame, room, true);
  label_roll_room(sheet.list(), sheet.labels(), subject, frame, room);
}

// The side view; beside it, of a stair that is rolled, the view from above.
void draw_views(PlotSheet& sheet, const RecordingSubject& subject, const PaperBox& room) {
  if (!has_roll(subject.recording)) return draw_view(sheet, subject, room);
  const double parting = room.least.x + kSideShare * (room.greatest.x - room.least.x);
  draw_view(sheet, subject, {room.least, {parting - kBetween, room.greatest.y}});
  draw_from_above(sheet, subject, {{parting + kBetween, room.least.y}, room.greatest});
}

}  // namespace

DisplayList make_rehearsal_sheet(const RecordingSubject& subject) {
  check_rehearsal(subject);
  const std::optional<bool> good =
      has_trouble(subject.recording) ? std::optional(false) : std::nullopt;  // never proven
  PlotSheet sheet(subject.units, "Rehearsal", subject.model.name, recording_answer(subject.recording, subject.units),
                  good);
  write_notes(sheet, subject);
  const PaperBox all = sheet.plots();
  const double share = has_roll(subject.recording) ? kRollViewShare : kViewShare;
  const double middle = all.least.y + share * (all.greatest.y - all.least.y);
  draw_views(sheet, subject, {all.least, {all.greatest.x, middle}});
  draw_rehearsal_plots(sheet.list(), sheet.labels(), subject, {{all.least.x, middle}, all.greatest});
  return std::move(sheet).drawn();
}

}  // namespace stowpath
