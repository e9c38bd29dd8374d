#pragma once

#include "render/studio/scene_picture.h"

namespace stowpath {

/// The frame in which the hook, its pipe and the bracket lie in the middle of a pane, at full size; zero is the middle
/// of the pipe.
ViewFrame detail_frame(const Subject& subject, Vec2 size);

/// The hook on its pipe at the nearest bracket, at full size and as it is turned at the pose shown: the arc that it
/// covers, the gap to the bracket as a dimension, and where to trim it if that is known. Where no bracket is at the
/// stair's station its place is shown dashed.
DisplayList detail_picture(const PictureWish& wish, const PaneView& pane);

}  // namespace stowpath
