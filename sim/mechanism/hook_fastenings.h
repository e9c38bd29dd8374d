#pragma once

#include "sim/mechanism/fastening.h"

namespace stowpath {

/// The hooks on the pipe, and section 1 on the hooks.
///
/// A hook holds where its shank lies in a side rail of section 1 or flat on one of its faces, to within kOnFace, over
/// twice the rod's diameter (a plate's: its rim's depth) of length at least. Beside a side rail at least half of the
/// shank has to lie on it, across; on its front or back face at least half, along the rail. Of a plate hook every piece
/// that reaches below the pivot is looked at, and the best one counts. Screws, whose places the scene does not give,
/// take four of their diameters each of that length (a judgement).
Fastenings hook_fastenings(const HoldingView& view);

}  // namespace stowpath
