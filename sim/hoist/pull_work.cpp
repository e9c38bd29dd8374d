#include "sim/hoist/pull_work.h"

#include <array>
#include <cmath>
#include <numeric>

namespace stowpath {

namespace {

constexpr int kPanels = 64;

// Abramowitz & Stegun, table 25.4, n = 5 (from memory; their sum is checked in the tests by the energy's balance).
constexpr std::array<double, 5> kNodes{-0.9061798459386640, -0.5384693101056831, 0.0, 0.5384693101056831,
                                       0.9061798459386640};
constexpr std::array<double, 5> kWeights{0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665,
                                         0.2369268850561891};

struct Node {
  double u, weight;
};

// A drag's lower section turns like a square root at full stretch: u = v (2 - v) makes it smooth in v.
std::vector<Node> nodes_of(const Segment& segment) {
  std::vector<Node> nodes;
  for (int panel = 0; panel < kPanels; ++panel)
    for (std::size_t i = 0; i < kNodes.size(); ++i) {
      const double v = (panel + 0.5 + 0.5 * kNodes[i]) / kPanels, weight = 0.5 * kWeights[i] / kPanels;
      if (segment.kind == SegmentKind::drag)
        nodes.push_back({v * (2.0 - v), 2.0 * (1.0 - v) * weight});
      else
        nodes.push_back({v, weight});
    }
  return nodes;
}

struct Sums {
  PoseWork all;
  double swing = 0.0;
};

void add(Sums& sums, const PosePlace& place, const PoseWork& work, double weight) {
  sums.all.gain += weight * work.gain;
  sums.all.line_sheaves += weight * work.line_sheaves;
  sums.all.fold_sheaves += weight * work.fold_sheaves;
  sums.all.hook += weight * work.hook;
  sums.all.hinges += weight * work.hinges;
  sums.all.floor += weight * work.floor;
  sums.all.slack += weight * work.slack;
  sums.all.fold += weight * work.fold;
  (settles(place) ? sums.swing : sums.all.turning) += weight * work.turning;
  sums.all.hand += weight * work.hand;
}

}  // namespace

double WorkBook::lost() const {
  return std::accumulate(losses.begin(), losses.end(), 0.0,
                         [](double sum, const PullLoss& loss) { return sum + loss.energy; });
}

WorkBook work_book(const LiftRig& rig, const Model& model, bool friction) {
  Sums sums;
  for (const Move& move : model.moves) {
    if (!is_hauled(move)) continue;
    for (const Segment& segment : move.segments)
      for (const Node& node : nodes_of(segment)) {
        const PosePlace place{move, segment, node.u};
        add(sums, place, pose_work(rig, place, friction), node.weight);
      }
  }
  WorkBook book{sums.all.hand, sums.all.fold, sums.all.turning, sums.all.gain, {}};
  book.losses = {{"hoist line's sheaves", sums.all.line_sheaves},
                 {"fold line's sheaves", sums.all.fold_sheaves},
                 {"hook on the pipe", sums.all.hook},
                 {"hinges", sums.all.hinges},
                 {"casters on the floor", sums.all.floor},
                 {"lower section swinging plumb", -sums.swing},
                 {"dropping on a slack line", sums.all.slack}};
  return book;
}

}  // namespace stowpath
