#pragma once

#include "sim/rehearsal/aftermath_watch.h"
#include "sim/rehearsal/shoves.h"
#include "sim/rehearsal/tally.h"

namespace stowpath {

/// A rehearsal that takes longer is broken off [s].
inline constexpr double kLongestRehearsal = 2400.0;

/// One run of a rehearsal at one step: the world, the crew at their lines, and what is kept of it.
///
/// `rehearse` runs one to its end; a window drives one itself:
///
///     Stage stage(scene, model, options, 1.0 / 960.0);
///     stage.start();
///     while (...) {                     // a picture at a time
///       stage.advance(16);              // 1/60 s
///       if (key) stage.let_go();        // whenever it likes
///       draw(stage.world().poses(), stage.crew().line(), ...);
///     }
///     stage.close();                    // then report().recording can be written out
///
/// The same calls between the same steps give the same bits, however many steps are taken at a time: what is asked for
/// in the options (let_go, push and so on) is nothing but these calls, made at the first step whose time is not less.
/// A stage holds references to scene and model, which must outlive it; it is neither copied nor moved.
class Stage {
 public:
  /// @throws std::invalid_argument if step or frame is not positive, a time is negative, or a hinge is not there.
  Stage(const Scene& scene, const Model& model, RehearsalOptions options, double step);

  /// All of it: start, advance until finished or too swift, close. False where it was too swift; then the report means
  /// nothing.
  bool run();

  /// Puts the stair at rest. Once, before anything else but reading.
  void start();
  /// Takes so many steps of the world. It does not stop by itself: when `finished` the crew stand by, and one may go
  /// on, to push the stair once more or to see it swing out.
  void advance(int steps = 1);
  /// Whether there is nothing left to wait for: the procedure is done and was watched for a while, or what followed a
  /// line let go has come to rest, and all that the options ask for, and that can still come, has been tried.
  bool finished() const;
  /// A rope bounces too swiftly for the step (see docs/method.md): then nothing here means anything; take half the
  /// step.
  bool too_swift() const;
  /// Brings the report in order: the last move's end, totals, the strongest first. Once, at the end. `report` can be
  /// read before, as far as it goes: events stand in it in order of time, a slack spell from a twentieth of a second
  /// after it began on, its end half a second after it.
  void close();

  /// The report as `close` would leave it now; what still follows a lost line stands in it as far as it has gone.
  RehearsalReport so_far() const;

  /// Whoever holds the hoist line lets go of it, now. Where a cleat or worm holds it, the report's aftermath says so
  /// and the procedure goes on; where it is not on, the report's `not_tried` says so.
  void let_go();
  /// It breaks, now; then neither cleat nor worm helps.
  void break_line();
  /// Someone leans on the stair from now on, for the push's time. Pushes may overlap; forces add up.
  void push(const Push& push);
  /// The air blows from now on, for the gust's time.
  void gust(const Gust& gust);

  double time() const { return world_.time(); }  ///< from the start [s]
  /// Poses, turns, the hooks' state, seat and force, parts and what touches now.
  const SideWorld& world() const { return world_; }
  /// The move at hand, the pose meant, the lines with their pull, stretch (negative: slack) and rigging, and whether
  /// they are held.
  const Crew& crew() const { return crew_; }
  /// What happened so far: moves, touches, events, frames of the recording, the aftermath while it goes on.
  const RehearsalReport& report() const { return tally_.report; }

 private:
  void step();
  void try_what_is_asked();
  void note_met();
  void follow_along_rail();
  void begin_aftermath(Aftermath after);
  void lose_line(const std::string& cause, RecordedEventKind kind);
  void shove_if_due();
  void leave_untried(const std::string& what, double when, const std::string& why);
  void say_what_was_not_tried();
  bool waits_for_line() const;
  bool waits_for_shove() const;
  bool shoved() const;
  void go_on_watching();
  bool has_aftermath() const;
  bool follows() const;
  void stand_again();
  void watch_shoves();
  void watch_crew();
  void watch_turning_over();
  void watch_energy();
  void end_aftermath();

  const Scene& scene_;
  const Model& model_;
  RehearsalOptions options_;
  Crew crew_;
  SideWorld world_;
  Tally tally_;
  Shoves shoves_;
  AftermathWatch aftermath_;
  bool line_tried_ = false, shoves_tried_ = false, ended_ = false;
  std::optional<double> done_at_;
  SectionPoses stood_{};
  std::array<double, kMaxSections> stood_leans_{};
  double rolled_until_ = 0.0;  // [s]
  double ledger_ = 0.0, ledger_least_ = 0.0, done_before_ = 0.0;
  bool ledger_begun_ = false;
};

}  // namespace stowpath
