#include "sim/clearance/target_tree.h"

#include <algorithm>
#include <array>
#include <numeric>

namespace stowpath {
namespace {

constexpr int kLeafSize = 4;

Box3 around(const Box3& a, const Box3& b) {
  return {{hull(a.side[0], b.side[0]), hull(a.side[1], b.side[1]), hull(a.side[2], b.side[2])}};
}

std::size_t longest_side(const Box3& box) {
  std::size_t best = 0;
  for (std::size_t k = 1; k < 3; ++k) {
    if (box.side[k].length() > box.side[best].length()) best = k;
  }
  return best;
}

}  // namespace

Box3 Box3::grown(double by) const {
  Box3 out = *this;
  for (Interval& i : out.side) i = {i.lo - by, i.hi + by};
  return out;
}

bool Box3::meets(const Box3& other) const {
  for (std::size_t k = 0; k < 3; ++k) {
    if (side[k].hi < other.side[k].lo || other.side[k].hi < side[k].lo) return false;
  }
  return true;
}

TargetTree::TargetTree(std::vector<Box3> boxes) : boxes_(std::move(boxes)), order_(boxes_.size()) {
  std::iota(order_.begin(), order_.end(), 0);
  if (!boxes_.empty()) build(0, static_cast<int>(boxes_.size()));
}

int TargetTree::build(int first, int count) {
  const auto begin = order_.begin() + first, end = begin + count;
  const auto box_of = [&](int i) -> const Box3& { return boxes_[static_cast<std::size_t>(i)]; };
  Box3 box = box_of(*begin);
  for (auto it = begin; it != end; ++it) box = around(box, box_of(*it));
  const int node = static_cast<int>(nodes_.size());
  nodes_.push_back({box, -1, -1, first, count});
  if (count <= kLeafSize) return node;
  const std::size_t k = longest_side(box);
  std::nth_element(begin, begin + count / 2, end,
                   [&](int a, int b) { return box_of(a).side[k].middle() < box_of(b).side[k].middle(); });
  const int left = build(first, count / 2), right = build(first + count / 2, count - count / 2);
  nodes_[static_cast<std::size_t>(node)].left = left;
  nodes_[static_cast<std::size_t>(node)].right = right;
  return node;
}

void TargetTree::find(const Box3& box, std::vector<int>& out) const {
  if (nodes_.empty()) return;
  const std::size_t before = out.size();
  // Halving by count keeps the tree as deep as its size has bits, so that this never fills up.
  std::array<int, 64> open{};
  for (std::size_t left = 1; left > 0;) {
    const Node& node = nodes_[static_cast<std::size_t>(open[--left])];
    if (!node.box.meets(box)) continue;
    if (node.left >= 0) {
      open[left++] = node.right;
      open[left++] = node.left;
      continue;
    }
    for (int i = node.first; i < node.first + node.count; ++i) {
      const int number = order_[static_cast<std::size_t>(i)];
      if (boxes_[static_cast<std::size_t>(number)].meets(box)) out.push_back(number);
    }
  }
  std::sort(out.begin() + static_cast<std::ptrdiff_t>(before), out.end());
}

}  // namespace stowpath
