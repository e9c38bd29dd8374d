#pragma once

#include <iosfwd>

#include "render/command/scene_job.h"

namespace stowpath {

/// Reads the scene, runs the dry fit, writes the sheet where one is wanted, then prints the report.
/// @returns an ExitCode: clear or not
/// @throws SceneFault, UsageFault, FileFault; then nothing has been printed
int run_dryfit(const SceneRequest& request, std::istream& in, std::ostream& out);

}  // namespace stowpath
