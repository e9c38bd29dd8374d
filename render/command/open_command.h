#pragma once

#include <optional>
#include <string>

namespace stowpath {

/// Starts the window, stowpath-view, on a scene (none: the built-in demo) and waits for its end.
/// @returns its exit code
/// @throws UsageFault for standard input, FileFault where the program is not found beside this one or on the PATH
int run_open(const std::optional<std::string>& scene);

}  // namespace stowpath
