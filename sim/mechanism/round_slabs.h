#pragma once

#include <vector>

#include "sim/geometry/interval.h"

namespace stowpath {

/// One slab of a disc: the part of it between two distances from its middle line, on both sides of that line.
struct RoundSlab {
  Interval off;         ///< from the middle line, either way [m]
  double half = 0.0;    ///< half of the widest chord in it [m]
  double excess = 0.0;  ///< as a box that wide, it stands out of the disc by up to this [m]
};

/// A disc cut into slabs along one direction: boxes of their widest chords hold the whole of it.
std::vector<RoundSlab> round_slabs(double radius);

/// The stretches that a slab takes up along the rail, where the disc's middle is at `station` [m].
std::vector<Interval> both_ways(const RoundSlab& slab, double station);

}  // namespace stowpath
