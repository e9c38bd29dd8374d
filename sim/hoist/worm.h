#pragma once

#include "sim/trade/source.h"

namespace stowpath {

/// The normal pressure angle taken where none is given, the usual 20 degrees. [rad]
inline constexpr double kWormPressureAngle = 0.3490658503988659;

/// Share of the work that passes when the worm drives the gear: (cos phi - mu tan lambda) / (cos phi + mu cot lambda).
/// @param lead  lead angle, in (0, pi/2) [rad]
/// @throws std::invalid_argument if the lead angle is not in that range or mu is negative, here and below.
double worm_efficiency(double lead, double mu, double pressure_angle = kWormPressureAngle);
inline constexpr Source kWormEfficiency{"S-WORM-eta", "Mechanical Engineer's Data Handbook, p. 110",
                                        SourceStatus::verified};

/// The same when the gear, that is the load, drives the worm: (cos phi - mu cot lambda) / (cos phi + mu tan lambda).
/// Not above 0 where the worm holds the load.
double worm_back_efficiency(double lead, double mu, double pressure_angle = kWormPressureAngle);

/// Friction from which a worm at rest holds its load: cos phi tan lambda. Static and for the friction stated: grease,
/// wear and shaking lower it, so holding like this is not a brake.
double worm_holding_friction(double lead, double pressure_angle = kWormPressureAngle);
bool worm_holds(double lead, double mu, double pressure_angle = kWormPressureAngle);
inline constexpr Source kWormHolding{"S-WORM-back", "square thread: novasolver.jp; with the pressure angle derived",
                                     SourceStatus::derived};

/// Lead angle up to which a worm is advised where it has to hold by itself: about 5 degrees. [rad]
inline constexpr double kWormHoldingLead = 0.0872664625997165;
inline constexpr Source kWormHoldingLeadSource{
    "S-WORM-5deg", "Mott, Machine Elements in Mechanical Design, 4th edition", SourceStatus::verified};

/// Sizes of a worm and its gear. Lengths in metres.
struct WormGeometry {
  double axial_pitch = 0.0;      ///< [m]
  double lead = 0.0;             ///< advance in a turn of the worm [m]
  double lead_angle = 0.0;       ///< [rad]
  double gear_diameter = 0.0;    ///< pitch diameter [m]
  double centre_distance = 0.0;  ///< [m]
  double ratio = 0.0;            ///< turns of the worm for one of the gear
};

/// @param module  pitch diameter of the gear over its teeth [m]; 1 in over the diametral pitch
/// @param worm_diameter  pitch diameter [m]
/// @throws std::invalid_argument if a count or a length is not above 0.
WormGeometry worm_geometry(int starts, double module, double worm_diameter, int gear_teeth);

}  // namespace stowpath
