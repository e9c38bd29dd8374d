#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// Into how many pieces a move is cut for its outline.
inline constexpr int kSweepPieces = 48;

/// The border of what the stair's wood, casters, handrails and extras pass over in a move, in the side view: closed
/// rings, out and up [m]. Empty for a move that keeps its side view, as a roll does.
///
/// Hulls of neighbouring poses: between two of them a part may bulge beyond by a millimetre or two. A picture, no proof.
std::vector<std::vector<Vec2>> swept_outline(const Model& model, std::size_t move);

}  // namespace stowpath
