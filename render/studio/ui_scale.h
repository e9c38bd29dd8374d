#pragma once

#include <optional>
#include <string>

namespace stowpath {

// How large lettering and widgets are on a screen, 1 for 96 dots an inch. The window's library does not say: it is read
// from what the desktop tells its programs, else guessed from the screen's height.

inline constexpr double kLeastScale = 0.5, kMostScale = 4.0;

/// "Xft.dpi:\t144" among an X server's resources: 144. None where it says nothing, or nothing sensible.
std::optional<double> dots_per_inch(const std::string& resources);

/// What a desktop says and what its screen is.
struct Screen {
  std::string gdk_scale;            ///< the variable GDK_SCALE; may be empty
  std::optional<double> dots_per_inch;
  unsigned height = 0;              ///< [pixels]; 0: not known
};

/// The scale to begin with, in quarters.
double scale_for(const Screen& screen);

/// The next larger or smaller one, by eighths of 1 and within the limits.
double scale_stepped(double scale, int steps);

}  // namespace stowpath
