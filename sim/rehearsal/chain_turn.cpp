#include "sim/rehearsal/chain_turn.h"

#include "sim/hoist/motion.h"
#include "sim/hoist/small_solve.h"

namespace stowpath {

namespace {

std::size_t index(int i) { return static_cast<std::size_t>(i); }

Vec2 velocity_at(const ChainBody& body, Vec2 arm) { return body.velocity + body.rate * quarter_turn(arm); }

// What the pin's velocities are short of.
Vec2 wanted_change(std::span<const ChainBody> bodies, const ChainPin& pin, double step) {
  const ChainBody& lower = bodies[index(pin.lower)];
  Vec2 apart = velocity_at(lower, pin.lower_arm);
  Vec2 turned = lower.rate * lower.rate * pin.lower_arm;
  if (pin.upper >= 0) {
    const ChainBody& upper = bodies[index(pin.upper)];
    apart = apart - velocity_at(upper, pin.upper_arm);
    turned = turned - upper.rate * upper.rate * pin.upper_arm;
  }
  return 0.5 * step * turned - apart;
}

// How a unit impulse at one arm moves the point at another arm of the same body: column by column.
void add_response(SmallSystem& system, std::size_t row, std::size_t column, const ChainBody& body, Vec2 at, Vec2 by,
                  double sign) {
  const double m = 1.0 / body.mass, i = 1.0 / body.inertia;
  system.at(row, column) += sign * (m + i * at.y * by.y);
  system.at(row, column + 1) -= sign * i * at.y * by.x;
  system.at(row + 1, column) -= sign * i * at.x * by.y;
  system.at(row + 1, column + 1) += sign * (m + i * at.x * by.x);
}

void add_coupling(SmallSystem& system, std::span<const ChainBody> bodies, const ChainPin& at, const ChainPin& by,
                  std::size_t row, std::size_t column) {
  const auto respond = [&](int body, Vec2 at_arm, Vec2 by_arm, double sign) {
    if (body >= 0) add_response(system, row, column, bodies[index(body)], at_arm, by_arm, sign);
  };
  if (at.lower == by.lower) respond(at.lower, at.lower_arm, by.lower_arm, 1.0);
  if (at.upper == by.upper) respond(at.upper, at.upper_arm, by.upper_arm, 1.0);
  if (at.lower == by.upper) respond(at.lower, at.lower_arm, by.upper_arm, -1.0);
  if (at.upper == by.lower) respond(at.upper, at.upper_arm, by.lower_arm, -1.0);
}

void strike(ChainBody& body, Vec2 arm, Vec2 impulse) {
  body.velocity = body.velocity + (1.0 / body.mass) * impulse;
  body.rate += cross(arm, impulse) / body.inertia;
}

}  // namespace

std::vector<Vec2> turn_with_arms(std::span<ChainBody> bodies, std::span<const ChainPin> pins, double step) {
  if (pins.empty()) return {};
  SmallSystem system(2 * pins.size());
  for (std::size_t a = 0; a < pins.size(); ++a) {
    for (std::size_t b = 0; b < pins.size(); ++b) add_coupling(system, bodies, pins[a], pins[b], 2 * a, 2 * b);
    const Vec2 change = wanted_change(bodies, pins[a], step);
    system.b[2 * a] = change.x;
    system.b[2 * a + 1] = change.y;
  }
  std::vector<Vec2> forces(pins.size());
  const auto impulses = solve_small(std::move(system));
  if (!impulses) return forces;
  for (std::size_t a = 0; a < pins.size(); ++a) {
    const Vec2 impulse{(*impulses)[2 * a], (*impulses)[2 * a + 1]};
    strike(bodies[index(pins[a].lower)], pins[a].lower_arm, impulse);
    if (pins[a].upper >= 0) strike(bodies[index(pins[a].upper)], pins[a].upper_arm, -impulse);
    forces[a] = (1.0 / step) * impulse;
  }
  return forces;
}

}  // namespace stowpath
