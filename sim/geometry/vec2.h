#pragma once

#include <cmath>

namespace stowpath {

/// A point or a free vector of a side view [m].
struct Vec2 {
  double x = 0.0;
  double y = 0.0;

  friend constexpr Vec2 operator+(Vec2 a, Vec2 b) { return {a.x + b.x, a.y + b.y}; }
  friend constexpr Vec2 operator-(Vec2 a, Vec2 b) { return {a.x - b.x, a.y - b.y}; }
  friend constexpr Vec2 operator-(Vec2 a) { return {-a.x, -a.y}; }
  friend constexpr Vec2 operator*(double k, Vec2 a) { return {k * a.x, k * a.y}; }
  friend constexpr bool operator==(Vec2 a, Vec2 b) { return a.x == b.x && a.y == b.y; }
};

constexpr double dot(Vec2 a, Vec2 b) { return a.x * b.x + a.y * b.y; }
constexpr double cross(Vec2 a, Vec2 b) { return a.x * b.y - a.y * b.x; }
constexpr double norm_squared(Vec2 a) { return dot(a, a); }
inline double norm(Vec2 a) { return std::sqrt(norm_squared(a)); }
constexpr Vec2 lerp(Vec2 a, Vec2 b, double u) { return a + u * (b - a); }

}  // namespace stowpath
