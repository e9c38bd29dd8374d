#include "render/studio/picture_frame.h"

#include <algorithm>

#include "render/sheet/side_view.h"
#include "render/sheet/span_view.h"
#include "render/sheet/story_stick.h"

namespace stowpath {
namespace {

constexpr double kAir = 6.0;              // round a view that is fitted [mm]
constexpr double kDimensionsLeft = 33.0;  // for the heights beside the room
constexpr double kDimensionsUnder = 18.0;
constexpr double kLanesLeft = 26.0;  // for the names of the stick's lanes
constexpr double kStickAir = 4.0;    // over the stick, for the station it stands at
constexpr double kNotesShare = 0.27, kLeastNotes = 38.0, kMostNotes = 62.0;
constexpr double kLeastPane = 150.0;  // worth notes beside the drawing [mm]
constexpr double kLargest = 1.0, kSmallest = 2000.0;  // ratios of the side view's scale

ViewFrame fitted(Vec2 size, Vec2 model, PaperBox air) {
  const Vec2 room = size - air.least - air.greatest;
  ViewFrame frame;
  frame.scale.ratio = std::max({1000.0 * model.x / std::max(room.x, 1.0), 1000.0 * model.y / std::max(room.y, 1.0), 1.0});
  return frame;
}

}  // namespace

double notes_width(double pane) {
  return pane < kLeastPane ? 0.0 : std::clamp(kNotesShare * pane, kLeastNotes, kMostNotes);
}

ViewFrame whole_side(const Subject& subject, Vec2 size) {
  const PaperBox extent = side_extent(subject);
  const Vec2 model = extent.greatest - extent.least;
  ViewFrame frame = fitted(size, model, {{kDimensionsLeft, kAir}, {kAir + notes_width(size.x), kDimensionsUnder}});
  const double spare = std::max(0.0, size.y - kAir - kDimensionsUnder - frame.scale.paper(model.y));
  frame.zero = {kDimensionsLeft, size.y - kDimensionsUnder - 0.5 * spare + frame.scale.paper(extent.least.y)};
  return frame;
}

ViewFrame zoomed(const ViewFrame& frame, Vec2 about, double factor) {
  ViewFrame out = frame;
  out.scale.ratio = std::clamp(frame.scale.ratio / factor, kLargest, kSmallest);
  out.zero = about + (frame.scale.ratio / out.scale.ratio) * (frame.zero - about);
  return out;
}

Vec2 under(const ViewFrame& frame, Vec2 paper) {
  const double metres = 0.001 * frame.scale.ratio;
  return {metres * (paper.x - frame.zero.x), (frame.flipped ? 1.0 : -1.0) * metres * (paper.y - frame.zero.y)};
}

ViewFrame rail_frame(const Subject& subject, Vec2 size) {
  const Vec2 model{subject.scene.room.length, span_depth(subject)};
  ViewFrame frame = fitted(size, model, {{kLanesLeft, kAir}, {kAir, kStickHeight + kStickAir + kAir}});
  frame.zero = {kLanesLeft, kAir};
  frame.flipped = true;
  return frame;
}

}  // namespace stowpath
