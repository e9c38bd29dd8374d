#pragma once

#include <vector>

#include "sim/scene/scene.h"

namespace stowpath::testing {

/// All numbers of a scene, in no order that matters: for "every number is finite".
std::vector<double> numbers_of(const Scene& scene);

}  // namespace stowpath::testing
