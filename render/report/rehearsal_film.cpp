#include "render/report/rehearsal_film.h"

#include "render/report/film.h"
#include "render/report/recording_words.h"
#include "render/sheet/recording_curves.h"
#include "render/sheet/roll_drawing.h"
#include "render/sheet/stair_drawing.h"

namespace stowpath {
namespace {

constexpr double kWidth = 160.0;    // of a picture, in the drawing's millimetres
constexpr double kAir = 6.0;        // round the view [mm]
constexpr double kCaption = 12.0;   // under it, what is there now [mm]
constexpr double kSmall = 2.2;      // lettering of what goes for all of it [mm]
constexpr double kSmallLine = 3.4;  // [mm]

// With the last picture stands what happened after it was recorded.
double told_until(const Recording& recording, const RecordedFrame& frame) {
  return &frame == &recording.frames.back() ? ends_at(recording) : frame.time;
}

void draw_caption(DisplayList& list, const RecordingSubject& subject, const RecordedFrame& frame, double top,
                  int faster) {
  const std::string pace = faster > 1 ? " (" + std::to_string(faster) + " times as fast)" : "";
  list.text({{kAir, top + 4.0}, frame_words(subject.model, subject.recording, frame, subject.units) + pace, 3.2});
  if (const auto event = last_told(subject.recording, told_until(subject.recording, frame))) {
    const bool trouble = is_trouble(*event);
    list.text({{kAir, top + 9.5},
               time_text(Nominal{event->time}) + "  " + event_sentence(*event, subject.units) + (trouble ? " ✗" : ""),
               2.6,
               Anchor::start,
               trouble ? Ink::red : Ink::line});
  }
}

/// What goes for the whole film, on every picture: any of them may be looked at alone.
class FilmNotes {
 public:
  explicit FilmNotes(const RecordingSubject& subject) {
    const Recording& recording = subject.recording;
    add(recording_answer(recording, subject.units), has_trouble(recording) ? Ink::red : Ink::line);
    add(account_sentences(recording, subject.units), Ink::soft);
    add(taken_for_granted(recording), Ink::soft);
    add(recording_cautions(), Ink::soft);
  }

  double height() const { return kSmallLine * static_cast<double>(lines_.size()) + kAir; }

  void draw(DisplayList& list, double top) const {
    for (const Line& line : lines_) list.text({{kAir, top += kSmallLine}, line.words, kSmall, Anchor::start, line.ink});
  }

 private:
  struct Line {
    std::string words;
    Ink ink;
  };

  void add(const std::string& words, Ink ink) {
    for (std::string& line : wrap_text(words, kSmall, kWidth - 2.0 * kAir)) lines_.push_back({std::move(line), ink});
  }

  std::vector<Line> lines_;
};

}  // namespace

DisplayList make_rehearsal_picture(const RecordingSubject& subject, std::size_t frame, int faster) {
  const PaperBox extent = rehearsal_extent(subject);
  const ViewFrame view = frame_across(extent, kWidth, kAir);
  const bool rolls = has_roll(subject.recording);
  const PaperBox plan = roll_extent(subject);
  ViewFrame from_above = plan_across(plan, kWidth, kAir);
  from_above.zero.y += view.y(extent.least.y) + kAir;
  const double bottom = rolls ? from_above.y(plan.greatest.y) + kAir : view.y(extent.least.y) + kAir;
  DisplayList list;
  list.width = kWidth;
  const FilmNotes notes(subject);
  list.height = bottom + kCaption + notes.height();
  list.title = "Rehearsal: " + subject.model.name;
  const RecordedFrame& shown = subject.recording.frames.at(frame);
  const SectionPoses poses = recorded_poses(shown, subject.recording.sections);
  draw_rehearsal_room(list, subject, view);
  draw_stair(list, view, subject.model, poses);
  Labels labels;
  draw_recorded_ropes(list, labels, subject, view, shown, {{kAir, kAir}, {kWidth - kAir, view.y(extent.least.y)}});
  if (rolls) {
    draw_roll_room(list, subject, from_above);
    draw_stair_above(list, subject, from_above, shown, false);
  }
  draw_caption(list, subject, shown, bottom, faster);
  notes.draw(list, bottom + kCaption);
  return list;
}

std::string rehearsal_film(const RecordingSubject& subject) {
  check_rehearsal(subject);
  const std::vector<RecordedFrame>& frames = subject.recording.frames;
  const double begins = frames.front().time, lasts = frames.back().time - begins;
  return make_film(begins, lasts, [&](double time, int faster) {
    return make_rehearsal_picture(subject, frame_at(subject.recording, time), faster);
  });
}

}  // namespace stowpath
