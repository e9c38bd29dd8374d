#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "render/command/terminal.h"

namespace stowpath {

/// The whole command `stowpath`, given its arguments without the program's name. Never throws.
/// @returns the exit code
int run(const std::vector<std::string>& arguments, const Terminal& terminal, std::istream& in, std::ostream& out,
        std::ostream& err);

}  // namespace stowpath
