#include "sim/hoist/capstan.h"

#include <cmath>
#include <stdexcept>

namespace stowpath {

double capstan_ratio(double mu, double wrap) {
  if (!(mu >= 0.0 && wrap >= 0.0)) throw std::invalid_argument("capstan: friction and wrap are not below 0");
  return std::exp(mu * wrap);
}

double capstan_hold(double load, double mu, double wrap) { return load / capstan_ratio(mu, wrap); }

}  // namespace stowpath
