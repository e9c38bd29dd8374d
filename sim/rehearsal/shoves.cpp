#include "sim/rehearsal/shoves.h"

#include <algorithm>
#include <cmath>

#include "sim/rehearsal/what_if.h"

namespace stowpath {

namespace {

constexpr double kWatched = 6.0;  // after each shove [s]

std::size_t index(int i) { return static_cast<std::size_t>(i); }

}  // namespace

void Shoves::begin(const SideWorld& world) {
  begun_ = world.time();
  leans_ = leans_in(world);
  swing_ = swing_.value_or(0.0);
}

void Shoves::push(const SideWorld& world, const Push& push) {
  begin(world);
  hands_.push_back({push, world.time()});
  found_at_ = push_point(model_, world.poses(), push.height).height;
}

void Shoves::gust(const SideWorld& world, const Gust& gust) {
  begin(world);
  airs_.push_back({gust, world.time()});
}

void Shoves::load_one(SideWorld& world, int section, Vec2 at, Vec2 force) {
  world.push(section, at, force);
  work_ += dot(force, world.point_velocity(section, at)) * world.step_length();
}

void Shoves::load(SideWorld& world) {
  const double now = world.time();
  std::erase_if(hands_, [&](const Hand& hand) { return now - hand.from >= hand.push.seconds; });
  std::erase_if(airs_, [&](const Air& air) { return now - air.from >= air.gust.seconds; });
  if (hands_.empty() && airs_.empty()) return;
  const SectionPoses X_W = world.poses();
  for (const Hand& hand : hands_) {
    const PushPoint point = push_point(model_, X_W, hand.push.height);
    load_one(world, point.section, point.at, {hand.push.force, 0.0});
  }
  for (const Air& air : airs_)
    for (int j = 0; j < model_.linkage.sections; ++j)
      load_one(world, j, model_.masses[index(j)].centre,
               gust_force(face_area(model_, j), X_W[index(j)], air.gust.speed));
}

void Shoves::watch(const SideWorld& world) {
  if (!begun_ || world.time() >= *begun_ + kWatched) return;
  const auto leans = leans_in(world);
  for (int j = 0; j < model_.linkage.sections; ++j)
    swing_ = std::max(*swing_, std::abs(leans[index(j)] - leans_[index(j)]));
}

}  // namespace stowpath
