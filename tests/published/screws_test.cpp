#include "sim/trade/screws.h"

#include <catch2/catch.hpp>
#include <vector>

#include "sim/trade/lumber.h"

using namespace stowpath;

namespace {
constexpr double kInch = 0.0254;
constexpr double kPoundForce = 4.4482216152605;
constexpr double kPoundPerInch = kPoundForce / kInch;
}  // namespace

// NDS 2015/2018 Table 12.2A (S-NDS-T122A, verified) by the formula of NDS 11.2.1 (S-NDS-lagW, verified). The table is
// in whole pounds.
TEST_CASE("published screws: lag withdrawal is the grid of Table 12.2A", "[trade][published]") {
  struct Row {
    double gravity;
    std::vector<double> pounds;  // for 1/4, 5/16, 3/8 and 1/2 in
  };
  const std::vector<double> diameters{0.25, 0.3125, 0.375, 0.5};
  const std::vector<Row> rows{{0.55, {260, 307, 352, 437}},
                              {0.50, {225, 266, 305, 378}},
                              {0.46, {199, 235, 269, 334}},
                              {0.43, {179, 212, 243, 302}},
                              {0.42, {173, 205, 235, 291}}};
  CHECK(kLagWithdrawal.id == "S-NDS-lagW");
  CHECK(kLagWithdrawal.status == SourceStatus::verified);
  for (const Row& row : rows) {
    for (size_t i = 0; i < diameters.size(); ++i) {
      INFO(row.gravity << ", " << diameters[i] << " in");
      CHECK(lag_withdrawal(row.gravity, diameters[i] * kInch) / kPoundPerInch == Approx(row.pounds[i]).margin(0.5));
    }
  }
}

// Derived: 2.5 in of thread of a 3/8 in lag in Douglas fir: 762.4 lb, and 953.0 for a short load (1.25). In SI per
// millimetre: 53.41 N, and 30.34 for 1/4 in in spruce.
TEST_CASE("published screws: the worked lag", "[trade][published]") {
  const double per_metre = lag_withdrawal(find_species("DF-L")->gravity, 0.375 * kInch);
  CHECK(per_metre * 2.5 * kInch / kPoundForce == Approx(762.4).margin(0.1));
  CHECK(1.25 * per_metre * 2.5 * kInch / kPoundForce == Approx(953.0).margin(0.1));
  CHECK(per_metre / 1000 == Approx(53.41).margin(0.005));
  CHECK(lag_withdrawal(find_species("SPF")->gravity, 0.25 * kInch) / 1000 == Approx(30.34).margin(0.005));
  CHECK(lag_withdrawal(find_species("SPF")->gravity, 0.375 * kInch) / kPoundPerInch == Approx(235).margin(0.5));
}

// NDS by Santa Ana's scan and engineersedge.com (verified): 3/4 in end grain. For wood screws NDS allows none.
TEST_CASE("published screws: end grain takes three quarters of a lag and no wood screw", "[trade][published]") {
  const double d = 0.375 * kInch;
  CHECK(lag_withdrawal(0.5, d, Grain::end) == Approx(0.75 * lag_withdrawal(0.5, d)));
  CHECK(wood_screw_withdrawal(0.5, 0.19 * kInch, Grain::end) == 0.0);
}

// engineeringtoolbox.com (verified): G 0.45, D 0.190 in: 109 lb/in, cut off from 109.65.
TEST_CASE("published screws: the worked wood screw", "[trade][published]") {
  CHECK(kWoodScrewWithdrawal.id == "S-NDS-wsW");
  CHECK(kWoodScrewWithdrawal.status == SourceStatus::verified);
  CHECK(wood_screw_withdrawal(0.45, 0.190 * kInch) / kPoundPerInch == Approx(109).margin(1));
}

// Derived by NDS's formula, to one decimal.
TEST_CASE("published screws: wood screws by number", "[trade][published]") {
  struct Row {
    int number;
    double inches, spruce, fir, pine;  // lb/in
  };
  const std::vector<Row> rows{{6, 0.138, 69.4, 98.3, 119.0},
                              {8, 0.164, 82.4, 116.9, 141.4},
                              {10, 0.190, 95.5, 135.4, 163.8},
                              {12, 0.216, 108.6, 153.9, 186.2},
                              {14, 0.242, 121.7, 172.4, 208.6}};
  for (const Row& row : rows) {
    INFO("#" << row.number);
    const double d = wood_screw_diameter(row.number);
    CHECK(d / kInch == Approx(row.inches));
    CHECK(wood_screw_withdrawal(0.42, d) / kPoundPerInch == Approx(row.spruce).margin(0.051));
    CHECK(wood_screw_withdrawal(0.50, d) / kPoundPerInch == Approx(row.fir).margin(0.051));
    CHECK(wood_screw_withdrawal(0.55, d) / kPoundPerInch == Approx(row.pine).margin(0.051));
  }
}

// Wood Handbook, from memory; the ratios are derived. What breaks and what is allowed must never be mixed up.
TEST_CASE("published screws: what breaks is 4.50 and 5.51 times what is allowed", "[trade][published]") {
  CHECK(kUltimateWithdrawal.id == "S-FPL-lagP");
  CHECK(kUltimateWithdrawal.status == SourceStatus::memory);
  const double d = 0.3 * kInch;
  CHECK(lag_withdrawal_ultimate(0.5, d) / lag_withdrawal(0.5, d) == Approx(4.50).margin(0.005));
  CHECK(wood_screw_withdrawal_ultimate(0.5, d) / wood_screw_withdrawal(0.5, d) == Approx(5.51).margin(0.005));
}
