#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sim/clearance/dry_fit.h"

namespace stowpath::testing {

/// The text of scenes/NAME.yaml.
std::string gallery_text(const std::string& name);

/// Stairs like the gallery's on the simplest rigging (picks in mid-width, casters that scrub, no spreader), for statics
/// and dynamics; tests/support/rigs/NAME.yaml, or the gallery's own where there is none. Nothing is asked of their proof:
/// not all of it is clear, or held.
std::string rig_text(const std::string& name);

/// The text with its only occurrence of `from` changed. @throws std::logic_error where there is not exactly one.
std::string changed(std::string text, std::string_view from, std::string_view to);

Model model_of(const std::string& text);
DryFit dry_fit_of(const std::string& text);

/// The finding of that kind between those two, whichever part of the stair is named first or besides; nullptr if none.
const Finding* find(const DryFit& fit, FindingKind kind, std::string_view stair, std::string_view room);

/// "interference hook curl / bracket arm" for every finding: what a failing test prints.
std::string told(const DryFit& fit);

/// The result of the move of that kind. @throws std::logic_error if there is none.
const MoveResult& result_of(const DryFit& fit, MoveKind kind);

}  // namespace stowpath::testing
