#include "render/studio/detail_picture.h"

#include <cmath>
#include <string>

#include "render/report/words.h"
#include "render/sheet/check_bar.h"
#include "render/sheet/hook_view.h"

namespace stowpath {
namespace {

constexpr double kHeading = 13.0;  // over the view [mm]
constexpr double kEdge = 4.0;      // about it
constexpr double kBar = 20.0;      // for the bar to check the size by, under it
constexpr double kPlumb = 1e-6;    // of the working pose [rad]

PaperBox view_box(Vec2 size) { return {{kEdge, kHeading}, size - Vec2{kEdge, kBar}}; }

bool standing(const Model& model, const Configuration& at) {
  double off = std::abs(at.lean - model.working_lean);
  for (int k = 0; k + 1 < model.linkage.sections; ++k) off += std::abs(at.folds[static_cast<std::size_t>(k)]);
  return off < kPlumb;
}

}  // namespace

ViewFrame detail_frame(const Subject& subject, Vec2 size) {
  ViewFrame frame;
  frame.scale = {1.0, "1:1"};
  const PaperBox box = view_box(size);
  frame.zero = lerp(box.least, box.greatest, 0.5);
  if (!has_hook_and_bracket(subject.model)) return frame;
  const PaperBox window = hook_window(subject.model, working_configuration(subject.model));
  const Vec2 middle = 1000.0 * lerp(window.least, window.greatest, 0.5);
  frame.zero = frame.zero + Vec2{-middle.x, middle.y};
  return frame;
}

DisplayList detail_picture(const PictureWish& wish, const PaneView& pane) {
  DisplayList list;
  list.width = pane.size.x;
  list.height = pane.size.y;
  list.title = "Hook at a bracket: " + wish.subject.model.name;
  list.description = pose_text(wish.subject.model.linkage, wish.pose);
  Labels labels;
  const Model& model = wish.subject.model;
  if (!has_hook_and_bracket(model)) {
    labels.fix(list, {{kEdge, kHeading}, "This scene has no hook at a bracket to show.", kFigures});
    return list;
  }
  const HookSubject subject{wish.subject.scene, model, wish.subject.fit, wish.subject.units, {}, wish.trim};
  const double beside = beside_bracket(model, wish.pose.station);
  const bool here = beside < model.margin.hook;
  const HookPose pose{here ? "Hook at its bracket, full size" : "Hook beside the nearest bracket, full size", wish.pose,
                      standing(model, wish.pose), beside};
  list.open("hook", pose.title);
  draw_hook_view(list, labels, subject, pose, pane.frame.zero, view_box(pane.size));
  list.close();
  draw_check_bar(list, labels, {kEdge, pane.size.y - kBar + 4.0}, wish.subject.units,
                 "Full size where this bar measures " + check_bar_length(wish.subject.units) + " on your screen.",
                 "Keys ctrl + and ctrl - change the size of all that is shown.");
  return list;
}

}  // namespace stowpath
