#pragma once

#include <string>

namespace stowpath::testing {

/// The demo's stair in a smaller room, with four things at random about its swing: what a careless plan looks like.
std::string random_scene(unsigned seed);

}  // namespace stowpath::testing
