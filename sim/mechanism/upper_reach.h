#pragma once

#include "sim/mechanism/model.h"

namespace stowpath {

/// Farthest that any part of the sections above the hinge (from 0) reaches from the pivot while they are straight [m].
double upper_reach(const Model& model, int hinge);

}  // namespace stowpath
