#include "tests/support/two_rods.h"

#include "sim/geometry/pose2.h"
#include "sim/trade/us_units.h"

namespace stowpath::testing {
namespace {

constexpr Vec2 quarter(Vec2 v) { return {-v.y, v.x}; }

// What the equations are made of: hinge and centres as they lie, and the inertia matrix.
struct Parts {
  Vec2 first, hinge, second;         // centre of the first; the hinge; the second's centre from there
  double a = 0.0, b = 0.0, c = 0.0;  // [kg m2]
};

Parts parts_of(const TwoRods& rods, const TwoTurns& at) {
  const auto& [one, two] = rods.sections;
  const Pose2 X_1 = make_pose({}, at.turn[0]), X_2 = make_pose({}, at.turn[1]);
  Parts out{X_1 * one.centre, X_1 * rods.hinge, X_2 * two.centre};
  out.a = one.inertia + one.mass * norm_squared(one.centre) + two.mass * norm_squared(rods.hinge);
  out.b = two.mass * dot(out.hinge, out.second);
  out.c = two.inertia + two.mass * norm_squared(two.centre);
  return out;
}

TwoTurns moved(const TwoTurns& at, const TwoTurns& rates, double by) {
  TwoTurns out = at;
  for (std::size_t j = 0; j < 2; ++j) {
    out.turn[j] += by * rates.turn[j];
    out.rate[j] += by * rates.rate[j];
  }
  return out;
}

}  // namespace

TwoTurns two_rods_rates(const TwoRods& rods, const TwoTurns& at) {
  const Parts p = parts_of(rods, at);
  const auto& [one, two] = rods.sections;
  const double f1 = two.mass * at.rate[1] * at.rate[1] * dot(quarter(p.hinge), p.second) -
                    kGravity * (one.mass * p.first.x + two.mass * p.hinge.x);
  const double f2 =
      two.mass * at.rate[0] * at.rate[0] * dot(quarter(p.second), p.hinge) - kGravity * two.mass * p.second.x;
  const double det = p.a * p.c - p.b * p.b;
  return {at.rate, {(p.c * f1 - p.b * f2) / det, (p.a * f2 - p.b * f1) / det}};
}

TwoTurns run_two_rods(const TwoRods& rods, TwoTurns at, double time, int steps) {
  const double h = time / steps;
  for (int i = 0; i < steps; ++i) {
    const TwoTurns k1 = two_rods_rates(rods, at), k2 = two_rods_rates(rods, moved(at, k1, 0.5 * h));
    const TwoTurns k3 = two_rods_rates(rods, moved(at, k2, 0.5 * h)), k4 = two_rods_rates(rods, moved(at, k3, h));
    at = moved(moved(moved(moved(at, k1, h / 6.0), k2, h / 3.0), k3, h / 3.0), k4, h / 6.0);
  }
  return at;
}

double two_rods_energy(const TwoRods& rods, const TwoTurns& at) {
  const Parts p = parts_of(rods, at);
  const auto& [one, two] = rods.sections;
  const double motion =
      0.5 * p.a * at.rate[0] * at.rate[0] + p.b * at.rate[0] * at.rate[1] + 0.5 * p.c * at.rate[1] * at.rate[1];
  return motion + kGravity * (one.mass * p.first.y + two.mass * (p.hinge + p.second).y);
}

}  // namespace stowpath::testing
