#include "sim/trade/section.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace stowpath {

Section rectangle_section(double breadth, double depth) {
  if (!(breadth > 0 && depth > 0 && std::isfinite(breadth) && std::isfinite(depth))) {
    throw std::invalid_argument("rectangle_section: the sides must be positive");
  }
  Section section;
  section.area = breadth * depth;
  section.second_moment = breadth * depth * depth * depth / 12.0;
  section.modulus = breadth * depth * depth / 6.0;
  section.plastic_modulus = breadth * depth * depth / 4.0;
  section.gyration = depth / std::sqrt(12.0);
  return section;
}

Section tube_section(double outside_diameter, double wall) {
  if (!(wall > 0 && wall <= outside_diameter / 2 && std::isfinite(outside_diameter))) {
    throw std::invalid_argument("tube_section: the wall must be positive and at most half the diameter");
  }
  const double outside = outside_diameter, inside = outside_diameter - 2 * wall;
  Section section;
  section.area = std::numbers::pi * wall * (outside - wall);
  section.second_moment = std::numbers::pi / 64.0 * (std::pow(outside, 4) - std::pow(inside, 4));
  section.modulus = 2.0 * section.second_moment / outside;
  section.plastic_modulus = (std::pow(outside, 3) - std::pow(inside, 3)) / 6.0;
  section.gyration = std::hypot(outside, inside) / 4.0;
  return section;
}

}  // namespace stowpath
