#include <SFML/Window/Event.hpp>
#include <algorithm>
#include <numbers>

#include "render/report/remedy_words.h"
#include "render/studio/ui_scale.h"
#include "render/window/viewer.h"

namespace stowpath {
namespace {

constexpr int kMeasuresPage = 3, kRehearsalPage = 4;         // their digits
constexpr double kRollStep = 0.02;                           // of one press of an arrow [m]
constexpr double kTurnStep = 0.5 * std::numbers::pi / 180.0;  // [rad]

}  // namespace

void Viewer::key(const sf::Event::KeyEvent& key) {
  if (!page_key(key) && !rehearsal_key(key) && !step_key(key) && !hand_key(key)) view_key(key);
}

// From any page r turns to the rehearsal.
bool Viewer::rehearsal_key(const sf::Event::KeyEvent& key) {
  if (key.code == sf::Keyboard::R) notes_.open(kRehearsalPage);
  return notes_.rehearses() && rehearsal_.key(key);
}

bool Viewer::page_key(const sf::Event::KeyEvent& key) {
  return key.code >= sf::Keyboard::Num1 && key.code <= sf::Keyboard::Num9 && notes_.open(key.code - sf::Keyboard::Num0);
}

// What is done from within a field too. There ctrl-z is the field's own.
bool Viewer::key_from_anywhere(const sf::Event::KeyEvent& key) {
  if (key.alt) return page_key(key);
  if (!key.control) return false;
  if (file_key(key)) return true;
  if (widgets_->typing()) return false;
  command_key(key);
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
    case sf::Keyboard::Enter:
    case sf::Keyboard::Delete:
      table_.answer(key.code == sf::Keyboard::Enter);
      return true;
    default:
      return false;
  }
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
      desk_.running = !desk_.running;
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
      nudge(key.code == sf::Keyboard::Left ? -kRollStep : kRollStep, 0.0, 0.0);
      return true;
    case sf::Keyboard::Up:
    case sf::Keyboard::Down: {
      const double turn = key.code == sf::Keyboard::Up ? kTurnStep : -kTurnStep;
      key.shift ? nudge(0.0, 0.0, turn) : nudge(0.0, turn, 0.0);
      return true;
    }
    case sf::Keyboard::H:
      studio_.hold_at_touch = !studio_.hold_at_touch;
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
      return zoom(middle_of_picture(), 1.0);
    case sf::Keyboard::Subtract:
    case sf::Keyboard::Hyphen:
      return zoom(middle_of_picture(), -1.0);
    case sf::Keyboard::V:
      return show(static_cast<BoardView>((static_cast<int>(board_.view()) + (key.shift ? kBoardViews - 1 : 1)) % kBoardViews));
    case sf::Keyboard::D:
      return show(board_.view() == BoardView::detail ? BoardView::side_and_span : BoardView::detail);
    case sf::Keyboard::E:
      return key.shift ? export_notes() : write_out();
    default:
      return;
  }
}

void Viewer::nudge(double station, double lean, double fold) {
  desk_.running = false;
  Configuration to = rolled(studio_.model(), studio_.pose(), station);
  to.lean += lean;
  if (fold != 0.0 && !studio_.scene().stair.hinges.empty())
    to.folds[0] = std::clamp(to.folds[0] + fold, 0.0, studio_.scene().stair.hinges[0].limit);
  studio_.handle(to);
}

void Viewer::choose_next(int by) {
  const auto count = static_cast<int>(studio_.fit().findings.size());
  if (count == 0) return;
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
