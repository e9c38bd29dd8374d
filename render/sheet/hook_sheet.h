#pragma once

#include <optional>

#include "render/sheet/view.h"
#include "sim/remedy/hook_gap.h"

namespace stowpath {

/// What the hook's sheet shows.
struct HookSubject {
  const Scene& scene;
  const Model& model;
  const DryFit& fit;
  DisplayUnits units = DisplayUnits::metric;
  std::optional<HookGap> closest;  ///< the least over all moves
  std::optional<Trim> trim;        ///< proven; none where none is needed or none helps
};

/// Arc that a hook is never trimmed below: it would not reach over the pipe's top [rad].
inline constexpr double kLeastArc = 2.0943951023931953;

/// Whether there is a hook and a bracket to draw.
bool has_hook_and_bracket(const Model& model);

/// The hook on its pipe at a bracket, at full size: working, at its closest to the bracket, and parked, with the arc
/// covered, the least gap and the line to trim to. The smallest common sheet that holds it.
DisplayList make_hook_sheet(const HookSubject& subject);

}  // namespace stowpath
