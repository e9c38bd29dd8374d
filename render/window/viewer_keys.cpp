#include <SFML/Window/Event.hpp>
#include <algorithm>
#include <numbers>

#include "render/report/remedy_words.h"
#include "render/studio/ui_scale.h"
#include "render/window/viewer.h"

namespace stowpath {
namespace {

constexpr int kMeasuresPage = 3, kRehearsalPage = 4, kViewPage = 5;  // their digits
constexpr double kRollStep = 0.02;                           // of one press of an arrow [m]
constexpr double kTurnStep = 0.5 * std::numbers::pi / 180.0;  // [rad]
constexpr double kShiftStep = 10.0;                           // [mm of paper]

// Held down, what goes a step goes many. All else is done once: a second time it would mean something else.
bool goes_on_when_held(sf::Keyboard::Key key) {
  switch (key) {
    case sf::Keyboard::Left:
    case sf::Keyboard::Right:
    case sf::Keyboard::Up:
    case sf::Keyboard::Down:
    case sf::Keyboard::PageUp:
    case sf::Keyboard::PageDown:
    case sf::Keyboard::N:
    case sf::Keyboard::B:
    case sf::Keyboard::Y:
    case sf::Keyboard::Z:
    case sf::Keyboard::Add:
    case sf::Keyboard::Equal:
    case sf::Keyboard::Subtract:
    case sf::Keyboard::Hyphen:
      return true;
    default:
      return false;
  }
}

std::string pane_name(PaneKind kind) {
  return std::string(view_name(kind == PaneKind::side ? BoardView::side : kind == PaneKind::rail ? BoardView::span : BoardView::detail));
}

}  // namespace

// Keeps account of which keys are down. Tells whether this one was already and must not act again.
bool Viewer::held_down(const sf::Event& event) {
  if (event.type == sf::Event::LostFocus) down_.clear();
  if (event.type == sf::Event::KeyReleased) down_.erase(event.key.code);
  if (event.type != sf::Event::KeyPressed) return false;
  return !down_.insert(event.key.code).second && !goes_on_when_held(event.key.code);
}

// Beside a rehearsal's picture no key does anything to the one that it hides.
void Viewer::key(const sf::Event::KeyEvent& key) {
  if (page_key(key) || rehearsal_key(key) || out_key(key) || rehearses()) return;
  if (!step_key(key) && !hand_key(key)) view_key(key);
}

bool Viewer::out_key(const sf::Event::KeyEvent& key) {
  if (key.code != sf::Keyboard::E) return false;
  key.shift ? export_notes() : write_out();
  return true;
}

// From any page r turns to the rehearsal.
bool Viewer::rehearsal_key(const sf::Event::KeyEvent& key) {
  if (key.code == sf::Keyboard::R) notes_.open(kRehearsalPage);
  return notes_.rehearses() && rehearsal_.key(key);
}

bool Viewer::page_key(const sf::Event::KeyEvent& key) {
  if (key.code == sf::Keyboard::F1) return notes_.open(kViewPage);
  return key.code >= sf::Keyboard::Num1 && key.code <= sf::Keyboard::Num9 && notes_.open(key.code - sf::Keyboard::Num0);
}

// What is done from within a field too. There ctrl-z is the field's own, and ctrl-delete takes a word of it away.
bool Viewer::key_from_anywhere(const sf::Event::KeyEvent& key) {
  if (key.alt || key.code == sf::Keyboard::F1) return page_key(key);
  if (!key.control) return false;
  if (file_key(key)) return true;
  if (widgets_->typing()) return false;
  if (!answer_key(key) && !shift_key(key)) command_key(key);
  return true;
}

bool Viewer::file_key(const sf::Event::KeyEvent& key) {
  switch (key.code) {
    case sf::Keyboard::S:
      key.shift ? desk_.ask_name() : desk_.save();
      return true;
    case sf::Keyboard::Q:
      close();
      return true;
    case sf::Keyboard::F:
      if (notes_.open(kMeasuresPage)) desk_.ask_search();
      return true;
    default:
      return false;
  }
}

bool Viewer::answer_key(const sf::Event::KeyEvent& key) {
  if (key.code != sf::Keyboard::Enter && key.code != sf::Keyboard::Delete) return false;
  table_.answer(key.code == sf::Keyboard::Enter);
  return true;
}

bool Viewer::shift_key(const sf::Event::KeyEvent& key) {
  const bool left = key.code == sf::Keyboard::Left, right = key.code == sf::Keyboard::Right;
  const bool up = key.code == sf::Keyboard::Up, down = key.code == sf::Keyboard::Down;
  if (!left && !right && !up && !down) return false;
  const Vec2 by = kShiftStep * Vec2{right - left + 0.0, down - up + 0.0};
  rehearses() ? rehearsal_.shift(by) : board_.shift(pane_of_keys().kind, by);
  return true;
}

void Viewer::command_key(const sf::Event::KeyEvent& key) {
  switch (key.code) {
    case sf::Keyboard::Y:
      return void(table_.redo());
    case sf::Keyboard::Z:
      return void(key.shift ? table_.redo() : table_.undo());
    case sf::Keyboard::Add:
    case sf::Keyboard::Equal:
      return rescale(scale_stepped(desk_.scale, 1));
    case sf::Keyboard::Subtract:
    case sf::Keyboard::Hyphen:
      return rescale(scale_stepped(desk_.scale, -1));
    default:
      return;
  }
}

bool Viewer::step_key(const sf::Event::KeyEvent& key) {
  switch (key.code) {
    case sf::Keyboard::N:
      studio_.forward();
      break;
    case sf::Keyboard::B:
      studio_.back();
      break;
    case sf::Keyboard::Home:
      studio_.go({});
      break;
    case sf::Keyboard::End:
      studio_.go({studio_.model().moves.size() - 1, 1.0});
      break;
    case sf::Keyboard::Space:
      desk_.toggle_running();
      return true;
    default:
      return false;
  }
  desk_.running = false;
  return true;
}

bool Viewer::hand_key(const sf::Event::KeyEvent& key) {
  switch (key.code) {
    case sf::Keyboard::Left:
    case sf::Keyboard::Right:
      return roll(key.code == sf::Keyboard::Left ? -kRollStep : kRollStep), true;
    case sf::Keyboard::Up:
    case sf::Keyboard::Down:
      return turn({key.shift ? GripKind::fold : GripKind::lean, 0}, key.code == sf::Keyboard::Up ? kTurnStep : -kTurnStep), true;
    case sf::Keyboard::PageUp:
    case sf::Keyboard::PageDown:
      return turn({GripKind::fold, 1}, key.code == sf::Keyboard::PageUp ? kTurnStep : -kTurnStep), true;
    case sf::Keyboard::H:
      studio_.hold_at_touch = !studio_.hold_at_touch;
      desk_.message = studio_.hold_at_touch ? "Held at touch: by hand the stair stops where it would meet something."
                                            : "Not held: by hand the stair goes through what it meets.";
      return true;
    default:
      return false;
  }
}

void Viewer::view_key(const sf::Event::KeyEvent& key) {
  switch (key.code) {
    case sf::Keyboard::F:
      return choose_next(key.shift ? -1 : 1);
    case sf::Keyboard::A:
      return apply_first_cure();
    case sf::Keyboard::Num0:
      return fit_view();
    case sf::Keyboard::Add:
    case sf::Keyboard::Equal:
      return zoom_key(kZoomStep);
    case sf::Keyboard::Subtract:
    case sf::Keyboard::Hyphen:
      return zoom_key(1.0 / kZoomStep);
    case sf::Keyboard::O:
      return turn_keys_to_next_pane();
    case sf::Keyboard::V:
      return show(static_cast<BoardView>((static_cast<int>(board_.view()) + (key.shift ? kBoardViews - 1 : 1)) % kBoardViews));
    case sf::Keyboard::D:
      return show(board_.view() == BoardView::detail ? BoardView::side_and_span : BoardView::detail);
    default:
      return;
  }
}

void Viewer::zoom_key(double factor) {
  const Pane& pane = pane_of_keys();
  board_.zoom(pane.corner + 0.5 * pane.view.size, factor);
}

const Pane& Viewer::pane_of_keys() const { return board_.panes().at(pane_of_keys_ % board_.panes().size()); }

void Viewer::turn_keys_to_next_pane() {
  ++pane_of_keys_;
  desk_.message = "Keys zoom and shift the " + pane_name(pane_of_keys().kind) + ".";
}

void Viewer::roll(double by) {
  desk_.running = false;
  studio_.handle(rolled(studio_.model(), studio_.pose(), by));
}

void Viewer::turn(const Grip& grip, double by) {
  if (grip.kind == GripKind::fold && grip.hinge + 1 >= studio_.model().linkage.sections) {
    desk_.message = "This stair has no fold " + std::to_string(grip.hinge + 1) + ".";
    return;
  }
  desk_.running = false;
  studio_.handle(turned_by(studio_.scene(), studio_.pose(), grip, by));
}

void Viewer::choose_next(int by) {
  const auto count = static_cast<int>(studio_.fit().findings.size());
  if (count == 0) return void(desk_.message = "There is no finding to go to.");
  const int now = studio_.chosen_finding() ? static_cast<int>(*studio_.chosen_finding()) : (by > 0 ? -1 : 0);
  studio_.choose(static_cast<std::size_t>((now + by + count) % count));
}

void Viewer::apply_first_cure() {
  const auto& chosen = studio_.chosen_finding();
  if (!chosen) return void(desk_.message = "Choose a finding first: f.");
  const Cures* cures = cures_of(studio_.cures(), studio_.fit().findings.at(*chosen));
  if (cures == nullptr || cures->remedies.empty()) {
    desk_.message = studio_.curing() ? "Cures are still looked for." : "No cure was found for this one.";
    return;
  }
  const Remedy first = cures->remedies.front();
  desk_.apply(first);
}

}  // namespace stowpath
