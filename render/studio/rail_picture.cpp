#include "render/studio/scene_picture.h"

#include "render/report/words.h"
#include "render/sheet/labels.h"
#include "render/sheet/span_view.h"
#include "render/sheet/story_stick.h"

namespace stowpath {
namespace {

constexpr double kStickAir = 7.0;  // over the stick: the station shown is written there [mm]

// At the span view's scale of stations, on paper of its own: a span view looked at from near goes on behind it.
void draw_stick(DisplayList& list, Labels& labels, const PictureWish& wish, const PaneView& pane, double top) {
  list.box({0.0, top - kStickAir}, pane.size, {}, Ink::paper);
  ViewFrame stick = pane.frame;
  stick.zero.y = top;
  draw_story_stick(list, labels, wish.subject, stick, 2.0);
  const double x = stick.x(wish.pose.station);
  list.line({x, top - 2.0}, {x, top + kStickHeight - 4.0}, {Ink::blue, kMedium});
  labels.fix(list, {{x, top - 2.8},
                    place_text(Nominal{wish.pose.station}, wish.subject.units),
                    kNotes,
                    Anchor::middle,
                    Ink::blue,
                    0.0,
                    true});
}

}  // namespace

DisplayList rail_picture(const PictureWish& wish, const PaneView& pane) {
  DisplayList list;
  list.width = pane.size.x;
  list.height = pane.size.y;
  list.title = "Span view and story stick: " + wish.subject.model.name;
  list.description = "Station " + place_text(Nominal{wish.pose.station}, wish.subject.units);
  Labels labels;
  const double depth = span_depth(wish.subject), top = pane.size.y - kStickHeight;
  const PaperBox room{pane.frame({0.0, 0.0}), pane.frame({wish.subject.scene.room.length, depth})};
  const PaperBox seen = common_box(room, {{1.0, 1.0}, {pane.size.x - 1.0, top - kStickAir}});
  draw_span_view(list, labels, wish.subject, pane.frame, depth, wish.pose, seen);
  draw_stick(list, labels, wish, pane, top);
  return list;
}

}  // namespace stowpath
