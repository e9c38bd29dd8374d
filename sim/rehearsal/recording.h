#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "sim/geometry/vec2.h"
#include "sim/mechanism/linkage.h"
#include "sim/rehearsal/account.h"

namespace stowpath {

/// Where a section stood: the origin of its frame, and the turn of its x axis (along, towards the foot) from out,
/// counter-clockwise. A section of lean a is turned by a - pi/2. The turn is never wrapped: a section that went over
/// has turned by more than a half.
struct RecordedPose {
  Vec2 origin;        ///< out, up [m]
  double turn = 0.0;  ///< [rad]
};

/// A rope as it was.
struct RecordedLine {
  bool on = false;     ///< hooked on and whole; a fold line is always on
  double pull = 0.0;   ///< tension at the hand or drum; 0: slack [N]
  double paid = 0.0;   ///< unstretched rope out, from dead end to hand [m]
  double slack = 0.0;  ///< rope out beyond the way it has to go; 0 where taut [m]
};

/// The stair at one instant.
struct RecordedFrame {
  double time = 0.0;     ///< from the start [s]
  int move = -1;         ///< which of Model::moves the crew is at; -1: between two, or after the last
  double station = 0.0;  ///< middle of the stair's width [m]
  double yaw = 0.0;      ///< out of line while it rolls, counter-clockwise seen from above with out up the page [rad]
  double push = 0.0;     ///< of a hand along the rail, positive towards higher stations [N]
  std::array<RecordedPose, kMaxSections> sections{};  ///< the first Recording::sections count
  RecordedLine hoist, fold;
  bool hooks_on_pipe = true;
  Vec2 hook_force;  ///< pipe on stair: out, up [N]
};

enum class RecordedEventKind {
  move_begins,  ///< `what` names the move
  hooked_on,    ///< the hoist line, its weight taken up
  hooked_off,
  parked,        ///< the procedure's end; `what`: the cleat, where the line is made fast on one
  lowers_away,   ///< from here on the moves go backwards
  gives_up,      ///< the stair does not come down as meant; `what`: why, in words
  turns_over,    ///< about its pick, its hooks off the pipe; `value`: how far it has turned by then [rad]
  pinned,        ///< `value`: hinge, from 1
  unpinned,      ///< `value`: hinge, from 1
  touch,         ///< `what` meets `other`; `value`: closing speed [m/s], `energy`: taken by the stroke [J]
  zone_entered,  ///< `what` comes into `other`
  slack_begins,  ///< `what`: the line
  slack_ends,    ///< `what`: the line; `value`: its pull at the jerk [N]
  let_go,        ///< nobody holds the line any more
  line_broken,
  hooks_lift,  ///< the pipe no longer holds the hooks
  hooks_seat,  ///< they rest on it again; `value`: how far they had lifted [m]
  pushed,      ///< `value`: force [N]
  gust,        ///< `value`: speed of the air [m/s]
  strays,      ///< from the intended pose; `what`: how, in words; `value`: by how much [rad]
  at_rest,
  takes_hold,   ///< a hand that rolls the stair; `value`: its height [m]
  binds,        ///< the hooks jam: no push moves the stair; `value`: the push [N]
  stays,        ///< a harder push would move it; `value`: the push [N]
  leaves_pipe,  ///< a hook rolls past the pipe's end; `value`: station of the stair [m]
  stands,       ///< rolled to where it was meant to go; `value`: station [m]
  brought       ///< it did not get there by itself, and the run goes on as if it had; `value`: station [m]
};

/// Something that happened.
struct RecordedEvent {
  double time = 0.0;  ///< [s]
  RecordedEventKind kind = RecordedEventKind::move_begins;
  std::string what;
  std::string other;
  double value = 0.0;
  double energy = 0.0;  ///< [J]
};

/// A rehearsal as it went, frame by frame: what can be written down, replayed and drawn.
struct Recording {
  std::string scene;    ///< its name
  std::string options;  ///< what was asked, as on the command line: "--let-go 12s"; empty for the plain procedure
  double step = 0.0;    ///< of the world [s]
  int sections = 1;
  std::vector<RecordedFrame> frames;  ///< ascending in time
  std::vector<RecordedEvent> events;  ///< ascending in time
  std::optional<Account> account{};   ///< none: it was recorded before recordings gave one
};

}  // namespace stowpath
