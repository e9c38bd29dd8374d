#pragma once

#include <string>

#include "render/studio/board.h"
#include "render/studio/rehearsal_desk.h"
#include "render/studio/worktable.h"

namespace stowpath {

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

  /// Makes a cure's change; what comes of it is the message.
  void apply(const Remedy& remedy) {
    if (const auto refused = table.apply(remedy)) message = refused->faults.front().problem;
  }

  // Asked for by a page, done by the window before the next frame.
  bool fit_asked = false, write_asked = false;
};

}  // namespace stowpath
