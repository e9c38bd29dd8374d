#pragma once

#include <optional>
#include <vector>

#include "render/studio/picture_frame.h"
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

/// The same in three layers, to be laid over each other. Under and over change with the scene, its proof, the move, the
/// frame and what is to be shown; with the pose only what lies between.
struct SideLayers {
  DisplayList under, stair, over;
};
SideLayers side_layers(const PictureWish& wish, const PaneView& pane);

/// Span view and story stick under each other, at one scale of stations.
DisplayList rail_picture(const PictureWish& wish, const PaneView& pane);

}  // namespace stowpath
