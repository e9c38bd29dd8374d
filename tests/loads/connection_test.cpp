#include "sim/loads/connection.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

using namespace stowpath;

namespace {

constexpr double kInch = 0.0254, kPsi = 6894.757293168, kPound = 4.4482216152605;

}  // namespace

TEST_CASE("connection: pulled alone or sheared alone, a screw carries what it does then", "[loads]") {
  CHECK(pulled_and_sheared(700.0, 300.0, 50.0, 0.0) == Approx(700.0));
  CHECK(pulled_and_sheared(700.0, 300.0, 0.0, 50.0) == Approx(300.0));
}

// NDS 12.4.1 worked by hand, from memory: W' 600 lb, Z' 200 lb, the load at 30 degrees to the face:
// 600 * 200 / (600 * 0.75 + 200 * 0.25) = 240 lb.
TEST_CASE("connection: a load aslant by the code's formula", "[loads]") {
  CHECK(pulled_and_sheared(600.0, 200.0, 0.5, 0.8660254037844386) == Approx(240.0));
}

TEST_CASE("connection: what a screw carries aslant lies between its two resistances, and falls with either",
          "[loads]") {
  std::mt19937 random(5);
  const auto draw = [&](double lo, double hi) { return std::uniform_real_distribution<double>(lo, hi)(random); };
  for (int i = 0; i < 500; ++i) {
    const double w = draw(10, 900), z = draw(10, 900), pull = draw(0, 1), shear = draw(0, 1);
    const double both = pulled_and_sheared(w, z, pull, shear);
    CHECK(both <= std::max(w, z) * (1 + 1e-12));
    CHECK(both >= std::min(w, z) * (1 - 1e-12));
    CHECK(pulled_and_sheared(0.9 * w, z, pull, shear) <= both);
    CHECK(pulled_and_sheared(w, 0.9 * z, pull, shear) <= both);
  }
}

// NDS 3.4.3.3, from memory, by hand: a 2x4 of SPF (135 psi), the pin in mid-depth: 2/3 * 135 * 1.5 * 1.75 * (1/2)^2 =
// 59.1 lb; a 2x6: 92.8 lb, and of DF-L (180 psi) 123.75 lb.
TEST_CASE("connection: near its end a board carries little across its grain", "[loads]") {
  CHECK(end_connection_shear(135 * kPsi, 1.5 * kInch, 3.5 * kInch, 1.75 * kInch) / kPound ==
        Approx(59.06).margin(0.01));
  CHECK(end_connection_shear(135 * kPsi, 1.5 * kInch, 5.5 * kInch, 2.75 * kInch) / kPound ==
        Approx(92.81).margin(0.01));
  CHECK(end_connection_shear(180 * kPsi, 1.5 * kInch, 5.5 * kInch, 2.75 * kInch) / kPound ==
        Approx(123.75).margin(0.01));
  const double d = 0.140;
  CHECK(end_connection_shear(1e6, 0.038, d, d) == Approx(2.0 / 3.0 * 1e6 * 0.038 * d));  // d_e = d: a beam's own shear
  for (double e = 0.02; e < d; e += 0.01)
    CHECK(end_connection_shear(1e6, 0.038, d, e) < end_connection_shear(1e6, 0.038, d, e + 0.01));
}

// Two screws: a couple. Four in a row, by hand: r = 1/2 and 1/6 of the way apart, 1/2 / (2/4 + 2/36) = 0.9.
TEST_CASE("connection: the outermost screw of a row gets the moment by the squares of the distances", "[loads]") {
  CHECK(outermost_in_row(100.0, 0.5, 2) == Approx(200.0));
  CHECK(outermost_in_row(100.0, 0.5, 4) == Approx(180.0));
  for (int count = 2; count < 12; ++count)
    CHECK(outermost_in_row(100.0, 0.5, count + 1) <= outermost_in_row(100.0, 0.5, count));
  CHECK(outermost_in_row(100.0, 0.5, 1) == 0.0);
}
