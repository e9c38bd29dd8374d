#pragma once

#include <array>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "sim/geometry/interval.h"
#include "sim/hoist/pull_pose.h"
#include "sim/mechanism/model.h"
#include "sim/rehearsal/recording.h"
#include "sim/rehearsal/roll_work.h"

namespace stowpath {

/// Someone leans on the stair, or pulls at it.
struct Push {
  double force = 0.0;    ///< level, positive out from the back wall [N]
  double height = 0.0;   ///< above the floor, at which the stair is pushed [m]
  double seconds = 1.0;  ///< how long
};

/// Air that blows against the climber's face of the stair, or out from the back wall where negative.
struct Gust {
  double speed = 10.0;   ///< [m/s]
  double seconds = 1.0;  ///< how long
};

/// How often the step is halved for a stiff rope before the rehearsal is refused.
inline constexpr int kMostHalvings = 5;

/// What is to be tried, besides the procedure itself. Times count from the rehearsal's start.
struct RehearsalOptions {
  double step = 1.0 / 960.0;  ///< of the world; halved where a stiff rope asks for it [s]
  bool compare = true;        ///< run again at half the step, and state the difference
  FrictionEnd friction = FrictionEnd::mean;
  bool comes_down = true;               ///< once parked, the procedure goes backwards until the stair stands again
  bool hand_at_foot = true;             ///< on the way down someone draws the foot along the floor
  std::optional<double> let_go{};       ///< the hoist line is let go then [s]
  std::optional<double> line_breaks{};  ///< it breaks then [s]
  std::vector<int> no_pins{};           ///< hinges, from 0, whose pins are left out: the stair stands without them
  std::optional<Push> push{};
  std::optional<Gust> gust{};
  std::optional<double> when{};  ///< of push or gust; none: a push 1 s after the start, or after the stair is rolled, a
                                 ///< gust alone once parked [s]
  /// Station where the stair stands at first; none: where the procedure begins for the proof, at home or in the middle of
  /// its span. Only a procedure that rolls the standing stair looks at it. [m]
  std::optional<double> from{};
  /// That rolls it; its force always goes where the procedure does, its height counts from the floor's level.
  PushOptions hand{};
  double frame = 0.04;           ///< between recorded frames [s]
  double head_height = 2.0;      ///< whatever passes lower can strike someone [m]
  /// Told after every second of the work that was run, of each run anew [s]; may be empty.
  std::function<void(double time)> progress{};
};

/// All touches of two parts.
struct TouchRun {
  std::string part, other;  ///< of the stair, then of the room or of a further section
  double first = 0.0;       ///< [s]
  int move = -1;            ///< which of Model::moves the crew were at then
  bool back = false;        ///< and that on the way down
  int times = 0;
  double speed = 0.0;   ///< greatest at which they closed [m/s]
  double energy = 0.0;  ///< greatest that a stroke took [J]
  double gap = 0.0;     ///< exact distance at the pose of the first touch [m]
  bool after = false;   ///< the first came after the line was let go, or broke, or the stair stood without a pin
};

/// A keep-clear zone entered in a state that names it.
struct ZoneRun {
  std::string part, zone;
  double time = 0.0;  ///< [s]
  int move = -1;
  bool back = false;  ///< on the way down
};

/// One move as it went.
struct MoveRun {
  int move = 0;                     ///< which of Model::moves
  bool back = false;                ///< on the way down: from its end to its beginning
  double begins = 0.0, ends = 0.0;  ///< [s]
  double peak_pull = 0.0;           ///< at the hand or drum [N]
  double peak_fold = 0.0;           ///< at the fold line's hand [N]
  double least_pull = 0.0;          ///< least at the hand or drum from a second on after the move's beginning [N]
  double foot_pull = 0.0;           ///< greatest with which the foot was drawn along the floor [N]
  double slack = 0.0;               ///< how long the line hung slack [s]
  double stalled = 0.0;             ///< how long the crew could not haul what had to be hauled [s]
  Interval seat{};                  ///< where the pipe pressed on the hook, from the crown [rad]
  double least_hook = 0.0;          ///< least force between pipe and hooks [N]
  double stray = 0.0;               ///< farthest that a section's lean was from the one meant [rad]
  int stray_section = 0;            ///< from 0
  double stray_lean = 0.0, stray_meant = 0.0, stray_time = 0.0;  ///< that lean, the one meant [rad], when [s]
  double swing = 0.0;  ///< of the last section, between its extremes on the last three seconds [rad]
  std::array<double, kMaxSections> leans{};  ///< at the end [rad]
  std::array<double, kMaxSections> about{};  ///< at the end too; of what swings there, the middle of its swing [rad]
};

/// A lower section let loose: what happened between a pin's pulling and the next move.
struct LooseRun {
  int hinge = 0;         ///< from 0
  double time = 0.0;     ///< [s]
  double swings = 0.0;   ///< farthest that the section below turned from where it was [rad]
  double to_lean = 0.0;  ///< its lean there [rad]
  double sinks = 0.0;    ///< how far the hinge sank; negative: rose [m]
};

/// The hooks lifted from the pipe.
struct HookSpell {
  double from = 0.0, to = 0.0;  ///< [s]
  double lift = 0.0;            ///< how far their centre went from where it was held [m]
  int move = -1;                ///< which of Model::moves the crew were at
  bool back = false;            ///< and that on the way down
  bool off = false;             ///< farther than the hooks' inside radius: off the pipe
};

struct SlackSpell {
  double from = 0.0, to = 0.0;  ///< [s]
  double jerk = 0.0;            ///< greatest pull in the half second after it [N]
  bool open = false;            ///< the run ended with the line still slack
};

/// Two parts that struck each other after a loss.
struct Stroke {
  std::string part, other;  ///< as in TouchRun
  double time = 0.0;        ///< from the loss on [s]
  double speed = 0.0;       ///< [m/s]
  double energy = 0.0;      ///< [J]
};

/// What followed when the line was let go or broke, the stair turned over, or was stood without a pin.
struct Aftermath {
  std::string cause;     ///< "the line is let go"
  double begins = 0.0;   ///< [s]
  double ends = 0.0;     ///< at rest, or no longer looked at [s]
  bool nothing = false;  ///< it is held, and by what `stopped_by` says
  bool at_rest = false;
  std::string stopped_by;  ///< what it lies against at the end: "floor", "hinge 1", ...; empty: it only hangs
  double top_speed = 0.0;  ///< of the fastest end of a section, greatest [m/s]
  std::string fastest = "the foot";  ///< which end that was; else "hinge 1", "the top"
  double energy = 0.0;     ///< kinetic, greatest [J]
  std::optional<Stroke> first, hardest;  ///< of the strokes above 0.1 m/s; the hardest took the most energy
  bool hooks_left = false;
  Interval under{1.0, 0.0};  ///< out: where the stair passed below head height while moving; empty: nowhere [m]
  bool turns_over = false;  ///< the stair turned over about its pick
  double turned = 0.0;      ///< farthest that the section on the line turned [rad]
  Interval under_stations{1.0, 0.0};  ///< over these stations [m]
  bool hand_under = false;            ///< where the line is pulled from lies in it
};

/// The stair after its way down.
struct StandsAgain {
  double lean = 0.0;          ///< farthest that a section's lean is from the one it began with [rad]
  double hooks = 0.0;         ///< how far the hooks' centre is from where it was [m]
  double foot = 0.0;          ///< and the foot [m]
  bool hooks_on_pipe = true;  ///< the pipe holds them
};

/// A whole rehearsal.
struct RehearsalReport {
  std::vector<MoveRun> moves;
  std::vector<RollLeg> rolls;
  std::vector<LooseRun> loose;
  std::vector<TouchRun> touches;   ///< strongest first; feet that come to the floor as meant left out
  std::vector<TouchRun> landings;  ///< the casters on the floor
  std::vector<ZoneRun> zones;
  std::vector<SlackSpell> slack;
  std::optional<Aftermath> aftermath;
  std::optional<StandsAgain> again;         ///< where it came all the way down
  std::string gave_up;                      ///< why the crew did not go on; empty: they did
  std::vector<std::string> not_tried;       ///< what was asked for and never came: "the push at 3000.0 s (...)"
  /// "hook curl and bracket arm": overlap already where they first can meet, and do not push each other.
  std::vector<std::string> met_from_start;
  std::vector<HookSpell> hooks_off;         ///< when the pipe did not hold the hooks
  std::optional<double> push_swing;         ///< how far push or gust turned a section [rad]
  double push_at = 0.0;                     ///< height at which the push found something [m]
  double seconds = 0.0;                     ///< how long it took [s]
  RehearsalBounds bounds;
  bool refused = false;               ///< a rope too stiff for the world, at every step tried
  std::vector<std::string> cautions;  ///< what the world leaves out, and what was taken for granted
  Recording recording;
};

/// What the worlds leave out of this scene's rehearsal, and what they take for granted: a sentence each, unended.
std::vector<std::string> rehearsal_limits(const Scene& scene, const Model& model, const RehearsalOptions& options);

/// Runs the procedure in the side world, with what is to be tried.
/// @throws std::invalid_argument if step or frame is not positive, a time is negative, or a hinge is not there.
/// @note It proves nothing: what is not seen to touch here may touch. Clearance comes from the dry fit.
RehearsalReport rehearse(const Scene& scene, const Model& model, const RehearsalOptions& options = {});

}  // namespace stowpath
