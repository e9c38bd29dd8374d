#include "render/sheet/room_drawing.h"

#include <algorithm>
#include <map>
#include <set>

#include "render/sheet/stair_drawing.h"

namespace stowpath {
namespace {

// Short slanted strokes on the far side of a surface from a to b, to the right of the walk: ground, masonry.
void ground_strokes(DisplayList& list, Vec2 a, Vec2 b) {
  constexpr double kEvery = 4.0, kLong = 2.4;  // [mm]
  const double length = norm(b - a);
  if (length <= 0.0) return;
  const Vec2 d = (1.0 / length) * (b - a), n{-d.y, d.x};
  for (double at = 1.5; at < length; at += kEvery) {
    const Vec2 start = a + at * d;
    list.line(start, start + kLong * (n - 0.8 * d), {Ink::soft, kThin});
  }
}

void draw_shell(DisplayList& list, const Subject& subject, const ViewFrame& frame) {
  const double floor = frame.y(subject.model.floor_level), top = frame.y(subject.scene.room.ceiling);
  const double back = frame.x(0.0), front = frame.x(subject.scene.room.depth);
  list.open("room", "The room: back wall left, front wall right");
  list.path({{back, top}, {back, floor}, {front, floor}, {front, top}, {back, top}}, false, Pen{Ink::line, kHeavy});
  ground_strokes(list, {back, floor}, {front, floor});
  ground_strokes(list, {back, top}, {back, floor});
  list.close();
}

void draw_solid(DisplayList& list, const ViewFrame& frame, const RoomPart& part) {
  const bool soft = part.kind == PartKind::guard;
  const std::vector<Vec2> corners = on_paper(frame, part.outline);
  list.path(corners, true, Pen{soft ? Ink::soft : Ink::line, soft ? kThin : kMedium}, Ink::wall);
  if (part.kind == PartKind::loft) hatch(list, corners, 0.785, 3.2, {Ink::faint, kThin});
}

// Small steel is drawn by names, so that the pieces of a saddle or of an arc run together.
void draw_steel(DisplayList& list, const Subject& subject, const ViewFrame& frame) {
  std::map<std::string, std::vector<std::vector<Vec2>>> pieces;
  for (const RoomPart& part : subject.model.room) {
    if (part.kind == PartKind::bracket) pieces[part.name].push_back(on_paper(frame, part.outline));
  }
  list.open("brackets", "The rail's brackets");
  for (const auto& [name, outlines] : pieces) draw_pieces(list, outlines, {Ink::line, kThin}, Ink::faint);
  list.close();
  for (const RoomPart& part : subject.model.room) {
    if (part.kind == PartKind::pipe_joint || part.kind == PartKind::rail_stop)
      list.path(on_paper(frame, part.outline), true, Pen{Ink::soft, kThin});
  }
  for (const RoomPart& part : subject.model.room) {
    if (part.kind == PartKind::pipe)
      list.path(on_paper(frame, part.outline), true, Pen{Ink::line, kMedium}, Ink::paper);
  }
}

void draw_zones(DisplayList& list, const Subject& subject, const ViewFrame& frame) {
  for (const ZonePart& zone : subject.model.zones) {
    const std::vector<Vec2> corners = on_paper(frame, zone.outline);
    list.path(corners, true, Pen{Ink::soft, kThin, Dash::chain});
    hatch(list, corners, 2.356, 9.0, {Ink::faint, kThin});
  }
}

bool is_line(PartKind kind) { return kind == PartKind::lead_line || kind == PartKind::line; }

}  // namespace

bool is_shell(PartKind kind) { return kind == PartKind::floor || kind == PartKind::wall || kind == PartKind::ceiling; }

PaperBox extent_of(const RoundedPolygon& outline) {
  PaperBox box{{1e9, 1e9}, {-1e9, -1e9}};
  for (const Vec2& corner : outline.core) {
    box.least = {std::min(box.least.x, corner.x), std::min(box.least.y, corner.y)};
    box.greatest = {std::max(box.greatest.x, corner.x), std::max(box.greatest.y, corner.y)};
  }
  return grown(box, outline.radius);
}

void draw_room_side(DisplayList& list, const Subject& subject, const ViewFrame& frame) {
  draw_zones(list, subject, frame);
  draw_shell(list, subject, frame);
  for (const RoomPart& part : subject.model.room) {
    if (is_line(part.kind)) {
      list.path(on_paper(frame, part.outline), true, Pen{Ink::blue, kThin});
    } else if (part.kind == PartKind::loft || part.kind == PartKind::guard || part.kind == PartKind::obstacle) {
      draw_solid(list, frame, part);
    }
  }
  draw_steel(list, subject, frame);
}

void label_room_side(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame,
                     const PaperBox& bounds) {
  std::set<std::string> named;
  const auto name = [&](const std::string& words, const RoundedPolygon& outline) {
    if (!named.insert(words).second) return;
    const PaperBox box = extent_of(outline);
    const Vec2 middle = frame(lerp(box.least, box.greatest, 0.5));
    labels.place(list, {{}, words, kNotes, Anchor::start, Ink::soft}, middle, bounds);
  };
  for (const RoomPart& part : subject.model.room) {
    if (part.kind == PartKind::obstacle || part.kind == PartKind::loft) name(part.name, part.outline);
  }
  for (const ZonePart& zone : subject.model.zones) name("keep clear: " + zone.name, zone.outline);
}

}  // namespace stowpath
