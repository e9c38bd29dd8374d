#pragma once

#include "render/sheet/labels.h"
#include "render/sheet/plot.h"
#include "render/sheet/view.h"
#include "sim/rehearsal/recording.h"

namespace stowpath {

/// A recorded rehearsal with the scene that it ran in.
struct RecordingSubject {
  const Scene& scene;
  const Model& model;
  const Recording& recording;
  DisplayUnits units = DisplayUnits::metric;
};

/// The drawings of a room want a subject with findings: a rehearsal has none.
struct RoomSubject {
  explicit RoomSubject(const RecordingSubject& of) : shown{of.scene, of.model, none, of.units} {}
  DryFit none;
  Subject shown;
};

/// @throws std::invalid_argument where the recording has no frames, or other sections than the scene
void check_rehearsal(const RecordingSubject& subject);

/// Floor to ceiling, back wall to front wall [m].
PaperBox rehearsal_extent(const RecordingSubject& subject);

/// The frame that shows an extent over a width of paper, with air round it; its upper left corner at the paper's.
ViewFrame frame_across(const PaperBox& extent, double width, double air);

/// The room in the side view, and the names of what stands in it.
void draw_rehearsal_room(DisplayList& list, const RecordingSubject& subject, const ViewFrame& frame);
void label_rehearsal_room(DisplayList& list, Labels& labels, const RecordingSubject& subject, const ViewFrame& frame);

/// The lines as they were in a frame: the wider the harder they are pulled, slack they hang dashed; with their pull at
/// the hand, within `bounds`.
void draw_recorded_ropes(DisplayList& list, Labels& labels, const RecordingSubject& subject, const ViewFrame& frame,
                         const RecordedFrame& at, const PaperBox& bounds);

/// The stair as it went, one ghost over the other, with their times at the foot; the way down is left out where it is
/// the way up again.
/// @param last  drawn as it is built; else a ghost like the others
void draw_strip(DisplayList& list, Labels& labels, const RecordingSubject& subject, const ViewFrame& frame,
                const PaperBox& bounds, bool last);

/// Where the plots' time runs on the paper.
struct TimeAxis {
  Interval paper;  ///< [mm]
  Interval time;   ///< [s]
};

/// Across a plot against time, a line at everything that a person has to look at.
void draw_troubles(DisplayList& list, const Plot& plot, const Recording& recording);

/// Pull of the lines, speed of the foot and lean of the sections against time, one under the other, events marked; over
/// them the station, where the stair is rolled.
TimeAxis draw_rehearsal_plots(DisplayList& list, Labels& labels, const RecordingSubject& subject, const PaperBox& box);

}  // namespace stowpath
