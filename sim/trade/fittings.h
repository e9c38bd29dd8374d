#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "sim/trade/source.h"

namespace stowpath {

/// What an eyebolt keeps of its rating when pulled at an angle.
struct EyeboltShare {
  double angle = 0.0;  ///< from the bolt's axis [rad]
  double share = 1.0;
  Source source;
};

/// Shoulder eyebolts. Makers' tables disagree (25 to 30 % at 45 degrees, some nothing at 60); the standard was not
/// read.
std::span<const EyeboltShare> shoulder_eyebolt_shares();

/// Within this of the axis a pull counts as in line: our judgement. [rad]
inline constexpr double kEyeboltInLine = 0.0872664625997165;

/// Share of the rating left, by the next printed angle up, never between two. Empty where no table gives any: a plain
/// eyebolt off its axis, or any beyond a right angle.
/// @param shoulder  the eye sits on a shoulder that bears on the work
/// @param angle  from the bolt's axis [rad]
std::optional<double> eyebolt_share(bool shoulder, double angle);

/// Least ratio of breaking to rated load that ASME B30.26 asks for, by kind of fitting.
struct DesignFactor {
  std::string_view name;  ///< "shackle up to 150 t"
  double factor = 0.0;
  Source source;
};

std::span<const DesignFactor> fitting_design_factors();

/// What is known of a carabiner without a maker's rating.
struct CarabinerNote {
  std::string_view text;
  double strength = 0.0;  ///< [N]; 0 where there is none
  Source source;
};

std::span<const CarabinerNote> carabiner_notes();

}  // namespace stowpath
