#pragma once

#include <SFML/Window/Event.hpp>

#include "render/studio/rehearsal_desk.h"

namespace stowpath {

class Studio;

/// The rehearsal where the window shows its pictures: side view above, gauges below, and what keys and pointer do
/// there.
class RehearsalPane {
 public:
  RehearsalPane(Studio& studio, RehearsalDesk& desk) : studio_(studio), desk_(desk) {}

  /// Lays the panes out for the next pictures, keys and pointer events. @param side, gauges  their sizes [mm of paper]
  void lay(Vec2 side, Vec2 gauges);
  void fit() { fitted_ = true; }

  DisplayList side_picture() const;
  DisplayList gauges_picture() const;
  bool show_names = true;

  /// @returns whether the key was one of its own
  bool key(const sf::Event::KeyEvent& key);
  /// The pointer, from the side view's upper left corner; the gauges lie under it [mm of paper].
  void press(Vec2 at, sf::Mouse::Button button);
  void move(Vec2 to);
  void release();
  void zoom(Vec2 about, double factor);
  void shift(Vec2 by);  ///< [mm of paper]

  /// Whether the pointer has hold of something.
  bool holds() const { return hold_ != Hold::nothing; }
  /// What lies under the pointer; empty where nothing does.
  std::string pointed_at() const;

  /// Starts where nothing runs yet, else pauses or goes on.
  void toggle();
  void start_over();

 private:
  enum class Hold { nothing, push, time, paper };
  bool on_side(Vec2 at) const { return at.y < side_.y; }
  bool run_key(const sf::Event::KeyEvent& key);
  bool wind_key(const sf::Event::KeyEvent& key);
  bool try_key(const sf::Event::KeyEvent& key);
  bool view_key(const sf::Event::KeyEvent& key);
  RehearsalWish wish() const;
  RecordingSubject subject() const;
  void wind_to(Vec2 at);

  Studio& studio_;
  RehearsalDesk& desk_;
  Vec2 side_, gauges_;
  ViewFrame frame_;
  bool fitted_ = true;
  Hold hold_ = Hold::nothing;
  Vec2 pointer_;
};

}  // namespace stowpath
