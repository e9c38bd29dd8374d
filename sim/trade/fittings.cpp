#include "sim/trade/fittings.h"

#include <array>
#include <cmath>
#include <numbers>

#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr SourceStatus kVerified = SourceStatus::verified;
constexpr SourceStatus kMemory = SourceStatus::memory;
constexpr double kDegree = std::numbers::pi / 180.0;

constexpr Source kEyebolt{"S-EYE-angle", "kingwingmetal.com, shoulder eyebolts", kVerified};
constexpr std::array kShares{EyeboltShare{0.0, 1.00, kEyebolt}, EyeboltShare{15 * kDegree, 0.80, kEyebolt},
                             EyeboltShare{30 * kDegree, 0.65, kEyebolt}, EyeboltShare{45 * kDegree, 0.30, kEyebolt},
                             EyeboltShare{90 * kDegree, 0.25, kEyebolt}};

constexpr Source kB3026{"S-B30-26", "ASME B30.26 as told on riggingresource.com", kVerified};
constexpr std::array kFactors{
    DesignFactor{"shackle up to 150 t", 5.0, kB3026}, DesignFactor{"shackle over 150 t", 4.0, kB3026},
    DesignFactor{"eyebolt, hoist ring or turnbuckle", 5.0, kB3026}, DesignFactor{"link, ring or swivel", 5.0, kB3026},
    DesignFactor{"rigging block", 4.0, {"S-B30-26", "ASME B30.26", kMemory}}};

constexpr std::array kCarabiners{
    CarabinerNote{"climbing carabiner, long axis, gate shut: typically 20 kN or more",
                  20e3,
                  {"S-CARA", "Wikipedia, Carabiner", kVerified}},
    CarabinerNote{
        "ANSI life-safety: at least 5,000 lb", 5000 * kPoundForce, {"S-CARA", "spiegato.com, carabiners", kVerified}},
    CarabinerNote{"EN 12275 type B, gate open or across: 7 kN", 7e3, {"S-CARA", "EN 12275", kMemory}},
    CarabinerNote{"accessory clips carry no rating", 0.0, {"S-CARA", "spiegato.com, carabiners", kVerified}}};

}  // namespace

std::span<const EyeboltShare> shoulder_eyebolt_shares() { return kShares; }

std::optional<double> eyebolt_share(bool shoulder, double angle) {
  constexpr double kRounding = 1e-9;  // an angle that came through degrees [rad]
  if (std::abs(angle) <= kEyeboltInLine) return 1.0;
  if (!shoulder) return std::nullopt;
  for (const EyeboltShare& printed : kShares) {
    if (std::abs(angle) <= printed.angle + kRounding) return printed.share;
  }
  return std::nullopt;
}

std::span<const DesignFactor> fitting_design_factors() { return kFactors; }

std::span<const CarabinerNote> carabiner_notes() { return kCarabiners; }

}  // namespace stowpath
