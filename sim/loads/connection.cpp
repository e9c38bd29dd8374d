#include "sim/loads/connection.h"

#include <algorithm>
#include <cmath>

#include "sim/mechanism/scene_fault.h"

namespace stowpath {

double pulled_and_sheared(double pull_resistance, double shear_resistance, double pull, double shear) {
  const double size = std::hypot(pull, shear);
  if (!(size > 0.0)) return std::min(pull_resistance, shear_resistance);
  const double sine = pull / size, cosine = shear / size;
  const double below = pull_resistance * cosine * cosine + shear_resistance * sine * sine;
  return below > 0.0 ? pull_resistance * shear_resistance / below : 0.0;
}

double outermost_in_row(double moment, double apart, int count) {
  double squares = 0.0;  // of the places, the outer two half from the middle
  for (int i = 0; i < count; ++i) squares += std::pow(static_cast<double>(i) / std::max(1, count - 1) - 0.5, 2);
  return count > 1 && apart > 0.0 ? moment * 0.5 / (apart * squares) : 0.0;
}

double end_connection_shear(double shear, double breadth, double depth, double effective_depth) {
  const double share = effective_depth / depth;
  return 2.0 / 3.0 * shear * breadth * effective_depth * share * share;
}

std::string setting_rule(const Scene& scene, const Screws& screws) {
  constexpr double kSmallEnd = 15.0, kSmallEdge = 2.5,
                   kSmallApart = 10.0;  // under 1/4 in, undrilled wood splits sooner
  constexpr double kEdge = 4.0, kApart = 4.0, kQuarterInch = 0.00635;
  const bool small = screws.diameter < kQuarterInch;
  const auto times = [&](double count) { return say_length(scene, AtMost{count * screws.diameter}); };
  return "no nearer than " + times(small ? kSmallEnd : kEndDistance) + " to the wood's end, " +
         times(small ? kSmallEdge : kEdge) + " to its edge and " + times(small ? kSmallApart : kApart) +
         " to each other";
}

}  // namespace stowpath
