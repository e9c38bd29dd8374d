#pragma once

#include <iosfwd>
#include <string>

#include "render/command/scene_job.h"
#include "sim/rehearsal/roll_push.h"

namespace stowpath {

/// "120N at 1.1m", "-27 lbf at 3ft 7in": a push along the rail, negative towards lower stations, at a height above the
/// floor's zero.
/// @throws UsageFault naming what is wrong and what to write
PushOptions roll_push_options(const std::string& text);

/// Reads the scene, pushes the standing stair along its rail, then prints the report.
/// @returns an ExitCode: fails where it may bind or stay, or meets more than the rail's stops
/// @throws SceneFault, UsageFault, FileFault; then nothing has been printed
int run_roll(const SceneRequest& request, const std::string& push, std::istream& in, std::ostream& out);

}  // namespace stowpath
