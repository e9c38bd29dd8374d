#include "render/studio/seat_dial.h"

#include <algorithm>
#include <cmath>

#include "render/report/hoist_words.h"
#include "render/sheet/recording_curves.h"
#include "render/sheet/stair_drawing.h"
#include "sim/hoist/seat_force.h"
#include "sim/mechanism/hook_shape.h"
#include "sim/trade/figure.h"

namespace stowpath {
namespace {

constexpr double kWeightless = 1.0;  // a force that points nowhere in particular [N]
constexpr double kShown = 2.1;       // of the hooks' outer radius, each way from the pipe
constexpr double kWords = 9.0;       // two lines under the view [mm]
constexpr double kArrow = 7.0;       // [mm]

class Dial {
 public:
  Dial(DisplayList& list, Labels& labels, const RecordingSubject& subject, const RecordedFrame& frame,
       const PaperBox& box)
      : list_(list),
        labels_(labels),
        subject_(subject),
        shown_(frame),
        box_{box.least, box.greatest - Vec2{0.0, kWords}} {
    const Hooks& hooks = subject.scene.stair.hooks;
    const double half = kShown * hook_shape(hooks).outer;
    const Vec2 size = box_.greatest - box_.least;
    frame_.scale.ratio = 1000.0 * 2.0 * half / std::max(std::min(size.x, size.y), 1.0);
    words_ = seat_words(subject, frame);
    centre_ = subject.scene.rail.at;
    frame_.zero =
        lerp(box_.least, box_.greatest, 0.5) - Vec2{frame_.scale.paper(centre_.x), -frame_.scale.paper(centre_.y)};
    window_ = {box_.least, {box_.greatest.x, box_.least.y}, box_.greatest, {box_.least.x, box_.greatest.y}};
  }

  void draw() {
    list_.open("seat-dial", "Hooks on the pipe: " + words_);
    hooks();
    pipe();
    list_.path(window_, true, Pen{Ink::soft, kThin});
    bearing();
    words();
    list_.close();
  }

 private:
  std::vector<Vec2> clipped(const RoundedPolygon& outline) const {
    return common_part(on_paper(frame_, outline), window_);
  }

  void hooks() {
    const SectionPoses poses = recorded_poses(shown_, subject_.recording.sections);
    std::vector<std::vector<Vec2>> pieces;
    for (const StairPart& part : subject_.model.stair) {
      if (part.kind == PartKind::hook)
        pieces.push_back(clipped(placed(part.outline, poses.at(static_cast<std::size_t>(part.section)))));
    }
    std::erase_if(pieces, [](const std::vector<Vec2>& piece) { return piece.empty(); });
    draw_pieces(list_, pieces, {Ink::line, kMedium}, Ink::faint, kRodSeam);
  }

  void pipe() {
    const Pipe& pipe = subject_.scene.rail.pipe;
    list_.circle(frame_(centre_), frame_.scale.paper(0.5 * pipe.diameter), Pen{Ink::line, kMedium}, Ink::wall);
  }

  // A wedge on the hooks' inner face, and the pipe's force on them from there.
  void bearing() {
    const auto seat = seat_sight(subject_.scene, shown_);
    if (!seat) {
      if (!shown_.hooks_on_pipe) cross_mark(list_, frame_(centre_), 2.5, {Ink::red, kHeavy});
      return;
    }
    const Vec2 up = (1.0 / norm(shown_.hook_force)) * shown_.hook_force, d{up.x, -up.y}, n{-d.y, d.x};
    const Vec2 touch = frame_(shown_.sections[0].origin) + frame_.scale.paper(subject_.scene.stair.hooks.inside) * d;
    const Ink ink = seat->curl_holds || seat->arc_left < 0.0 ? Ink::red : Ink::line;
    list_.path({touch, touch - 2.6 * d + 1.3 * n, touch - 2.6 * d - 1.3 * n}, true, {}, ink);
    list_.line(touch, touch + kArrow * d, {ink, kMedium});
    arrowhead(list_, touch + kArrow * d, d, ink);
  }

  void words() {
    const auto seat = seat_sight(subject_.scene, shown_);
    const bool lost = !shown_.hooks_on_pipe || (seat && seat->curl_holds);
    const double x = box_.least.x, y = box_.greatest.y + 3.8;
    labels_.fix(list_, {{x, y}, words_, kNotes, Anchor::start, lost ? Ink::red : Ink::line});
    if (shown_.hooks_on_pipe)
      labels_.fix(
          list_,
          {{x, y + 3.9}, "pipe pushes with " + force_text(AtMost{norm(shown_.hook_force)}, subject_.units), kNotes});
  }

  DisplayList& list_;
  Labels& labels_;
  const RecordingSubject& subject_;
  const RecordedFrame& shown_;
  PaperBox box_;
  ViewFrame frame_;
  Vec2 centre_;
  std::string words_;
  std::vector<Vec2> window_;
};

}  // namespace

std::optional<SeatSight> seat_sight(const Scene& scene, const RecordedFrame& frame) {
  if (!frame.hooks_on_pipe || norm(frame.hook_force) < kWeightless) return {};
  const HookShape hook = hook_shape(scene.stair.hooks);
  const double at = bend_angle(frame.hook_force, recorded_lean(frame, 0), hook.arc);
  return SeatSight{at, hook.arc.hi - at, frame.hook_force.y < 0.0};
}

std::string seat_words(const RecordingSubject& subject, const RecordedFrame& frame) {
  if (!frame.hooks_on_pipe) {
    const double lift = norm(frame.sections[0].origin - subject.model.linkage.pivot);
    if (lift > subject.scene.stair.hooks.inside) return "OFF THE PIPE";
    return "lifted " + format_small_length(AtMost{lift}, subject.units) + ": the curl alone holds it";
  }
  const auto seat = seat_sight(subject.scene, frame);
  if (!seat) return "all but weightless on the pipe";
  const std::string at = "bears at " + format_degrees(AtMost{seat->at}, 0);
  if (seat->curl_holds) return at + ": the curl alone holds it";
  if (seat->arc_left < 0.0) return at + ", past the curl's end";
  return at + ", arc left " + format_degrees(AtLeast{seat->arc_left}, 0);
}

void draw_seat_dial(DisplayList& list, Labels& labels, const RecordingSubject& subject, const RecordedFrame& frame,
                    const PaperBox& box) {
  Dial(list, labels, subject, frame, box).draw();
}

}  // namespace stowpath
