#pragma once

#include <string>

#include "sim/scene/scene.h"

namespace stowpath {

/// What a screw or dowel may carry when it is pulled and sheared at once, for a load that leans so [N].
/// Z'_alpha = W' Z' / (W' cos^2 alpha + Z' sin^2 alpha), alpha between the load and the wood's face.
/// @param pull_resistance  W' along its length; @param shear_resistance  Z' across it
/// @param pull, shear  of the load, for its direction alone
/// Source: S-NDS-124, NDS 12.4.1 and 12.4.2: from memory.
double pulled_and_sheared(double pull_resistance, double shear_resistance, double pull, double shear);

/// On the outermost of fasteners that stand evenly in a row, from the moment on all of them [N]: M r / sum of r^2.
/// @param apart  the outer two from each other [m]
/// @param count  two or more; fewer hold no moment and give 0
double outermost_in_row(double moment, double apart, int count);

/// The greatest force across the grain at a connection within five depths of a board's end [N]: V' = 2/3 F_v b d_e (d_e
/// / d)^2.
/// @param shear  F_v [Pa]; @param breadth, depth  of the board [m]
/// @param effective_depth  from its unloaded edge to the connection [m]
/// Source: S-NDS-3433, NDS 3.4.3.3: from memory.
double end_connection_shear(double shear, double breadth, double depth, double effective_depth);

/// Of what a screw carries across its length in side grain, how much is left in end grain: C_eg of NDS 12.5.2.2, from
/// memory.
inline constexpr double kEndGrainShear = 0.67;

/// How far a dowel must be from where its board ends and from the edge that it pushes towards, in diameters: NDS Tables
/// 12.5.1A and C, for softwood, full value: from memory.
inline constexpr double kEndDistance = 7.0, kLoadedEdge = 4.0;

/// How fasteners must be set, so that what is reckoned of them holds: "no nearer than 35 mm to the wood's end, ...".
/// Source: NDS Tables 12.5.1A to D for 1/4 in and more, and the commentary's for less: from memory.
std::string setting_rule(const Scene& scene, const Screws& screws);

}  // namespace stowpath
