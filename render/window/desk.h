#pragma once

#include <string>

#include "render/studio/board.h"
#include "render/studio/rehearsal_desk.h"
#include "render/studio/worktable.h"

namespace stowpath {

constexpr int kFieldFrames = 10;  // more than a field needs to open

/// What the window and its pages share beside the studio: how the scene is shown, and what is to be done next.
struct Desk {
  Worktable& table;
  Studio& studio;
  double scale = 1.0;  ///< of lettering and widgets

  bool running = false;  ///< the procedure is shown by itself
  float speed = 1.0F;    ///< at which, negative backwards
  BoardView view = BoardView::side_and_span;  ///< which drawings are to be shown
  bool show_sweep = true, show_findings = true, show_names = true, show_dimensions = true;
  RehearsalDesk rehearsal{};
  std::string out_name = "side-view.svg";  ///< what is written out goes there: the picture, or the moves, by its ending
  std::string pointed_at{};  ///< the part under the pointer; empty where there is none

  std::string message{};  ///< the last thing that is worth telling; stays in view

  bool naming = false;       ///< a name to save under is typed
  bool find_asked = false;   ///< the page of measures is to take what is typed as a search

  /// Frames for which what is typed waits for the field that was asked for: it takes a few to open.
  int frames_till_field = 0;

  void await_field() { frames_till_field = kFieldFrames; }
  void ask_name() { naming = true, await_field(); }
  void ask_search() { find_asked = true, await_field(); }

  /// Runs the procedure, from its end over again, or pauses.
  void toggle_running() {
    running = !running;
    if (running && speed != 0.0F) studio.go(begin_run(studio.model(), studio.place(), speed > 0.0F));
  }

  /// Under the name that it has; asks for one where there is none.
  void save() {
    naming = false;
    table.file().empty() ? ask_name() : void(table.save());
  }

  /// Makes a cure's change; what comes of it is the message.
  void apply(const Remedy& remedy) {
    if (const auto refused = table.apply(remedy)) message = refused->faults.front().problem;
  }

  // Asked for by a page, done by the window before the next frame.
  bool fit_asked = false, write_asked = false;
};

}  // namespace stowpath
