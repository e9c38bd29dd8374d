#pragma once

#include <string>

#include "render/sheet/hook_sheet.h"
#include "render/sheet/labels.h"

namespace stowpath {

/// One of the sheet's views: a pose and what it is.
struct HookPose {
  std::string title;  ///< "Working and parked"
  Configuration at;
  bool standing = false;  ///< on its casters: the load on the hooks is as good as plumb
  double beside = 0.0;    ///< how far along the rail the nearest bracket is from the hooks here [m]
  bool closest = false;   ///< of all poses, to a bracket
};

/// The part of the side view that a view of the hook shows: the bend with air for dimensions, the pipe and the bracket
/// near it. From the pipe's centre, out and up [m].
PaperBox hook_window(const Model& model, const Configuration& at);

/// Draws the view into the box, at full size.
/// @param pipe  where the pipe's centre lies [mm]
void draw_hook_view(DisplayList& list, Labels& labels, const HookSubject& subject, const HookPose& pose, Vec2 pipe,
                    const PaperBox& box);

}  // namespace stowpath
