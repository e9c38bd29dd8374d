#pragma once

#include <array>
#include <span>
#include <vector>

#include "sim/clearance/target_tree.h"
#include "sim/clearance/wander.h"
#include "sim/geometry/distance.h"
#include "sim/geometry/interval.h"
#include "sim/mechanism/course.h"
#include "sim/mechanism/linkage.h"
#include "sim/mechanism/rope_spot.h"

namespace stowpath {

/// The room as a body in the chain: room, section 0, section 1, ... Joint k joins body k - 1 and body k.
inline constexpr int kRoom = -1;

/// A point that rides on a section or stays in the room.
struct RopeAnchor {
  int body = kRoom;
  Vec2 at;  ///< in that body's frame [m]
};

/// What a pair needs to count as clear.
struct Need {
  bool check = false;   ///< whether the pair is looked at
  bool silent = false;  ///< meant contacts and zones: no part of the least clearance
  double margin = 0.0;  ///< violated where the nominal clearance is less; negative: that much fit is allowed [m]
  double play = 0.0;    ///< clear only with this much more, for what the nominal pose leaves open [m]
  double wander = 0.0;  ///< the part of `play` that is the reach of the table's wander [m]
};

/// What one mover needs of one target, where that is not what the table says.
struct PairNeed {
  int target = 0;
  Need need;
};

/// A moving prism as the proofs see it: an outline on a section, or a run of rope between two anchors.
struct Mover {
  int body = 0;                    ///< the section that carries it (not for ropes)
  Outline outline;                 ///< in the section's frame [m]
  std::vector<Interval> stations;  ///< from the stair's middle [m]
  double excess = 0.0;             ///< the outline may stand out of the true thing by up to this [m]
  int group = 0;                   ///< row of the table of needs
  bool rope = false;
  RopeAnchor a, b;                            ///< a rope's ends
  RopeSpot first{false, 0.0}, last{true, 0.0};  ///< the spots on it that its core runs between
  double rope_from = 0.0, rope_to = 1.0;  ///< the stretch between the two spots that this mover is
  double rope_radius = 0.0;               ///< [m]
  double skip_a = 0.0, skip_b = 0.0;      ///< of that, only what is this far from end a and end b [m]
  bool aslant = false;  ///< the true thing is somewhere within its stations, and not all along them
  double play_share = 1.0;        ///< of the play that its needs tell, so much shifts it against the base
  std::vector<PairNeed> pairs{};  ///< by target, ascending
  bool only_pairs = false;        ///< it is looked at against those targets alone
};

/// A prism that stays in the stage's base frame.
struct Target {
  Outline outline;                 ///< in the base frame [m]
  std::vector<Interval> stations;  ///< of the room, or from the stair's middle where the base is a section [m]
  double excess = 0.0;             ///< [m]
  int group = 0;                   ///< column of the table of needs
  bool aslant = false;             ///< see Mover
};

/// Targets with their tree.
class TargetSet {
 public:
  TargetSet() = default;
  explicit TargetSet(std::vector<Target> targets);

  const std::vector<Target>& all() const { return targets_; }
  const Target& operator[](int i) const { return targets_[static_cast<std::size_t>(i)]; }
  const TargetTree& tree() const { return tree_; }

 private:
  std::vector<Target> targets_;
  TargetTree tree_;
};

/// The need with which touching alone counts: no margin, no play, no zone; a meant contact keeps its fit.
Need touching(const Need& need);

/// Needs by the groups of mover and target.
class NeedTable {
 public:
  NeedTable() = default;
  NeedTable(int mover_groups, int target_groups);

  Need& at(int mover_group, int target_group);
  const Need& at(int mover_group, int target_group) const;
  Wander wander{};          ///< of all movers alike
  double greatest() const;  ///< margin and play of the neediest pair [m]
  NeedTable touching() const;  ///< each need as `touching` has it

 private:
  int columns_ = 0;
  std::vector<Need> needs_;
};

/// One question for the proofs: these movers along that segment, seen from one body, against these targets.
struct ProofStage {
  const Linkage& linkage;
  const Segment& segment;
  int base = kRoom;  ///< the body whose frame the targets lie in; kRoom or a section
  std::span<const Mover> movers;
  const TargetSet& targets;
  const NeedTable& needs;

  Need need(int mover, int target) const;
  double greatest_need() const;  ///< margin and play of the neediest pair [m]
};

/// Where everything is at one u, in the base frame.
struct Snapshot {
  std::array<Pose2, kMaxSections + 1> pose;  ///< of body k at [k + 1]: the room first
  std::array<Vec2, kMaxSections> joint;      ///< joint k joins body k - 1 and k [m]
  double station = 0.0;                      ///< [m]

  const Pose2& of(int body) const { return pose[static_cast<std::size_t>(body + 1)]; }
};
Snapshot snapshot(const ProofStage& stage, double u);

/// Proven: no point within `radius` of `centre` (riding on `body`) is displaced by more, seen from the stage's base,
/// over a piece of motion whose middle is `now` and whose half-widths are `turns`. [m]
///
/// Source: the nested arcs of docs/method.md, "How far a part can move".
double displacement(const ProofStage& stage, const Snapshot& now, const Turns& turns, int body, Vec2 centre,
                    double radius);

/// Writes the mover as it lies at that snapshot, in the base frame.
void place_mover(const Snapshot& now, const Mover& mover, Outline& out);

/// Proven: no point of the mover, placed as `placed`, is displaced by more over the piece [m].
double mover_displacement(const ProofStage& stage, const Snapshot& now, const Turns& turns, const Mover& mover,
                          const Outline& placed);

/// The stations that the stair's middle takes over a piece of the segment [m].
Interval stations_over(const Segment& segment, double u0, double u1);

/// Whether one station of the segment that breaks a margin is enough: each of them is meant, and none is only passed.
bool any_station(const Segment& segment);

/// Least gap and greatest overlap along the rail, over all pairs of stretches and all stations meant; and the same
/// where the station does its best to keep them apart.
struct Gaps {
  double least = 0.0;          ///< [m]
  double most = 0.0;           ///< of the same best pair, over the stations of the piece [m]
  double overlap = 0.0;        ///< greatest; negative: never overlapping [m]
  double least_overlap = 0.0;  ///< [m]
};
Gaps rail_gaps(std::span<const Interval> moving, std::span<const Interval> fixed, Interval stations, bool anywhere);

/// The same of a pair over a piece of its segment. Of what is aslant only the nearer side takes its whole stretch: the
/// true thing may be at either end of it.
Gaps pair_gaps(const Segment& segment, const Mover& mover, const Target& target, Interval stations);

/// Signed clearance of two prisms from their side-view distance d, gap and overlap along the rail [m].
double prism_clearance(double d, double gap, double overlap);

/// The side-view distance below which a pair with that gap and overlap comes closer than `margin`; -inf if it never
/// can.
double side_view_threshold(double margin, double gap, double overlap);

}  // namespace stowpath
