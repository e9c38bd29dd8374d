#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "sim/rehearsal/elastic_line.h"
#include "sim/rehearsal/roll_work.h"
#include "sim/rehearsal/script.h"

namespace stowpath {

/// The people at the lines: they do the procedure step by step, hauling and paying out so that the stair goes where the
/// procedure means it to go, at the speed of their hands, crank or drive. What the stair then does is the world's
/// affair.
///
/// They feel the line's stretch and take it in as they go; they hook on with as much pull as the next move needs to
/// hold its first pose, so that a joint is not dropped when its pin comes out; they wait for what swings, for a while.
/// A joint that no line works is turned and held by hand.
///
/// On the way down they hold back what they hauled up. Where the foot comes to the floor and drags out, one of them
/// draws it along. They pay out no more line than hangs loose at a glance; a pin goes in once its holes meet. Where
/// the stair does not come, they give up and say why.
class Crew {
 public:
  struct Orders {
    std::vector<int> no_pins{};    ///< hinges, from 0, whose pins are not there at all
    bool comes_down = true;        ///< once parked, down again
    double parked_for = 3.0;       ///< before that [s]
    bool hand_at_foot = true;      ///< on the way down
    std::optional<double> from{};  ///< station where the stair stands at first, where the procedure rolls it; none: home
    PushOptions hand{};            ///< that rolls it, in steps of the world
  };
  Crew(const Scene& scene, const Model& model, FrictionEnd friction, Orders orders);

  /// Does what falls to be done before the world's next step, and loads the world with it.
  void work(SideWorld& world);
  bool finished() const { return next_ >= script_.size(); }
  /// From now on nobody holds the hoist line, nor anything else: the crew only looks on.
  void let_go();
  /// From now on the crew do nothing further but hold what they hold.
  void stand_by();

  const LiftRig* rig() const { return rig_ ? &*rig_ : nullptr; }
  int move() const;  ///< which of Model::moves they are at; -1: between two
  const Configuration& meant() const { return meant_.pose; }
  bool going_down() const { return going_down_; }  ///< since the line was taken off to lower away
  bool parked() const;                     ///< the procedure has come to its end, and nobody lowers away yet
  bool stopped() const { return stopped_; }  ///< they do not go on with what is left of the procedure
  ZoneState state() const;                         ///< that keep-clear zones go by
  bool on_cleat() const { return on_cleat_; }      ///< the hoist line is made fast
  const std::string& gave_up() const { return gave_up_; }  ///< why they do not go on; empty: they do
  double foot_pull() const { return foot_pull_; }          ///< level, on the foot, outward [N]
  bool waits() const { return waits_ > 0.0; }  ///< a line hangs loose, and they wait for the stair to follow
  bool eases() const;  ///< they slacken the hoist line on purpose, to hook it off or to let a pin in
  bool hooked_on() const { return hooked_on_; }
  const LinePull& line() const { return line_now_; }
  const LinePull& fold_line() const { return fold_now_; }
  const LineFeed& feed() const { return feed_; }
  const LineFeed& fold_feed() const { return fold_feed_; }
  bool fold_line_works() const { return fold_works_; }
  bool stalled() const { return stalled_; }  ///< a line would have to be hauled harder than they can
  const std::optional<ScriptStep>& begun() const { return begun_; }  ///< the step begun in the last call of work
  /// Whether the stair is on its way along the rail: the side view shows it where it was, until it is there.
  bool along_rail() const;
  const RollWork& roller() const { return roller_; }  ///< who rolls the standing stair
  double done_by_crew() const { return work_; }                      ///< work so far [J]
  double swiftest() const { return swiftest_; }                      ///< of the lines so far [rad/s]

 private:
  void begin(SideWorld& world);
  void begin_move(const SideWorld& world);
  void begin_roll(double now);
  bool at_standing_roll() const;
  void measure_lines();
  void go_on(SideWorld& world, double dt);
  void take_up(const SideWorld& world);
  bool done(const SideWorld& world) const;
  bool go_along(double dt);
  bool hangs_loose() const;
  void watch_patience(const SideWorld& world, double dt);
  void give_up(std::string why);
  void draw_foot(SideWorld& world, double dt);
  bool pin_fits(const SideWorld& world, int hinge) const;
  void set_pin(SideWorld& world, int hinge, bool in);
  void make_fast();
  double first_pull() const;
  void feed_lines(const SideWorld& world, double dt);
  struct Hands {
    const LinePull& now;
    double speed, strength;  // [m/s, N]
  };
  void feed_one(const Hands& hands, double way, double& follow, LineFeed& feed, double dt);
  void pull_lines(SideWorld& world, double dt);
  void hold_joints(SideWorld& world, double dt);
  double hold_moment(const SideWorld& world, int hinge) const;

  const Scene& scene_;
  const Model& model_;
  std::optional<LiftRig> rig_;
  std::optional<ElasticLine> hoist_, fold_;
  CrewSpeeds speeds_;
  std::vector<ScriptStep> script_;
  Orders orders_;
  std::size_t next_ = 0;
  std::optional<ScriptStep> begun_;
  RollWork roller_;
  std::map<int, double> rolled_from_;  // stations, by move
  bool started_ = false, hooked_on_ = false, fold_works_ = false, looks_on_ = false, stalled_ = false;
  bool going_down_ = false, on_cleat_ = false, moved_ = false, stopped_ = false;
  std::string gave_up_;
  double waits_ = 0.0, foot_pull_ = 0.0, foot_off_ = 0.0, eased_ = 0.0;
  std::vector<bool> held_;  // hinges held by hand
  bool lean_held_ = false;  // and the whole stair, where there is no hoist
  struct Hold {
    double off = 0.0;    // how far from the meant turn it began [rad]
    double since = 0.0;  // [s]
  };
  std::vector<Hold> holds_;
  Hold lean_hold_;
  std::vector<PathKnot> path_;
  PathKnot meant_;
  double clock_ = 0.0, progress_ = 0.0, fold_since_ = 0.0;
  double wanted_pull_ = 0.0, follow_ = 0.0, fold_follow_ = 0.0, fold_from_ = 0.0;
  LineFeed feed_, fold_feed_;
  LinePull line_now_, fold_now_;
  double work_ = 0.0, swiftest_ = 0.0;
};

}  // namespace stowpath
