#include "sim/hoist/pull_changes.h"

#include <algorithm>
#include <cmath>

#include "sim/mechanism/scene_fault.h"

namespace stowpath {

namespace {

constexpr double kPickShare = 0.1;   // of its section's length
constexpr double kPointShift = 0.3;  // of the ceiling point, about one joist bay [m]
constexpr double kCoarse = 4.0;      // times the step asked for

struct Variant {
  std::string text;
  Scene scene;
};

Variant more_parts(const Scene& scene) {
  Variant variant{"", scene};
  const int parts = ++variant.scene.hoist->line.parts;
  variant.text = "one more part of line: " + std::to_string(parts);
  return variant;
}

void add_pick(const Scene& scene, double share, std::vector<Variant>& variants) {
  const SectionPoint& pick = scene.hoist->pick;
  const double length = scene.stair.sections[static_cast<std::size_t>(pick.section - 1)];
  const double along = std::clamp(pick.along + share * length, 0.0, length);
  const double moved = std::abs(along - pick.along);
  if (moved < 1e-9 || along <= 0.0) return;
  Variant variant{"pick " + say_length(scene, Nominal{moved}) + (share > 0.0 ? " nearer the foot" : " nearer the rail"),
                  scene};
  variant.scene.hoist->pick.along = along;
  variants.push_back(std::move(variant));
}

void add_ceiling_point(const Scene& scene, double shift, std::vector<Variant>& variants) {
  const double out = scene.hoist->ceiling_point->at.x + shift;
  if (out < 0.0 || out > scene.room.depth) return;
  Variant variant{"ceiling point " + say_length(scene, Nominal{std::abs(shift)}) +
                      (shift > 0.0 ? " further out" : " nearer the wall"),
                  scene};
  variant.scene.hoist->ceiling_point->at.x = out;
  variants.push_back(std::move(variant));
}

std::vector<Variant> variants_of(const Scene& scene) {
  std::vector<Variant> variants{more_parts(scene)};
  for (const double way : {1.0, -1.0}) add_pick(scene, way * kPickShare, variants);
  for (const double way : {1.0, -1.0}) add_ceiling_point(scene, way * kPointShift, variants);
  return variants;
}

PullChange walk(const Variant& variant, const Model& model, const PullOptions& options, double peak) {
  const PullReport report = walk_through(variant.scene, model, options);
  PullChange change{variant.text, 0.0, 0.0, report.haul_length, 0.0, true};
  if (report.peak_raising) change.peak = report.samples[*report.peak_raising].hand_raising;
  change.benefit = peak - change.peak;
  for (const PullSample& sample : report.samples) {
    if (sample.solvable && !sample.slack)
      change.side_pull = std::max(change.side_pull, std::hypot(sample.side_out, sample.side_along));
  }
  change.lifts = std::none_of(report.events.begin(), report.events.end(),
                              [](const PullEvent& event) { return event.kind == PullEventKind::cannot_lift; });
  return change;
}

}  // namespace

std::vector<PullChange> pull_changes(const Scene& scene, const Model& model, const PullOptions& options, double peak) {
  PullOptions coarse = options;
  coarse.step *= kCoarse;
  std::vector<PullChange> changes;
  for (const Variant& variant : variants_of(scene)) changes.push_back(walk(variant, model, coarse, peak));
  std::stable_sort(changes.begin(), changes.end(), [](const PullChange& a, const PullChange& b) {
    return a.lifts != b.lifts ? a.lifts : a.benefit > b.benefit;
  });
  return changes;
}

}  // namespace stowpath
