#include "sim/hoist/worm.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace stowpath {
namespace {

void check_worm(double lead, double mu) {
  if (!(lead > 0.0 && lead < 0.5 * std::numbers::pi)) throw std::invalid_argument("no lead angle of a worm");
  if (!(mu >= 0.0)) throw std::invalid_argument("friction is below 0");
}

}  // namespace

double worm_efficiency(double lead, double mu, double pressure_angle) {
  check_worm(lead, mu);
  const double c = std::cos(pressure_angle), t = std::tan(lead);
  return (c - mu * t) / (c + mu / t);
}

double worm_back_efficiency(double lead, double mu, double pressure_angle) {
  check_worm(lead, mu);
  const double c = std::cos(pressure_angle), t = std::tan(lead);
  return (c - mu / t) / (c + mu * t);
}

double worm_holding_friction(double lead, double pressure_angle) {
  check_worm(lead, 0.0);
  return std::cos(pressure_angle) * std::tan(lead);
}

bool worm_holds(double lead, double mu, double pressure_angle) {
  return mu >= worm_holding_friction(lead, pressure_angle);
}

WormGeometry worm_geometry(int starts, double module, double worm_diameter, int gear_teeth) {
  if (starts < 1 || gear_teeth < 1 || !(module > 0.0) || !(worm_diameter > 0.0)) {
    throw std::invalid_argument("a worm gear's counts and lengths are above 0");
  }
  WormGeometry worm;
  worm.axial_pitch = std::numbers::pi * module;
  worm.lead = starts * worm.axial_pitch;
  worm.lead_angle = std::atan(worm.lead / (std::numbers::pi * worm_diameter));
  worm.gear_diameter = module * gear_teeth;
  worm.centre_distance = 0.5 * (worm_diameter + worm.gear_diameter);
  worm.ratio = static_cast<double>(gear_teeth) / starts;
  return worm;
}

}  // namespace stowpath
