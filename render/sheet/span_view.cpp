#include "render/sheet/span_view.h"

#include <algorithm>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "render/sheet/findings_drawing.h"
#include "render/sheet/room_drawing.h"
#include "render/sheet/stair_drawing.h"

namespace stowpath {
namespace {

// A prism seen from above: stations by out, cut off where the view ends.
class Plan {
 public:
  Plan(DisplayList& list, const ViewFrame& frame, double depth) : list_(list), frame_(frame), depth_(depth) {}

  void prism(const PaperBox& extent, Interval stations, std::optional<Pen> pen, std::optional<Ink> fill = {}) {
    const double from = std::max(extent.least.x, 0.0), to = std::min(extent.greatest.x, depth_);
    if (to > from) list_.box(frame_({stations.lo, from}), frame_({stations.hi, to}), pen, fill);
  }

 private:
  DisplayList& list_;
  const ViewFrame& frame_;
  double depth_;
};

void draw_room_plan(DisplayList& list, const Subject& subject, const ViewFrame& frame, double depth) {
  const double length = subject.scene.room.length;
  const Vec2 left = frame({0.0, 0.0}), right = frame({length, 0.0});
  list.line(left, right, {Ink::line, kHeavy});
  for (double x = left.x + 2.0; x < right.x; x += 4.0)
    list.line({x, left.y}, {x + 1.9, left.y - 2.4}, {Ink::soft, kThin});
  const bool whole = depth >= subject.scene.room.depth - 1e-9;
  const Pen side{Ink::line, kHeavy}, cut{Ink::soft, kThin, Dash::chain};
  list.line(left, frame({0.0, depth}), side);
  list.line(right, frame({length, depth}), side);
  list.line(frame({0.0, depth}), frame({length, depth}), whole ? side : cut);
}

// What stands below the deck is hidden by it.
bool under_loft(const Subject& subject, const PaperBox& extent) {
  const Loft& loft = subject.scene.loft;
  return extent.greatest.y <= loft.deck - loft.thickness + 1e-9 && extent.greatest.x <= loft.edge + 1e-9;
}

void draw_things(DisplayList& list, const Subject& subject, const ViewFrame& frame, double depth) {
  Plan plan(list, frame, depth);
  for (const RoomPart& part : subject.model.room) {
    const PaperBox extent = extent_of(part.outline);
    for (const Interval& stretch : part.stations) {
      if (part.kind == PartKind::loft) {
        plan.prism(extent, stretch, Pen{Ink::line, kMedium}, Ink::wall);
      } else if (part.kind == PartKind::bracket || part.kind == PartKind::rail_stop) {
        plan.prism(extent, stretch, Pen{Ink::line, kThin}, Ink::paper);
      }
    }
  }
  for (const RoomPart& part : subject.model.room) {
    if (part.kind != PartKind::obstacle) continue;
    const PaperBox extent = extent_of(part.outline);
    const bool hidden = under_loft(subject, extent);
    const Pen pen{hidden ? Ink::soft : Ink::line, hidden ? kThin : kMedium, hidden ? Dash::hidden : Dash::solid};
    for (const Interval& stretch : part.stations)
      plan.prism(extent, stretch, pen, hidden ? std::optional<Ink>{} : std::optional<Ink>{Ink::wall});
  }
  for (const ZonePart& zone : subject.model.zones)
    plan.prism(extent_of(zone.outline), zone.stations, Pen{Ink::soft, kThin, Dash::chain});
  for (const RoomPart& part : subject.model.room) {
    if (part.kind != PartKind::pipe && part.kind != PartKind::pipe_joint) continue;
    for (const Interval& stretch : part.stations)
      plan.prism(extent_of(part.outline), stretch, Pen{Ink::line, kThin}, Ink::paper);
  }
}

void avoid(Labels& labels, const ViewFrame& frame, const PaperBox& extent, Interval stations) {
  const Vec2 a = frame({stations.lo, extent.least.x}), b = frame({stations.hi, extent.greatest.x});
  labels.avoid(std::vector<Vec2>{a, {b.x, a.y}, b, {a.x, b.y}}, true);
}

void draw_stair_plan(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame, double depth,
                     const Configuration& at, bool ghost) {
  const SectionPoses poses = place_sections(subject.model.linkage, at);
  Plan plan(list, frame, depth);
  for (const StairPart& part : subject.model.stair) {
    const bool wood = part.kind == PartKind::side_rail || part.kind == PartKind::tread;
    if (!wood && (ghost || part.kind != PartKind::caster || !seen_from_side(subject.model, part))) continue;
    const PaperBox extent = extent_of(placed(part.outline, poses.at(static_cast<std::size_t>(part.section))));
    const Pen pen{ghost ? Ink::blue : Ink::line, kThin, ghost ? Dash::hidden : Dash::solid};
    if (ghost && part.kind == PartKind::tread) continue;
    const std::vector<Interval>& stations = stations_from_above(subject.model, part);
    for (const Interval& stretch : stations) avoid(labels, frame, extent, stretch + at.station);
    for (const Interval& stretch : stations)
      plan.prism(extent, stretch + at.station, pen, ghost ? std::optional<Ink>{} : std::optional<Ink>{Ink::wood});
  }
}

// All crosses before their numbers, so that no number lands on another's cross.
void draw_finding_crosses(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame,
                          double depth, const PaperBox& bounds) {
  std::vector<std::pair<Vec2, std::string>> marks;
  for (const Finding& finding : subject.fit.findings) {
    if (finding.kind == FindingKind::build) continue;
    const double out = std::clamp(0.5 * (finding.witness.on_a.x + finding.witness.on_b.x), 0.0, depth);
    const Vec2 mark = frame({finding.worst.station, out});
    draw_mark(list, finding, mark);
    labels.keep_off(grown({mark, mark}, kRing - 0.4));
    marks.emplace_back(mark, finding.id);
  }
  for (const auto& [mark, id] : marks) labels.place(list, {{}, id, kNotes, Anchor::start, Ink::red}, mark, bounds);
}

}  // namespace

double span_depth(const Subject& subject) {
  double farthest = subject.scene.loft.edge;
  for (const Move& move : subject.model.moves) {
    for (const Segment& segment : move.segments) {
      for (const double u : {0.0, 0.5, 1.0}) {
        const SectionPoses poses = place_sections(subject.model.linkage, at(subject.model.linkage, segment, u));
        for (const StairPart& part : subject.model.stair) {
          const auto section = static_cast<std::size_t>(part.section);
          farthest = std::max(farthest, extent_of(placed(part.outline, poses.at(section))).greatest.x);
        }
      }
    }
  }
  return std::min(subject.scene.room.depth, farthest + 0.1);
}

void label_span_room(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame, double depth,
                     const PaperBox& bounds) {
  std::vector<NamedSpot> spots;
  std::set<std::string> seen;
  const auto add = [&](const std::string& name, const PaperBox& extent, Interval stations) {
    if (extent.least.x >= depth || !seen.insert(name).second) return;
    const PaperBox spot{frame({stations.lo, std::max(extent.least.x, 0.0)}),
                        frame({stations.hi, std::min(extent.greatest.x, depth)})};
    if (overlap(spot, bounds)) spots.push_back({name, common_box(spot, bounds)});
  };
  for (const RoomPart& part : subject.model.room) {
    if (part.kind == PartKind::obstacle && !part.stations.empty())
      add(part.name, extent_of(part.outline), part.stations.front());
  }
  for (const ZonePart& zone : subject.model.zones)
    add("keep clear: " + zone.name, extent_of(zone.outline), zone.stations);
  label_things(list, labels, spots, bounds);
}

void draw_span_room(DisplayList& list, const Subject& subject, const ViewFrame& frame, double depth) {
  draw_room_plan(list, subject, frame, depth);
  draw_things(list, subject, frame, depth);
}

void draw_span_view(DisplayList& list, Labels& labels, const Subject& subject, const ViewFrame& frame, double depth,
                    const Configuration& at, const PaperBox& bounds) {
  list.open("span-view", "Span view, from above");
  draw_span_room(list, subject, frame, depth);
  draw_stair_plan(list, labels, subject, frame, depth, at, false);
  if (const auto parked = parked_configuration(subject.model))
    draw_stair_plan(list, labels, subject, frame, depth, *parked, true);
  draw_finding_crosses(list, labels, subject, frame, depth, bounds);
  label_span_room(list, labels, subject, frame, depth, bounds);
  list.close();
}

}  // namespace stowpath
