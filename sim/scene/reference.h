#pragma once

#include <string>

namespace stowpath {

/// docs/scene-reference.md: every setting of the scene file with what it takes, its range, default and an example, from
/// the key table.
std::string scene_reference();

}  // namespace stowpath
