#include "render/window/viewer.h"

#include <SFML/Window/Event.hpp>
#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>

#include "render/command/faults.h"
#include "render/command/sheet_file.h"
#include "render/paint/font.h"
#include "render/paint/palette.h"
#include "render/window/screen_canvas.h"

namespace stowpath {
namespace {

constexpr double kDotsPerMillimetre = 96.0 / 25.4;  // at scale 1
constexpr double kPanelWidth = 350.0;               // [pixels at scale 1]
constexpr double kSideShare = 0.6;                  // of the height
constexpr double kGripReach = 2.0;                  // round the pointer [mm of paper]
constexpr double kZoomStep = 1.15;
constexpr double kRehearsing = 0.008;  // of a frame's time, at most [s]
constexpr float kLookEvery = 0.5F;  // at the scene's file [s]
constexpr unsigned kLeastWidth = 640, kLeastHeight = 480;

sf::Color paper_of_screen() {
  const Colour c = paper_colour(Ink::paper);
  return {c.red, c.green, c.blue};
}

}  // namespace

Viewer::Viewer(Worktable& table, ViewerOptions options)
    : table_(table),
      studio_(table.studio()),
      options_(std::move(options)),
      desk_{table_, studio_, options_.scale},
      rehearsal_(studio_, desk_.rehearsal) {
  const sf::VideoMode mode(std::max(options_.width, kLeastWidth), std::max(options_.height, kLeastHeight));
  window_.create(mode, "Stowpath", sf::Style::Default);
  if (!window_.isOpen()) throw std::runtime_error("no window can be opened");
  window_.setFramerateLimit(60);
  const auto font = lettering_font();
  if (!lettering_.loadFromMemory(font.data(), font.size())) throw std::runtime_error("the lettering cannot be opened");
  widgets_.emplace(window_, static_cast<float>(options_.scale));
  if (!options_.record_file.empty()) desk_.rehearsal.file = options_.record_file;
  fit_view();
}

double Viewer::dots() const { return kDotsPerMillimetre * options_.scale; }
double Viewer::panel_width() const { return kPanelWidth * options_.scale; }

Vec2 Viewer::side_size() const {
  const sf::Vector2u size = window_.getSize();
  const double width = std::max(100.0, size.x - panel_width());
  return {width / dots(), std::round(kSideShare * size.y) / dots()};
}

Vec2 Viewer::rail_size() const {
  const Vec2 side = side_size();
  return {side.x, window_.getSize().y / dots() - side.y};
}

Vec2 Viewer::paper(int x, int y) const { return {x / dots(), y / dots()}; }

bool Viewer::on_side(Vec2 at) const { return at.x < side_size().x && at.y < side_size().y; }
bool Viewer::on_rail(Vec2 at) const { return at.x < side_size().x && at.y >= side_size().y; }

PictureWish Viewer::wish() const {
  PictureWish out{{studio_.scene(), studio_.model(), studio_.fit(), studio_.units()},
                  studio_.pose(),
                  studio_.place(),
                  studio_.news().closest,
                  studio_.chosen_finding()};
  out.show_sweep = desk_.show_sweep;
  out.show_findings = desk_.show_findings;
  out.show_names = desk_.show_names;
  return out;
}

void Viewer::fit_view() {
  rehearsal_.fit();
  fitted_ = true;
  frame_ = whole_side(wish().subject, side_size());
}

void Viewer::run() {
  sf::Clock clock;
  while (window_.isOpen()) {
    sf::Event event{};
    while (window_.pollEvent(event)) handle_event(event);
    if (!window_.isOpen()) return;
    advance(clock.restart().asSeconds());
    draw();
  }
}

void Viewer::advance(float seconds) {
  do_what_is_asked();
  studio_.poll();
  since_look_ += seconds;
  if (since_look_ > kLookEvery) table_.look_at_file(), since_look_ = 0.0F;
  take_news();
  if (fitted_) fit_view();
  if (desk_.running) {
    studio_.run(static_cast<double>(seconds * desk_.speed));
    desk_.running = !at_end(studio_.model(), studio_.place(), desk_.speed > 0.0F);
  }
  // Time stands still in a rehearsal that is not looked at.
  desk_.rehearsal.tick(notes_.rehearses() ? static_cast<double>(seconds) : 0.0, kRehearsing);
  rehearsal_.lay(side_size(), rail_size());
  widgets_->begin_frame(seconds);
}

void Viewer::take_news() {
  if (std::string news = table_.news(); !news.empty()) desk_.message = std::move(news);
  closing_asked_ = closing_asked_ && table_.sheet().unsaved();
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
  if (table_.farewell().empty() || std::exchange(closing_asked_, true)) return window_.close();
  desk_.message = "There is unsaved work: ctrl-s saves it. To close all the same, close again: " + table_.farewell();
}

void Viewer::draw() {
  window_.clear(paper_of_screen());
  draw_pictures();
  notes();
  widgets_->end_frame();
  window_.display();
}

void Viewer::draw_pictures() {
  ScreenCanvas canvas(window_, lettering_, dots());
  const sf::Vector2f under_side{0.0F, static_cast<float>(side_size().y * dots())};
  if (rehearses()) {
    canvas.draw(rehearsal_.side_picture(), {0.0F, 0.0F});
    canvas.draw(rehearsal_.gauges_picture(), under_side);
    return;
  }
  const PictureWish shown = wish();
  canvas.draw(side_picture(shown, {side_size(), frame_}), {0.0F, 0.0F});
  canvas.draw(rail_picture(shown, {rail_size(), rail_frame(shown.subject, rail_size())}), under_side);
}

void Viewer::notes() {
  const double reach = 0.001 * frame_.scale.ratio;
  desk_.pointed_at =
      rehearses() ? rehearsal_.pointed_at() :
      on_side(pointer_) ? part_at(studio_.model(), studio_.pose(), under(frame_, pointer_), reach) : std::string();
  const sf::Vector2u size = window_.getSize();
  const auto width = static_cast<float>(panel_width());
  notes_.show(desk_, static_cast<float>(size.x) - width, width, static_cast<float>(size.y));
}

void Viewer::do_what_is_asked() {
  if (std::exchange(desk_.fit_asked, false)) fit_view();
  if (std::exchange(desk_.write_asked, false)) export_side();
}

void Viewer::handle_event(const sf::Event& event) {
  const bool taken = widgets_->take(event);
  if (event.type == sf::Event::Closed) return close();
  if (event.type == sf::Event::Resized) {
    window_.setView(sf::View(
        sf::FloatRect(0.0F, 0.0F, static_cast<float>(event.size.width), static_cast<float>(event.size.height))));
  }
  if (event.type == sf::Event::MouseButtonReleased) hold_ = Hold::nothing, rehearsal_.release();
  if (event.type == sf::Event::MouseMoved) move_pointer(paper(event.mouseMove.x, event.mouseMove.y));
  if (event.type == sf::Event::KeyPressed && key_from_anywhere(event.key)) return;
  if (taken) return;
  if (event.type == sf::Event::KeyPressed) key(event.key);
  if (event.type == sf::Event::MouseButtonPressed) press(event.mouseButton);
  if (event.type == sf::Event::MouseWheelScrolled) wheel(event.mouseWheelScroll);
}

void Viewer::press(const sf::Event::MouseButtonEvent& button) {
  const Vec2 at = paper(button.x, button.y);
  pointer_ = at;
  if (rehearses()) return rehearsal_.press(at, button.button);
  if (on_rail(at)) {
    hold_ = Hold::rail;
    return;
  }
  if (!on_side(at)) return;
  const double reach = kGripReach * 0.001 * frame_.scale.ratio;
  const auto grip = grip_at(studio_.model(), studio_.pose(), under(frame_, at), reach);
  hold_ = grip && button.button == sf::Mouse::Left ? Hold::stair : Hold::paper;
  if (grip) grip_ = *grip;
}

void Viewer::move_pointer(Vec2 to) {
  const Vec2 from = std::exchange(pointer_, to);
  if (rehearses()) return rehearsal_.move(to);
  if (hold_ == Hold::paper) {
    fitted_ = false;
    frame_.zero = frame_.zero + (to - from);
  } else if (hold_ == Hold::stair) {
    desk_.running = false;
    studio_.handle(pulled(studio_.scene(), studio_.model(), studio_.pose(), grip_, under(frame_, from), under(frame_, to)));
  } else if (hold_ == Hold::rail) {
    desk_.running = false;
    const ViewFrame frame = rail_frame(wish().subject, rail_size());
    studio_.handle(rolled(studio_.model(), studio_.pose(), 0.001 * frame.scale.ratio * (to.x - from.x)));
  }
}

void Viewer::wheel(const sf::Event::MouseWheelScrollEvent& wheel) {
  const Vec2 at = paper(wheel.x, wheel.y);
  if (!on_side(at)) return;
  if (rehearses()) return rehearsal_.zoom(at, std::pow(kZoomStep, static_cast<double>(wheel.delta)));
  zoom(at, static_cast<double>(wheel.delta));
}

void Viewer::zoom(Vec2 about, double steps) {
  fitted_ = false;
  frame_ = zoomed(frame_, about, std::pow(kZoomStep, steps));
}

std::string Viewer::export_name() const {
  return options_.export_file.empty() ? "side-view.svg" : options_.export_file;
}

void Viewer::export_notes() {
  notes_.write_next(std::filesystem::path(export_name()).replace_extension(".txt").string());
}

void Viewer::export_side() {
  const std::string name = export_name();
  try {
    write_sheet(name, rehearses() ? rehearsal_.side_picture() : side_picture(wish(), {side_size(), frame_}));
    desk_.message = "Written: " + name;
  } catch (const std::runtime_error& fault) {
    desk_.message = name + ": " + fault.what();
  }
}

}  // namespace stowpath
