#include "render/sheet/roll_drawing.h"

#include <algorithm>
#include <cmath>

#include "render/report/recording_words.h"
#include "render/sheet/recording_curves.h"
#include "render/sheet/room_drawing.h"
#include "render/sheet/span_view.h"
#include "render/sheet/stair_drawing.h"

namespace stowpath {
namespace {

constexpr double kGoes = 1e-4;         // along the rail, from there it rolls [m]
constexpr double kGhostEvery = 0.6;    // of the rail between ghosts [m]
constexpr double kFarthestName = 9.0;  // of a ghost's time from its foot [mm]

double plan_depth(const RecordingSubject& subject) { return span_depth(RoomSubject(subject).shown); }

bool is_wood(PartKind kind) { return kind == PartKind::side_rail || kind == PartKind::tread; }

bool is_shown(PartKind kind, bool ghost) {
  if (ghost) return kind == PartKind::side_rail;
  return is_wood(kind) || kind == PartKind::caster || kind == PartKind::hook;
}

/// A rectangle fixed to the stair, seen from above, where the frame has it.
std::vector<Vec2> above(const Model& model, const ViewFrame& view, const RecordedFrame& at, Interval along,
                        const PaperBox& side) {
  const double axis = model.linkage.pivot.x;
  const Pose2 X_W = make_pose({at.station, axis}, at.yaw);
  const double near = side.least.x - axis, far = side.greatest.x - axis;
  std::vector<Vec2> corners;
  for (const Vec2 corner : {Vec2{along.lo, near}, Vec2{along.hi, near}, Vec2{along.hi, far}, Vec2{along.lo, far}})
    corners.push_back(view(X_W * corner));
  return corners;
}

// Frames about equally far apart along the rail, with the first, the one that ends the rolling, and the last of the
// run.
std::vector<std::size_t> roll_frames(const Recording& recording) {
  const auto& frames = recording.frames;
  std::vector<std::size_t> out{0};
  const auto add = [&](std::size_t i) {
    if (i > out.back()) out.push_back(i);
  };
  std::size_t ends = frames.size() - 1;
  while (ends > 0 && std::abs(frames[ends - 1].station - frames.back().station) < kGoes) --ends;
  for (std::size_t i = 1; i < ends; ++i) {
    const double left = std::abs(frames[i].station - frames[ends].station);
    if (std::abs(frames[i].station - frames[out.back()].station) >= kGhostEvery && left > 0.5 * kGhostEvery) add(i);
  }
  add(ends);
  add(frames.size() - 1);
  return out;
}

void name_ghost(DisplayList& list, Labels& labels, const RecordingSubject& subject, const ViewFrame& frame,
                const PaperBox& bounds, const RecordedFrame& at) {
  const Vec2 foot = frame({at.station, recorded_foot(subject.model, subject.recording, at).x});
  labels.place(list, {foot, time_text(Nominal{at.time}), kNotes, Anchor::start, Ink::blue}, foot, bounds,
               kFarthestName);
}

}  // namespace

bool has_roll(const Recording& recording) {
  const auto& frames = recording.frames;
  return std::any_of(frames.begin(), frames.end(), [&](const RecordedFrame& frame) {
    return frame.push != 0.0 || frame.yaw != 0.0 || std::abs(frame.station - frames.front().station) > kGoes;
  });
}

PaperBox roll_extent(const RecordingSubject& subject) {
  return {{0.0, 0.0}, {subject.scene.room.length, plan_depth(subject)}};
}

ViewFrame plan_across(const PaperBox& extent, double width, double air) {
  const double metres = extent.greatest.x - extent.least.x;
  ViewFrame frame{{}, {metres * 1000.0 / (width - 2.0 * air), ""}, true};
  frame.zero = {air - frame.scale.paper(extent.least.x), air - frame.scale.paper(extent.least.y)};
  return frame;
}

void draw_roll_room(DisplayList& list, const RecordingSubject& subject, const ViewFrame& frame) {
  draw_span_room(list, RoomSubject(subject).shown, frame, plan_depth(subject));
}

void label_roll_room(DisplayList& list, Labels& labels, const RecordingSubject& subject, const ViewFrame& frame,
                     const PaperBox& bounds) {
  label_span_room(list, labels, RoomSubject(subject).shown, frame, plan_depth(subject), bounds);
}

void draw_stair_above(DisplayList& list, const RecordingSubject& subject, const ViewFrame& frame,
                      const RecordedFrame& at, bool ghost) {
  const SectionPoses poses = recorded_poses(at, subject.recording.sections);
  const Pen pen{ghost ? Ink::blue : Ink::line, kThin, ghost ? Dash::hidden : Dash::solid};
  for (const StairPart& part : subject.model.stair) {
    if (!is_shown(part.kind, ghost) || !seen_from_side(subject.model, part)) continue;
    const PaperBox side = extent_of(placed(part.outline, poses.at(static_cast<std::size_t>(part.section))));
    const std::optional<Ink> fill = ghost ? std::nullopt : std::optional(is_wood(part.kind) ? Ink::wood : Ink::wall);
    for (const Interval& along : stations_from_above(subject.model, part))
      list.path(above(subject.model, frame, at, along, side), true, pen, fill);
  }
}

void draw_roll_strip(DisplayList& list, Labels& labels, const RecordingSubject& subject, const ViewFrame& frame,
                     const PaperBox& bounds, bool last) {
  const Recording& recording = subject.recording;
  const std::vector<std::size_t> shown = roll_frames(recording);
  list.open("roll", "The stair along its rail, from above");
  for (const std::size_t i : shown) {
    const bool built = last && i == shown.back();
    draw_stair_above(list, subject, frame, recording.frames[i], !built);
  }
  for (const std::size_t i : shown) name_ghost(list, labels, subject, frame, bounds, recording.frames[i]);
  list.close();
}

}  // namespace stowpath
