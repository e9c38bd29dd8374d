#pragma once

#include <optional>
#include <vector>

#include "render/sheet/rehearsal_drawing.h"
#include "render/studio/scene_picture.h"

namespace stowpath {

/// Where something happened in the side view.
struct HappenedAt {
  RecordedEvent event;
  Vec2 at;  ///< out, up [m]
};

/// Where a stroke took place: between the nearest points of the two parts, as the stair stood then; none where the
/// model has no such parts.
std::optional<Vec2> touch_place(const Model& model, const SectionPoses& sections, const RecordedEvent& touch);

/// Of a push's arrow, for a millimetre of paper [N].
inline constexpr double kNewtonsPerMm = 8.0;

/// A push as it is drawn: a level arrow from where it takes hold, the way that it goes.
struct PushSight {
  Vec2 at;             ///< [m]
  double force = 0.0;  ///< positive out from the back wall [N]
  bool aimed = false;  ///< not yet given
};

/// What the window shows of a rehearsal at one instant.
struct RehearsalWish {
  RecordingSubject subject;              ///< with what has been recorded so far
  RecordedFrame shown;                   ///< the stair, its lines and hooks now
  std::optional<Configuration> meant{};  ///< where the crew means the stair to be: a blue ghost
  std::vector<HappenedAt> touches{};     ///< up to now
  std::optional<PushSight> push{};
  double gust = 0.0;  ///< blows now, against the climber's face [m/s]; 0: no wind
  bool show_names = true;
};

/// The side view of a rehearsal: the room, the stair as the physics world has it, the intended pose, ropes over their
/// sheaves with pull or slack at the hand, touches where they happen, zones entered, pushes; what happened last, and
/// that it is a simulation, in words.
DisplayList rehearsal_picture(const RehearsalWish& wish, const PaneView& window);

/// The frame that shows the whole room over the words at its lower edge.
ViewFrame whole_rehearsal(const RecordingSubject& subject, Vec2 size);

}  // namespace stowpath
