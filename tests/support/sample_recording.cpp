#include "tests/support/sample_recording.h"

#include <cmath>
#include <numbers>

namespace stowpath::testing {
namespace {

constexpr int kFrames = 41;
constexpr double kLength = 1.78;

RecordedFrame frame_at(double u) {
  RecordedFrame frame;
  frame.time = 2.0 * u;
  frame.move = u < 0.5 ? 5 : -1;
  frame.station = 4.34;
  const double lean = 0.5 * std::numbers::pi * (1.0 - u), turn = lean - 0.5 * std::numbers::pi;
  frame.sections[0] = {{0.975, 2.89}, turn};
  const Vec2 hinge = frame.sections[0].origin + kLength * Vec2{std::cos(turn), std::sin(turn)};
  frame.sections[1] = {hinge, turn - 0.4 * std::sin(9.0 * u)};
  const bool held = u < 0.5;
  frame.hoist = {held, held ? 180.0 + 40.0 * u : 0.0, 6.0 + u, 0.0};
  frame.fold = {true, 0.0, 2.0, 0.1 * u};
  frame.hook_force = {-3.5, 210.0 + 60.0 * u};
  return frame;
}

}  // namespace

Recording sample_recording() {
  Recording recording;
  recording.scene = "Mould loft";
  recording.options = "--let-go 1s";
  recording.step = 1.0 / 960.0;
  recording.sections = 2;
  for (int i = 0; i < kFrames; ++i) recording.frames.push_back(frame_at(static_cast<double>(i) / (kFrames - 1)));
  recording.events = {{0.0, RecordedEventKind::move_begins, "lift", "", 0.0, 0.0},
                      {1.0, RecordedEventKind::let_go, "hoist line", "", 0.0, 0.0},
                      {1.95, RecordedEventKind::touch, "caster", "truing \"bench\"", 1.25, 14.0},
                      {2.0, RecordedEventKind::at_rest, "", "", 0.0, 0.0}};
  return recording;
}

Account sample_account() {
  Account account;
  account.bounds.step = 1.0 / 960.0;
  account.bounds.energy_gain = 0.23;
  account.bounds.energy_scale = 416.0;
  account.bounds.compared = true;
  account.bounds.pull = 13.8;
  account.troubles = {{TroubleKind::touches, "", "", 2.0, 0.0}};
  account.cautions = {"The rope is a guess"};
  return account;
}

}  // namespace stowpath::testing
