#include "sim/hoist/jam.h"

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

}  // namespace stowpath
