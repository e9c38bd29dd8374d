#pragma once

#include <string>
#include <vector>

#include "sim/clearance/trial.h"

namespace stowpath {

/// What a part of the stair counts as where findings are told: all that is built into its body as one part, and so a
/// hook with all its pieces; else its own name.
std::string told_as(PartKind kind, const std::string& name);

/// Groups what was met as a builder would say it: one finding for each kind of part that meets each kind of thing, over
/// all moves, stations and poses; gravest first, numbered F1, F2, ...
std::vector<Finding> gather_findings(const Model& model, const Trial& trial, const std::vector<MoveTrial>& moves);

/// Gravest first, numbered F1, F2, ...
void rank_findings(std::vector<Finding>& findings);

}  // namespace stowpath
