#pragma once

#include <SFML/Graphics/RenderWindow.hpp>
#include <SFML/Window/Event.hpp>
#include <array>
#include <cstddef>

namespace stowpath {

/// Dear ImGui on an SFML window, through its OpenGL 2 backend, which draws as SFML does.
class Widgets {
 public:
  /// @param scale  of all lettering and widgets; 1 for 96 dots an inch
  Widgets(sf::RenderWindow& window, float scale);
  ~Widgets();
  Widgets(const Widgets&) = delete;
  Widgets& operator=(const Widgets&) = delete;

  /// Makes lettering and widgets of another size, between two frames.
  void rescale(float scale);

  /// Tells the widgets of an event. @returns whether they want it for themselves
  bool take(const sf::Event& event);
  bool typing() const;  ///< a field takes what is typed
  /// Whether a key went down or up that the next frame has to see so: what is typed after it must wait until then.
  bool unseen() const { return waits_ > 0; }
  void begin_frame(float seconds);
  /// Draws them over what the window shows. Nothing may be drawn after it.
  void end_frame();

 private:
  bool take_key(const sf::Event& event);
  void walk(bool on);

  static constexpr std::size_t kButtons = 3;

  sf::RenderWindow& window_;
  bool walked_ = false;  // by the keyboard, from widget to widget
  int waits_ = 0;  // frames until what was pressed has been seen
  std::array<bool, kButtons> held_{}, clicked_{};  // buttons: down now, and gone down since the last frame
};

}  // namespace stowpath
