#pragma once

namespace stowpath {

/// What the command may expect of where its output goes.
struct Terminal {
  bool colour = false;    ///< standard output shows escape sequences, and the user has not asked for none
  bool progress = false;  ///< standard error is a terminal whose last line can be written over
};

/// Asks the system: standard output (error, for progress) is a terminal, TERM is not "dumb", NO_COLOR (no-color.org)
/// is unset or empty.
Terminal this_terminal();

}  // namespace stowpath
