#include "sim/rehearsal/world_contacts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stowpath {

namespace {

constexpr double kParted = 2e-3;    // [m]
constexpr double kOverlap = -2e-4;  // less than the engine's slop, which it does not push apart [m]

int part_of(const b2Fixture* fixture) {
  return static_cast<int>(const_cast<b2Fixture*>(fixture)->GetUserData().pointer);  // the getter is not const
}

PartPair pair_of(int a, int b) { return {std::min(a, b), std::max(a, b)}; }

PartPair pair_of(b2Contact* contact) {
  return pair_of(part_of(contact->GetFixtureA()), part_of(contact->GetFixtureB()));
}

}  // namespace

bool WorldContacts::may_touch(int a, int b) const {
  return can_touch(parts_[static_cast<std::size_t>(a)], parts_[static_cast<std::size_t>(b)], hooks_on_pipe,
                   true);
}

bool WorldContacts::ShouldCollide(b2Fixture* a, b2Fixture* b) {
  return may_touch(part_of(a), part_of(b)) && aside.count(pair_of(part_of(a), part_of(b))) == 0;
}

// Ends that butt while the joint is straight are past each other only once it is folded by a quarter turn.
bool WorldContacts::butted(int a, int b) const {
  const WorldPart& first = parts_[static_cast<std::size_t>(a)];
  const WorldPart& second = parts_[static_cast<std::size_t>(b)];
  if (first.section < 0 || second.section < 0) return false;
  const double fold =
      turns_[static_cast<std::size_t>(first.section)] - turns_[static_cast<std::size_t>(second.section)];
  return std::abs(fold) < 0.5 * std::numbers::pi && !can_touch(first, second, hooks_on_pipe, false);
}

void WorldContacts::begin(int a, int b) {
  if (butted(a, b)) return;
  const WorldPart& first = parts_[static_cast<std::size_t>(a)];
  const WorldPart& second = parts_[static_cast<std::size_t>(b)];
  begun.push_back({a, b, 0.0, 0.0, part_distance(first, second, X_W_)});
}

void WorldContacts::BeginContact(b2Contact* contact) {
  const auto [a, b] = pair_of(contact);
  if (++touching[{a, b}] == 1) begin(a, b);
}

void WorldContacts::EndContact(b2Contact* contact) {
  const auto found = touching.find(pair_of(contact));
  if (found != touching.end() && --found->second <= 0) touching.erase(found);
}

double WorldContacts::closing_speed(b2Contact* contact) const {
  b2WorldManifold manifold;
  contact->GetWorldManifold(&manifold);
  const b2Body *a = contact->GetFixtureA()->GetBody(), *b = contact->GetFixtureB()->GetBody();
  double speed = 0.0;
  for (int i = 0; i < contact->GetManifold()->pointCount; ++i) {
    const b2Vec2 apart =
        b->GetLinearVelocityFromWorldPoint(manifold.points[i]) - a->GetLinearVelocityFromWorldPoint(manifold.points[i]);
    speed = std::max(speed, -static_cast<double>(b2Dot(apart, manifold.normal)) / kWorldUnits);
  }
  return speed;
}

void WorldContacts::PreSolve(b2Contact* contact, const b2Manifold*) {
  const auto [a, b] = pair_of(contact);
  if (butted(a, b)) return contact->SetEnabled(false);
  for (WorldTouch& touch : begun)
    if (touch.a == a && touch.b == b) touch.speed = std::max(touch.speed, closing_speed(contact));
}

// A stroke that stops a speed v with an impulse J takes J v / 2.
void WorldContacts::PostSolve(b2Contact* contact, const b2ContactImpulse* impulse) {
  if (begun.empty()) return;
  const auto [a, b] = pair_of(contact);
  double total = 0.0;
  for (int i = 0; i < impulse->count; ++i) total += static_cast<double>(impulse->normalImpulses[i]) / kWorldUnits;
  for (WorldTouch& touch : begun)
    if (touch.a == a && touch.b == b) touch.energy += 0.5 * total * touch.speed;
}

void WorldContacts::look(const SectionPoses& X_W, const std::vector<double>& turns) {
  X_W_ = X_W;
  turns_ = turns;
  begun.clear();
}

std::set<PartPair> WorldContacts::pushing() const {
  std::set<PartPair> pairs;
  for (const auto& [pair, count] : touching)
    if (parts_[static_cast<std::size_t>(pair.second)].kind != PartKind::zone && !butted(pair.first, pair.second))
      pairs.insert(pair);
  return pairs;
}

void WorldContacts::set_aside_overlaps(const std::set<PartPair>& pushing) {
  touching.clear();
  for (int a = 0; a < static_cast<int>(parts_.size()); ++a)
    for (int b = a + 1; b < static_cast<int>(parts_.size()); ++b) {
      const WorldPart& first = parts_[static_cast<std::size_t>(a)];
      const WorldPart& second = parts_[static_cast<std::size_t>(b)];
      const bool pushes = first.kind != PartKind::caster || second.kind != PartKind::floor;
      if (first.section == second.section || second.kind == PartKind::zone || !pushes) continue;
      if (pushing.count({a, b}) > 0) continue;
      if (may_touch(a, b) && part_distance(first, second, X_W_) < kOverlap) aside.insert({a, b});
    }
}

bool WorldContacts::take_back_parted() {
  return std::erase_if(aside, [&](const PartPair& pair) {
           return part_distance(parts_[static_cast<std::size_t>(pair.first)],
                                parts_[static_cast<std::size_t>(pair.second)], X_W_) > kParted;
         }) > 0;
}

}  // namespace stowpath
