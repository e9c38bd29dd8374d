#include "render/sheet/rehearsal_sheet.h"

#include <algorithm>

#include "render/report/recording_words.h"
#include "render/sheet/plot_sheet.h"
#include "render/sheet/roll_drawing.h"

namespace stowpath {
namespace {

constexpr double kViewShare = 0.5;        // of the height, for the views
constexpr double kRollViewShare = 0.42;   // of the height, where there are more plots
constexpr double kSideShare = 0.45;  // of the width, for the side view where another stands beside it
constexpr double kBetween = 4.0;     // each side of where they part [mm]

// Middle of the box, standing on its lower edge, as large as it fits: a sheet of curves is no drawing to measure from.
ViewFrame lay_view(const PaperBox& room, const PaperBox& extent, bool flipped) {
  const Vec2 paper = room.greatest - room.least, model = extent.greatest - extent.least;
  ViewFrame frame{{}, {1000.0 * std::max(model.x / paper.x, model.y / paper.y), ""}, flipped};
  const double left = 0.5 * (paper.x - frame.scale.paper(model.x));
  const double lowest = flipped ? -extent.greatest.y : extent.least.y;
  frame.zero = {room.least.x + left - frame.scale.paper(extent.least.x), room.greatest.y + frame.scale.paper(lowest)};
  return frame;
}

void write_notes(PlotSheet& sheet, const RecordingSubject& subject) {
  sheet.cautions(recording_cautions());
  sheet.note_heading("What happened");
  for (const RecordedEvent& event : told_events(subject.recording)) {
    sheet.note(time_text(event.time) + "  " + event_sentence(event, subject.units),
               is_trouble(event.kind) ? Ink::red : Ink::line);
  }
}

void draw_view(PlotSheet& sheet, const RecordingSubject& subject, const PaperBox& room) {
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
  PlotSheet sheet(subject.units, "Rehearsal", subject.model.name, recording_answer(subject.recording, subject.units),
                  {});
  write_notes(sheet, subject);
  const PaperBox all = sheet.plots();
  const double share = has_roll(subject.recording) ? kRollViewShare : kViewShare;
  const double middle = all.least.y + share * (all.greatest.y - all.least.y);
  draw_views(sheet, subject, {all.least, {all.greatest.x, middle}});
  draw_rehearsal_plots(sheet.list(), sheet.labels(), subject, {{all.least.x, middle}, all.greatest});
  return std::move(sheet).drawn();
}

}  // namespace stowpath
