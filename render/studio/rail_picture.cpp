#include "render/studio/scene_picture.h"

#include "render/report/words.h"
#include "render/sheet/labels.h"
#include "render/sheet/span_view.h"
#include "render/sheet/story_stick.h"

namespace stowpath {

DisplayList rail_picture(const PictureWish& wish, const PaneView& pane) {
  DisplayList list;
  list.width = pane.size.x;
  list.height = pane.size.y;
  list.title = "Span view and story stick: " + wish.subject.model.name;
  Labels labels;
  const double depth = span_depth(wish.subject);
  const ViewFrame& span = pane.frame;
  ViewFrame stick = span;
  stick.zero.y = pane.size.y - kStickHeight;
  draw_story_stick(list, labels, wish.subject, stick, 2.0);
  const double x = stick.x(wish.pose.station), top = stick.zero.y;
  list.line({x, top - 2.0}, {x, top + kStickHeight - 4.0}, {Ink::blue, kMedium});
  labels.fix(list, {{x, top - 2.8}, place_text(wish.pose.station, wish.subject.units), kNotes, Anchor::middle, Ink::blue,
                    0.0, true});
  const Vec2 corner = span({wish.subject.scene.room.length, depth});
  draw_span_view(list, labels, wish.subject, span, depth, wish.pose, {span.zero, corner});
  return list;
}

}  // namespace stowpath
