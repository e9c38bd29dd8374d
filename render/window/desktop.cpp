#include "render/window/desktop.h"

#include <SFML/Window/VideoMode.hpp>
#include <cstdlib>

#include <X11/Xlib.h>  // after all others: it defines words of everyday use

namespace stowpath {
namespace {

std::string server_resources() {
  Display* display = XOpenDisplay(nullptr);
  if (!display) return {};
  const char* text = XResourceManagerString(display);
  std::string out = text ? text : "";
  XCloseDisplay(display);
  return out;
}

}  // namespace

// SFML ends the program where there is no display: that is looked at before it is touched.
std::string display_trouble() {
  const char* name = std::getenv("DISPLAY");
  if (!name || *name == '\0') return "DISPLAY is not set";
  Display* display = XOpenDisplay(nullptr);
  if (!display) return std::string("DISPLAY is ") + name + ", which does not answer";
  XCloseDisplay(display);
  return {};
}

Screen desktop_screen() {
  const char* asked = std::getenv("GDK_SCALE");
  return {asked ? asked : "", dots_per_inch(server_resources()), sf::VideoMode::getDesktopMode().height};
}

}  // namespace stowpath
