#include "sim/loads/curved_bar.h"

#include <cmath>
#include <numbers>

namespace stowpath {

namespace {

/// How far the neutral line lies inside the middle [m].
double neutral_offset(const BarSection& section, double inside) {
  const double d = section.depth, centre = inside + 0.5 * d;
  if (section.breadth > 0.0) return centre - d / std::log1p(d / inside);
  return d * d / (4.0 * (2.0 * centre + std::sqrt(4.0 * centre * centre - d * d)));
}

}  // namespace

BarSection round_bar(double diameter) { return {diameter, std::numbers::pi / 4.0 * diameter * diameter, 0.0}; }

BarSection flat_bar(double depth, double breadth) { return {depth, depth * breadth, breadth}; }

CurvedBarStress curved_bar_stress(const BarSection& section, double inside, double lever) {
  const double outside = inside + section.depth, centre = inside + 0.5 * section.depth;
  const double off = neutral_offset(section, inside), neutral = centre - off;
  const double direct = 1.0 / section.area;
  return {direct + lever * (neutral - inside) / (section.area * off * inside),
          direct - lever * (outside - neutral) / (section.area * off * outside)};
}

}  // namespace stowpath
