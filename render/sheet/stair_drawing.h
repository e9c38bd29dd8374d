#pragma once

#include "render/sheet/view.h"

namespace stowpath {

/// The stair in the side view as it is built: wood with a sparse hatch, steel in ink.
void draw_stair(DisplayList& list, const ViewFrame& frame, const Model& model, const Configuration& at);

/// Its outline alone, as a pencilled ghost of a pose it passes through.
void draw_stair_ghost(DisplayList& list, const ViewFrame& frame, const Model& model, const Configuration& at,
                      const Pen& pen);

/// The same wherever its sections are: a run of a simulation may have lifted them off the rail.
/// @param section  that one alone, from 0; -1: all
void draw_stair(DisplayList& list, const ViewFrame& frame, const Model& model, const SectionPoses& poses,
                int section = -1);
void draw_stair_ghost(DisplayList& list, const ViewFrame& frame, const Model& model, const SectionPoses& poses,
                      const Pen& pen);

/// The ropes as they run at a pose, in blue pencil.
void draw_ropes(DisplayList& list, const ViewFrame& frame, const Model& model, const Configuration& at);

/// The same wherever the sections are. @param hooked_on  false: without those that are there only on the hoist line
void draw_ropes(DisplayList& list, const ViewFrame& frame, const Model& model, const SectionPoses& poses,
                bool hooked_on = true);

/// Whether a part shows in the side view: of the slabs that a wheel is cut into, only the first, which the others lie
/// behind.
bool seen_from_side(const Model& model, const StairPart& part);

/// Where along the rail a part shows from above, from the stair's middle: a wheel as a whole [m].
const std::vector<Interval>& stations_from_above(const Model& model, const StairPart& part);

/// Whether a kind of part is drawn in ghosts: the stair's large shapes and what sticks out of them.
bool shows_in_ghost(PartKind kind);

/// Several convex pieces of one thing, drawn without the lines between them.
/// @param seam  of a stroke in the fill's ink that closes the seams between pieces that abut [mm]
void draw_pieces(DisplayList& list, const std::vector<std::vector<Vec2>>& pieces, const Pen& pen, Ink fill,
                 double seam = 0.0);

/// That stroke, for a bent rod enlarged [mm].
inline constexpr double kRodSeam = 0.25;

/// The casters' path, or the foot's where there are none, through all moves; one piece a move [m].
std::vector<std::vector<Vec2>> foot_path(const Model& model);

}  // namespace stowpath
