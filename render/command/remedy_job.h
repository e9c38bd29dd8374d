#pragma once

#include <vector>

#include "render/command/scene_job.h"
#include "sim/remedy/remedies.h"

namespace stowpath {

/// Assesses the scene. @throws SceneFault where a bent pipe cannot be stood on
Assessment assess_job(const SceneJob& job, const SceneText& source, const AssessOptions& options);

/// Looks for the cures of what was found. On a terminal that shows progress it says how far it is, once it takes more
/// than half a second.
/// @param only  id of the one finding to look at; empty: all
std::vector<Cures> cure_job(const SceneJob& job, const SceneText& source, const Assessment& assessed,
                            const AssessOptions& options, const Voice& voice, const std::string& only = {});

}  // namespace stowpath
