#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

#include "sim/clearance/stage.h"

namespace stowpath {

/// One piece of a segment and what is known of it.
struct Piece {
  double u0 = 0.0, u1 = 1.0;
  Interval stations;           ///< of the stair's middle over the piece [m]
  double greatest_turn = 0.0;  ///< half-width of the widest joint [rad]
  double half_roll = 0.0;      ///< half the way along the rail, where the station moves [m]

  double middle() const { return 0.5 * (u0 + u1); }
  /// False where it is too short for another halving in floating point: what is open there stays open.
  bool divides() const { return u1 - u0 > 1e-12; }
};

/// Counts of what a walk has done.
struct WalkCounts {
  long long distances = 0;
  long long rejects = 0;
};

/// Halves a segment over and over, carrying for each mover the targets that are not settled yet: placing is paid once a
/// mover, and a pair that is settled on a piece is never looked at again within it.
///
/// `Judge` decides:
///   double reach(mover)                       how far from the mover targets matter at all [m]
///   bool   admits(mover, target, Pair&)       whether the pair takes part; fills its own data
///   double drop_at(Pair)                      a side-view distance proven at least this settles the pair
///   bool   refine(mover, Pair&, piece, d, D)  looks at the middle's distance d and the displacement bound D (with the
///                                             guard for rounding); true: halve on
///   void   dropped(mover, Pair, bound)        told of pairs turned away with that proven lower bound
/// Pair is the judge's own struct and has `int target`.
template <typename Judge>
class PieceWalk {
 public:
  using Pair = typename Judge::Pair;

  PieceWalk(const ProofStage& stage, Judge& judge) : stage_(stage), judge_(judge) { work_.resize(stage.movers.size()); }

  /// Walks all of [u0, u1].
  void run(double u0 = 0.0, double u1 = 1.0) {
    const Turns whole = half_turns(stage_.linkage, stage_.segment, u0, u1);
    const double widest = *std::max_element(whole.joint.begin(), whole.joint.end());
    // Wide arcs are cut before the tree is asked, so that it is asked for slices and not for whole discs.
    const int cuts = std::clamp(static_cast<int>(std::ceil(widest / kFirstTurn)), 1, 32);
    for (int k = 0; k < cuts; ++k) root(u0 + (u1 - u0) * k / cuts, u0 + (u1 - u0) * (k + 1) / cuts);
  }

  const WalkCounts& counts() const { return counts_; }

 private:
  static constexpr double kFirstTurn = 0.3;  // half-width [rad]

  struct Active {
    int mover;
    std::size_t first, last;  // stretch of pairs_
  };

  struct Middle {
    Piece piece;
    Turns turns;
    Snapshot now;
  };

  Middle look(double u0, double u1) const {
    Middle m{{u0, u1, stations_over(stage_.segment, u0, u1)},
             half_turns(stage_.linkage, stage_.segment, u0, u1),
             snapshot(stage_, 0.5 * (u0 + u1))};
    m.piece.greatest_turn = *std::max_element(m.turns.joint.begin(), m.turns.joint.end());
    m.piece.half_roll =
        stage_.segment.over_stations() ? 0.0 : 0.5 * (m.piece.stations.length() - stage_.segment.astray.length());
    return m;
  }

  /// Places the mover; returns the bound on how far it moves over the piece.
  double place(int number, const Middle& m) {
    const Mover& mover = stage_.movers[static_cast<std::size_t>(number)];
    Outline& out = work_[static_cast<std::size_t>(number)];
    place_mover(m.now, mover, out);
    return mover_displacement(stage_, m.now, m.turns, mover, out);
  }

  void root(double u0, double u1) {
    const Middle m = look(u0, u1);
    std::vector<Active> active;
    std::vector<int> near;
    for (int k = 0; k < static_cast<int>(stage_.movers.size()); ++k) {
      const double reach = judge_.reach(k);
      if (reach < 0.0) continue;
      const double D = place(k, m);
      near.clear();
      stage_.targets.tree().find(swept_box(k, m.piece.stations).grown(D + reach + kRoundingGuard), near);
      const std::size_t first = pairs_.size();
      for (const int target : near) {
        Pair pair{};
        pair.target = target;
        // The discs are asked before the pair's own needs are worked out, which takes longer.
        if (!turned_away(k, pair, reach, D) && judge_.admits(k, target, pair) && judge(k, pair, m, D)) {
          pairs_.push_back(pair);
        }
      }
      if (pairs_.size() > first) active.push_back({k, first, pairs_.size()});
    }
    halve(active, u0, u1);
    pairs_.clear();
  }

  Box3 swept_box(int number, Interval stations) const {
    const BoundingDisc& disc = work_[static_cast<std::size_t>(number)].disc();
    Interval s{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
    for (const Interval i : stage_.movers[static_cast<std::size_t>(number)].stations) {
      s = hull(s, {i.lo + stations.lo, i.hi + stations.hi});
    }
    return {{Interval{disc.centre.x - disc.radius, disc.centre.x + disc.radius},
             Interval{disc.centre.y - disc.radius, disc.centre.y + disc.radius}, s}};
  }

  /// Whether the discs alone keep the pair apart by `wanted` over the piece; tells the judge if so.
  bool turned_away(int mover, const Pair& pair, double wanted, double D) {
    const BoundingDisc& a = work_[static_cast<std::size_t>(mover)].disc();
    const BoundingDisc& b = stage_.targets[pair.target].outline.disc();
    const double far = wanted + D + kRoundingGuard + a.radius + b.radius;
    const bool apart = far < 0.0 || norm_squared(a.centre - b.centre) > far * far;
    if (!apart) return false;  // nor where a number is not one: that is never a reason to let a pair go
    ++counts_.rejects;
    judge_.dropped(mover, pair, std::max(0.0, norm(a.centre - b.centre) - a.radius - b.radius - D - kRoundingGuard));
    return true;
  }

  bool judge(int mover, Pair& pair, const Middle& m, double D) {
    if (turned_away(mover, pair, judge_.drop_at(pair), D)) return false;
    ++counts_.distances;
    const double d = signed_distance(work_[static_cast<std::size_t>(mover)], stage_.targets[pair.target].outline);
    return judge_.refine(mover, pair, m.piece, d, D + kRoundingGuard);
  }

  void halve(const std::vector<Active>& active, double u0, double u1) {
    if (active.empty()) return;
    const double um = 0.5 * (u0 + u1);
    visit(active, u0, um);
    visit(active, um, u1);
  }

  void visit(const std::vector<Active>& active, double u0, double u1) {
    const Middle m = look(u0, u1);
    const std::size_t mark = pairs_.size();
    std::vector<Active> next;
    for (const Active& a : active) {
      const double D = place(a.mover, m);
      const std::size_t first = pairs_.size();
      for (std::size_t i = a.first; i < a.last; ++i) {
        Pair pair = pairs_[i];
        if (judge(a.mover, pair, m, D)) pairs_.push_back(pair);
      }
      if (pairs_.size() > first) next.push_back({a.mover, first, pairs_.size()});
    }
    halve(next, u0, u1);
    pairs_.resize(mark);
  }

  const ProofStage& stage_;
  Judge& judge_;
  std::vector<Outline> work_;
  std::vector<Pair> pairs_;
  WalkCounts counts_;
};

}  // namespace stowpath
