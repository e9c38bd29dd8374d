#include <exception>
#include <iostream>
#include <optional>
#include <string>

#include <CLI/CLI.hpp>

#include "render/command/faults.h"
#include "render/command/moves_file.h"
#include "render/command/scene_source.h"
#include "render/command/sheet_file.h"
#include "render/studio/ui_scale.h"
#include "render/window/desktop.h"
#include "render/window/viewer.h"

namespace stowpath {
namespace {

struct Wanted {
  std::string scene;
  ViewerOptions viewer;
};

int say(ExitCode code, const std::string& problem, const std::string& hint) {
  std::cerr << "stowpath-view: " << problem << "\n";
  if (!hint.empty()) std::cerr << "  = " << hint << "\n";
  return code;
}

int show(const Wanted& wanted) {
  const bool demo = wanted.scene.empty();
  const SceneText source = read_scene_text(demo ? std::nullopt : std::optional(wanted.scene), std::cin);
  Studio studio;
  std::optional<Worktable> table;
  try {
    table.emplace(studio, Worktable::Source{source.text, wanted.scene == "-" ? "" : wanted.scene, source.name}, state_folder());
  } catch (const SceneError& error) {
    for (const Diagnostic& fault : error.diagnostics)
      std::cerr << format_diagnostic(fault, source.name, source.text, false) << "\n";
    return kExitUsage;
  }
  if (const std::string trouble = display_trouble(); !trouble.empty())
    return say(kExitFiles, "there is no display to open a window on (" + trouble + ")",
               "run it in a desktop session, or use `stowpath dryfit -o sheet.pdf`, which needs none");
  Viewer(*table, wanted.viewer).run();
  if (const std::string last = table->farewell(); !last.empty()) std::cerr << "stowpath-view: " << last << "\n";
  return kExitClear;
}

int parse_and_show(int argc, char** argv) {
  CLI::App app("Steps through a scene's moves in a window.", "stowpath-view");
  Wanted wanted;
  app.add_option("SCENE", wanted.scene, "Scene file; without one: the built-in demo");
  app.add_option("--ui-scale", wanted.viewer.scale, "Size of lettering and widgets, 1 for 96 dots an inch; else as the desktop asks")
      ->check(CLI::Range(kLeastScale, kMostScale));
  app.add_option("--width", wanted.viewer.width, "Of the window, in pixels")->check(CLI::Range(640, 7680));
  app.add_option("--height", wanted.viewer.height, "Of the window, in pixels")->check(CLI::Range(480, 4320));
  app.add_option("--write", wanted.viewer.export_file,
                 "What \"Write it out\" writes: the picture to FILE.svg, .pdf or .png, or the moves to .webp or .html");
  app.add_option("--record", wanted.viewer.record_file,
                 "What a rehearsal is written to: FILE.txt, .html, .webp, .svg, .pdf or .png");
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return app.exit(error) == 0 ? kExitClear : kExitUsage;
  }
  if (!wanted.viewer.export_file.empty() && !is_moves_name(wanted.viewer.export_file))
    check_sheet_name("--write", wanted.viewer.export_file);
  return show(wanted);
}

}  // namespace
}  // namespace stowpath

int main(int argc, char** argv) {
  using namespace stowpath;
  try {
    return parse_and_show(argc, argv);
  } catch (const UsageFault& fault) {
    return say(kExitUsage, fault.what(), fault.hint);
  } catch (const FileFault& fault) {
    return say(kExitFiles, fault.file + ": " + fault.what(), "");
  } catch (const std::exception& fault) {
    return say(kExitOurFault, std::string("a fault of the program: ") + fault.what(), "");
  }
}
