#pragma once

#include <iosfwd>
#include <string>

#include "render/command/rehearse_command.h"
#include "sim/rehearsal/roll_push.h"

namespace stowpath {

/// A push along the rail, its height counted from the room's zero.
PushOptions roll_push_options(const HandPush& hand, const Model& model);

/// Reads the scene, pushes the standing stair along its rail, keeps and draws the push at the middle friction where that
/// is wanted, then prints the report.
/// @param push  as written, for messages and the recording's head
/// @returns an ExitCode: fails where it may bind or stay, or meets more than the rail's stops
/// @throws SceneFault, UsageFault, FileFault; then nothing has been printed
int run_roll(const SceneRequest& request, const std::string& push, const RehearsalFiles& files, std::istream& in,
             std::ostream& out);

}  // namespace stowpath
