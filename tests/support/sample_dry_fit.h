#pragma once

#include "sim/clearance/dry_fit.h"

namespace stowpath::testing {

/// A small scene, the model that goes with it and a dry fit's answer, all made by hand: reports and sheets are tested
/// against these, so that no change of the proof moves their words.
Scene dry_fit_scene();
Model dry_fit_model();
DryFit sample_dry_fit();

/// The same with nothing found.
DryFit clear_dry_fit();

/// "hook curl" meets "bracket arm" at all of `things` brackets while rolling, 9 mm deep.
Finding hook_finding(int things, int things_in_all);

}  // namespace stowpath::testing
