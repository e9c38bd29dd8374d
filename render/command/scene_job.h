#pragma once

#include <iosfwd>
#include <optional>
#include <string>

#include "render/command/scene_source.h"
#include "sim/mechanism/model.h"
#include "sim/trade/length.h"

namespace stowpath {

/// How a subcommand talks.
struct Voice {
  bool json = false;   ///< one JSON object on standard output and nothing else
  bool quiet = false;  ///< the verdict alone
  bool colour = false;
  std::ostream* progress = nullptr;  ///< where a terminal shows how far long work has come; null: it does not
};

/// What every subcommand on a scene is asked.
struct SceneRequest {
  std::optional<std::string> scene;   ///< a file, "-" for standard input; none: the built-in demo
  std::optional<std::string> sheet;   ///< an .svg, .pdf or .png to write; with `apply` a scene
  std::optional<DisplayUnits> units;  ///< none: those of the scene
  std::optional<std::string> detail;  ///< of a dry fit: the same for the hook at full size
  bool sagged = false;                ///< of a dry fit: with the pipe bent under a person
  bool contacts = false;              ///< of a dry fit: list all that may touch
  bool remedies = true;               ///< of a dry fit: look for cures
  std::optional<std::string> apply;   ///< of a dry fit: id of the remedy to write; `sheet` is then the scene's file
  Voice voice;
};

/// A scene read and put together.
struct SceneJob {
  Scene scene;
  Model model;
  DisplayUnits units = DisplayUnits::metric;
};

/// Checks the name of what is to be written, then reads and assembles. @throws SceneFault, UsageFault, FileFault
SceneJob read_job(const SceneRequest& request, std::istream& in);

/// The same in parts, for a command that needs the text as well. @throws UsageFault
void check_outputs(const SceneRequest& request);
/// @throws SceneFault
SceneJob assemble_job(const SceneRequest& request, const SceneText& source);

}  // namespace stowpath
