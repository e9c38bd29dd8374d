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

constexpr double kFarthestName = 17.0;  // a name further off says nothing [mm]

// "vise" of "vise 3": what is numbered is named once.
std::string without_number(const std::string& name) {
  const std::size_t end = name.find_last_not_of("0123456789");
  return end == std::string::npos || name[end] != ' ' || end == 0 ? name : name.substr(0, end);
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

void label_things(DisplayList& list, Labels& labels, const std::vector<NamedSpot>& spots, const PaperBox& bounds) {
  std::map<std::string, int> counts;
  for (const NamedSpot& spot : spots) ++counts[without_number(spot.name)];
  std::set<std::string> named;
  for (const NamedSpot& spot : spots) {
    const std::string base = without_number(spot.name);
    if (!named.insert(base).second) continue;
    const std::string words = counts[base] > 1 ? base + " (" + std::to_string(counts[base]) + ")" : spot.name;
    const Text text{{}, words, kNotes, Anchor::start, Ink::soft};
    if (labels.place_inside(list, text, spot.box)) continue;
    labels.place(list, text, lerp(spot.box.least, spot.box.greatest, 0.5), bounds, kFarthestName);
  }
}

void label_room_side(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame,
                     const PaperBox& window) {
  std::vector<NamedSpot> spots;
  std::set<std::string> seen;
  const auto add = [&](const std::string& name, const RoundedPolygon& outline) {
    const PaperBox box = extent_of(outline);
    const PaperBox spot{frame({box.least.x, box.greatest.y}), frame({box.greatest.x, box.least.y})};
    if (overlap(spot, window) && seen.insert(name).second) spots.push_back({name, common_box(spot, window)});
  };
  for (const RoomPart& part : subject.model.room) {
    if (part.kind == PartKind::obstacle || part.kind == PartKind::loft) add(part.name, part.outline);
  }
  for (const ZonePart& zone : subject.model.zones) add("keep clear: " + zone.name, zone.outline);
  const PaperBox room{{frame.x(0.0), frame.y(subject.scene.room.ceiling)},
                      {frame.x(subject.scene.room.depth), frame.y(subject.model.floor_level)}};
  label_things(list, labels, spots, common_box(room, window));
}

}  // namespace stowpath
