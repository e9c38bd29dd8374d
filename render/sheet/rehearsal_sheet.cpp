#include "render/sheet/rehearsal_sheet.h"

#include <algorithm>

#include "render/report/recording_words.h"
#include "render/sheet/plot_sheet.h"

namespace stowpath {
namespace {

constexpr double kViewShare = 0.5;  // of the height, for the side view

// Middle of the box, standing on its lower edge, as large as it fits: a sheet of curves is no drawing to measure from.
ViewFrame lay_view(const PaperBox& room, const PaperBox& extent) {
  const Vec2 paper = room.greatest - room.least, model = extent.greatest - extent.least;
  ViewFrame frame{{}, {1000.0 * std::max(model.x / paper.x, model.y / paper.y), ""}, false};
  const double left = 0.5 * (paper.x - frame.scale.paper(model.x));
  frame.zero = {room.least.x + left - frame.scale.paper(extent.least.x),
                room.greatest.y + frame.scale.paper(extent.least.y)};
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
  const ViewFrame frame = lay_view(room, rehearsal_extent(subject));
  draw_rehearsal_room(sheet.list(), subject, frame);
  draw_strip(sheet.list(), sheet.labels(), subject, frame, room, true);
  label_rehearsal_room(sheet.list(), sheet.labels(), subject, frame);
}

}  // namespace

DisplayList make_rehearsal_sheet(const RecordingSubject& subject) {
  check_rehearsal(subject);
  PlotSheet sheet(subject.units, "Rehearsal", subject.model.name, recording_answer(subject.recording, subject.units),
                  {});
  write_notes(sheet, subject);
  const PaperBox all = sheet.plots();
  const double middle = all.least.y + kViewShare * (all.greatest.y - all.least.y);
  draw_view(sheet, subject, {all.least, {all.greatest.x, middle}});
  draw_rehearsal_plots(sheet.list(), sheet.labels(), subject, {{all.least.x, middle}, all.greatest});
  return std::move(sheet).drawn();
}

}  // namespace stowpath
