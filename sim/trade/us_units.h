#pragma once

namespace stowpath {

// For tables that are printed in inches and pounds. All exact.

inline constexpr double kInch = 0.0254;                       ///< [m]
inline constexpr double kPound = 0.45359237;                  ///< [kg]
inline constexpr double kPoundForce = kPound * 9.80665;       ///< [N]
inline constexpr double kPoundPerInch = kPoundForce / kInch;  ///< [N/m]

}  // namespace stowpath
