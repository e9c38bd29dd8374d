#include "sim/rehearsal/chain_turn.h"

#include <cmath>

#include <catch2/catch.hpp>

#include "sim/hoist/motion.h"
#include "tests/support/random_rig.h"

namespace stowpath {
namespace {

struct Chain {
  std::vector<ChainBody> bodies;
  std::vector<ChainPin> pins;
};

Chain random_chain(std::mt19937& random, bool held) {
  const auto arm = [&] { return Vec2{testing::draw(random, -1.0, 1.0), testing::draw(random, -1.0, 1.0)}; };
  Chain chain;
  for (int b = 0; b < 3; ++b)
    chain.bodies.push_back(
        {testing::draw(random, 2.0, 20.0), testing::draw(random, 0.2, 4.0), arm(), testing::draw(random, -3.0, 3.0)});
  if (held) chain.pins.push_back({-1, 0, {}, arm()});
  chain.pins.push_back({0, 1, arm(), arm()});
  chain.pins.push_back({1, 2, arm(), arm()});
  return chain;
}

Vec2 at(const ChainBody& body, Vec2 arm) { return body.velocity + body.rate * quarter_turn(arm); }

// Where the pin's sides come to lie after a step of the turned velocities, arms turning with the bodies.
Vec2 apart_after(const Chain& chain, const ChainPin& pin, double step) {
  const auto moved = [&](int b, Vec2 arm) {
    const ChainBody& body = chain.bodies[static_cast<std::size_t>(b)];
    const double turn = step * body.rate;
    return step * body.velocity +
           Vec2{std::cos(turn) * arm.x - std::sin(turn) * arm.y, std::sin(turn) * arm.x + std::cos(turn) * arm.y} - arm;
  };
  return moved(pin.lower, pin.lower_arm) - (pin.upper < 0 ? Vec2{} : moved(pin.upper, pin.upper_arm));
}

TEST_CASE("chain turn: after the step the pins are closed to the third order of it", "[rehearsal]") {
  std::mt19937 random(7);
  for (int i = 0; i < 200; ++i) {
    Chain start = random_chain(random, i % 2 == 0);
    turn_with_arms(start.bodies, start.pins, 1e-12);  // as a step of the world leaves them: closed where they stand
    const auto gap = [&](double step) {
      Chain chain = start;
      turn_with_arms(chain.bodies, chain.pins, step);
      double most = 0.0;
      for (const ChainPin& pin : chain.pins) most = std::max(most, norm(apart_after(chain, pin, step)));
      return most;
    };
    CHECK(gap(1e-3) < 1e-6);  // left alone they part by h^2 w^2 r, 1e-5 m
    CHECK(gap(1e-3) / gap(5e-4) == Approx(8.0).epsilon(0.1));
  }
}

TEST_CASE("chain turn: a chain that hangs on nothing keeps its momentum", "[rehearsal]") {
  std::mt19937 random(8);
  for (int i = 0; i < 200; ++i) {
    Chain chain = random_chain(random, false);
    const auto momentum = [&] {
      Vec2 sum;
      for (const ChainBody& body : chain.bodies) sum = sum + body.mass * body.velocity;
      return sum;
    };
    const Vec2 before = momentum();
    const std::vector<Vec2> forces = turn_with_arms(chain.bodies, chain.pins, 1e-3);
    CHECK(norm(momentum() - before) < 1e-12);
    CHECK(forces.size() == 2);
    CHECK(norm(at(chain.bodies[1], chain.pins[0].lower_arm) - at(chain.bodies[0], chain.pins[0].upper_arm)) < 2e-2);
  }
}

}  // namespace
}  // namespace stowpath
