#pragma once

#include <optional>
#include <vector>

#include "sim/remedy/assess.h"
#include "sim/remedy/lever.h"

namespace stowpath {

/// What a search works on: one finding of a scene, and the draft that changes are made to.
struct SearchBench {
  const SceneDraft& draft;       ///< the scene, or for the second of a pair, with the first change made
  const AssessOptions& options;  ///< as the scene was proven
  const std::vector<Finding>& before;
  const Finding& target;
  bool fresh = true;  ///< the draft is the scene itself, which lacks what the target says
};

/// The edits that set a lever to so many steps; none where a number cannot be written so.
std::optional<std::vector<ValueEdit>> edits_at(const SceneDraft& draft, const Lever& lever, int steps);

/// What became of a lever.
struct LeverAnswer {
  std::optional<int> steps;      ///< the smallest amount that works, proven on the whole scene; none: none does
  std::vector<ValueEdit> edits;  ///< that set it
  std::optional<int> cured_at;   ///< where none works: the smallest amount that cures the target at a price
  std::vector<Finding> price;    ///< what is new or worse there
  int narrow_proofs = 0, whole_proofs = 0;
};

/// The smallest multiple of the lever's step that cures the target with nothing else new or worse.
///
/// Amounts are tried from small to large. Where a distance still lacks d, no amount works that is less than d / reach
/// away, so those are passed over; where no reach is known, the next is a stride away, and what the stride passed over
/// is then halved. Amounts that fail on the parts and moves concerned fail on the whole scene: only the others are
/// proven whole. @see docs/method.md, "Cures"
LeverAnswer try_lever(const SearchBench& bench, const Lever& lever);

}  // namespace stowpath
