#pragma once

#include <span>
#include <string_view>

#include "sim/loads/rail.h"
#include "sim/trade/source.h"

namespace stowpath {

/// What bends under a person.
enum class BendingPart { stair, tread, pipe };

/// How far a part may bend before a person on it feels unsafe. Such a limit says nothing of strength.
struct DeflectionLimit {
  BendingPart part = BendingPart::stair;
  double span_share = 0.0;  ///< of the span
  double most = 0.0;        ///< at any span [m]
  double load = 0.0;        ///< to test it with; 0: the load it serves under [N]
  double patch = 0.0;       ///< that load stands on a square of this side [m]
  Source source;
};

std::span<const DeflectionLimit> deflection_limits();
const DeflectionLimit& deflection_limit(BendingPart part);

/// The lesser of the share of the span and the limit at any span [m].
double allowed_deflection(const DeflectionLimit& limit, double span);

/// Greatest deflection of a simple beam under a load spread over `patch` in the middle of its span [m].
/// @param stiffness  E I, greater than 0 [N m2]
/// @param span  greater than 0 [m]
double patch_deflection(double span, double stiffness, double load, double patch);

/// A deflection beside what is allowed.
struct DeflectionCheck {
  double deflection = 0.0;  ///< [m]
  double span = 0.0;        ///< that it is measured against [m]
  double allowed = 0.0;     ///< [m]
  double station = 0.0;     ///< of the stair's middle, for the pipe [m]
  double at = 0.0;          ///< along the pipe [m]
};

/// Where the pipe sags most for its span: under the hooks at the case's stations, and at its greatest sag of all. An
/// overhang counts as a span of twice its length.
DeflectionCheck pipe_deflection(const Scene& scene, const RailCase& rail);

}  // namespace stowpath
