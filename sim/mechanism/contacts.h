#pragma once

#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// How far each part may be pressed into what it is built to touch before it counts as interference: what fitting takes
/// up [m].
inline constexpr double kFit = 5e-4;

/// Numbers what the contact rules name: each part of the stair, each rope, and each thing of the room with all its
/// pieces.
void number_parts(Model& model);

/// All meant contacts of a scene: a table of which two things, why, when, where and how deep. See docs/method.md, "What
/// may touch".
/// A rule that nothing answers to stays in its place, so that scenes that differ in their measurements have alike tables.
/// @param model  assembled and numbered
std::vector<ContactRule> contact_rules(const Scene& scene, const Model& model);

}  // namespace stowpath
