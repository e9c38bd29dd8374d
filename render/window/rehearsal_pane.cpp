#include "render/window/rehearsal_pane.h"

#include <cmath>
#include <utility>

#include "render/report/words.h"
#include "render/sheet/recording_curves.h"
#include "render/studio/grip.h"
#include "render/studio/rehearsal_gauges.h"
#include "render/studio/studio.h"

namespace stowpath {
namespace {

constexpr int kFarStep = 25;  // recorded frames in one: a second

}  // namespace

void RehearsalPane::lay(Vec2 side, Vec2 gauges) {
  side_ = side;
  gauges_ = gauges;
  if (fitted_ && desk_.begun()) frame_ = whole_rehearsal(subject(), side_);
}

RecordingSubject RehearsalPane::subject() const {
  const LiveRun& run = desk_.run();
  return {run.scene(), run.model(), run.report().recording, units_of(run.scene())};
}

RehearsalWish RehearsalPane::wish() const {
  const LiveRun::Moment moment = desk_.shown();
  return {subject(), moment.frame, moment.meant, desk_.run().touches(), moment.push, moment.gust, show_names};
}

DisplayList RehearsalPane::side_picture() const { return rehearsal_picture(wish(), {side_, frame_}); }

DisplayList RehearsalPane::gauges_picture() const { return rehearsal_gauges(subject(), desk_.shown().frame, gauges_); }

void RehearsalPane::toggle() { desk_.toggle(studio_.on_table()); }

void RehearsalPane::start_over() { desk_.start_over(studio_.on_table()); }

bool RehearsalPane::key(const sf::Event::KeyEvent& key) {
  return !key.control && (run_key(key) || (desk_.begun() && (wind_key(key) || try_key(key) || view_key(key))));
}

bool RehearsalPane::run_key(const sf::Event::KeyEvent& key) {
  switch (key.code) {
    case sf::Keyboard::R:
      if (key.shift) start_over();
      if (!key.shift || !desk_.running()) toggle();
      return true;
    case sf::Keyboard::Space:
      return toggle(), true;
    default:
      return false;
  }
}

bool RehearsalPane::wind_key(const sf::Event::KeyEvent& key) {
  const int frames = key.shift ? kFarStep : 1;
  switch (key.code) {
    case sf::Keyboard::N:
    case sf::Keyboard::Right:
      return desk_.step(frames), true;
    case sf::Keyboard::B:
    case sf::Keyboard::Left:
      return desk_.step(-frames), true;
    case sf::Keyboard::Home:
      return desk_.show(0.0), true;
    case sf::Keyboard::End:
      return desk_.show_live(), true;
    case sf::Keyboard::T:
      return desk_.take_up(), true;
    case sf::Keyboard::LBracket:
      return desk_.change_speed(-1), true;
    case sf::Keyboard::RBracket:
      return desk_.change_speed(1), true;
    case sf::Keyboard::W:
      return desk_.write(units_of(desk_.run().scene())), true;
    default:
      return false;
  }
}

bool RehearsalPane::try_key(const sf::Event::KeyEvent& key) {
  switch (key.code) {
    case sf::Keyboard::L:
      return desk_.let_go(), true;
    case sf::Keyboard::K:
      return desk_.break_line(), true;
    case sf::Keyboard::P:
      return desk_.push(), true;
    case sf::Keyboard::G:
      return desk_.gust(), true;
    default:
      return false;
  }
}

bool RehearsalPane::view_key(const sf::Event::KeyEvent& key) {
  switch (key.code) {
    case sf::Keyboard::Num0:
      return fitted_ = true, true;
    case sf::Keyboard::Add:
    case sf::Keyboard::Equal:
      return zoom(0.5 * side_, kZoomStep), true;
    case sf::Keyboard::Subtract:
    case sf::Keyboard::Hyphen:
      return zoom(0.5 * side_, 1.0 / kZoomStep), true;
    default:
      return false;
  }
}

void RehearsalPane::zoom(Vec2 about, double factor) {
  fitted_ = false;
  frame_ = zoomed(frame_, about, factor);
}

void RehearsalPane::shift(Vec2 by) {
  fitted_ = false;
  frame_.zero = frame_.zero + by;
}

void RehearsalPane::press(Vec2 at, sf::Mouse::Button button) {
  pointer_ = at;
  hold_ = Hold::nothing;
  desk_.drop();  // a second button ends a push that was aimed with the first: time would stand still for good
  if (!desk_.begun()) return;
  if (!on_side(at)) {
    hold_ = Hold::time;
    return wind_to(at);
  }
  const bool held = button == sf::Mouse::Left && desk_.aim(under(frame_, at), 0.001 * kGripReach * frame_.scale.ratio);
  hold_ = held ? Hold::push : Hold::paper;
}

void RehearsalPane::move(Vec2 to) {
  const Vec2 from = std::exchange(pointer_, to);
  if (hold_ == Hold::push) desk_.aim_to(under(frame_, to), kNewtonsPerMm * frame_.scale.paper(1.0));
  if (hold_ == Hold::time) wind_to(to);
  if (hold_ != Hold::paper) return;
  shift(to - from);
}

void RehearsalPane::release() {
  if (hold_ == Hold::push) desk_.give();
  hold_ = Hold::nothing;
}

void RehearsalPane::wind_to(Vec2 at) {
  if (const auto time = time_under(desk_.run().report().recording, gauges_, at - Vec2{0.0, side_.y})) desk_.show(*time);
}

std::string RehearsalPane::pointed_at() const {
  if (!desk_.begun() || !on_side(pointer_)) return {};
  const SectionPoses sections = recorded_poses(desk_.shown().frame, desk_.run().model().linkage.sections);
  return part_at(desk_.run().model(), sections, under(frame_, pointer_), 0.001 * frame_.scale.ratio);
}

}  // namespace stowpath
