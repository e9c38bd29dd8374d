#include "sim/mechanism/haul.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sim/mechanism/mass.h"

namespace stowpath {

namespace {

constexpr double kOnFloor = 1e-9;  // [m]
constexpr double kPlumb = 1e-12;   // a chain nearer to plumb than this hangs plumb [rad]

double lean_below(const Linkage& linkage, const LowerChain& chain, const Configuration& at) {
  return section_leans(linkage, at)[static_cast<std::size_t>(chain.rule.hinge + 1)];
}

Configuration with_lean_below(const Linkage& linkage, const LowerChain& chain, Configuration at, double lean) {
  const auto k = static_cast<std::size_t>(chain.rule.hinge);
  at.folds[k] = linkage.fold_sign[k] * (lean - section_leans(linkage, at)[k]);
  return at;
}

// The lean at which the hinge is so high that the dragged chain is plumb or at full stretch; infinite if it never is.
double lean_at_lift_off(const Linkage& linkage, const LowerChain& chain, const Configuration& from) {
  const double reach = norm(chain.rule.axle - linkage.proximal(chain.rule.hinge + 1));
  const double off_stretch = std::max(chain.plumb_lean, chain.stretch_lean) - chain.stretch_lean;
  const double hinge_up = chain.rule.axle_height + reach * std::cos(off_stretch);
  const HingeSwing swing = hinge_swing(linkage, from, chain.rule.hinge);
  const double cosine = (linkage.pivot.y - hinge_up) / swing.reach;
  if (std::abs(cosine) > 1.0) return std::numeric_limits<double>::infinity();
  return std::acos(cosine) - swing.phase;
}

Segment drag_to(const Linkage& linkage, const LowerChain& chain, const Configuration& from, double lean) {
  Segment segment{SegmentKind::drag, from, from, chain.rule, {1.0, 0.0}};
  segment.to.lean = lean;
  segment.to = at(linkage, segment, 1.0);
  return segment;
}

}  // namespace

LowerChain lower_chain(const Linkage& linkage, const Standing& standing, const std::vector<SectionMass>& masses,
                       int hinge) {
  LowerChain chain;
  double start = 0.0;
  for (int k = 0; k <= hinge; ++k) start += linkage.length[static_cast<std::size_t>(k)];
  chain.rule = {hinge, standing.axle - Vec2{start, 0.0}, standing.axle_height};
  const Vec2 joint = linkage.proximal(hinge + 1);
  const Vec2 centre = chain_mass(linkage, masses, hinge + 1).centre - joint, axle = chain.rule.axle - joint;
  chain.plumb_lean = -std::atan2(centre.y, centre.x);
  chain.stretch_lean = -std::atan2(axle.y, axle.x);
  return chain;
}

bool foot_stands(const Linkage& linkage, const LowerChain& chain, const Configuration& at) {
  const auto X_W = place_sections(linkage, at);
  const Vec2 axle = X_W[static_cast<std::size_t>(chain.rule.hinge + 1)] * chain.rule.axle;
  return std::abs(axle.y - chain.rule.axle_height) <= kOnFloor;
}

std::vector<Segment> haul(const Linkage& linkage, const LowerChain& chain, const Configuration& from, double lean) {
  std::vector<Segment> segments;
  Configuration now = from;
  const auto add = [&](Segment segment) {
    now = segment.to;
    segments.push_back(std::move(segment));
  };
  const double lift_off = std::max(chain.plumb_lean, chain.stretch_lean);
  if (foot_stands(linkage, chain, now) && lean_below(linkage, chain, now) > lift_off) {
    const double end = std::min(lean, lean_at_lift_off(linkage, chain, from));
    if (end > now.lean) add(drag_to(linkage, chain, now, end));
  }
  if (now.lean >= lean) return segments;
  if (std::abs(lean_below(linkage, chain, now) - chain.plumb_lean) > kPlumb)
    add({SegmentKind::straight, now, with_lean_below(linkage, chain, now, chain.plumb_lean), {}, {1.0, 0.0}});
  Configuration raised = now;
  raised.lean = lean;
  add({SegmentKind::straight, now, with_lean_below(linkage, chain, raised, chain.plumb_lean), {}, {1.0, 0.0}});
  return segments;
}

}  // namespace stowpath
