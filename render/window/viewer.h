#pragma once

#include <SFML/Graphics/Font.hpp>
#include <SFML/Graphics/RenderWindow.hpp>
#include <SFML/System/Clock.hpp>
#include <optional>
#include <string>

#include "render/studio/studio.h"
#include "render/window/notes.h"
#include "render/window/rehearsal_pane.h"
#include "render/window/widgets.h"

namespace stowpath {

struct ViewerOptions {
  std::string export_file;  ///< where the side view is written to on demand: .svg, .pdf or .png
  std::string record_file;  ///< where a rehearsal is written to, see RehearsalDesk::write; empty: a name of its own
  double scale = 1.0;       ///< of lettering and widgets
  unsigned width = 1280, height = 800;
};

/// The window on a studio.
class Viewer {
 public:
  /// @throws std::runtime_error where no window can be opened
  Viewer(Worktable& table, ViewerOptions options);
  void run();

 private:
  enum class Hold { nothing, stair, rail, paper };

  void handle_event(const sf::Event& event);
  void key(const sf::Event::KeyEvent& key);
  bool page_key(const sf::Event::KeyEvent& key);
  bool key_from_anywhere(const sf::Event::KeyEvent& key);
  bool file_key(const sf::Event::KeyEvent& key);
  void command_key(const sf::Event::KeyEvent& key);
  bool step_key(const sf::Event::KeyEvent& key);
  bool hand_key(const sf::Event::KeyEvent& key);
  void view_key(const sf::Event::KeyEvent& key);
  void press(const sf::Event::MouseButtonEvent& button);
  void move_pointer(Vec2 to);
  void wheel(const sf::Event::MouseWheelScrollEvent& wheel);
  void nudge(double station, double lean, double fold);
  void choose_next(int by);
  void apply_first_cure();
  void zoom(Vec2 about, double steps);
  void advance(float seconds);
  void take_news();
  void show_title();
  void close();
  void draw();

  void draw_pictures();
  bool rehearses() const { return notes_.rehearses() && desk_.rehearsal.begun(); }
  bool rehearsal_key(const sf::Event::KeyEvent& key);
  void notes();
  void do_what_is_asked();

  void fit_view();
  std::string export_name() const;
  void export_side();
  void export_notes();
  PictureWish wish() const;
  Vec2 side_size() const;  ///< [mm of paper]
  Vec2 rail_size() const;  ///< [mm of paper]
  double dots() const;     ///< pixels for a millimetre of paper
  double panel_width() const;
  Vec2 paper(int x, int y) const;  ///< of the side pane, from its upper left corner [mm]
  bool on_side(Vec2 at) const;
  bool on_rail(Vec2 at) const;

  Worktable& table_;
  Studio& studio_;
  ViewerOptions options_;
  sf::RenderWindow window_;
  sf::Font lettering_;
  std::optional<Widgets> widgets_;
  ViewFrame frame_;
  bool fitted_ = true;  // the view follows the window's size
  Hold hold_ = Hold::nothing;
  Grip grip_;
  Vec2 pointer_;  // [mm of paper]
  Desk desk_;
  Notes notes_;
  RehearsalPane rehearsal_;
  std::string title_;
  bool closing_asked_ = false;
  float since_look_ = 0.0F;
};

}  // namespace stowpath
