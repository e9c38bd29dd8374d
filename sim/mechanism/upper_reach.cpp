#include "sim/mechanism/upper_reach.h"

#include <algorithm>

namespace stowpath {

double upper_reach(const Model& model, int hinge) {
  double start = 0.0, reach = 0.0;
  for (int k = 0; k <= hinge; ++k) {
    for (const StairPart& part : model.stair)
      if (part.section == k)
        for (const Vec2 corner : part.outline.core)
          reach = std::max(reach, norm(corner + Vec2{start, 0.0}) + part.outline.radius);
    start += model.linkage.length[static_cast<std::size_t>(k)];
  }
  return reach;
}

}  // namespace stowpath
