#include "sim/clearance/stations.h"

#include <cmath>

namespace stowpath {

IntervalSet blocked_stations(double d, double margin, std::span<const Interval> moving,
                             std::span<const Interval> fixed) {
  if (d >= margin) return {};
  const double reach = d > 0.0 ? std::sqrt((margin - d) * (margin + d)) : margin;
  IntervalSet out;
  for (const Interval i : moving) {
    for (const Interval j : fixed) {
      const Interval blocked{j.lo - i.hi - reach, j.hi - i.lo + reach};
      if (blocked.length() > 0.0) out.push_back(blocked);
    }
  }
  return unite(std::move(out));
}

}  // namespace stowpath
