#include "sim/rehearsal/side_world.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>
#include <utility>

#include "sim/mechanism/mass.h"
#include "sim/rehearsal/chain_turn.h"
#include "sim/rehearsal/side_check.h"
#include "sim/rehearsal/step_cut.h"
#include "sim/rehearsal/world_contacts.h"
#include "sim/rehearsal/world_outline.h"

namespace stowpath {

namespace {

constexpr int kRounds = 16, kStrokeRounds = 200, kPositionRounds = 4;
constexpr double kFastRate = 0.6, kFastSpeed = 0.4;  // from there a stroke has to be solved to the end [rad/s, m/s]
constexpr double kThingFriction = 0.4;               // of the stair's parts on the room's things; judgement
constexpr double kLeaves = 0.05;                     // the force must point out of the hooks for this long [s]
constexpr double kFeather = 1.0;                     // a hook force under this has no direction to speak of [N]
constexpr double kReturns = 1.0;                     // at rest on the pipe for this long, the hooks are held again [s]
constexpr double kReturnSpeed = 0.02;                // [m/s]
constexpr double kLookAgain = 0.02;                  // between looks at pairs set aside [s]

std::size_t index(int i) { return static_cast<std::size_t>(i); }
b2Vec2 units(Vec2 v) { return {static_cast<float>(kWorldUnits * v.x), static_cast<float>(kWorldUnits * v.y)}; }
Vec2 metres(b2Vec2 v) { return {v.x / kWorldUnits, v.y / kWorldUnits}; }
float moment_units(double moment) { return static_cast<float>(kWorldUnits * kWorldUnits * moment); }
double friction_circle(double mu, double radius) { return radius * mu / std::hypot(1.0, mu); }

/// Sections pinned to each other.
struct Body {
  int first = 0, last = 0;  // sections
  SectionMass mass;         // in the first section's frame
  b2Body* body = nullptr;
};

/// The rail's pivot or a hinge, as the engine has it.
struct Pin {
  int hinge = -1;             // -1: the pivot
  int upper = -1, lower = 0;  // bodies
  Vec2 upper_at, lower_at;    // in the bodies' frames
  b2RevoluteJoint* joint = nullptr;
  Vec2 force;  // on the lower body
};

bool same_thing(const WorldPart& a, const WorldPart& b) {
  return a.kind == b.kind && a.name == b.name && a.stations == b.stations && a.shape.core == b.shape.core;
}

// Pairs of these parts as pairs of those, which are of another station. The stair's own come first, in the same order;
// a thing that is not met there has no pair.
std::set<PartPair> same_pairs(const std::set<PartPair>& pairs, const std::vector<WorldPart>& these,
                              const std::vector<WorldPart>& those) {
  std::set<PartPair> out;
  for (const auto& [a, b] : pairs) {
    const WorldPart& part = these[index(b)];
    const auto same = part.section >= 0 ? those.begin() + b
                                        : std::find_if(those.begin(), those.end(),
                                                       [&](const WorldPart& other) { return same_thing(other, part); });
    if (same != those.end()) out.insert({a, static_cast<int>(same - those.begin())});
  }
  return out;
}

}  // namespace

struct SideWorld::Engine {
  Engine(const Model& model, SideSetup setup, const Configuration& start);

  void add_room();
  void add_shape(b2Body* body, int part, Vec2 shift);
  void build(const SectionPoses& X_W, const std::vector<double>& turns, const std::vector<SectionMotion>& motions,
             const std::set<PartPair>& pushing);
  double friction_of(PartKind kind) const;
  void group_sections();
  void add_body(Body& body, const Pose2& X_W, double turn, const SectionMotion& motion);
  void add_pins();
  b2RevoluteJoint* add_joint(const Pin& pin);
  void leave_pipe();
  void watch_return(double length);
  bool hook_touches_pipe() const;

  void advance();
  void slice(double length);
  int slices() const;
  int rounds() const;
  void drag_pins();
  std::vector<ChainBody> chain() const;
  std::vector<ChainPin> chain_pins() const;
  void turn_chain(const std::vector<ChainPin>& pins, double length);
  void watch_seat(double length);
  double seat() const;

  const Body& body_of(int section) const;
  double shift_of(const Body& body, int section) const;  // of a section's frame along its body's
  double turn_of(const Body& body) const { return static_cast<double>(body.body->GetAngle()); }
  Vec2 centre_of(const Body& body) const { return model.linkage.pivot + metres(body.body->GetWorldCenter()); }
  Pose2 pose_of(const Body& body) const;
  SectionPoses poses() const;
  std::vector<double> turns() const;
  SectionMotion motion(int section) const;
  double energy() const;

  const Model& model;
  SideSetup setup;
  std::vector<WorldPart> parts;
  WorldContacts contacts;
  StepCut cut;
  b2World world;
  b2Body* room = nullptr;
  std::vector<Body> bodies;
  std::vector<Pin> pins;
  std::vector<WorldTouch> touched;   // in the last step
  std::vector<ChainBody> before;     // velocities of the step before the last
  std::vector<Vec2> centres_before;  // where they stood
  Vec2 held_at;                      // the hooks' centre where the pipe holds it
  double time = 0.0, outward = 0.0, resting = 0.0, looked = 0.0;
};

SideWorld::Engine::Engine(const Model& m, SideSetup s, const Configuration& start)
    : model(m),
      setup(std::move(s)),
      parts(world_parts(model, setup.station)),
      contacts(parts),
      cut(parts, contacts),
      world(b2Vec2(0.0F, setup.gravity ? static_cast<float>(-kGravity * kWorldUnits) : 0.0F)),
      held_at(model.linkage.pivot) {
  world.SetAllowSleeping(false);
  world.SetContinuousPhysics(false);
  world.SetAutoClearForces(false);  // a step's loads act in all of its slices
  world.SetContactFilter(&contacts);
  world.SetContactListener(&contacts);
  contacts.hooks_on_pipe = setup.on_pipe;
  add_room();
  const auto leans = section_leans(model.linkage, start);
  std::vector<double> turns;
  for (int j = 0; j < model.linkage.sections; ++j) turns.push_back(leans[index(j)] - 0.5 * std::numbers::pi);
  build(place_sections(model.linkage, start), turns, std::vector<SectionMotion>(turns.size()), {});
}

void SideWorld::Engine::add_room() {
  b2BodyDef def;
  room = world.CreateBody(&def);
  for (int i = 0; i < static_cast<int>(parts.size()); ++i)
    if (parts[index(i)].section < 0) add_shape(room, i, -model.linkage.pivot);
}

// The engine takes the geometric mean of both parts': of hook and pipe, and of caster and floor, the scene's own.
double SideWorld::Engine::friction_of(PartKind kind) const {
  if (kind == PartKind::caster || kind == PartKind::floor) return setup.friction.floor;
  if (kind == PartKind::hook || kind == PartKind::pipe) return setup.friction.hook;
  return kThingFriction;
}

void SideWorld::Engine::add_shape(b2Body* body, int part, Vec2 shift) {
  const WorldPart& what = parts[index(part)];
  b2FixtureDef def;
  def.userData.pointer = static_cast<uintptr_t>(part);
  def.friction = static_cast<float>(friction_of(what.kind));
  def.isSensor = what.kind == PartKind::zone;
  for (const RoundedPolygon& piece : world_outline(what.shape)) {
    b2CircleShape disc;
    b2PolygonShape polygon;
    std::vector<b2Vec2> corners;
    for (const Vec2 corner : piece.core) corners.push_back(units(corner + shift));
    if (corners.size() == 1) {
      disc.m_p = corners.front();
      disc.m_radius = static_cast<float>(kWorldUnits * piece.radius);
      def.shape = &disc;
    } else {
      polygon.Set(corners.data(), static_cast<int32>(corners.size()));
      polygon.m_radius = 0.0F;  // the engine's own skin of two slops is not wanted
      def.shape = &polygon;
    }
    body->CreateFixture(&def);
  }
}

void SideWorld::Engine::group_sections() {
  bodies.clear();
  for (int j = 0; j < model.linkage.sections; ++j) {
    if (j == 0 || !setup.pinned[index(j - 1)]) bodies.push_back({j, j, {}, nullptr});
    Body& body = bodies.back();
    body.last = j;
    SectionMass mass = setup.masses[index(j)];
    mass.centre.x += shift_of(body, j);
    body.mass = j == body.first ? mass : joined(body.mass, mass);
  }
}

double SideWorld::Engine::shift_of(const Body& body, int section) const {
  double shift = 0.0;
  for (int j = body.first; j < section; ++j) shift += model.linkage.length[index(j)];
  return shift;
}

// The engine's frame of a body lies in its centre of mass: from elsewhere it would take the inertia back there by a
// difference of floats, and stops the program where that is not positive.
void SideWorld::Engine::add_body(Body& body, const Pose2& X_W, double turn, const SectionMotion& motion) {
  b2BodyDef def;
  def.type = b2_dynamicBody;
  def.allowSleep = false;
  def.position = units(X_W * body.mass.centre - model.linkage.pivot);
  def.angle = static_cast<float>(turn);
  body.body = world.CreateBody(&def);
  for (int i = 0; i < static_cast<int>(parts.size()); ++i) {
    const WorldPart& part = parts[index(i)];
    const bool there = !part.only_pinned || (part.hinge >= 0 && setup.pinned[index(part.hinge)]);
    if (part.section >= body.first && part.section <= body.last && there)
      add_shape(body.body, i, Vec2{shift_of(body, part.section), 0.0} - body.mass.centre);
  }
  b2MassData data;
  data.mass = static_cast<float>(body.mass.mass);
  data.center = {0.0F, 0.0F};
  data.I = moment_units(body.mass.inertia);
  body.body->SetMassData(&data);
  const Vec2 arm = X_W.turn(body.mass.centre);
  body.body->SetLinearVelocity(units(motion.velocity + motion.rate * quarter_turn(arm)));
  body.body->SetAngularVelocity(static_cast<float>(motion.rate));
}

void SideWorld::Engine::add_pins() {
  pins.clear();
  if (contacts.hooks_on_pipe) pins.push_back({-1, -1, 0, held_at - model.linkage.pivot, {}, nullptr, {}});
  for (int b = 1; b < static_cast<int>(bodies.size()); ++b) {
    const int hinge = bodies[index(b)].first - 1;
    const Vec2 above = model.linkage.distal(hinge) + Vec2{shift_of(bodies[index(b - 1)], hinge), 0.0};
    pins.push_back({hinge, b - 1, b, above, model.linkage.proximal(hinge + 1), nullptr, {}});
  }
  for (Pin& pin : pins) pin.joint = add_joint(pin);
}

b2RevoluteJoint* SideWorld::Engine::add_joint(const Pin& pin) {
  b2RevoluteJointDef def;
  def.bodyA = pin.upper < 0 ? room : bodies[index(pin.upper)].body;
  def.bodyB = bodies[index(pin.lower)].body;
  def.localAnchorA = units(pin.upper < 0 ? pin.upper_at : pin.upper_at - bodies[index(pin.upper)].mass.centre);
  def.localAnchorB = units(pin.lower_at - bodies[index(pin.lower)].mass.centre);
  def.collideConnected = true;
  def.enableMotor = true;  // at speed 0: dry friction
  if (pin.hinge >= 0 && !setup.hinge_limits.empty()) {
    const double limit = setup.hinge_limits[index(pin.hinge)];
    const bool back = model.linkage.fold_sign[index(pin.hinge)] < 0.0;
    def.enableLimit = true;
    def.lowerAngle = static_cast<float>(back ? -limit : 0.0);
    def.upperAngle = static_cast<float>(back ? 0.0 : limit);
  }
  return static_cast<b2RevoluteJoint*>(world.CreateJoint(&def));
}

void SideWorld::Engine::build(const SectionPoses& X_W, const std::vector<double>& turns,
                              const std::vector<SectionMotion>& motions, const std::set<PartPair>& pushing) {
  for (const Body& body : bodies) world.DestroyBody(body.body);
  group_sections();
  for (Body& body : bodies)
    add_body(body, X_W[index(body.first)], turns[index(body.first)], motions[index(body.first)]);
  add_pins();
  contacts.look(poses(), this->turns());
  contacts.set_aside_overlaps(pushing);
  before = chain();
  centres_before.clear();
  for (const Body& body : bodies) centres_before.push_back(centre_of(body));
}

const Body& SideWorld::Engine::body_of(int section) const {
  return *std::find_if(bodies.begin(), bodies.end(), [&](const Body& body) { return section <= body.last; });
}

Pose2 SideWorld::Engine::pose_of(const Body& body) const {
  Pose2 X_W = make_pose({}, turn_of(body));
  X_W.p = centre_of(body) - X_W.turn(body.mass.centre);
  return X_W;
}

SectionPoses SideWorld::Engine::poses() const {
  SectionPoses all{};
  for (const Body& body : bodies) {
    const Pose2 X_W = pose_of(body);
    for (int j = body.first; j <= body.last; ++j) {
      all[index(j)] = X_W;
      all[index(j)].p = X_W * Vec2{shift_of(body, j), 0.0};
    }
  }
  return all;
}

std::vector<double> SideWorld::Engine::turns() const {
  std::vector<double> all;
  for (const Body& body : bodies) all.insert(all.end(), index(body.last - body.first + 1), turn_of(body));
  return all;
}

SectionMotion SideWorld::Engine::motion(int section) const {
  const Body& body = body_of(section);
  const double rate = static_cast<double>(body.body->GetAngularVelocity());
  const Vec2 arm = make_pose({}, turn_of(body)).turn(Vec2{shift_of(body, section), 0.0} - body.mass.centre);
  return {metres(body.body->GetLinearVelocity()) + rate * quarter_turn(arm), rate};
}

std::vector<ChainBody> SideWorld::Engine::chain() const {
  std::vector<ChainBody> chain;
  for (const Body& body : bodies)
    chain.push_back({body.mass.mass, body.mass.inertia, metres(body.body->GetLinearVelocity()),
                     static_cast<double>(body.body->GetAngularVelocity())});
  return chain;
}

std::vector<ChainPin> SideWorld::Engine::chain_pins() const {
  std::vector<ChainPin> arms;
  for (const Pin& pin : pins) {
    const auto arm = [&](int b, Vec2 at) {
      if (b < 0) return Vec2{};
      const Body& body = bodies[index(b)];
      return make_pose({}, turn_of(body)).turn(at - body.mass.centre);
    };
    arms.push_back({pin.upper, pin.lower, arm(pin.upper, pin.upper_at), arm(pin.lower, pin.lower_at)});
  }
  return arms;
}

void SideWorld::Engine::drag_pins() {
  for (const Pin& pin : pins) {
    const double radius = pin.hinge < 0 ? friction_circle(setup.friction.hook, setup.hook_radius)
                                        : friction_circle(setup.friction.hinge, setup.hinge_radius);
    pin.joint->SetMaxMotorTorque(moment_units(radius * norm(pin.force)));
  }
}

void SideWorld::Engine::turn_chain(const std::vector<ChainPin>& arms, double length) {
  std::vector<ChainBody> moving = chain();
  const std::vector<Vec2> more = turn_with_arms(moving, arms, length);
  for (std::size_t i = 0; i < pins.size(); ++i)
    pins[i].force = metres(pins[i].joint->GetReactionForce(static_cast<float>(1.0 / length))) + more[i];
  for (std::size_t b = 0; b < bodies.size() && !pins.empty(); ++b) {
    bodies[b].body->SetLinearVelocity(units(moving[b].velocity));
    bodies[b].body->SetAngularVelocity(static_cast<float>(moving[b].rate));
  }
}

// The engine settles pins and contacts in turn. A stroke near the pivot, at a long lever, takes it many rounds; what it
// does not settle it gives back later, as if things were elastic.
int SideWorld::Engine::rounds() const {
  const bool fast = std::any_of(bodies.begin(), bodies.end(), [](const Body& body) {
    return std::abs(static_cast<double>(body.body->GetAngularVelocity())) > kFastRate ||
           norm(metres(body.body->GetLinearVelocity())) > kFastSpeed;
  });
  return fast && world.GetContactCount() > 0 ? kStrokeRounds : kRounds;
}

int SideWorld::Engine::slices() const {
  std::vector<SectionMotion> motions;
  for (int j = 0; j < model.linkage.sections; ++j) motions.push_back(motion(j));
  return cut.slices(poses(), motions, setup.step);
}

void SideWorld::Engine::advance() {
  touched.clear();
  const int count = slices();
  for (int i = 0; i < count; ++i) slice(setup.step / count);
  world.ClearForces();
  time += setup.step;
  if (time < looked + kLookAgain) return;
  looked = time;
  if (!contacts.aside.empty() && contacts.take_back_parted())
    for (const Body& body : bodies)
      for (b2Fixture* f = body.body->GetFixtureList(); f != nullptr; f = f->GetNext()) f->Refilter();
}

void SideWorld::Engine::slice(double length) {
  contacts.look(poses(), turns());
  before = chain();
  for (std::size_t b = 0; b < bodies.size(); ++b) centres_before[b] = centre_of(bodies[b]);
  drag_pins();
  const std::vector<ChainPin> arms = chain_pins();
  world.Step(static_cast<float>(length), rounds(), kPositionRounds);
  turn_chain(arms, length);
  touched.insert(touched.end(), contacts.begun.begin(), contacts.begun.end());
  watch_seat(length);
}

double SideWorld::Engine::seat() const {
  const Vec2 on_hook = pose_of(bodies.front()).turn_back(pins.front().force);
  return std::atan2(-on_hook.y, -on_hook.x);
}

// The pipe only pushes, within the angle of friction about its normal, where the hook covers it. The straight shank
// carries on from the arc's beginning, but presses square to itself alone.
void SideWorld::Engine::watch_seat(double length) {
  if (setup.hook_wrap <= 0.0) return;
  if (!contacts.hooks_on_pipe) return watch_return(length);
  const double slip = std::atan(setup.friction.hook), from_shank = -0.5 * std::numbers::pi;
  const double at = seat();
  const bool held =
      norm(pins.front().force) < kFeather || (at >= from_shank - slip && at <= from_shank + setup.hook_wrap + slip);
  outward = held ? 0.0 : outward + length;
  if (outward > kLeaves) leave_pipe();
}

void SideWorld::Engine::leave_pipe() {
  contacts.hooks_on_pipe = false;
  world.DestroyJoint(pins.front().joint);
  pins.erase(pins.begin());
  for (b2Fixture* f = bodies.front().body->GetFixtureList(); f != nullptr; f = f->GetNext()) f->Refilter();
}

bool SideWorld::Engine::hook_touches_pipe() const {
  return std::any_of(contacts.touching.begin(), contacts.touching.end(), [&](const auto& touch) {
    return parts[index(touch.first.first)].kind == PartKind::hook &&
           parts[index(touch.first.second)].kind == PartKind::pipe;
  });
}

void SideWorld::Engine::watch_return(double length) {
  const double reach = model.hook_slack + kWorldSkin;
  const bool rests = hook_touches_pipe() && norm(poses()[0].p - model.linkage.pivot) < 2.0 * reach &&
                     norm(motion(0).velocity) < kReturnSpeed;
  resting = rests ? resting + length : 0.0;
  if (resting < kReturns) return;
  held_at = poses()[0].p;
  contacts.hooks_on_pipe = true;
  outward = resting = 0.0;
  pins.insert(pins.begin(), Pin{-1, -1, 0, held_at - model.linkage.pivot, {}, nullptr, {}});
  pins.front().joint = add_joint(pins.front());
  for (b2Fixture* f = bodies.front().body->GetFixtureList(); f != nullptr; f = f->GetNext()) f->Refilter();
}

// Half of what the velocities on either side of the pose say: a stroke's loss then shows as a loss.
double SideWorld::Engine::energy() const {
  const std::vector<ChainBody> now = chain();
  double energy = 0.0;
  for (std::size_t b = 0; b < now.size(); ++b) {
    for (const ChainBody& side : {before[b], now[b]})
      energy += 0.25 * (side.mass * norm_squared(side.velocity) + side.inertia * side.rate * side.rate);
    if (setup.gravity) energy += kGravity * now[b].mass * (centres_before[b].y - model.linkage.pivot.y);
  }
  return energy;
}

SideWorld::SideWorld(const Model& model, SideSetup setup, const Configuration& start) : start_(start) {
  check_side(model, setup);
  setup.pinned.resize(index(model.linkage.sections - 1), false);
  engine_ = std::make_unique<Engine>(model, std::move(setup), start);
}

SideWorld::~SideWorld() = default;

void SideWorld::start_from_rest() {
  std::vector<std::pair<b2Vec2, float>> stood;
  for (const Body& body : engine_->bodies) stood.emplace_back(body.body->GetPosition(), body.body->GetAngle());
  engine_->advance();
  for (std::size_t b = 0; b < stood.size(); ++b) {
    b2Body* body = engine_->bodies[b].body;
    body->SetTransform(stood[b].first, stood[b].second);
    body->SetLinearVelocity(-0.5F * body->GetLinearVelocity());
    body->SetAngularVelocity(-0.5F * body->GetAngularVelocity());
  }
  engine_->time = engine_->outward = 0.0;
}

void SideWorld::push(int section, Vec2 at, Vec2 force) {
  const Body& body = engine_->body_of(section);
  const Vec2 p_W = engine_->pose_of(body) * (at + Vec2{engine_->shift_of(body, section), 0.0});
  const Vec2 arm = p_W - engine_->centre_of(body);
  body.body->ApplyForceToCenter(units(force), true);
  body.body->ApplyTorque(moment_units(cross(arm, force)), true);
}

void SideWorld::turn(int hinge, double moment) {
  engine_->body_of(hinge + 1).body->ApplyTorque(moment_units(moment), true);
  if (hinge >= 0) engine_->body_of(hinge).body->ApplyTorque(moment_units(-moment), true);
}

void SideWorld::step() { engine_->advance(); }
double SideWorld::time() const { return engine_->time; }
double SideWorld::step_length() const { return engine_->setup.step; }
SectionPoses SideWorld::poses() const { return engine_->poses(); }
std::vector<double> SideWorld::turns() const { return engine_->turns(); }
SectionMotion SideWorld::motion(int section) const { return engine_->motion(section); }

Vec2 SideWorld::point_velocity(int section, Vec2 at) const {
  const SectionMotion moving = motion(section);
  return moving.velocity + moving.rate * quarter_turn(poses()[index(section)].turn(at));
}

double SideWorld::inverse_mass(const std::vector<SectionLoad>& unit) const {
  double inverse = 0.0;
  for (const Body& body : engine_->bodies) {
    const Pose2 X_W = engine_->pose_of(body);
    Vec2 force;
    double moment = 0.0;
    for (const SectionLoad& load : unit) {
      if (load.section < body.first || load.section > body.last) continue;
      force = force + load.force;
      const Vec2 at = load.at + Vec2{engine_->shift_of(body, load.section), 0.0} - body.mass.centre;
      moment += cross(X_W.turn(at), load.force);
    }
    inverse += norm_squared(force) / body.mass.mass + moment * moment / body.mass.inertia;
  }
  return inverse;
}

void SideWorld::move_to(double station) {
  const Engine& was = *engine_;
  SideSetup setup = was.setup;
  setup.station = station;
  std::vector<SectionMotion> motions;
  for (int j = 0; j < was.model.linkage.sections; ++j) motions.push_back(motion(j));
  auto next = std::make_unique<Engine>(was.model, std::move(setup), start_);
  next->held_at = was.held_at;
  next->contacts.hooks_on_pipe = was.contacts.hooks_on_pipe;
  next->time = was.time;
  next->outward = was.outward;
  next->resting = was.resting;
  next->looked = was.looked;
  next->contacts.aside.clear();
  next->build(poses(), turns(), motions, same_pairs(was.contacts.pushing(), was.parts, next->parts));
  engine_ = std::move(next);
}

double SideWorld::station() const { return engine_->setup.station; }
const std::vector<SectionMass>& SideWorld::masses() const { return engine_->setup.masses; }

void SideWorld::set_pinned(const std::vector<bool>& pinned) {
  if (pinned == engine_->setup.pinned) return;
  std::vector<SectionMotion> motions;
  for (int j = 0; j < engine_->model.linkage.sections; ++j) motions.push_back(motion(j));
  const SectionPoses X_W = poses();
  const std::vector<double> turned = turns();
  const std::set<PartPair> pushing = engine_->contacts.pushing();
  engine_->setup.pinned = pinned;
  engine_->build(X_W, turned, motions, pushing);
}

const std::vector<bool>& SideWorld::pinned() const { return engine_->setup.pinned; }
bool SideWorld::hooks_on_pipe() const { return engine_->contacts.hooks_on_pipe; }
double SideWorld::hook_lift() const { return norm(engine_->poses()[0].p - engine_->held_at); }
Vec2 SideWorld::hook_force() const { return hooks_on_pipe() ? engine_->pins.front().force : Vec2{}; }
double SideWorld::seat() const { return hooks_on_pipe() ? engine_->seat() : 0.0; }

double SideWorld::energy() const { return engine_->energy(); }

Vec2 SideWorld::momentum() const {
  Vec2 sum;
  for (const ChainBody& body : engine_->chain()) sum = sum + body.mass * body.velocity;
  return sum;
}

const std::vector<WorldPart>& SideWorld::parts() const { return engine_->parts; }
const std::vector<WorldTouch>& SideWorld::new_touches() const { return engine_->touched; }

std::vector<std::pair<int, int>> SideWorld::touching() const {
  const std::set<PartPair> pairs = engine_->contacts.pushing();
  return {pairs.begin(), pairs.end()};
}

std::vector<std::pair<int, int>> SideWorld::inside_zones() const {
  std::vector<std::pair<int, int>> pairs;
  for (const auto& [pair, count] : engine_->contacts.touching)
    if (parts()[index(pair.second)].kind == PartKind::zone) pairs.push_back(pair);
  return pairs;
}

std::vector<std::pair<int, int>> SideWorld::met_from_start() const {
  std::vector<std::pair<int, int>> pairs;
  for (const auto& [a, b] : engine_->contacts.aside)
    if (!engine_->contacts.butted(a, b)) pairs.emplace_back(a, b);
  return pairs;
}

std::array<double, kMaxSections> leans_in(const SideWorld& world) {
  std::array<double, kMaxSections> leans{};
  const auto turns = world.turns();
  for (std::size_t j = 0; j < turns.size(); ++j) leans[j] = turns[j] + 0.5 * std::numbers::pi;
  return leans;
}

}  // namespace stowpath
