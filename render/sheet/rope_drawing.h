#pragma once

#include <span>

#include "render/sheet/labels.h"
#include "render/sheet/view.h"
#include "sim/hoist/rigging.h"
#include "sim/rehearsal/recording.h"

namespace stowpath {

/// A rope as it runs at one instant of a rehearsal.
struct RopeSight {
  const Rigging& rigging;
  const SectionPoses& sections;  ///< where the stair's sections are
  RecordedLine now;
  double strongest = 0.0;  ///< pull that is drawn as the widest stroke, and beyond which it is drawn as trouble [N]
};

/// A rope over its sheaves: parts of line beside each other, the wider the harder it is pulled; slack it hangs dashed,
/// its excess drawn as sag in its longest run. A rope that is not on leaves out the runs to the stair. Lettering keeps
/// off it.
void draw_rope(DisplayList& list, Labels& labels, const ViewFrame& frame, const RopeSight& rope);

/// "98 N", "slack 120 mm": how the rope is at the hand; empty where it is not on.
std::string rope_words(const RecordedLine& now, DisplayUnits units);

/// These words beside the hand, with a short arrow the way that the hand pulls, and "more than the crew can pull" where
/// it is; within `bounds`, else nothing.
/// @param name  of the rope, put before; may be empty
/// @param size  of the lettering [mm]
void label_rope(DisplayList& list, Labels& labels, const ViewFrame& frame, const RopeSight& rope,
                const std::string& name, double size, DisplayUnits units, const PaperBox& bounds);

}  // namespace stowpath
