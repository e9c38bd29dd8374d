#pragma once

#include <optional>

#include "render/sheet/view.h"
#include "render/studio/playback.h"
#include "sim/clearance/live_pose.h"

namespace stowpath {

/// What the window shows of a scene.
struct PictureWish {
  Subject subject;
  Configuration pose;
  Place place;                                ///< the move whose ghosts and sweep are shown
  std::optional<PoseMeeting> closest;         ///< its distance is drawn
  std::optional<std::size_t> chosen_finding;  ///< in DryFit::findings
  bool show_sweep = true, show_findings = true, show_names = true;
};

/// How the side view lies on the screen.
struct SideWindow {
  Vec2 size;        ///< of its pane [mm of paper]
  ViewFrame frame;  ///< zero lies where the room's corner is, within the pane or not
};

/// The frame that shows the whole room in a pane of that size.
ViewFrame whole_side(const Subject& subject, Vec2 size);

/// The frame zoomed by a factor about a point of the pane, which keeps its place; between 1:1 and 1:2000.
ViewFrame zoomed(const ViewFrame& frame, Vec2 about, double factor);

/// The point of the side view under a point of the pane: out, up [m].
Vec2 under(const ViewFrame& frame, Vec2 paper);

/// The side view: room, stair at the pose, ghosts of the move's two ends, what it sweeps, the least distance, findings.
DisplayList side_picture(const PictureWish& wish, const SideWindow& window);

/// Span view and story stick under each other, at one scale of stations. @param size  of the pane [mm of paper]
DisplayList rail_picture(const PictureWish& wish, Vec2 size);

/// The frame of the span view in that picture: which station lies under a point of it.
ViewFrame rail_frame(const Subject& subject, Vec2 size);

}  // namespace stowpath
