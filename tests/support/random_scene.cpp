#include "tests/support/random_scene.h"

#include <random>

#include "tests/support/gallery.h"
#include "tests/support/random_outlines.h"

namespace stowpath::testing {

std::string random_scene(unsigned seed) {
  std::mt19937 random(seed);
  const auto mm = [&](double lo, double hi) { return std::to_string(static_cast<int>(uniform(random, lo, hi))); };
  std::string things;
  for (int k = 0; k < 4; ++k) {
    const double out = uniform(random, 1700.0, 3600.0), up = uniform(random, 300.0, 3700.0);
    const double left = uniform(random, 3500.0, 4700.0);
    const auto pair = [](double lo, double size) {
      return "[" + std::to_string(static_cast<int>(lo)) + ", " + std::to_string(static_cast<int>(lo + size)) + "]";
    };
    things += "  - {name: thing " + std::to_string(k) + ", box: {out: " + pair(out, 120.0) + ", up: " + pair(up, 90.0) +
              "}, stations: " + pair(left, 300.0) + "}\n";
  }
  std::string text = gallery_text("demo");
  text = changed(std::move(text), "wrap: 195", "wrap: " + mm(170, 200));
  text = changed(std::move(text), "first: 300", "first: " + mm(260, 500));
  text = changed(std::move(text), "lift: 84", "lift: " + mm(80, 92));
  text =
      changed(std::move(text),
              "  - {name: strip light, box: {out: [2350, 2470], up: [2780, 2860]}, stations: [900, 5400]}\n", things);
  return text;
}

}  // namespace stowpath::testing
