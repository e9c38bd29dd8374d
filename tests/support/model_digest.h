#pragma once

#include <string>

#include "sim/mechanism/held_by.h"
#include "sim/mechanism/model.h"

namespace stowpath::testing {

/// All that is drawn of a model, what may touch, how it moves and what holds what, number by number: two models of
/// which anything differs have other texts.
std::string digest(const Scene& scene, const Model& model);

}  // namespace stowpath::testing
