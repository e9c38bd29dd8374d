#pragma once

#include <iosfwd>

#include "render/command/scene_job.h"

namespace stowpath {

/// Reads the scene, loads it, writes the sheet where one is wanted, then prints the report.
/// @returns an ExitCode: fails where a piece with a known resistance bears less than it gets
/// @throws SceneFault, UsageFault, FileFault; then nothing has been printed
int run_loads(const SceneRequest& request, std::istream& in, std::ostream& out);

}  // namespace stowpath
