#pragma once

#include <optional>
#include <string>
#include <vector>

#include "render/sheet/labels.h"
#include "render/studio/picture_frame.h"
#include "render/studio/playback.h"
#include "sim/clearance/live_pose.h"
#include "sim/remedy/hook_gap.h"

namespace stowpath {

/// What the window shows of a scene.
struct PictureWish {
  Subject subject;
  Configuration pose;
  Place place;                                ///< the move whose ghosts and sweep are shown
  std::optional<PoseMeeting> closest;         ///< its distance is drawn
  std::optional<std::size_t> chosen_finding;  ///< in DryFit::findings
  std::optional<Trim> trim{};                 ///< of the hook, where one is proven
  const std::vector<std::vector<Vec2>>* swept = nullptr;  ///< swept_outline of the move, where it is known already
  bool show_sweep = true, show_findings = true, show_names = true, show_dimensions = true;
};

/// How a view lies on the screen.
struct PaneView {
  Vec2 size;        ///< of its pane [mm of paper]
  ViewFrame frame;  ///< zero lies where the room's corner is, within the pane or not
};

/// The side view: room, stair at the pose, ghosts of the move's two ends, what it sweeps, the least distance,
/// dimensions, findings as notes.
DisplayList side_picture(const PictureWish& wish, const PaneView& pane);

/// What of the side view stays while the stair moves, under the stair and over it.
struct StillSide {
  DisplayList under, over;
  Labels labels;  ///< where lettering stands
};
StillSide still_side(const PictureWish& wish, const PaneView& pane);

/// The rest: the stair, its lines and dimensions, and the least distance.
DisplayList moving_side(const PictureWish& wish, const PaneView& pane, Labels labels);

/// "12 mm", "3 mm, too close" where it is less than the margin, "8 mm deep".
std::string least_distance_text(const PoseMeeting& meeting, DisplayUnits units);

/// Span view and story stick under each other, at one scale of stations.
DisplayList rail_picture(const PictureWish& wish, const PaneView& pane);

}  // namespace stowpath
