#include "sim/mechanism/hook_shape.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stowpath {

namespace {

constexpr double kQuarter = 0.5 * std::numbers::pi;
constexpr double kTurn = 2.0 * std::numbers::pi;

double angle_of(Vec2 v) { return std::atan2(v.y, v.x); }

/// Where a turning thing may touch, kept as the earliest lean from `from` on.
struct Meetings {
  double from = 0.0;
  std::optional<double> first{};

  double ahead(double lean) const {
    const double past = std::fmod(lean - from, kTurn);
    return from + (past < 0.0 ? past + kTurn : past);
  }

  void offer(double lean) {
    const double next = ahead(lean);
    if (!first || next < *first) first = next;
  }
};

/// Both leans at which the direction `turning` (its room angle at lean 0) has the component `along` of `length` towards
/// `fixed`, where `holds` says that the touch is real.
template <typename Holds>
void offer_component(Meetings& meetings, double fixed, double turning, double along, double length, Holds holds) {
  if (length <= 0.0 || std::abs(along) > length) return;
  const double apart = std::acos(along / length);
  for (const double lean : {fixed - apart - turning, fixed + apart - turning})
    if (holds(lean)) meetings.offer(lean);
}

bool between(Vec2 a, Vec2 b, Vec2 p) { return dot(p - a, b - a) >= 0.0 && dot(p - b, a - b) >= 0.0; }

/// A corner of the end, on its circle, against a round end of the arm.
void corner_meets_disc(Meetings& meetings, Vec2 corner, Vec2 centre, double radius) {
  const double far = norm(centre);
  if (far <= 0.0) return;
  const double along = (norm_squared(corner) + far * far - radius * radius) / (2.0 * far);
  offer_component(meetings, angle_of(centre), angle_of(seen_in_room(corner, 0.0)), along, norm(corner),
                  [](double) { return true; });
}

/// The same against the arm's two straight sides.
void corner_meets_sides(Meetings& meetings, Vec2 corner, const ArmLine& arm) {
  const double length = norm(arm.b - arm.a);
  if (length <= 0.0) return;
  const Vec2 normal = 1.0 / length * Vec2{arm.a.y - arm.b.y, arm.b.x - arm.a.x};
  const auto beside = [&](double lean) { return between(arm.a, arm.b, seen_in_room(corner, lean)); };
  for (const double side : {-arm.radius, arm.radius})
    offer_component(meetings, angle_of(normal), angle_of(seen_in_room(corner, 0.0)), dot(normal, arm.a) + side,
                    norm(corner), beside);
}

/// A straight side of the end, from p to q, against a round end of the arm.
void side_meets_disc(Meetings& meetings, Vec2 p, Vec2 q, Vec2 centre, double radius) {
  const double length = norm(q - p);
  if (length <= 0.0) return;
  const Vec2 normal = 1.0 / length * Vec2{p.y - q.y, q.x - p.x};
  const auto beside = [&](double lean) { return between(seen_in_room(p, lean), seen_in_room(q, lean), centre); };
  for (const double side : {-radius, radius})
    offer_component(meetings, angle_of(centre), angle_of(seen_in_room(normal, 0.0)), dot(normal, p) + side,
                    norm(centre), beside);
}

/// Corners joined by straight sides, one after another.
void chain_meets(Meetings& meetings, const std::vector<Vec2>& corners, const ArmLine& arm) {
  for (const Vec2 corner : corners) {
    corner_meets_sides(meetings, corner, arm);
    for (const Vec2 end : {arm.a, arm.b}) corner_meets_disc(meetings, corner, end, arm.radius);
  }
  for (std::size_t i = 0; i + 1 < corners.size(); ++i)
    for (const Vec2 end : {arm.a, arm.b}) side_meets_disc(meetings, corners[i], corners[i + 1], end, arm.radius);
}

}  // namespace

HookShape bent_rod(double inside, double rod, double wrap, double tip, double point) {
  HookShape hook{inside, inside + rod, {0.0, wrap}, {}};
  const Vec2 onward = on_bend(1.0, wrap + kQuarter);
  const Vec2 inner = on_bend(inside, wrap), outer = on_bend(hook.outer, wrap);
  hook.end.push_back(inner);
  if (tip > 0.0) hook.end.push_back(inner + tip * onward);
  if (point > 0.0) hook.end.push_back(lerp(inner, outer, 0.5) + (tip + point) * onward);
  if (tip > 0.0) hook.end.push_back(outer + tip * onward);
  hook.end.push_back(outer);
  return hook;
}

HookShape hook_shape(const Hooks& hooks) {
  const double point = hooks.end == HookEnd::pointed ? hooks.rod : 0.0;
  HookShape hook = bent_rod(hooks.inside, hooks.depth(), hooks.wrap, hooks.tip, point);
  for (const HookPiece& piece : hooks.pieces) hook.plates.push_back(make_rounded_polygon(piece.corners, piece.radius));
  return hook;
}

Vec2 on_bend(double radius, double angle) { return radius * Vec2{-std::sin(angle), std::cos(angle)}; }

Vec2 seen_in_room(Vec2 p_S, double lean) {
  const double s = std::sin(lean), c = std::cos(lean);
  return {s * p_S.x + c * p_S.y, s * p_S.y - c * p_S.x};
}

Interval covered_arc(const HookShape& hook, double lean) { return hook.arc + lean; }

std::vector<Vec2> end_in_room(const HookShape& hook, double lean) {
  std::vector<Vec2> corners;
  for (const Vec2 corner : hook.end) corners.push_back(seen_in_room(corner, lean));
  return corners;
}

double lowest_of_curl(const HookShape& hook, double lean) {
  double lowest = hook.outer;
  for (const Vec2 corner : end_in_room(hook, lean)) lowest = std::min(lowest, corner.y);
  for (const RoundedPolygon& plate : hook.plates)
    for (const Vec2 corner : plate.core)
      if (corner.y < 0.0) lowest = std::min(lowest, seen_in_room(corner, lean).y - plate.radius);
  const bool past_the_bottom = hook.arc.hi + lean >= 3.0 * kQuarter;
  return past_the_bottom ? std::min(lowest, -hook.outer) : lowest;
}

double lift_to_unhook(const HookShape& hook, double lean, double pipe_radius, double centre_up) {
  if (hook.arc.hi + lean <= kQuarter) return 0.0;
  return std::max(0.0, pipe_radius - centre_up - lowest_of_curl(hook, lean));
}

std::optional<double> first_meeting(const HookShape& hook, const ArmLine& arm, double from) {
  Meetings meetings{from};
  chain_meets(meetings, hook.end, arm);
  for (const RoundedPolygon& plate : hook.plates) {
    std::vector<Vec2> round = plate.core;
    round.push_back(round.front());
    chain_meets(meetings, round, {arm.a, arm.b, arm.radius + plate.radius});
  }
  return meetings.first;
}

}  // namespace stowpath
