#pragma once

#include <iosfwd>
#include <optional>
#include <string>

#include "sim/mechanism/model.h"
#include "sim/trade/length.h"

namespace stowpath {

/// How a subcommand talks.
struct Voice {
  bool json = false;   ///< one JSON object on standard output and nothing else
  bool quiet = false;  ///< the verdict alone
  bool colour = false;
};

/// What every subcommand on a scene is asked.
struct SceneRequest {
  std::optional<std::string> scene;   ///< a file, "-" for standard input; none: the built-in demo
  std::optional<std::string> sheet;   ///< an .svg, .pdf or .png to write
  std::optional<DisplayUnits> units;  ///< none: those of the scene
  std::optional<std::string> detail;  ///< of a dry fit: the same for the hook at full size
  bool sagged = false;                ///< of a dry fit: with the pipe bent under a person
  Voice voice;
};

/// A scene read and put together.
struct SceneJob {
  Scene scene;
  Model model;
  DisplayUnits units = DisplayUnits::metric;
};

/// Checks the sheet's name, then reads and assembles. @throws SceneFault, UsageFault, FileFault
SceneJob read_job(const SceneRequest& request, std::istream& in);

}  // namespace stowpath
