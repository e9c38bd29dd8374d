#pragma once

#include <iosfwd>

#include "render/command/scene_job.h"

namespace stowpath {

/// Reads the scene, pulls it up, writes the sheet where one is wanted, then prints the report.
/// @returns an ExitCode: fails where a limit is exceeded, hauling does not lift, or what the drive gives is not said
/// @throws SceneFault, UsageFault, FileFault; then nothing has been printed
int run_hoist(const SceneRequest& request, std::istream& in, std::ostream& out);

}  // namespace stowpath
