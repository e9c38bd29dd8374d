#include "sim/mechanism/contacts.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "sim/geometry/distance.h"
#include "sim/mechanism/line_route.h"
#include "sim/mechanism/nearby.h"

namespace stowpath {

namespace {

constexpr double kAny = std::numeric_limits<double>::infinity();
// A part is cut outside of its disc by the square inside of the disc, so the disc is as much larger.
constexpr double kSquare = std::numbers::sqrt2;
// Beyond its disc a part keeps its margin with this to spare, so that rounding leaves nothing open [m].
constexpr double kSpare = 1e-4;
// Round a hinge, where things are near whatever the fold: what is left is then no one's closest pair [m].
constexpr double kBarrelRoom = 0.010;
constexpr double kLeadDiameters = 6.0;  // of a lead sheave, or an eye, in diameters of the line (common practice, no source)

class RuleMaker {
 public:
  RuleMaker(const Scene& scene, const Model& model) : scene_(scene), model_(model) {}

  std::vector<ContactRule> make() {
    hooks();
    casters();
    for (int k = 0; k + 1 < model_.linkage.sections; ++k) joint(k);
    if (scene_.hoist && scene_.hoist->ceiling_point) {
      ceiling_point();
      led_off_line();
      picks();
    }
    if (scene_.fold_line) fold_line();
    return std::move(rules_);
  }

 private:
  void hooks();
  void casters();
  void joint(int hinge);
  void barrel(int hinge);
  void ends(int hinge);
  void scabs(int hinge);
  void pin(int hinge);
  void ceiling_point();
  void led_off_line();
  void picks();
  void fold_line();

  ContactRule& add(const std::string& why, std::vector<int> a, std::vector<int> b, double depth) {
    rules_.push_back({why, std::move(a), std::move(b), ContactTime::always, -1, -1, {}, kAny, depth});
    return rules_.back();
  }
  ContactRule& about(ContactRule& rule, int body, Vec2 centre, double radius) {
    rule.body = body;
    rule.centre = centre;
    rule.radius = radius;
    return rule;
  }
  ContactRule& at_axis(ContactRule& rule, int hinge, double radius) {
    return about(rule, hinge, model_.linkage.distal(hinge), kSquare * radius);
  }

  std::vector<int> of_stair(PartKind kind) const {
    return ids([&](const StairPart& part) { return part.kind == kind; });
  }
  std::vector<int> of_section(int section, std::initializer_list<PartKind> kinds) const {
    return ids([&](const StairPart& part) {
      return part.section == section && std::find(kinds.begin(), kinds.end(), part.kind) != kinds.end();
    });
  }
  std::vector<int> of_joint(int hinge, std::initializer_list<PartKind> kinds, int section) const {
    return ids([&](const StairPart& part) {
      return part.hinge == hinge && part.section == section &&
             std::find(kinds.begin(), kinds.end(), part.kind) != kinds.end();
    });
  }
  template <class Wanted>
  std::vector<int> ids(Wanted wanted) const {
    std::vector<int> out;
    for (const StairPart& part : model_.stair)
      if (wanted(part)) out.push_back(part.id);
    return out;
  }
  std::vector<int> of_room(PartKind kind) const {
    std::vector<int> out;
    for (const RoomPart& part : model_.room)
      if (part.kind == kind && (out.empty() || out.back() != part.id)) out.push_back(part.id);
    return out;
  }
  std::vector<int> holder(const RoomPoint& point) const {
    const std::optional<int> id = holder_of(model_, point);
    return id ? std::vector<int>{*id} : std::vector<int>{};
  }
  /// Ropes that end at this point, or within their own thickness of it.
  std::vector<int> ropes_at(int section, Vec2 at, PartKind kind) const {
    std::vector<int> out;
    const auto is = [&](const RopeEnd& end, bool from_b, const RopeRun& run, RopeSpot spot) {
      const bool here = end.section == section && end.at.x == at.x && end.at.y == at.y;
      return here && spot.from_b == from_b && spot.distance <= run.radius;
    };
    for (const RopeRun& run : model_.ropes) {
      const bool reaches_a = is(run.a, false, run, run.first), reaches_b = is(run.b, true, run, run.last);
      if (run.kind == kind && run.half_width == 0.0 && (reaches_a || reaches_b)) out.push_back(run.id);
    }
    return out;
  }

  double margin() const { return model_.margin.standard; }
  double offset_of(int hinge) const { return scene_.stair.hinges[static_cast<std::size_t>(hinge)].offset; }
  double line_radius() const { return 0.5 * scene_.hoist->line.diameter; }

  const Scene& scene_;
  const Model& model_;
  std::vector<ContactRule> rules_;
};

// Beyond the disc about the pivot nothing can be within the margin of a pipe that the hook's circle holds.
void RuleMaker::hooks() {
  const Hooks& hooks = scene_.stair.hooks;
  ContactRule& pipe = add("the hook hangs on the pipe", of_stair(PartKind::hook), of_room(PartKind::pipe),
                          kFit + model_.arc_tolerance);
  about(pipe, 0, {}, kSquare * (hooks.inside + margin() + 2.0 * model_.hook_slack + model_.hook_play));
  add("the hook rolls against the rail's stop", of_stair(PartKind::hook), of_room(PartKind::rail_stop), kFit);
}

// A wheel on edge, upright in the working pose, tilts with its section and digs a lower corner in.
void RuleMaker::casters() {
  const double depth = kFit + model_.floor_uneven + model_.pipe_sag + corner_dip(model_.wheels);
  add("the caster stands on the floor", of_stair(PartKind::caster), of_room(PartKind::floor), depth).when =
      ContactTime::foot_down;
}

void RuleMaker::joint(int hinge) {
  barrel(hinge);
  ends(hinge);
  scabs(hinge);
  pin(hinge);
}

// The barrel turns about its own axis, so what it is near to it stays near to.
void RuleMaker::barrel(int hinge) {
  double radius = 0.0;
  std::vector<int> barrel;
  for (const StairPart& part : model_.stair)
    if (part.kind == PartKind::hinge && part.hinge == hinge && part.outline.core.size() == 1)
      barrel.push_back(part.id), radius = part.outline.radius;
  std::vector<int> both = of_section(hinge + 1, {PartKind::side_rail});
  for (const int leaf : of_joint(hinge, {PartKind::hinge}, hinge + 1)) both.push_back(leaf);
  at_axis(add("the hinge's barrel lies on both sections that it joins", barrel, both,
              kFit + std::max(0.0, radius - offset_of(hinge))),
          hinge, radius + model_.margin.self + kBarrelRoom);
}

// Butted ends part as the joint opens: folded by kEndsPart, what lies this far from the axis has parted by the margin.
void RuleMaker::ends(int hinge) {
  std::vector<int> upper = of_section(hinge, {PartKind::side_rail}), lower = of_section(hinge + 1, {PartKind::side_rail});
  for (const int part : of_joint(hinge, {PartKind::hinge, PartKind::spacer_block}, hinge)) upper.push_back(part);
  for (const int leaf : of_joint(hinge, {PartKind::hinge}, hinge + 1)) lower.push_back(leaf);
  ContactRule& butted = add("the sections' ends butt while the joint is closed", upper, lower, kFit);
  butted.when = ContactTime::closed;
  butted.hinge = hinge;
  about(butted, hinge, model_.linkage.distal(hinge), kSquare * (scene_.stair.side_rails.width + offset_of(hinge) + kSpare));
  const double near = 0.5 * (model_.margin.self + kBarrelRoom) / std::sin(0.5 * kEndsPart);
  at_axis(add("the sections' ends turn about the hinge that joins them", upper, lower, kFit), hinge, near);
}

// Without a block a scab lies against the outer face of the lower side rail, side by side along the rail.
void RuleMaker::scabs(int hinge) {
  if (scene_.stair.locks.empty()) return;
  const Lock& lock = scene_.stair.locks[static_cast<std::size_t>(hinge)];
  std::vector<int> lower = of_section(hinge + 1, {PartKind::side_rail});
  for (const int leaf : of_joint(hinge, {PartKind::hinge}, hinge + 1)) lower.push_back(leaf);
  const double reach =
      kSpare + std::hypot(0.5 * lock.length, scene_.stair.side_rails.width + lock.width + offset_of(hinge));
  const bool beside = lock.spacer < model_.margin.self;
  at_axis(add("the scab lies against the side rail beside it",
              beside ? of_joint(hinge, {PartKind::scab}, hinge) : std::vector<int>{}, lower, kFit),
          hinge, reach);
}

void RuleMaker::pin(int hinge) {
  if (scene_.stair.locks.empty()) return;
  const Lock& lock = scene_.stair.locks[static_cast<std::size_t>(hinge)];
  std::vector<int> pins = of_joint(hinge, {PartKind::lock_pin}, hinge);
  std::vector<int> lower = of_section(hinge + 1, {PartKind::side_rail});
  for (const int leaf : of_joint(hinge, {PartKind::hinge}, hinge + 1)) lower.push_back(leaf);
  ContactRule& rule = add("the pin locks the joint", pins, lower, scene_.stair.side_rails.thickness + kFit);
  rule.when = ContactTime::pinned;
  rule.hinge = hinge;
  for (const StairPart& part : model_.stair)
    if (part.kind == PartKind::lock_pin && part.hinge == hinge)
      about(rule, hinge, part.outline.core.front(), kSquare * (std::max(lock.head, lock.pin) + model_.margin.self));
}

void RuleMaker::ceiling_point() {
  const RoomPoint& point = *scene_.hoist->ceiling_point;
  const double radius = knot_room(scene_.hoist->line) + margin() + tackle_radius(scene_.hoist->line);
  std::vector<int> lines = ropes_at(-1, point.at, PartKind::line), fixed, first;
  for (const RoomRope& rope : model_.room_ropes)
    (rope.when == LineState::always ? first : fixed).push_back(rope.id);
  if (first.size() > 1) first.resize(1);
  for (const int id : fixed) lines.push_back(id);
  about(add("the hoist line leaves over the sheave that it hangs from", lines, first,
            tackle_radius(scene_.hoist->line) + line_radius() + kFit),
        -1, point.at, radius);
  for (const int id : first) lines.push_back(id);
  about(add("the hoist line is made fast there", lines, holder(point), tackle_radius(scene_.hoist->line) + kFit), -1,
        point.at, radius);
}

void RuleMaker::led_off_line() {
  const double radius = kLeadDiameters * scene_.hoist->line.diameter + margin() + line_radius();
  for (std::size_t i = 0; i < model_.room_ropes.size(); ++i) {
    const RoomRope& rope = model_.room_ropes[i];
    if (rope.when != LineState::always) continue;
    const bool last = i + 1 == model_.room_ropes.size() || model_.room_ropes[i + 1].when != LineState::always;
    std::vector<int> lines{rope.id};
    if (!last) {
      const int next = model_.room_ropes[i + 1].id;
      about(add("the line turns over its lead", {rope.id}, {next}, 2.0 * line_radius() + kFit), -1, rope.b.at, radius);
      lines.push_back(next);
    }
    about(add("the lead is fixed there", lines, holder(rope.b), line_radius() + kFit), -1, rope.b.at, radius);
  }
}

void RuleMaker::picks() {
  const SectionPoint& pick = scene_.hoist->pick;
  const Vec2 at{pick.along, pick.across};
  const double half = 0.5 * scene_.hoist->spread;
  const WoodAt wood = wood_at(model_, pick.section - 1, at, half);
  const bool direct = !scene_.hoist->spreader;
  const double knot = direct ? knot_room(scene_.hoist->line) : kLeadDiameters * scene_.hoist->line.diameter;
  const double thick = direct ? tackle_radius(scene_.hoist->line) : line_radius();
  about(add("the hoist line takes hold of the stair there", ropes_at(pick.section - 1, at, PartKind::line), wood.ids,
            wood.depth + thick + kFit),
        pick.section - 1, at, knot + wood.depth + model_.margin.self + thick)
      .when = ContactTime::line_on;
}

void RuleMaker::fold_line() {
  const FoldLine& line = *scene_.fold_line;
  std::vector<SectionPoint> points{line.from};
  points.insert(points.end(), line.through.begin(), line.through.end());
  for (const SectionPoint& point : points) {
    const Vec2 at{point.along, point.across};
    const WoodAt wood = wood_at(model_, point.section - 1, at, line.station);
    about(add("the fold line is made fast to the section there", ropes_at(point.section - 1, at, PartKind::fold_line),
              wood.ids, wood.depth + 0.5 * line.diameter + kFit),
          point.section - 1, at,
          kLeadDiameters * line.diameter + wood.depth + model_.margin.self + 0.5 * line.diameter);
  }
}

}  // namespace

void number_parts(Model& model) {
  int next = 0;
  for (StairPart& part : model.stair) part.id = next++;
  for (RopeRun& run : model.ropes) run.id = next++;
  for (RoomPart& part : model.room) part.id = next + part.thing;
  std::size_t rope = 0;
  for (const RoomPart& part : model.room) {
    if (part.kind != PartKind::lead_line) continue;
    while (rope < model.room_ropes.size() && model.room_ropes[rope].name != part.name) ++rope;
    if (rope < model.room_ropes.size()) model.room_ropes[rope].id = part.id;
  }
}

std::vector<ContactRule> contact_rules(const Scene& scene, const Model& model) { return RuleMaker(scene, model).make(); }

}  // namespace stowpath
