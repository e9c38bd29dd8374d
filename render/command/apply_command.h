#pragma once

#include <iosfwd>

#include "render/command/remedy_job.h"

namespace stowpath {

/// Writes the scene with one remedy to the file that -o names, then says what changed and what the dry fit finds of it.
/// @param request  with `apply` and `sheet`
/// @returns an ExitCode: what was written is clear or not
/// @throws UsageFault for an id that there is not, or where the scene's own file would be written over; FileFault
int run_apply(const SceneRequest& request, const SceneJob& job, const SceneText& source, const Assessment& assessed,
              const AssessOptions& options, std::ostream& out);

}  // namespace stowpath
