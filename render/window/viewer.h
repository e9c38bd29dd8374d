#pragma once

#include <SFML/Graphics/Font.hpp>
#include <SFML/Graphics/RenderWindow.hpp>
#include <SFML/System/Clock.hpp>
#include <future>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "render/studio/board.h"
#include "render/studio/consent.h"
#include "render/studio/out_files.h"
#include "render/studio/studio.h"
#include "render/window/notes.h"
#include "render/window/painter.h"
#include "render/window/rehearsal_pane.h"
#include "render/window/widgets.h"

namespace stowpath {

struct ViewerOptions {
  std::string export_file;  ///< the name first offered to write out to
  std::string record_file;  ///< where a rehearsal is written to, see RehearsalDesk::write; empty: a name of its own
  std::optional<double> scale;  ///< of lettering and widgets; else what the desktop asks for
  unsigned width = 1280, height = 800;
  unsigned most_frames = 60;  ///< in a second; 0: as many as there can be
};

/// The window on a studio.
class Viewer {
 public:
  /// @throws std::runtime_error where no window can be opened
  Viewer(Worktable& table, ViewerOptions options);
  void run();

  /// One turn of `run`: takes what came in, and shows a frame. @returns whether the window is still open
  bool frame();
  /// As if it had come from the window.
  void handle_event(const sf::Event& event);
  sf::Vector2u size() const { return window_.getSize(); }

 private:
  enum class Hold { nothing, stair, rail, paper };  // what the pointer has hold of

  void take(const sf::Event& event);
  void wait_for_field();
  void take_what_was_typed_ahead();
  bool held_down(const sf::Event& event);
  void key(const sf::Event::KeyEvent& key);
  bool out_key(const sf::Event::KeyEvent& key);
  bool page_key(const sf::Event::KeyEvent& key);
  bool key_from_anywhere(const sf::Event::KeyEvent& key);
  bool file_key(const sf::Event::KeyEvent& key);
  bool answer_key(const sf::Event::KeyEvent& key);
  bool shift_key(const sf::Event::KeyEvent& key);
  void command_key(const sf::Event::KeyEvent& key);
  bool step_key(const sf::Event::KeyEvent& key);
  bool hand_key(const sf::Event::KeyEvent& key);
  void view_key(const sf::Event::KeyEvent& key);
  void zoom_key(double factor);
  void press(const sf::Event::MouseButtonEvent& button);
  void move_pointer(Vec2 to);
  void wheel(const sf::Event::MouseWheelScrollEvent& wheel);
  void roll(double by);
  void turn(const Grip& grip, double by);
  void choose_next(int by);
  void apply_first_cure();
  const Pane& pane_of_keys() const;
  void turn_keys_to_next_pane();
  void advance(float seconds);
  void take_news();
  void show_title();
  void close();
  void let_consent_pass(double seconds);
  void draw();

  void draw_pictures();
  void draw_list(const DisplayList& list, double down);
  bool rehearses() const { return notes_.rehearses() && desk_.rehearsal.begun(); }
  bool rehearsal_key(const sf::Event::KeyEvent& key);
  void notes();
  void do_what_is_asked();

  void export_notes();
  void write_notes(const std::string& said);
  bool may_write(const std::string& name);  ///< else the message says why not
  void write_out();
  DisplayList rehearsal_picture() const;  ///< with its gauges, as it is shown
  void write_picture(const std::string& name);
  void write_moves_beside();
  void look_at_writing();
  PictureWish wish() const;
  Subject subject() const;
  Vec2 board_size() const;      ///< [mm of paper]
  Vec2 rehearsal_side() const;  ///< [mm of paper]
  void lay_out();
  void fit_view();
  void show(BoardView view);
  void rescale(double scale);
  double dots() const;     ///< pixels for a millimetre of paper
  double panel_width() const;
  Vec2 paper(int x, int y) const;  ///< on the board, from its upper left corner [mm]
  std::string part_under_pointer() const;

  Worktable& table_;
  Studio& studio_;
  ViewerOptions options_;
  sf::RenderWindow window_;
  sf::Font lettering_;
  sf::Clock clock_;  // from frame to frame
  std::optional<Widgets> widgets_;
  Board board_;
  unsigned laid_out_ = 0;  // for which of the studio's revisions
  Painter painter_{lettering_};
  Hold hold_ = Hold::nothing;
  Grip grip_;
  unsigned held_edition_ = 0;  // of the scene that it is a grip of
  PaneKind held_pane_ = PaneKind::side;
  Vec2 pointer_;  // on the board [mm]
  std::vector<sf::Event> typed_ahead_;  // waits for the next frame
  std::set<sf::Keyboard::Key> down_;    // keys that are
  std::size_t pane_of_keys_ = 0;        // of the board's, the one that keys zoom and shift
  Desk desk_;
  Notes notes_;
  RehearsalPane rehearsal_;
  OutFiles out_files_;
  std::string notes_file_;  // where what the notes say is written to
  std::future<std::string> writing_;  // of the moves; its message
  std::string title_;
  Consent closing_;
  float since_look_ = 0.0F;
};

}  // namespace stowpath
