#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "render/command/scene_job.h"
#include "sim/rehearsal/rehearsal.h"

namespace stowpath {

/// What is to be tried in a rehearsal, as written on the command line; empty: not asked.
struct WhatIfs {
  std::string let_go, line_breaks, push, gust, when;
  std::vector<int> no_pins;  ///< hinges, from 1
};

/// "12s", "1.5 min" as seconds, "120N at 1.1m for 2s", "10 m/s for 3s". A push is outward; "-120N" pushes towards the
/// back wall.
/// @throws UsageFault naming the option, what is wrong and what to write
RehearsalOptions rehearsal_options(const WhatIfs& asked);

/// The same as the user would write it, for a recording's head; empty where nothing is asked.
std::string what_ifs_text(const WhatIfs& asked);

/// Reads the scene, rehearses it, then prints the report.
/// @returns an ExitCode: fails where something was seen that has to be looked into
/// @throws SceneFault, UsageFault, FileFault; then nothing has been printed
int run_rehearse(const SceneRequest& request, const WhatIfs& asked, std::istream& in, std::ostream& out);

}  // namespace stowpath
