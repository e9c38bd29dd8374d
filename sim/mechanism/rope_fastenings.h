#pragma once

#include "sim/mechanism/fastening.h"

namespace stowpath {

/// Everything that a line is tied to, turns round or is pulled at.
///
/// Picks, the fold line's end and its pulleys: within kEyeReach of wood of their section (side rail, tread, scab or
/// spacer block), both picks where there is a spread. The ceiling point and every lead: within kSheaveReach of floor,
/// wall, ceiling, loft or a thing that the scene names; a ceiling point that rolls, at every station of the span. A
/// hand pulls from where a person stands: up to 2.1 m over the floor or the loft's deck. A winch stands within 0.5 m of
/// something of the building (both a judgement).
Fastenings rope_fastenings(const HoldingView& view);

}  // namespace stowpath
