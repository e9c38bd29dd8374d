#include "sim/geometry/interval.h"

namespace stowpath {

IntervalSet unite(IntervalSet stretches) {
  std::erase_if(stretches, [](Interval i) { return i.empty(); });
  std::sort(stretches.begin(), stretches.end(), [](Interval a, Interval b) { return a.lo < b.lo; });
  IntervalSet out;
  for (const Interval i : stretches) {
    if (!out.empty() && i.lo <= out.back().hi) {
      out.back().hi = std::max(out.back().hi, i.hi);
    } else {
      out.push_back(i);
    }
  }
  return out;
}

IntervalSet subtract(Interval from, const IntervalSet& taken) {
  if (from.length() == 0.0) return contains(taken, from.lo) ? IntervalSet{} : IntervalSet{from};
  IntervalSet out;
  double lo = from.lo;
  for (const Interval t : taken) {
    if (t.hi < from.lo || t.lo > from.hi) continue;
    if (t.lo > lo) out.push_back({lo, t.lo});
    lo = std::max(lo, t.hi);
  }
  if (lo < from.hi) out.push_back({lo, from.hi});
  return out;
}

double total_length(const IntervalSet& set) {
  double sum = 0.0;
  for (const Interval i : set) sum += i.length();
  return sum;
}

bool contains(const IntervalSet& set, double x) {
  return std::any_of(set.begin(), set.end(), [x](Interval i) { return i.contains(x); });
}

}  // namespace stowpath
