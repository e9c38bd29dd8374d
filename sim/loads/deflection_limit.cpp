#include "sim/loads/deflection_limit.h"

#include <algorithm>
#include <array>
#include <vector>

namespace stowpath {

namespace {

// The tread's limit as gt-engineering.it/en (pages on EN ISO 14122-3:2016) and item-west.com (stairways, traffic loads)
// restate it. The latter gives 6 mm for the structure too; 15 mm is from memory of the standard.
constexpr std::array kLimits{
    DeflectionLimit{BendingPart::stair,
                    1.0 / 300,
                    0.015,
                    0.0,
                    0.0,
                    {"S-ISO-14122-3-defl", "ISO 14122-3, structure of a stair", SourceStatus::memory}},
    DeflectionLimit{BendingPart::tread,
                    1.0 / 300,
                    0.006,
                    1500.0,
                    0.100,
                    {"S-ISO-14122-3-tread", "ISO 14122-3, tread under 1.5 kN on 100 x 100 mm", SourceStatus::verified}},
    DeflectionLimit{BendingPart::pipe,
                    1.0 / 300,
                    0.015,
                    0.0,
                    0.0,
                    {"S-PIPE-defl", "our judgement: what holds the stair up gives no more than a stair may",
                     SourceStatus::judgement}}};

double span_at(const Beam& beam, double at) {
  const std::vector<double>& supports = beam.supports;
  if (at < supports.front()) return 2.0 * (supports.front() - beam.ends.lo);
  if (at > supports.back()) return 2.0 * (beam.ends.hi - supports.back());
  const auto next = std::upper_bound(supports.begin() + 1, supports.end() - 1, at);
  return *next - *(next - 1);
}

DeflectionCheck check_at(const Beam& beam, double sag, double station, double at) {
  const double span = span_at(beam, at);
  return {sag, span, allowed_deflection(deflection_limit(BendingPart::pipe), span), station, at};
}

bool worse(const DeflectionCheck& a, const DeflectionCheck& b) {
  return a.deflection * b.allowed > b.deflection * a.allowed;
}

}  // namespace

std::span<const DeflectionLimit> deflection_limits() { return kLimits; }

const DeflectionLimit& deflection_limit(BendingPart part) {
  return *std::find_if(kLimits.begin(), kLimits.end(),
                       [&](const DeflectionLimit& limit) { return limit.part == part; });
}

double allowed_deflection(const DeflectionLimit& limit, double span) {
  return std::min(limit.span_share * span, limit.most);
}

double patch_deflection(double span, double stiffness, double load, double patch) {
  const double length = std::min(patch, span);
  Beam beam{{0.0, span}, {0.0, span}, stiffness, {}};
  if (!(length > 0.0)) {
    const PointLoad middle{0.5 * span, load};
    return beam_peaks(solve_beam(beam, {&middle, 1})).down.value;
  }
  beam.spread = {{{0.5 * (span - length), 0.5 * (span + length)}, load / length}};
  return beam_peaks(solve_beam(beam, {})).down.value;
}

DeflectionCheck pipe_deflection(const Scene& scene, const RailCase& rail) {
  const Beam beam = rail_beam(scene.rail);
  DeflectionCheck worst = check_at(beam, rail.peaks.down.value, rail.peaks.down.position, rail.peaks.down.at);
  for (const RailPlace& place : rail.places)
    for (std::size_t i = 0; i < place.sag.size(); ++i) {
      const double at = place.station + scene.stair.hooks.stations[i];
      const DeflectionCheck here = check_at(beam, place.sag[i], place.station, at);
      if (worse(here, worst)) worst = here;
    }
  return worst;
}

}  // namespace stowpath
