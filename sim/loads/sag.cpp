#include "sim/loads/sag.h"

#include <algorithm>
#include <cmath>

#include "sim/geometry/rounded_polygon.h"
#include "sim/loads/hook_forces.h"
#include "sim/mechanism/pivot_play.h"
#include "sim/mechanism/procedure.h"
#include "sim/mechanism/standing.h"
#include "sim/mechanism/upper_reach.h"

namespace stowpath {

namespace {

void look_along(const Scene& scene, const HookForces& forces, PipeSag& sag) {
  constexpr int kSteps = 2000;
  for (const RailPlace& place : rail_under(scene, forces, kSteps).places) {
    const auto [least, most] = std::minmax_element(place.sag.begin(), place.sag.end());
    sag.difference = std::max(sag.difference, *most - *least);
    sag.least = std::min(sag.least, *least);
    if (*most > sag.most) sag.most = *most, sag.station = place.station;
  }
}

// What the play grows by, in halves of the sag's range.
double drag_growth(const Model& model, double least_lean) {
  double growth = 1.0;
  for (const Move& move : model.moves)
    for (const Segment& segment : move.segments)
      if (segment.kind == SegmentKind::drag)
        growth = std::max(growth,
                          1.0 + upper_reach(model, segment.drag.hinge) * drag_turn(model.linkage, segment, least_lean));
  return growth;
}

Standing stand_lowered(const Scene& scene, const Linkage& linkage, double lower) {
  Linkage moved = linkage;
  moved.pivot.y -= lower;
  return stand(scene, moved);
}

}  // namespace

PipeSag pipe_sag(const Scene& scene, const Model& model) {
  PipeSag sag;
  for (const HookForces& forces : standing_hook_forces(model, climb(scene, model))) look_along(scene, forces, sag);
  return sag;
}

Model sagged(const Scene& scene, const Model& model) {
  const PipeSag sag = pipe_sag(scene, model);
  const Interval range{sag.least, sag.most};
  Model out = model;
  Standing standing = stand_lowered(scene, model.linkage, range.middle());
  standing.leans =
      hull(stand_lowered(scene, model.linkage, range.lo).leans, stand_lowered(scene, model.linkage, range.hi).leans);
  out.linkage.pivot.y -= range.middle();
  out.pipe_sag = sag.most;
  out.working_lean = standing.lean;
  out.working_leans = standing.leans;
  out.moves = procedure_moves(scene, out, standing);
  allow_assumed_play(out);
  out.hook_play += 0.5 * range.length() * drag_growth(out, standing.leans.lo);
  return out;
}

}  // namespace stowpath
