#include "sim/trade/lumber.h"

#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "sim/trade/section.h"

using namespace stowpath;

namespace {
constexpr double kInch = 0.0254;
constexpr double kPsi = 6894.757293168;
}  // namespace

// PS 20 as listed at engineeringtoolbox.com/softwood-lumber-standard-d_1270.html: dressed sizes, areas and section
// moduli; second moments derived. The printed figures have three decimals, hence half of the last one.
TEST_CASE("lumber: dressed sizes and their sections are those of the standard", "[trade][published]") {
  struct Row {
    std::string name;
    double thickness, width, area, modulus, second_moment;  // in inches
  };
  const std::vector<Row> rows{{"1x4", 0.75, 3.5, 2.625, 1.531, 2.680},      {"1x6", 0.75, 5.5, 4.125, 3.781, 10.398},
                              {"2x4", 1.5, 3.5, 5.250, 3.063, 5.359},       {"2x6", 1.5, 5.5, 8.250, 7.563, 20.797},
                              {"2x8", 1.5, 7.25, 10.875, 13.141, 47.635},   {"2x10", 1.5, 9.25, 13.875, 21.391, 98.932},
                              {"2x12", 1.5, 11.25, 16.875, 31.641, 177.979}};
  for (const Row& row : rows) {
    INFO(row.name);
    const auto size = dressed_size(row.name);
    REQUIRE(size);
    CHECK(size->status == SourceStatus::verified);
    CHECK(size->thickness == Approx(row.thickness * kInch));
    CHECK(size->width == Approx(row.width * kInch));
    const Section section = rectangle_section(size->thickness, size->width);
    CHECK(section.area / (kInch * kInch) == Approx(row.area).margin(5.1e-4));
    CHECK(section.modulus / (kInch * kInch * kInch) == Approx(row.modulus).margin(5.1e-4));
    CHECK(section.second_moment / (kInch * kInch * kInch * kInch) == Approx(row.second_moment).margin(5.1e-4));
  }
}

// The 5/4 thickness is PS 20's; its widths follow the standard's rule. 4x4 is from memory.
TEST_CASE("lumber: sizes outside the printed table say so", "[trade]") {
  const auto deck = dressed_size("5/4x6").value();
  CHECK(deck.thickness == Approx(1.0 * kInch));
  CHECK(deck.width == Approx(5.5 * kInch));
  CHECK(deck.status == SourceStatus::derived);
  CHECK(dressed_size("4x4").value().width == Approx(3.5 * kInch));
  CHECK(dressed_size("4x4").value().status == SourceStatus::memory);
}

TEST_CASE("lumber: a nominal name reads however it is spaced, and only such a name does", "[trade]") {
  for (const std::string name : {"2x6", "2X6", "2 x 6", "2×6", "2 × 6", "2\"x6\""}) {
    INFO(name);
    CHECK(dressed_size(name).value().width == Approx(5.5 * kInch));
  }
  CHECK(dressed_size("1-1/4x6").value().thickness == Approx(1.0 * kInch));
  for (const std::string name : {"", "2", "x", "2x", "x6", "6x2", "2x7", "2x6x8", "38x140 mm", "two by six"}) {
    INFO(name);
    CHECK_FALSE(dressed_size(name));
  }
  for (const std::string_view name : lumber_names()) CHECK(dressed_size(name));
}

// Derived from the gravities of NDS Table 12.2A by the NDS Supplement's formula (from memory), to its last printed
// decimal.
TEST_CASE("lumber: densities at 12 % moisture follow from the gravities", "[trade][published]") {
  CHECK(find_species("SPF")->density == Approx(449.8).margin(0.06));
  CHECK(find_species("HF")->density == Approx(460.0).margin(0.06));
  CHECK(find_species("DF-L")->density == Approx(531.1).margin(0.06));
  CHECK(find_species("SP")->density == Approx(581.2).margin(0.06));
  CHECK(wood_density(0.42, 0.12) == find_species("SPF")->density);
}

// NDS Supplement Table 4A, from memory: only that the table was copied right.
TEST_CASE("lumber: reference values keep the table's psi and say that they are from memory", "[trade]") {
  const Species& fir = *find_species("DF-L");
  CHECK(fir.bending == Approx(6.21e6).epsilon(0.001));  // the table's own MPa, rounded to three figures
  CHECK(fir.elasticity == Approx(11.0e9).epsilon(0.005));
  CHECK(fir.strength_status == SourceStatus::memory);
  CHECK(fir.status == SourceStatus::verified);
  for (const std::string_view name : species_names()) {
    REQUIRE(find_species(name) != nullptr);
    CHECK_FALSE(find_species(name)->source.empty());
    CHECK_FALSE(find_species(name)->strength_source.empty());
  }
}

// Derived: 900 psi x 1.2 x 13.141 in3 = 14,192 in-lb (1603 N m) for a 2x8 of Douglas Fir-Larch No. 2 on edge. C_F is
// verified (NELMA rules), F_b is from memory.
TEST_CASE("lumber: the worked stringer carries its moment", "[trade][published]") {
  const auto size = dressed_size("2x8").value();
  const double moment =
      bending_value(*find_species("DF-L"), size.width) * rectangle_section(size.thickness, size.width).modulus;
  CHECK(moment == Approx(1603.0).epsilon(0.001));
}

// C_F: NELMA rules, section 8, verified. Southern Pine No. 2 by width: NDS Supplement Table 4B, from memory.
TEST_CASE("lumber: the bending value falls with the width", "[trade][published]") {
  const auto psi = [](const char* species, const char* board) {
    return bending_value(*find_species(species), dressed_size(board)->width) / kPsi;
  };
  CHECK(psi("SPF", "2x4") == Approx(875 * 1.5));
  CHECK(psi("SPF", "2x6") == Approx(875 * 1.3));
  CHECK(psi("SPF", "2x10") == Approx(875 * 1.1));
  CHECK(psi("SPF", "2x12") == Approx(875));
  CHECK(psi("SP", "2x4") == Approx(1100));
  CHECK(psi("SP", "2x6") == Approx(1000));
  CHECK(psi("SP", "2x12") == Approx(750));
  CHECK(bending_value(*find_species("SPF"), 14 * kInch) / kPsi == Approx(875 * 0.9));
}

TEST_CASE("lumber: a species is found by stamp, full name or usual spelling", "[trade]") {
  for (const std::string name : {"SPF", "spf", "S-P-F", "Spruce-Pine-Fir", "spruce pine fir"}) {
    INFO(name);
    REQUIRE(find_species(name) != nullptr);
    CHECK(find_species(name)->name == "SPF");
  }
  CHECK(find_species("SYP") == find_species("Southern Pine"));
  CHECK(find_species("hem-fir") == find_species("HF"));
  CHECK(find_species("oak") == nullptr);
  CHECK(find_species("") == nullptr);
}
