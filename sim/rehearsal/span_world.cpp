#include "sim/rehearsal/span_world.h"

#include <box2d/box2d.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "sim/rehearsal/span_check.h"

namespace stowpath {
namespace {

constexpr int kVelocityRounds = 40, kPositionRounds = 20;
constexpr int kDragRounds = 30;
constexpr double kSteepest =
    70.0 * std::numbers::pi / 180.0;  // of the pipe's flank under a hook, where its jaws take over [rad]
constexpr double kThinnest = 0.1;     // of a shape, in the world's lengths: 20 times the slop
constexpr std::uintptr_t kGuide = 1;  // what shapes of one number meet: hooks and pipe; bump i has i + 2

b2Vec2 scaled(Vec2 v) { return {static_cast<float>(kSpanScale * v.x), static_cast<float>(kSpanScale * v.y)}; }
Vec2 metres(b2Vec2 v) { return {v.x / kSpanScale, v.y / kSpanScale}; }

// A force that only resists: up to `most`, along one direction of the stair at one of its points, or along any.
struct Drag {
  Vec2 at;            // in the stair's frame [m]
  Vec2 along;         // unit vector in the stair's frame; 0: any direction
  double most = 0.0;  // [N]
  Vec2 given{};       // impulse within the step, in the room [N s]
};

// Two shapes meet only where they carry the same number.
class Pairing : public b2ContactFilter {
 public:
  bool ShouldCollide(b2Fixture* a, b2Fixture* b) override {
    return a->GetUserData().pointer == b->GetUserData().pointer;
  }
};

// Velocity of the stair in metres, while drags are settled in double.
struct Motion {
  Vec2 centre;  // of mass, in the room [m]
  Vec2 velocity;
  double turning = 0.0;

  Vec2 of(Vec2 at) const {
    const Vec2 r = at - centre;
    return velocity + turning * Vec2{-r.y, r.x};
  }
  void strike(const SpanStair& stair, Vec2 impulse, Vec2 at) {
    velocity = velocity + 1.0 / stair.mass * impulse;
    turning += cross(at - centre, impulse) / stair.inertia;
  }
};

Vec2 capped(Vec2 v, double most) {
  const double size = norm(v);
  return size <= most ? v : most / size * v;
}

}  // namespace

struct SpanWorld::Inside : b2ContactListener {
  Inside(const SpanStair& its_stair, const SpanSite& its_site, const SpanFriction& its_friction, double its_step)
      : stair(its_stair), site(its_site), friction(its_friction), step(its_step), world({0.0f, 0.0f}) {}

  void build(double station);
  void add_box(b2Body* on, Interval x, Interval y, std::uintptr_t meets);
  void add_jaw(double x, double side);
  double jaw_friction(double side) const;
  void apply(const SpanPush& push, Motion& motion) const;
  void settle(Motion& motion);
  double aside(const SpanHook& hook) const;
  double seat_force(const SpanHook& hook) const;
  double seat_energy(const SpanHook& hook) const;
  void centre_hooks(Motion& motion) const;
  void add_drags();
  void size_drags();
  Vec2 stopping(const Drag& drag, const Motion& motion, Vec2 at) const;
  Motion motion() const;
  void set(const Motion& motion) const;
  void BeginContact(b2Contact* contact) override;

  SpanStair stair;
  SpanSite site;
  SpanFriction friction;
  double step, time = 0.0;
  Pairing pairing;
  b2World world;
  b2Body* room = nullptr;
  b2Body* body = nullptr;
  std::vector<Drag> drags;  // one a hook, then two a caster
  std::vector<SpanTouch> touches;
};

void SpanWorld::Inside::add_box(b2Body* on, Interval x, Interval y, std::uintptr_t meets) {
  const auto half = [](Interval i) { return static_cast<float>(0.5 * std::max(kThinnest, kSpanScale * i.length())); };
  b2PolygonShape box;
  box.SetAsBox(half(x), half(y), scaled({x.middle(), y.middle()}), 0.0f);
  b2FixtureDef fixture;
  fixture.shape = &box;
  fixture.friction = static_cast<float>(meets == kGuide ? friction.hook : 0.0);
  fixture.userData.pointer = meets;
  on->CreateFixture(&fixture);
}

// Box2D takes the root of the product of two shapes' frictions, and the pipe has that of a sliding hook.
double SpanWorld::Inside::jaw_friction(double side) const {
  const bool rolls = stair.roller && stair.roller->side == (side > 0.0 ? RollerSide::room : RollerSide::wall);
  if (!rolls || !(friction.hook > 0.0)) return friction.hook;
  const double rolling = roller_drag(stair, friction);
  return rolling * rolling / friction.hook;
}

void SpanWorld::Inside::add_jaw(double x, double side) {
  b2CircleShape jaw;
  jaw.m_radius = static_cast<float>(0.5 * kSpanScale * stair.hook_rod);
  jaw.m_p = scaled({x, side * (stair.hook_inside + 0.5 * stair.hook_rod)});
  b2FixtureDef fixture;
  fixture.shape = &jaw;
  fixture.friction = static_cast<float>(jaw_friction(side));
  fixture.userData.pointer = kGuide;
  body->CreateFixture(&fixture);
}

void SpanWorld::Inside::build(double station) {
  world.SetContactFilter(&pairing);
  world.SetContactListener(this);
  world.SetAllowSleeping(false);
  b2BodyDef fixed, moving;
  room = world.CreateBody(&fixed);
  moving.type = b2_dynamicBody;
  moving.position = scaled({station, 0.0});
  moving.bullet = true;
  body = world.CreateBody(&moving);
  add_box(room, site.pipe, {-stair.pipe_radius, stair.pipe_radius}, kGuide);
  for (const SpanHook& hook : stair.hooks) {
    add_jaw(hook.x, 1.0);
    add_jaw(hook.x, -1.0);
  }
  for (std::size_t i = 0; i < site.bumps.size(); ++i) {
    add_box(body, site.bumps[i].moving, site.bumps[i].out, i + kGuide + 1);
    add_box(room, site.bumps[i].fixed, site.bumps[i].out, i + kGuide + 1);
  }
  b2MassData mass;
  mass.mass = static_cast<float>(stair.mass);
  mass.center = scaled(stair.centre);
  mass.I = static_cast<float>((stair.inertia + stair.mass * norm_squared(stair.centre)) * kSpanScale * kSpanScale);
  body->SetMassData(&mass);
  add_drags();
}

void SpanWorld::Inside::add_drags() {
  for (const SpanHook& hook : stair.hooks) drags.push_back({{hook.x, 0.0}, {}, 0.0});
  for (const SpanCaster& caster : stair.casters) {
    drags.push_back({caster.at, {1.0, 0.0}, caster.load * friction.rolling_arm / stair.caster_radius});
    drags.push_back({caster.at, {0.0, 1.0}, caster.load * friction.floor});
  }
}

Motion SpanWorld::Inside::motion() const {
  return {metres(body->GetWorldCenter()), metres(body->GetLinearVelocity()), body->GetAngularVelocity()};
}

void SpanWorld::Inside::set(const Motion& motion) const {
  body->SetLinearVelocity(scaled(motion.velocity));
  body->SetAngularVelocity(static_cast<float>(motion.turning));
}

void SpanWorld::Inside::apply(const SpanPush& push, Motion& motion) const {
  motion.strike(stair, step * push.force, metres(body->GetWorldPoint(scaled(push.at))));
}

double SpanWorld::Inside::aside(const SpanHook& hook) const {
  return metres(body->GetWorldPoint(scaled({hook.x, 0.0}))).y;
}

// A hook pushed aside by y hangs on the pipe's flank, where sin(slope) = y over its play: like a bead in a bowl.
double SpanWorld::Inside::seat_force(const SpanHook& hook) const {
  const double most = std::sin(kSteepest), sine = std::clamp(aside(hook) / stair.play(), -most, most);
  return -hook.load * sine / std::sqrt(1.0 - sine * sine);
}

// How far up the flank the hook's load has been lifted, and what the jaws' last bit adds. [J]
double SpanWorld::Inside::seat_energy(const SpanHook& hook) const {
  const double steep = stair.play() * std::sin(kSteepest), y = std::abs(aside(hook));
  const double sine = std::min(y, steep) / stair.play();
  const double beyond = std::max(0.0, y - steep) * std::tan(kSteepest);
  return hook.load * (stair.play() * (1.0 - std::sqrt(1.0 - sine * sine)) + beyond);
}

void SpanWorld::Inside::centre_hooks(Motion& motion) const {
  for (const SpanHook& hook : stair.hooks)
    motion.strike(stair, {0.0, step * seat_force(hook)}, metres(body->GetWorldPoint(scaled({hook.x, 0.0}))));
}

// Hooks drag with what they bear on the pipe; what the jaws bear drags by their own contacts. Each begins with the
// impulse of the step before.
void SpanWorld::Inside::size_drags() {
  std::size_t i = 0;
  for (const SpanHook& hook : stair.hooks) drags[i++].most = hook_drag(stair, friction, hook.load, seat_force(hook));
  for (Drag& drag : drags) drag.given = capped(drag.given, drag.most * step);
}

// One impulse after the other, round and round, each stopping its own point as far as its most allows.
void SpanWorld::Inside::settle(Motion& motion) {
  for (const Drag& drag : drags) motion.strike(stair, drag.given, metres(body->GetWorldPoint(scaled(drag.at))));
  for (int round = 0; round < kDragRounds; ++round) {
    for (Drag& drag : drags) {
      const Vec2 at = metres(body->GetWorldPoint(scaled(drag.at)));
      const Vec2 wanted = capped(drag.given + stopping(drag, motion, at), drag.most * step);
      motion.strike(stair, wanted - drag.given, at);
      drag.given = wanted;
    }
  }
}

// A step towards stopping the point, never past it. Where the cap holds it back, round after round turns it against the
// slip, as dry friction points.
Vec2 SpanWorld::Inside::stopping(const Drag& drag, const Motion& motion, Vec2 at) const {
  const Vec2 r = at - motion.centre, slip = motion.of(at);
  if (drag.along == Vec2{}) return -1.0 / (1.0 / stair.mass + norm_squared(r) / stair.inertia) * slip;
  const b2Vec2 turned = body->GetWorldVector({static_cast<float>(drag.along.x), static_cast<float>(drag.along.y)});
  const Vec2 along{turned.x, turned.y};
  const double lever = cross(r, along);
  return -dot(along, slip) / (1.0 / stair.mass + lever * lever / stair.inertia) * along;
}

void SpanWorld::Inside::BeginContact(b2Contact* contact) {
  const std::uintptr_t meets = contact->GetFixtureA()->GetUserData().pointer;
  if (meets == kGuide) return;
  const auto bump = static_cast<int>(meets - kGuide - 1);
  if (std::any_of(touches.begin(), touches.end(), [&](const SpanTouch& touch) { return touch.bump == bump; })) return;
  b2WorldManifold manifold;
  contact->GetWorldManifold(&manifold);
  const Vec2 normal{manifold.normal.x, manifold.normal.y};
  const double closing = std::abs(dot(normal, motion().of(metres(manifold.points[0]))));
  touches.push_back({bump, time, metres(body->GetPosition()).x, closing});
}

double roller_drag(const SpanStair& stair, const SpanFriction& friction) {
  return friction.roller_arm / stair.roller->radius;
}

double hook_drag(const SpanStair& stair, const SpanFriction& friction, double load, double aside) {
  const double slides = friction.hook * std::hypot(load, aside), pressed = std::abs(aside);
  if (!stair.roller || stair.roller->side == RollerSide::below) return slides;
  const double rolling = roller_drag(stair, friction);
  if (stair.roller->side == RollerSide::crown) return rolling * load + friction.hook * pressed;
  const bool on_roller = stair.roller->side == (aside > 0.0 ? RollerSide::room : RollerSide::wall);
  // Pressed less than that, the hook stands on the pipe's upper side and does not reach its roller.
  return on_roller ? std::min(slides, friction.hook * load + rolling * pressed) : slides;
}

SpanWorld::SpanWorld(const SpanStair& stair, const SpanSite& site, const SpanFriction& friction, double station,
                     double step) {
  check_span(stair, site, friction, station, step);
  inside_ = std::make_unique<Inside>(stair, site, friction, step);
  inside_->build(station);
}

SpanWorld::~SpanWorld() = default;
SpanWorld::SpanWorld(SpanWorld&&) noexcept = default;
SpanWorld& SpanWorld::operator=(SpanWorld&&) noexcept = default;

void SpanWorld::advance(const std::optional<SpanPush>& push) {
  Inside& in = *inside_;
  Motion motion = in.motion();
  if (push) in.apply(*push, motion);
  in.centre_hooks(motion);
  in.size_drags();
  in.settle(motion);
  in.set(motion);
  in.world.Step(static_cast<float>(in.step), kVelocityRounds, kPositionRounds);
  in.time += in.step;
}

void SpanWorld::set_speed(double speed) { inside_->set({{}, {speed, 0.0}, 0.0}); }

SpanState SpanWorld::state() const {
  const Vec2 middle = metres(inside_->body->GetPosition());
  const Motion motion = inside_->motion();
  return {middle.x, middle.y, inside_->body->GetAngle(), motion.of(middle).x, motion.turning};
}

double SpanWorld::time() const { return inside_->time; }

double SpanWorld::energy() const {
  const Motion motion = inside_->motion();
  double lifted = 0.0;
  for (const SpanHook& hook : inside_->stair.hooks) lifted += inside_->seat_energy(hook);
  return lifted + 0.5 * inside_->stair.mass * norm_squared(motion.velocity) +
         0.5 * inside_->stair.inertia * motion.turning * motion.turning;
}

Vec2 SpanWorld::momentum() const { return inside_->stair.mass * inside_->motion().velocity; }

const std::vector<SpanTouch>& SpanWorld::touches() const { return inside_->touches; }

}  // namespace stowpath
