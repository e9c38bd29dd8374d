#include "sim/trade/screws.h"

#include <catch2/catch.hpp>

using namespace stowpath;

namespace {
constexpr double kInch = 0.0254;
}

// NDS Appendix L2, from memory: a lag of 3/8 by 4 in has 2-1/2 in of thread, 7/32 in of it tip.
TEST_CASE("screws: the tip and what the point does not reach do not count", "[trade]") {
  CHECK(kLagShape.status == SourceStatus::memory);
  const double d = 0.375 * kInch;
  CHECK(lag_thread(4 * kInch) / kInch == Approx(2.5));
  CHECK(lag_tip(d) / kInch == Approx(7.0 / 32));
  CHECK(lag_thread_in_member(4 * kInch, d, 0.25 * kInch) / kInch == Approx(2.5 - 7.0 / 32));
  CHECK(lag_thread_in_member(4 * kInch, d, 3 * kInch) / kInch == Approx(1.0 - 7.0 / 32));
  CHECK(lag_thread_in_member(4 * kInch, d, 5 * kInch) == 0.0);
}

TEST_CASE("screws: a short lag is thread all along and a long one has six inches", "[trade]") {
  CHECK(lag_thread(0.75 * kInch) == Approx(0.75 * kInch));
  CHECK(lag_thread(1 * kInch) == Approx(1 * kInch));
  CHECK(lag_thread(16 * kInch) == Approx(6 * kInch));
}

TEST_CASE("screws: a tip of a size between is that of the size above", "[trade]") {
  CHECK(lag_tip(0.27 * kInch) == Approx(lag_tip(0.3125 * kInch)));
  CHECK(lag_tip(1.5 * kInch) == Approx(1.0 * kInch));
}

// engineerfix.com (S-screw-eye, verified on a secondary page).
TEST_CASE("screws: a screw eye is said to have no rating", "[trade][published]") {
  CHECK(kScrewEye.id == "S-screw-eye");
  CHECK(kScrewEye.title.find("no standard rates screw eyes") == 0);
}
