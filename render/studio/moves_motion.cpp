#include "render/studio/moves_motion.h"

#include <cmath>
#include <numbers>

#include "render/report/film.h"
#include "render/report/motion_page.h"
#include "render/report/text.h"
#include "render/report/words.h"
#include "render/studio/scene_picture.h"

namespace stowpath {
namespace {

constexpr double kFrame = 0.05;                 // of the recording [s]
constexpr Vec2 kPane{200.0, 118.0};             // of a film's picture, without its caption [mm]
constexpr double kCaption = 19.0, kAir = 6.0;   // [mm]
constexpr const char* kWhat =
    "The geometry as described, led along its procedure: no forces, no real time. The verdict is the dry fit's.";

double whole_time(const Model& model) {
  double time = 0.0;
  for (std::size_t k = 0; k < model.moves.size(); ++k) time += showing_time(model, k);
  return time;
}

Place place_at(const Model& model, double time) {
  return time > 0.0 ? run_on(model, {}, time) : Place{};
}

RecordedPose recorded(const Pose2& pose) {
  return {pose * Vec2{}, std::atan2(pose.s, pose.c)};
}

RecordedFrame frame_at(const Model& model, double time) {
  const Place place = place_at(model, time);
  const Configuration pose = pose_at(model, place);
  const SectionPoses poses = place_sections(model.linkage, pose);
  RecordedFrame frame;
  frame.time = time;
  frame.move = static_cast<int>(place.move);
  frame.station = pose.station;
  frame.hoist.on = model.moves[place.move].hooked_on;
  for (std::size_t j = 0; j < static_cast<std::size_t>(model.linkage.sections); ++j) frame.sections[j] = recorded(poses[j]);
  return frame;
}

// From one frame to the next a section turns by less than a half: what looks like more is the angle's own jump.
void unwrap(Recording& recording) {
  constexpr double kTurn = 2.0 * std::numbers::pi;
  for (std::size_t i = 1; i < recording.frames.size(); ++i) {
    for (std::size_t j = 0; j < static_cast<std::size_t>(recording.sections); ++j) {
      double& turn = recording.frames[i].sections[j].turn;
      turn += kTurn * std::round((recording.frames[i - 1].sections[j].turn - turn) / kTurn);
    }
  }
}

std::string move_words(const Model& model, std::size_t k, DisplayUnits units) {
  const Move& move = model.moves[k];
  std::string words = is_state(move.kind) ? "" : std::to_string(move.index) + " ";
  words += move_name(move.kind);
  const Configuration end = pose_at(model, {k, 1.0});
  if (stands_over_stations(move)) return words + " to " + place_text(Nominal{end.station}, units);
  return words + (is_state(move.kind) ? " at " : " to ") + pose_text(model.linkage, end);
}

}  // namespace

Recording moves_recording(const Model& model, DisplayUnits units) {
  Recording out;
  out.scene = model.name;
  out.sections = model.linkage.sections;
  out.step = kFrame;
  double begins = 0.0;
  for (std::size_t k = 0; k < model.moves.size(); ++k) {
    RecordedEvent& event = out.events.emplace_back();
    event.time = begins;
    event.what = move_words(model, k, units);
    begins += showing_time(model, k);
  }
  const double whole = whole_time(model);
  const int frames = static_cast<int>(std::ceil(whole / kFrame));
  for (int i = 0; i <= frames; ++i) out.frames.push_back(frame_at(model, whole * i / frames));
  unwrap(out);
  return out;
}

DisplayList moves_picture(const Subject& subject, double time, int faster) {
  const Place place = place_at(subject.model, time);
  const Configuration pose = pose_at(subject.model, place);
  PictureWish wish{subject, pose, place, {}, {}};
  wish.show_dimensions = false;
  DisplayList list = side_picture(wish, {kPane, whole_side(subject, kPane)});
  list.title = "Moves: " + subject.model.name;
  list.height = kPane.y + kCaption;
  const std::string pace = faster > 1 ? " (shown " + std::to_string(faster) + " times as fast)" : "";
  const Ink ink = subject.fit.verdict == Verdict::clear ? Ink::line : Ink::red;
  const Move& move = subject.model.moves[place.move];
  const std::string number = is_state(move.kind) ? "" : std::to_string(move.index) + " ";
  list.text({{kAir, kPane.y + 4.0},
             number + std::string(move_name(move.kind)) + ", " + pose_text(subject.model.linkage, pose) + pace,
             3.2});
  list.text({{kAir, kPane.y + 9.5}, verdict_line(subject.model, subject.fit), 2.6, Anchor::start, ink});
  list.text({{kAir, kPane.y + 14.5}, kWhat, 2.2, Anchor::start, Ink::soft});
  return list;
}

std::string moves_film(const Subject& subject) {
  return make_film(0.0, whole_time(subject.model),
                   [&subject](double time, int faster) { return moves_picture(subject, time, faster); });
}

std::string moves_page(const Subject& subject) {
  const Recording recording = moves_recording(subject.model, subject.units);
  const MotionWords words{"Moves: " + subject.model.name, verdict_line(subject.model, subject.fit) + ". " + kWhat,
                          "Order of work", cautions_text(), false};
  return motion_page({subject.scene, subject.model, recording, subject.units}, words);
}

}  // namespace stowpath
