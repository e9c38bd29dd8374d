#include "sim/trade/pipe.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <string>
#include <vector>

using namespace stowpath;

namespace {
constexpr double kInch = 0.0254;
constexpr double kPoundForce = 4.4482216152605;
constexpr double kPsi = 6894.757293168;
}  // namespace

// Walls and weights: ASME B36.10M as listed at scribd.com/document/321368395/Pipe. I, S and r: Mott, Machine Elements
// in Mechanical Design, 4th edition, Appendix 16-6. Figures have four digits, hence half of the last: 1e-3 of the value
// at most.
TEST_CASE("pipe: schedule 40 sections are those of the published table", "[trade][published]") {
  struct Row {
    std::string name;
    double outside, wall, area, second_moment, modulus, plastic, gyration;  // in inches
    double kilograms;                                                       // a metre
  };
  const std::vector<Row> rows{{"NPS 1/2", 0.840, 0.109, 0.2503, 0.01709, 0.04069, 0.0587, 0.2613, 1.27},
                              {"NPS 3/4", 1.050, 0.113, 0.3326, 0.03704, 0.07055, 0.0997, 0.3337, 1.69},
                              {"NPS 1", 1.315, 0.133, 0.4939, 0.08734, 0.1328, 0.1866, 0.4205, 2.50},
                              {"NPS 1-1/4", 1.660, 0.140, 0.6685, 0.1947, 0.2346, 0.3244, 0.5397, 3.39},
                              {"NPS 1-1/2", 1.900, 0.145, 0.7995, 0.3099, 0.3262, 0.4476, 0.6226, 4.05},
                              {"NPS 2", 2.375, 0.154, 1.0745, 0.6658, 0.5606, 0.7609, 0.7871, 5.44}};
  for (const Row& row : rows) {
    INFO(row.name);
    const PipeSize* pipe = find_pipe(row.name);
    REQUIRE(pipe != nullptr);
    CHECK(pipe->name == row.name);
    CHECK(pipe->outside_diameter == Approx(row.outside * kInch));
    CHECK(pipe->wall == Approx(row.wall * kInch));
    const Section section = pipe_section(*pipe);
    CHECK(section.area / std::pow(kInch, 2) == Approx(row.area).epsilon(1e-3));
    CHECK(section.second_moment / std::pow(kInch, 4) == Approx(row.second_moment).epsilon(1e-3));
    CHECK(section.modulus / std::pow(kInch, 3) == Approx(row.modulus).epsilon(1e-3));
    CHECK(section.plastic_modulus / std::pow(kInch, 3) == Approx(row.plastic).epsilon(1e-3));
    CHECK(section.gyration / kInch == Approx(row.gyration).epsilon(1e-3));
    CHECK(pipe->listed_mass == Approx(row.kilograms).epsilon(0.005));  // the table prints three figures
    // The density is from memory, and listed weights are rounded.
    CHECK(steel_tube_mass(pipe->outside_diameter, pipe->wall) == Approx(pipe->listed_mass).epsilon(0.005));
  }
}

// Derived: NPS 1-1/2, simple span of 72 in, 300 lbf at mid-span. M = PL/4 and PL^3/48EI; E = 29,000 ksi from memory.
TEST_CASE("pipe: the worked span has its stress and its sag", "[trade][published]") {
  const Section section = pipe_section(*find_pipe("1-1/2"));
  const double span = 72 * kInch, load = 300 * kPoundForce;
  CHECK(load * span / 4 / section.modulus / kPsi == Approx(16554).epsilon(0.001));
  const double sag = load * std::pow(span, 3) / (48 * kSteelElasticity * section.second_moment);
  CHECK(sag / kInch == Approx(0.2596).epsilon(0.001));
}

// The 0.93 of the listed wall is AISC's practice, from memory; the figures are derived, to three digits.
TEST_CASE("pipe: at its design wall a pipe is seven per cent weaker or so", "[trade]") {
  const PipeSize& pipe = *find_pipe("NPS 1-1/2");
  const Section thin = tube_section(pipe.outside_diameter, kDesignWallFactor * pipe.wall);
  CHECK(thin.second_moment / std::pow(kInch, 4) == Approx(0.293).epsilon(0.002));
  CHECK(thin.modulus / std::pow(kInch, 3) == Approx(0.308).epsilon(0.002));
}

TEST_CASE("pipe: a size is found however it is written, and only if the table has it", "[trade]") {
  for (const std::string name :
       {"NPS 1-1/4", "nps 1-1/4", "NPS1-1/4", "1-1/4", "1 1/4", "1 1/4 in", "1¼\"", "1.25", "NPS-1.25"}) {
    INFO(name);
    REQUIRE(find_pipe(name) != nullptr);
    CHECK(find_pipe(name)->name == "NPS 1-1/4");
  }
  for (const std::string name : {"", "NPS", "NPS 3", "1-3/4", "-1", "NPS one", "33.4 mm"}) {
    INFO(name);
    CHECK(find_pipe(name) == nullptr);
  }
  CHECK(pipe_names().size() == 6);
  for (const std::string_view name : pipe_names()) CHECK(find_pipe(name) != nullptr);
}

// ASTM A53, two pages agreeing: A yields at 30 ksi (205 MPa), B at 35 ksi (240 MPa), SI figures rounded to 5 MPa.
TEST_CASE("pipe: the grades have their published strengths", "[trade][published]") {
  CHECK(find_pipe_grade("A")->yield == Approx(205e6).margin(2.5e6));
  CHECK(find_pipe_grade("A53 B")->yield == Approx(240e6).margin(2.5e6));
  CHECK(find_pipe_grade("grade b")->ultimate == Approx(415e6).margin(2.5e6));
  CHECK(find_pipe_grade("C") == nullptr);
  CHECK(find_pipe_grade("") == nullptr);
  CHECK(pipe_grade_names().size() == 2);
}
