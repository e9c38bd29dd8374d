#include "sim/mechanism/contact_rule.h"

#include <algorithm>

namespace stowpath {
namespace {

bool holds(const std::vector<int>& ids, int id) { return std::find(ids.begin(), ids.end(), id) != ids.end(); }

}  // namespace

bool ContactRule::names(int x, int y) const {
  if (x < 0 || y < 0) return false;
  return (holds(a, x) && holds(b, y)) || (holds(a, y) && holds(b, x));
}

}  // namespace stowpath
