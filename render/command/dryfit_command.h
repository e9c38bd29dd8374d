#pragma once

#include <iosfwd>
#include <optional>
#include <string>

#include "sim/trade/length.h"

namespace stowpath {

/// How a subcommand talks.
struct Voice {
  bool json = false;   ///< one JSON object on standard output and nothing else
  bool quiet = false;  ///< the verdict alone
  bool colour = false;
};

struct DryfitRequest {
  std::optional<std::string> scene;   ///< a file, "-" for standard input; none: the built-in demo
  std::optional<std::string> sheet;   ///< an .svg to write
  std::optional<DisplayUnits> units;  ///< none: those of the scene
  Voice voice;
};

/// Reads the scene, runs the dry fit, writes the sheet where one is wanted, then prints the report.
/// @returns an ExitCode: clear or not
/// @throws SceneFault, UsageFault, FileFault; then nothing has been printed
int run_dryfit(const DryfitRequest& request, std::istream& in, std::ostream& out);

}  // namespace stowpath
