#include "sim/hoist/jam.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace stowpath {

double jam_offset(double contact_spacing, double mu) {
  if (!(mu > 0.0 && contact_spacing >= 0.0)) throw std::invalid_argument("jam: no friction or no spacing");
  return contact_spacing / (2.0 * mu);
}

double jam_friction(double contact_spacing, double offset) {
  if (offset == 0.0) return std::numeric_limits<double>::infinity();
  return contact_spacing / (2.0 * std::abs(offset));
}

bool jams(double contact_spacing, double mu, double offset) { return mu >= jam_friction(contact_spacing, offset); }

double jam_offset(double contact_spacing, GuideDrags drags) {
  const double both = drags.first + drags.second;
  if (!(both > 0.0 && drags.first >= 0.0 && drags.second >= 0.0 && contact_spacing >= 0.0))
    throw std::invalid_argument("jam: no drag or no spacing");
  return contact_spacing / both;
}

bool jams(double contact_spacing, GuideDrags drags, double offset) {
  return (drags.first + drags.second) * std::abs(offset) >= contact_spacing;
}

double jam_friction_beside_wheel(double contact_spacing, double rolling, double offset) {
  if (offset == 0.0) return std::numeric_limits<double>::infinity();
  return std::max(0.0, contact_spacing / std::abs(offset) - rolling);
}

}  // namespace stowpath
