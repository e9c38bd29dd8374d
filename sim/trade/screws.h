#pragma once

#include "sim/trade/source.h"

namespace stowpath {

/// Along which the screw goes in.
enum class Grain { side, end };

// Allowable withdrawal, as designers of timber use it. `gravity` is on oven-dry volume, as in Species: the Wood
// Handbook's other basis gives up to 6 % less. Diameters in metres; answers in N for each metre of thread.

/// 1800 G^1.5 D^0.75 pounds an inch; 3/4 of it in end grain.
double lag_withdrawal(double gravity, double diameter, Grain grain = Grain::side);
inline constexpr Source kLagWithdrawal{"S-NDS-lagW", "NDS 11.2.1, lag screws, allowable", SourceStatus::verified};

/// 2850 G² D pounds an inch; none in end grain, where the code allows none.
double wood_screw_withdrawal(double gravity, double diameter, Grain grain = Grain::side);
inline constexpr Source kWoodScrewWithdrawal{"S-NDS-wsW", "NDS, wood screws, allowable", SourceStatus::verified};

// What tests broke at, side grain: 4.5 and 5.5 times the allowable. Never a load to use.

double lag_withdrawal_ultimate(double gravity, double diameter);
double wood_screw_withdrawal_ultimate(double gravity, double diameter);
inline constexpr Source kUltimateWithdrawal{"S-FPL-lagP", "Wood Handbook FPL-GTR-282, ch. 8, ultimate",
                                            SourceStatus::memory};

/// 0.060 in and 0.013 in for each number: #10 is 0.190 in. [m]
double wood_screw_diameter(int number);

/// Diameter at the root of the thread, by the nominal one; in proportion between the sizes that are listed. [m]
double lag_root(double diameter);
double wood_screw_root(double diameter);
inline constexpr Source kRootDiameters{"S-NDS-L2", "NDS Appendix L2 and L3, root diameters", SourceStatus::memory};

/// What has no rating of its own.
inline constexpr Source kScrewEye{"S-screw-eye",
                                  "no standard rates screw eyes (engineerfix.com): reckoned as a lag's thread",
                                  SourceStatus::verified};

/// Length of the thread of a lag screw, tip included: half the screw and half an inch, 6 in at most. [m]
double lag_thread(double length);
/// Length of its tapered tip, which does not count, by the next listed size up. [m]
double lag_tip(double diameter);
inline constexpr Source kLagShape{"S-NDS-L2", "NDS Appendix L2, lag screw dimensions", SourceStatus::memory};

/// Thread of a lag screw that counts: in the member that holds the point, without the tip. [m]
/// @param through  what it passes through first: plate, washer, the other board [m]
double lag_thread_in_member(double length, double diameter, double through);

}  // namespace stowpath
