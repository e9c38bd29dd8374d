#include "render/window/viewer.h"

#include <SFML/Window/Event.hpp>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <sstream>
#include <stdexcept>
#include <utility>

#include "render/command/faults.h"
#include "render/command/files.h"
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
constexpr double kDegree = std::numbers::pi / 180.0;
constexpr float kLookEvery = 0.5F;  // at the scene's file [s]
constexpr unsigned kLeastWidth = 640, kLeastHeight = 480;

sf::Color paper_of_screen() {
  const Colour c = paper_colour(Ink::paper);
  return {c.red, c.green, c.blue};
}

}  // namespace

Viewer::Viewer(Studio& studio, ViewerOptions options) : studio_(studio), options_(std::move(options)) {
  const sf::VideoMode mode(std::max(options_.width, kLeastWidth), std::max(options_.height, kLeastHeight));
  window_.create(mode, "Stowpath: " + studio.model().name, sf::Style::Default);
  if (!window_.isOpen()) throw std::runtime_error("no window can be opened");
  window_.setFramerateLimit(60);
  const auto font = lettering_font();
  if (!lettering_.loadFromMemory(font.data(), font.size())) throw std::runtime_error("the lettering cannot be opened");
  widgets_.emplace(window_, static_cast<float>(options_.scale));
  std::error_code ignored;
  if (!options_.scene_file.empty()) file_time_ = std::filesystem::last_write_time(options_.scene_file, ignored);
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
  out.show_sweep = show_sweep_;
  out.show_findings = show_findings_;
  out.show_names = show_names_;
  return out;
}

void Viewer::fit_view() {
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
  studio_.poll();
  since_look_ += seconds;
  if (since_look_ > kLookEvery) look_at_file();
  if (running_) {
    studio_.run(static_cast<double>(seconds * speed_));
    running_ = !at_end(studio_.model(), studio_.place(), speed_ > 0.0F);
  }
  widgets_->begin_frame(seconds);
}

void Viewer::look_at_file() {
  since_look_ = 0.0F;
  if (options_.scene_file.empty()) return;
  std::error_code failed;
  const auto time = std::filesystem::last_write_time(options_.scene_file, failed);
  if (failed || time == file_time_) return;
  file_time_ = time;
  std::istringstream no_input;
  try {
    const bool taken = studio_.open(read_text(options_.scene_file, no_input), options_.scene_file);
    message_ = taken ? "Read again: the file changed." : "The file changed and has faults: the scene before is shown.";
    if (fitted_) fit_view();
  } catch (const FileFault& fault) {
    message_ = fault.what();
  }
}

void Viewer::draw() {
  window_.clear(paper_of_screen());
  ScreenCanvas canvas(window_, lettering_, dots());
  const PictureWish shown = wish();
  canvas.draw(side_picture(shown, {side_size(), frame_}), {0.0F, 0.0F});
  canvas.draw(rail_picture(shown, rail_size()), {0.0F, static_cast<float>(side_size().y * dots())});
  panel();
  widgets_->end_frame();
  window_.display();
}

void Viewer::handle_event(const sf::Event& event) {
  const bool taken = widgets_->take(event);
  if (event.type == sf::Event::Closed) return window_.close();
  if (event.type == sf::Event::Resized) {
    window_.setView(sf::View(
        sf::FloatRect(0.0F, 0.0F, static_cast<float>(event.size.width), static_cast<float>(event.size.height))));
    if (fitted_) fit_view();
  }
  if (event.type == sf::Event::MouseButtonReleased) hold_ = Hold::nothing;
  if (event.type == sf::Event::MouseMoved) move_pointer(paper(event.mouseMove.x, event.mouseMove.y));
  if (taken) return;
  if (event.type == sf::Event::KeyPressed) key(event.key);
  if (event.type == sf::Event::MouseButtonPressed) press(event.mouseButton);
  if (event.type == sf::Event::MouseWheelScrolled) wheel(event.mouseWheelScroll);
}

void Viewer::nudge(double station, double lean, double fold) {
  running_ = false;
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

void Viewer::key(const sf::Event::KeyEvent& key) {
  const Vec2 middle = 0.5 * side_size();
  switch (key.code) {
    case sf::Keyboard::N:
      return running_ = false, studio_.forward();
    case sf::Keyboard::B:
      return running_ = false, studio_.back();
    case sf::Keyboard::Space:
      running_ = !running_;
      return;
    case sf::Keyboard::Home:
      return running_ = false, studio_.go({});
    case sf::Keyboard::End:
      return running_ = false, studio_.go({studio_.model().moves.size() - 1, 1.0});
    case sf::Keyboard::Left:
    case sf::Keyboard::Right:
      return nudge(key.code == sf::Keyboard::Left ? -0.02 : 0.02, 0.0, 0.0);
    case sf::Keyboard::Up:
    case sf::Keyboard::Down: {
      const double turn = key.code == sf::Keyboard::Up ? 0.5 * kDegree : -0.5 * kDegree;
      return key.shift ? nudge(0.0, 0.0, turn) : nudge(0.0, turn, 0.0);
    }
    case sf::Keyboard::H:
      studio_.hold_at_touch = !studio_.hold_at_touch;
      return;
    case sf::Keyboard::F:
      return key.shift ? choose_next(-1) : choose_next(1);
    case sf::Keyboard::Num0:
      return fit_view();
    case sf::Keyboard::Add:
    case sf::Keyboard::Equal:
      return fitted_ = false, void(frame_ = zoomed(frame_, middle, kZoomStep));
    case sf::Keyboard::Subtract:
    case sf::Keyboard::Hyphen:
      return fitted_ = false, void(frame_ = zoomed(frame_, middle, 1.0 / kZoomStep));
    case sf::Keyboard::E:
      return export_side();
    case sf::Keyboard::Q:
      if (key.control) window_.close();
      return;
    default:
      return;
  }
}

void Viewer::press(const sf::Event::MouseButtonEvent& button) {
  const Vec2 at = paper(button.x, button.y);
  pointer_ = at;
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
  if (hold_ == Hold::paper) {
    fitted_ = false;
    frame_.zero = frame_.zero + (to - from);
  } else if (hold_ == Hold::stair) {
    running_ = false;
    studio_.handle(pulled(studio_.scene(), studio_.model(), studio_.pose(), grip_, under(frame_, from), under(frame_, to)));
  } else if (hold_ == Hold::rail) {
    running_ = false;
    const ViewFrame frame = rail_frame(wish().subject, rail_size());
    studio_.handle(rolled(studio_.model(), studio_.pose(), 0.001 * frame.scale.ratio * (to.x - from.x)));
  }
}

void Viewer::wheel(const sf::Event::MouseWheelScrollEvent& wheel) {
  const Vec2 at = paper(wheel.x, wheel.y);
  if (!on_side(at)) return;
  fitted_ = false;
  frame_ = zoomed(frame_, at, std::pow(kZoomStep, static_cast<double>(wheel.delta)));
}

void Viewer::export_side() {
  const std::string name = options_.export_file.empty() ? "side-view.svg" : options_.export_file;
  try {
    write_sheet(name, side_picture(wish(), {side_size(), frame_}));
    message_ = "Written: " + name;
  } catch (const std::runtime_error& fault) {
    message_ = name + ": " + fault.what();
  }
}

}  // namespace stowpath
