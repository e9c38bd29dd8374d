#pragma once

#include <string>

namespace stowpath::testing {

/// An attic stair of two sections in 2x6, about 14 ft long, lifted by a block set on a rope: the text of its scene.
std::string attic_stair_text();

}  // namespace stowpath::testing
