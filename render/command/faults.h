#pragma once

#include <stdexcept>
#include <string>

namespace stowpath {

/// Exit codes of every subcommand.
enum ExitCode : int {
  kExitClear = 0,     ///< it ran, and all is clear
  kExitFails = 1,     ///< it ran, and something fails or is undecided
  kExitUsage = 2,     ///< the command line or the scene is wrong
  kExitFiles = 3,     ///< a file cannot be read or written
  kExitOurFault = 70  ///< a fault of the program itself
};

/// A command line that asks for what cannot be done.
struct UsageFault : std::runtime_error {
  UsageFault(const std::string& problem, std::string what_to_do)
      : std::runtime_error(problem), hint(std::move(what_to_do)) {}
  std::string hint;
};

/// A file that cannot be read or written.
struct FileFault : std::runtime_error {
  FileFault(std::string file_name, const std::string& problem)
      : std::runtime_error(problem), file(std::move(file_name)) {}
  std::string file;
};

}  // namespace stowpath
