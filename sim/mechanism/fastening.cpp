#include "sim/mechanism/fastening.h"

#include "sim/trade/length.h"

namespace stowpath {

std::string say_distance(const Scene& scene, Figure metres) {
  return format_small_length(metres, scene.units == FileUnits::inches ? DisplayUnits::imperial : DisplayUnits::metric);
}

std::string say_place(const Scene& scene, double station) { return "at " + say_distance(scene, Nominal{station}); }

}  // namespace stowpath
