#include "sim/clearance/contact_state.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "sim/clearance/pairs.h"

namespace stowpath {
namespace {

constexpr double kOnFloor = 1e-6;  // a foot nearer than this to where it stands is on the floor [m]
constexpr int kLooks = 64;         // between which a change back and forth would go unseen, and so count as none

Segment cut(const Linkage& linkage, const Segment& segment, Interval piece) {
  if (piece.lo == 0.0 && piece.hi == 1.0) return segment;
  Segment out = segment;
  out.from = at(linkage, segment, piece.lo);
  out.to = at(linkage, segment, piece.hi);
  return out;
}

/// Where a quantity along [0, 1] passes through zero, ends included.
template <class Quantity>
std::vector<double> zeros(Quantity quantity) {
  std::vector<double> out{0.0};
  for (int k = 0; k < kLooks; ++k) {
    double lo = static_cast<double>(k) / kLooks, hi = static_cast<double>(k + 1) / kLooks;
    const bool before = quantity(lo) < 0.0;
    if (before == (quantity(hi) < 0.0)) continue;
    for (int n = 0; n < 40; ++n) {
      const double middle = 0.5 * (lo + hi);
      ((quantity(middle) < 0.0) == before ? lo : hi) = middle;
    }
    const double u = before ? lo : hi;  // the side on which less may touch gets the rest
    if (u > out.back() && u < 1.0) out.push_back(u);
  }
  out.push_back(1.0);
  return out;
}

/// How far the casters' lowest point is above where they stand, at a pose [m].
double foot_height(const Model& model, const Configuration& pose) {
  const SectionPoses X_W = place_sections(model.linkage, pose);
  double lowest = std::numeric_limits<double>::infinity();
  for (const StairPart& part : model.stair) {
    if (part.kind != PartKind::caster) continue;
    for (const Vec2 corner : part.outline.core)
      lowest = std::min(lowest, (X_W[static_cast<std::size_t>(part.section)] * corner).y - part.outline.radius);
  }
  return lowest - model.floor_level;
}

ContactState state_of(const Move& move) {
  return {move.hooked_on, false, move.pinned, {}, move.seat ? move.seat->rise : 0.0};
}

/// A segment that leaves the floor is cut where the foot has come clear of it, and one that comes down likewise.
std::vector<double> foot_cuts(const Model& model, const Move& move, const Segment& segment) {
  const Need need = room_need(model, wander_in(model, move), PartKind::caster, PartKind::floor);
  return zeros([&](double u) {
    return foot_height(model, at(model.linkage, segment, u)) - need.margin - need.play;
  });
}

bool on_floor(const Model& model, const Segment& segment, double u) {
  return foot_height(model, at(model.linkage, segment, u)) <= kOnFloor;
}

bool foot_stands_all_along(const Move& move, const Segment& segment) {
  return stands_over_stations(move) || segment.kind == SegmentKind::drag;
}

/// What was done right before, in the same move or the one before it; null: nothing, or it is no segment of the model's.
struct Before {
  const Move* move = nullptr;
  const Segment* segment = nullptr;
};

Before before(const Model& model, const Move& move, const Segment& segment) {
  for (std::size_t i = 1; i < move.segments.size(); ++i)
    if (&move.segments[i] == &segment) return {&move, &move.segments[i - 1]};
  for (std::size_t m = 1; m < model.moves.size(); ++m)
    if (&model.moves[m] == &move && &move.segments.front() == &segment)
      return {&model.moves[m - 1], &model.moves[m - 1].segments.back()};
  return {};
}

/// Whether the segment begins with the foot on the floor, or on its way off it and not clear of it yet.
bool leaves_floor(const Model& model, const Move& move, const Segment& segment) {
  if (on_floor(model, segment, 0.0)) return true;
  const Before last = before(model, move, segment);
  if (!last.segment || is_state(last.move->kind)) return false;
  if (foot_stands_all_along(*last.move, *last.segment)) return true;
  return leaves_floor(model, *last.move, *last.segment) && foot_cuts(model, *last.move, *last.segment).size() == 2;
}

}  // namespace

bool ContactState::counts(const ContactRule& rule) const {
  const auto hinge = static_cast<std::size_t>(std::max(0, rule.hinge));
  switch (rule.when) {
    case ContactTime::always:
      return true;
    case ContactTime::line_on:
      return hooked_on;
    case ContactTime::pinned:
      return hinge < pinned.size() && pinned[hinge];
    case ContactTime::closed:
      return hinge < closed.size() && closed[hinge];
    case ContactTime::foot_down:
      return foot_down;
  }
  return false;
}

std::vector<Stretch> room_stretches(const Model& model, const Move& move, const Segment& segment) {
  ContactState state = state_of(move);
  state.foot_down = foot_stands_all_along(move, segment);
  const bool leaves = leaves_floor(model, move, segment), lands = on_floor(model, segment, 1.0);
  if (state.foot_down || is_state(move.kind) || !(leaves || lands)) return {{segment, {0.0, 1.0}, state}};
  const std::vector<double> cuts = foot_cuts(model, move, segment);
  std::vector<Stretch> out;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    const Interval piece{cuts[i], cuts[i + 1]};
    state.foot_down = (leaves && i == 0) || (lands && i + 2 == cuts.size());
    out.push_back({cut(model.linkage, segment, piece), piece, state});
  }
  return out;
}

std::vector<Stretch> section_stretches(const Model& model, const Move& move, const Segment& segment, int base) {
  const Segment riding = riding_along(segment);
  ContactState state = state_of(move);
  const auto hinge = static_cast<std::size_t>(std::min(base, kMaxSections - 2));
  const auto folded = [&](double u) { return at(model.linkage, riding, u).folds[hinge] - kEndsPart; };
  const std::vector<double> cuts = zeros(folded);
  std::vector<Stretch> out;
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    const Interval piece{cuts[i], cuts[i + 1]};
    state.closed[hinge] = folded(piece.middle()) < 0.0;
    out.push_back({cut(model.linkage, riding, piece), piece, state});
  }
  return out;
}

const Stretch& stretch_at(const std::vector<Stretch>& stretches, double u) {
  const auto holds = [u](const Stretch& stretch) { return stretch.piece.contains(u); };
  const auto found = std::find_if(stretches.begin(), stretches.end(), holds);
  return found != stretches.end() ? *found : stretches.back();
}

Segment riding_along(Segment segment) {
  segment.stations = segment.astray = {0.0, 0.0};
  return segment;
}

Interval middles(const Segment& segment) {
  return {segment.from.station + segment.astray.lo, segment.from.station + segment.astray.hi};
}

}  // namespace stowpath
