#include "tests/support/proof_maker.h"

#include <cmath>

namespace stowpath::testing {

ProofMaker ProofMaker::swing(double from, double to) {
  ProofMaker maker;
  maker.segment.from.lean = from;
  maker.segment.to.lean = to;
  return maker;
}

ProofMaker& ProofMaker::margin(double wanted, double play) {
  need.margin = wanted;
  need.play = play;
  return *this;
}

ProofMaker& ProofMaker::part(const RoundedPolygon& outline, int body, std::vector<Interval> stations) {
  Mover mover;
  mover.body = body;
  mover.outline = Outline(outline);
  mover.stations = std::move(stations);
  movers.push_back(std::move(mover));
  return *this;
}

ProofMaker& ProofMaker::rope(RopeAnchor a, RopeAnchor b, double radius, std::vector<Interval> stations) {
  Mover mover;
  mover.rope = true;
  mover.a = a;
  mover.b = b;
  mover.rope_radius = radius;
  mover.stations = std::move(stations);
  movers.push_back(std::move(mover));
  return *this;
}

ProofMaker& ProofMaker::post(const RoundedPolygon& outline, std::vector<Interval> stations) {
  Target target;
  target.outline = Outline(outline);
  target.stations = std::move(stations);
  targets.push_back(std::move(target));
  return *this;
}

ProofStage ProofMaker::stage() {
  set_ = TargetSet(targets);
  needs_ = NeedTable(1, 1);
  needs_.at(0, 0) = need;
  return {linkage, segment, base, movers, set_, needs_};
}

Proof ProofMaker::proof(const ProofOptions& options) { return prove(stage(), options); }

Least ProofMaker::least(double tolerance, double horizon) { return least_clearance(stage(), tolerance, horizon); }

PairAt ProofMaker::at(double u, int mover, int target) { return look_at_pair(stage(), mover, target, u); }

Verdict verdict(const Proof& proof) {
  Verdict worst = Verdict::clear;
  for (const Span& span : proof.spans) worst = worse(worst, span.verdict);
  return worst;
}

IntervalSet open_stretches(const Proof& proof) {
  IntervalSet out;
  for (const Span& span : proof.spans) out.push_back({span.open0, span.open1});
  return unite(std::move(out));
}

Vec2 on_arc(double along, double lean) { return {along * std::sin(lean), -along * std::cos(lean)}; }

}  // namespace stowpath::testing
