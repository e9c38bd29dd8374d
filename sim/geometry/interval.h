#pragma once

#include <algorithm>
#include <vector>

namespace stowpath {

/// A closed stretch of numbers, usually of stations [m]. Empty where hi < lo.
struct Interval {
  double lo = 0.0;
  double hi = 0.0;

  constexpr double length() const { return hi - lo; }
  constexpr double middle() const { return 0.5 * (lo + hi); }
  constexpr bool empty() const { return hi < lo; }
  constexpr bool contains(double x) const { return lo <= x && x <= hi; }
  friend constexpr Interval operator+(Interval i, double shift) { return {i.lo + shift, i.hi + shift}; }
  friend constexpr bool operator==(Interval a, Interval b) { return a.lo == b.lo && a.hi == b.hi; }
};

/// Free length between two stretches; 0 where they touch or overlap [m].
constexpr double gap(Interval a, Interval b) { return std::max({0.0, b.lo - a.hi, a.lo - b.hi}); }

/// The least shift that takes two overlapping stretches apart; 0 or less where they are apart already [m].
constexpr double overlap(Interval a, Interval b) { return std::min(a.hi - b.lo, b.hi - a.lo); }

constexpr Interval hull(Interval a, Interval b) { return {std::min(a.lo, b.lo), std::max(a.hi, b.hi)}; }
constexpr Interval meet(Interval a, Interval b) { return {std::max(a.lo, b.lo), std::min(a.hi, b.hi)}; }

/// Sorted, disjoint stretches. Stretches that touch are one.
using IntervalSet = std::vector<Interval>;

IntervalSet unite(IntervalSet stretches);
/// What of `from` no stretch of `taken` covers (pieces of no length are dropped unless `from` has none itself).
IntervalSet subtract(Interval from, const IntervalSet& taken);
double total_length(const IntervalSet& set);
bool contains(const IntervalSet& set, double x);

}  // namespace stowpath
