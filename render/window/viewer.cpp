#include "render/window/viewer.h"

#include <SFML/Window/Event.hpp>
#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

#include "render/command/faults.h"
#include "render/paint/font.h"
#include "render/paint/palette.h"
#include "render/window/desktop.h"
#include "render/window/screen_canvas.h"

namespace stowpath {
namespace {

constexpr double kDotsPerMillimetre = 96.0 / 25.4;  // at scale 1
constexpr double kPanelWidth = 350.0;               // [pixels at scale 1]
constexpr double kWheelShift = 12.0;                // of a notch of the wheel that goes sideways [mm of paper]
constexpr double kMostPanel = 0.6;                  // of the window's width
constexpr double kRehearsing = 0.008;  // of a frame's time, at most [s]
constexpr float kLookEvery = 0.5F;  // at the scene's file [s]
constexpr int kOpening = 3;  // frames in which a field that was open already may still take what is typed
constexpr unsigned kLeastWidth = 640, kLeastHeight = 480;
constexpr const char* kUnsavedWork = "There is unsaved work: ctrl-s saves it. To close all the same, close again at once: ";

sf::Color paper_of_screen() {
  const Colour c = paper_colour(Ink::paper);
  return {c.red, c.green, c.blue};
}

bool from_keyboard(const sf::Event& event) {
  return event.type == sf::Event::KeyPressed || event.type == sf::Event::KeyReleased || event.type == sf::Event::TextEntered;
}

// Whether somebody does something else than to ask for the window's end: ctrl is part of that.
bool is_other_deed(const sf::Event& event) {
  if (event.type != sf::Event::KeyPressed)
    return event.type == sf::Event::MouseButtonPressed || event.type == sf::Event::MouseWheelScrolled;
  const sf::Keyboard::Key code = event.key.code;
  return code != sf::Keyboard::LControl && code != sf::Keyboard::RControl && !(event.key.control && code == sf::Keyboard::Q);
}

bool by_hand(const sf::Event& event) {
  return from_keyboard(event) || event.type == sf::Event::MouseMoved || event.type == sf::Event::MouseButtonPressed ||
         event.type == sf::Event::MouseButtonReleased || event.type == sf::Event::MouseWheelScrolled;
}

}  // namespace

Viewer::Viewer(Worktable& table, ViewerOptions options)
    : table_(table),
      studio_(table.studio()),
      options_(std::move(options)),
      desk_{table_, studio_, options_.scale.value_or(scale_for(desktop_screen()))},
      rehearsal_(studio_, desk_.rehearsal) {
  const sf::VideoMode mode(std::max(options_.width, kLeastWidth), std::max(options_.height, kLeastHeight));
  if (!options_.export_file.empty()) desk_.out_name = options_.export_file;
  window_.create(mode, "Stowpath", sf::Style::Default);
  if (!window_.isOpen()) throw std::runtime_error("no window can be opened");
  window_.setFramerateLimit(options_.most_frames);
  const auto font = lettering_font();
  if (!lettering_.loadFromMemory(font.data(), font.size())) throw std::runtime_error("the lettering cannot be opened");
  widgets_.emplace(window_, static_cast<float>(desk_.scale));
  if (!options_.record_file.empty()) desk_.rehearsal.file = options_.record_file;
  lay_out();
}

double Viewer::dots() const { return kDotsPerMillimetre * desk_.scale; }

// However large the lettering: the picture keeps a part of the window.
double Viewer::panel_width() const { return std::min(kPanelWidth * desk_.scale, kMostPanel * window_.getSize().x); }

Vec2 Viewer::board_size() const {
  const sf::Vector2u size = window_.getSize();
  return {std::max(100.0, size.x - panel_width()) / dots(), size.y / dots()};
}

// Over its gauges.
Vec2 Viewer::rehearsal_side() const { return {board_size().x, std::round(kUpperShare * board_size().y)}; }

void Viewer::lay_out() {
  laid_out_ = studio_.revision();
  board_.lay_out(subject(), board_size());
}

void Viewer::show(BoardView view) {
  board_.show(view, subject());
  desk_.view = view;
  pane_of_keys_ = 0;
}

void Viewer::rescale(double scale) {
  desk_.scale = scale;
  widgets_->rescale(static_cast<float>(scale));
  lay_out();
}

Vec2 Viewer::paper(int x, int y) const { return {x / dots(), y / dots()}; }

Subject Viewer::subject() const { return {studio_.scene(), studio_.model(), studio_.fit(), studio_.units()}; }

PictureWish Viewer::wish() const {
  PictureWish out{subject(),
                  studio_.pose(),
                  studio_.place(),
                  studio_.news().closest,
                  studio_.chosen_finding()};
  out.trim = studio_.trim();
  out.show_sweep = desk_.show_sweep;
  out.show_findings = desk_.show_findings;
  out.show_names = desk_.show_names;
  out.show_dimensions = desk_.show_dimensions;
  return out;
}

void Viewer::fit_view() {
  rehearsal_.fit();
  board_.fit(subject());
}

void Viewer::run() {
  while (frame()) {
  }
}

bool Viewer::frame() {
  take_what_was_typed_ahead();
  sf::Event event{};
  while (window_.pollEvent(event)) handle_event(event);
  if (!window_.isOpen()) return false;
  advance(clock_.restart().asSeconds());
  draw();
  return true;
}

void Viewer::advance(float seconds) {
  do_what_is_asked();
  studio_.poll();
  since_look_ += seconds;
  if (since_look_ > kLookEvery) table_.look_at_file(), since_look_ = 0.0F;
  let_consent_pass(static_cast<double>(seconds));
  take_news();
  if (studio_.revision() != laid_out_) lay_out();
  if (desk_.running) {
    studio_.run(static_cast<double>(seconds * desk_.speed));
    desk_.running = !at_end(studio_.model(), studio_.place(), desk_.speed > 0.0F);
  }
  // Time stands still in a rehearsal that is not looked at.
  desk_.rehearsal.tick(notes_.rehearses() ? static_cast<double>(seconds) : 0.0, kRehearsing);
  rehearsal_.show_names = desk_.show_names;
  rehearsal_.lay(rehearsal_side(), board_size() - Vec2{0.0, rehearsal_side().y});
  widgets_->begin_frame(seconds);
}

void Viewer::take_news() {
  if (std::string news = table_.news(); !news.empty()) desk_.message = std::move(news);
  show_title();
}

void Viewer::show_title() {
  std::string title = "Stowpath: " + studio_.model().name + (table_.sheet().unsaved() ? " (not saved)" : "");
  if (title == title_) return;
  title_ = std::move(title);
  window_.setTitle(sf::String::fromUtf8(title_.begin(), title_.end()));
}

// Unsaved work is kept in any case; asked once more, the window closes on it.
void Viewer::close() {
  if (table_.farewell().empty() || closing_.asked()) return window_.close();
  desk_.message = kUnsavedWork + table_.farewell();
}

// What was said with it goes with it: it would no longer be true.
void Viewer::let_consent_pass(double seconds) {
  const bool waited = closing_.waits();
  closing_.pass(seconds);
  if (waited && !closing_.waits() && desk_.message == kUnsavedWork + table_.farewell()) desk_.message.clear();
}

void Viewer::draw() {
  window_.clear(paper_of_screen());
  draw_pictures();
  notes();
  widgets_->end_frame();
  window_.display();
}

void Viewer::draw_pictures() {
  if (rehearses()) {
    draw_list(rehearsal_.side_picture(), 0.0);
    draw_list(rehearsal_.gauges_picture(), rehearsal_side().y);
    const std::string under = rehearsal_.holds() ? "" : rehearsal_.pointed_at();
    if (!under.empty()) draw_list(pointer_tag(under, pointer_, rehearsal_side()), 0.0);
    return;
  }
  painter_.draw(window_, board_, wish(), studio_.revision(), dots());
  if (hold_ == Hold::nothing) painter_.draw_tag(window_, board_, part_under_pointer(), pointer_, dots());
}

void Viewer::draw_list(const DisplayList& list, double down) {
  ScreenCanvas(lettering_, dots()).picture(list).draw(window_, {0.0F, static_cast<float>(down * dots())});
}

void Viewer::notes() {
  desk_.pointed_at = rehearses() ? rehearsal_.pointed_at() : part_under_pointer();
  const sf::Vector2u size = window_.getSize();
  const auto width = static_cast<float>(panel_width());
  notes_.show(desk_, static_cast<float>(size.x) - width, width, static_cast<float>(size.y));
  if (const auto said = notes_.taken_down()) write_notes(*said);
}

std::string Viewer::part_under_pointer() const {
  const Pane* pane = board_.pane_at(pointer_);
  if (!pane || pane->kind != PaneKind::side) return {};
  const double reach = 0.001 * pane->view.frame.scale.ratio;
  return part_at(studio_.model(), studio_.pose(), pane->model(pointer_), reach);
}

void Viewer::do_what_is_asked() {
  if (std::exchange(desk_.fit_asked, false)) fit_view();
  if (desk_.view != board_.view()) show(desk_.view);
  if (std::exchange(desk_.write_asked, false)) write_out();
  look_at_writing();
}

// What comes after an event that waits waits behind it.
void Viewer::handle_event(const sf::Event& event) {
  const bool waits = !typed_ahead_.empty() || (from_keyboard(event) && (desk_.frames_till_field > 0 || widgets_->unseen()));
  if (waits && by_hand(event)) return typed_ahead_.push_back(event);
  take(event);
}

// A field opens some frames after it was asked for. What is typed meanwhile is for it, not a command.
void Viewer::wait_for_field() {
  if (desk_.frames_till_field == 0) return;
  --desk_.frames_till_field;
  if (widgets_->typing() && kFieldFrames - desk_.frames_till_field > kOpening) desk_.frames_till_field = 0;
}

void Viewer::take_what_was_typed_ahead() {
  wait_for_field();
  for (const sf::Event& event : std::exchange(typed_ahead_, {})) handle_event(event);
}

void Viewer::take(const sf::Event& event) {
  const bool taken = widgets_->take(event);
  const bool again = held_down(event);
  if (is_other_deed(event)) closing_.withdraw();
  if (event.type == sf::Event::Closed) return close();
  if (event.type == sf::Event::Resized) {
    window_.setView(sf::View(
        sf::FloatRect(0.0F, 0.0F, static_cast<float>(event.size.width), static_cast<float>(event.size.height))));
    lay_out();
  }
  if (event.type == sf::Event::MouseButtonReleased) hold_ = Hold::nothing, rehearsal_.release();
  if (event.type == sf::Event::MouseMoved) move_pointer(paper(event.mouseMove.x, event.mouseMove.y));
  if (again) return;
  if (event.type == sf::Event::KeyPressed && key_from_anywhere(event.key)) return;
  if (taken) return;
  if (event.type == sf::Event::KeyPressed) key(event.key);
  if (event.type == sf::Event::MouseButtonPressed) press(event.mouseButton);
  if (event.type == sf::Event::MouseWheelScrolled) wheel(event.mouseWheelScroll);
}

void Viewer::press(const sf::Event::MouseButtonEvent& button) {
  const Vec2 at = pointer_ = paper(button.x, button.y);
  if (rehearses()) return rehearsal_.press(at, button.button);
  const Pane* pane = board_.pane_at(at);
  if (!pane) return;
  held_pane_ = pane->kind;
  hold_ = Hold::paper;
  if (button.button != sf::Mouse::Left) return;
  if (pane->kind == PaneKind::rail) hold_ = Hold::rail;
  if (pane->kind != PaneKind::side) return;
  const double reach = kGripReach * 0.001 * pane->view.frame.scale.ratio;
  const auto grip = grip_at(studio_.model(), studio_.pose(), pane->model(at), reach);
  if (!grip) return;
  hold_ = Hold::stair;
  held_edition_ = studio_.edition();
  grip_ = *grip;
}

void Viewer::move_pointer(Vec2 to) {
  const Vec2 from = std::exchange(pointer_, to);
  if (rehearses()) return rehearsal_.move(to);
  // What was held may be no part of the scene any more.
  if (hold_ == Hold::stair && held_edition_ != studio_.edition()) hold_ = Hold::nothing;
  const Pane* pane = board_.pane(held_pane_);
  if (hold_ == Hold::nothing || !pane) return;
  if (hold_ == Hold::paper) return board_.shift(held_pane_, to - from);
  desk_.running = false;
  const Vec2 a = pane->model(from), b = pane->model(to);
  studio_.handle(hold_ == Hold::rail ? rolled(studio_.model(), studio_.pose(), b.x - a.x)
                                     : pulled(studio_.scene(), studio_.model(), studio_.pose(), grip_, a, b));
}

void Viewer::wheel(const sf::Event::MouseWheelScrollEvent& wheel) {
  const Vec2 at = paper(wheel.x, wheel.y);
  if (at.x >= board_size().x) return;
  const auto notches = static_cast<double>(wheel.delta);
  const Pane* pane = board_.pane_at(at);
  if (wheel.wheel == sf::Mouse::HorizontalWheel) {
    const Vec2 by{kWheelShift * notches, 0.0};
    if (rehearses()) return rehearsal_.shift(by);
    if (pane) board_.shift(pane->kind, by);
    return;
  }
  const double factor = std::pow(kZoomStep, notches);
  rehearses() ? rehearsal_.zoom(at, factor) : board_.zoom(at, factor);
}

}  // namespace stowpath
