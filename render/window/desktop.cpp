#include "render/window/desktop.h"

#include <SFML/Window/VideoMode.hpp>
#include <cstdlib>

#include <X11/Xlib.h>  // after all others: it defines words of everyday use

namespace stowpath {
namespace {

// Null where none answers. Kept open: a server without a desktop starts afresh when its last client leaves, and who comes
// meanwhile finds none.
Display* display() {
  static Display* const opened = XOpenDisplay(nullptr);
  return opened;
}

std::string server_resources() {
  const char* text = display() ? XResourceManagerString(display()) : nullptr;
  return text ? text : "";
}

}  // namespace

// SFML ends the program where there is no display: that is looked at before it is touched.
std::string display_trouble() {
  const char* name = std::getenv("DISPLAY");
  if (!name || *name == '\0') return "DISPLAY is not set";
  return display() ? "" : std::string("DISPLAY is ") + name + ", which does not answer";
}

Screen desktop_screen() {
  const char* asked = std::getenv("GDK_SCALE");
  return {asked ? asked : "", dots_per_inch(server_resources()), sf::VideoMode::getDesktopMode().height};
}

}  // namespace stowpath
