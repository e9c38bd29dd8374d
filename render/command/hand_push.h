#pragma once

#include <optional>
#include <string>

namespace stowpath {

/// A hand's push as the command line gives it.
struct HandPush {
  double size = 0.0;     ///< [N]
  bool against = false;  ///< the text begins with a minus
  double height = 0.0;   ///< [m]

  double force() const { return against ? -size : size; }  ///< [N]
};

/// Reads "120N at 1.1m"; none where it is not of that form.
std::optional<HandPush> read_hand_push(const std::string& text);

}  // namespace stowpath
