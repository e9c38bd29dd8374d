#pragma once

namespace stowpath {

// For tables and screens in inches and pounds. All exact: the international agreement of 1959, and standard gravity.

inline constexpr double kGravity = 9.80665;                   ///< standard gravity [m/s2]
inline constexpr double kInch = 0.0254;                       ///< [m]
inline constexpr double kFoot = 12.0 * kInch;                 ///< [m]
inline constexpr double kPound = 0.45359237;                  ///< [kg]
inline constexpr double kPoundForce = kPound * kGravity;      ///< [N]
inline constexpr double kPoundPerInch = kPoundForce / kInch;  ///< [N/m]

}  // namespace stowpath
