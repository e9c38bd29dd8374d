#pragma once

#include "sim/mechanism/fastening.h"

namespace stowpath {

/// The pipe on its brackets, each bracket on the building, and what sits on the pipe or on the loft's deck.
///
/// A bracket's mounting face has to lie whole on a face of the building: a plate's back, the end of a strap's tab, a
/// post's foot, or of a bracket by outline one edge of one of its pieces, from which the others lead to the pipe. The
/// pipe takes two such brackets, and neither end may run on past the last of them by more than the widest span between
/// two (a judgement).
Fastenings rail_fastenings(const HoldingView& view);

}  // namespace stowpath
