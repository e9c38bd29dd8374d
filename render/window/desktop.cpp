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

Screen desktop_screen() {
  const char* asked = std::getenv("GDK_SCALE");
  return {asked ? asked : "", dots_per_inch(server_resources()), sf::VideoMode::getDesktopMode().height};
}

}  // namespace stowpath
