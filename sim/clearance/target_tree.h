#pragma once

#include <array>
#include <vector>

#include "sim/geometry/interval.h"

namespace stowpath {

/// An upright box in out, up and station.
struct Box3 {
  std::array<Interval, 3> side;

  Box3 grown(double by) const;
  bool meets(const Box3& other) const;
};

/// A tree of boxes: which of them meet a given one, without looking at all.
class TargetTree {
 public:
  TargetTree() = default;
  explicit TargetTree(std::vector<Box3> boxes);

  /// Appends the numbers of all boxes that meet `box`, ascending.
  void find(const Box3& box, std::vector<int>& out) const;

 private:
  struct Node {
    Box3 box;
    int left = -1, right = -1;  // children, or
    int first = 0, count = 0;   // a leaf's stretch of order_
  };
  int build(int first, int count);

  std::vector<Box3> boxes_;
  std::vector<int> order_;
  std::vector<Node> nodes_;
};

}  // namespace stowpath
