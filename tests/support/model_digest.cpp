#include "tests/support/model_digest.h"

#include <sstream>

namespace stowpath::testing {
namespace {

class Writer {
 public:
  Writer() { out_.precision(17); }

  std::string text() const { return out_.str(); }

  template <class... Things>
  void line(const Things&... things) {
    (put(things), ...);
    out_ << '\n';
  }

  void model(const Model& model) {
    line("linkage", model.linkage.pivot, model.linkage.length, model.linkage.hinge_across, model.linkage.fold_sign);
    line("stands", model.working_lean, model.working_leans, model.axle, model.floor_level, model.span, model.home);
    line("wheels", model.wheels.axle, model.wheels.radius, model.wheels.half_width, model.wheels.stations);
    line("inside", model.inside.out, model.inside.up, model.inside.along);
    for (const StairPart& part : model.stair)
      line(part.name, part.section, part.outline, part.stations, part.only_pinned, part.hinge);
    for (const RoomPart& part : model.room) line(part.name, part.outline, part.stations, static_cast<int>(part.when));
    for (const RopeRun& rope : model.ropes) run(rope);
    for (const RoomRope& rope : model.room_ropes) line(rope.name, rope.a, rope.b, rope.radius);
    for (const ZonePart& zone : model.zones)
      line(zone.name, zone.outline, zone.stations, static_cast<int>(zone.when.size()));
    for (const ContactRule& rule : model.contacts) line(rule.why, rule.a, rule.b, rule.centre, rule.radius, rule.depth);
    if (model.tackle) line("tackle", model.tackle->top.at, model.tackle->from_bottom, model.tackle->blocks);
    for (const Move& move : model.moves)
      for (const Segment& segment : move.segments)
        line(static_cast<int>(move.kind), segment.from, segment.to, segment.stations, segment.astray, move.hooked_on);
    for (const SectionMass& mass : model.masses) line("mass", mass.mass, mass.centre, mass.inertia);
    for (const BuildFault& fault : model.faults) line(fault.text);
  }

  void links(const Fastenings& links) {
    for (const Fastening& link : links) line(link.part, link.holder, link.how, link.ok, link.distance);
  }

 private:
  void put(const std::string& text) { out_ << text << ' '; }
  void put(const char* text) { out_ << text << ' '; }
  void put(double number) { out_ << number << ' '; }
  void put(int number) { out_ << number << ' '; }
  void put(bool yes) { out_ << yes << ' '; }
  void put(Vec2 v) { out_ << v.x << ' ' << v.y << ' '; }
  void put(Interval stretch) { out_ << stretch.lo << ' ' << stretch.hi << ' '; }
  void put(const RoomPoint& point) { out_ << point.at.x << ' ' << point.at.y << ' ' << point.station << ' '; }
  void put(const RoundedPolygon& outline) { put(outline.core), put(outline.radius); }
  void put(const Configuration& at) {
    out_ << at.station << ' ' << at.lean << ' ' << at.folds[0] << ' ' << at.folds[1] << ' ';
  }
  template <class Thing, std::size_t N>
  void put(const std::array<Thing, N>& things) {
    for (const Thing& thing : things) put(thing);
  }
  template <class Thing>
  void put(const std::vector<Thing>& things) {
    for (const Thing& thing : things) put(thing);
  }
  template <class Thing>
  void put(const std::optional<Thing>& thing) {
    if (thing) put(*thing);
  }

  void run(const RopeRun& rope) {
    for (const RopeEnd* end : {&rope.a, &rope.b}) line(rope.name, end->section, end->at, end->stations);
    line(rope.radius, rope.first.distance, rope.last.distance, rope.first_aside, rope.last_aside, rope.half_width);
  }

  std::ostringstream out_;
};

}  // namespace

std::string digest(const Scene& scene, const Model& model) {
  Writer writer;
  writer.model(model);
  writer.links(held_by(scene, model));
  return writer.text();
}

}  // namespace stowpath::testing
