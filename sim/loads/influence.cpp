#include "sim/loads/influence.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stowpath {

// Stretches are counted from the left: 0 is the left overhang, i + 1 the span between supports i and i + 1, and as many
// as there are supports the right overhang. An overhang may be of no length.

namespace {

// The three-moment equations by diagonals; the first and last say that the end moments are what the overhangs make
// them.
struct ThreeMoments {
  std::vector<double> below, diagonal, above;
};

ThreeMoments equations_of(const std::vector<double>& supports) {
  const std::size_t n = supports.size();
  ThreeMoments eq{std::vector<double>(n), std::vector<double>(n, 1.0), std::vector<double>(n)};
  for (std::size_t i = 1; i + 1 < n; ++i) {
    eq.below[i] = supports[i] - supports[i - 1];
    eq.above[i] = supports[i + 1] - supports[i];
    eq.diagonal[i] = 2.0 * (eq.below[i] + eq.above[i]);
  }
  return eq;
}

// Elimination without pivoting, in place: every diagonal is at least twice its neighbours' sum, or alone.
void solve(const ThreeMoments& eq, std::span<double> right) {
  const std::size_t n = right.size();
  std::vector<double> above(n);
  for (std::size_t i = 0; i < n; ++i) {
    const double pivot = eq.diagonal[i] - (i > 0 ? eq.below[i] * above[i - 1] : 0.0);
    above[i] = eq.above[i] / pivot;
    right[i] = (right[i] - (i > 0 ? eq.below[i] * right[i - 1] : 0.0)) / pivot;
  }
  for (std::size_t i = n - 1; i-- > 0;) right[i] -= above[i] * right[i + 1];
}

std::vector<double> inverse_of(const std::vector<double>& supports) {
  const ThreeMoments eq = equations_of(supports);
  const std::size_t n = supports.size();
  std::vector<double> inverse(n * n, 0.0);
  for (std::size_t column = 0; column < n; ++column) {
    inverse[column * n + column] = 1.0;
    solve(eq, {inverse.data() + column * n, n});
  }
  return inverse;
}

// What one load brings to the right side of at most two equations.
struct RightSide {
  std::size_t row = 0;
  double value = 0.0;
};

std::array<RightSide, 2> right_side(const std::vector<double>& supports, std::size_t stretch, const PointLoad& load) {
  const std::size_t last = supports.size() - 1;
  if (stretch == 0) return {{{0, -load.force * (supports.front() - load.at)}, {}}};
  if (stretch > last) return {{{last, -load.force * (load.at - supports.back())}, {}}};
  const double a = load.at - supports[stretch - 1], b = supports[stretch] - load.at, length = a + b;
  const double left = -load.force * b * (length * length - b * b) / length;
  const double right = -load.force * a * (length * length - a * a) / length;
  return {{{stretch - 1, stretch > 1 ? left : 0.0}, {stretch, stretch < last ? right : 0.0}}};
}

// Deflection, slope, moment and shear of two solutions added, at the same place.
BeamPiece sum(BeamPiece a, const BeamPiece& b) {
  a.deflection += b.deflection;
  a.slope += b.slope;
  a.moment += b.moment;
  a.shear += b.shear;
  return a;
}

// The left ends of what lies between two places: of the pieces there, and the loads.
std::vector<double> cuts_of(std::span<const BeamPiece> pieces, Interval within, std::span<const PointLoad> loads) {
  std::vector<double> cuts;
  for (const BeamPiece& piece : pieces) cuts.push_back(piece.from);
  for (const PointLoad& load : loads)
    if (load.at > within.lo && load.at < within.hi) cuts.push_back(load.at);
  std::sort(cuts.begin(), cuts.end());
  cuts.erase(std::unique(cuts.begin(), cuts.end()), cuts.end());
  return cuts;
}

double force_at(std::span<const PointLoad> loads, double at) {
  double force = 0.0;
  for (const PointLoad& load : loads)
    if (load.at == at) force += load.force;
  return force;
}

// States of the point loads alone at a stretch's left end, just behind a load that stands there.

// The left overhang is bent by its loads and turns with the support, where `slope` is that of the first span.
BeamPiece left_overhang_state(const Beam& beam, std::span<const PointLoad> loads, double slope) {
  BeamPiece state;
  state.from = beam.ends.lo;
  state.slope = slope;
  state.shear = -force_at(loads, state.from);
  const double root = beam.supports.front(), length = root - state.from;
  double drop = 0.0;
  for (const PointLoad& load : loads) {
    const double arm = std::max(0.0, root - load.at);
    state.slope -= load.force * arm * arm / (2 * beam.stiffness);
    drop += load.force * arm * arm * arm / (6 * beam.stiffness);
  }
  state.deflection = -state.slope * length - drop;
  return state;
}

BeamPiece right_overhang_state(const Beam& beam, std::span<const PointLoad> loads, double slope) {
  BeamPiece state;
  state.from = beam.supports.back();
  state.slope = slope;
  for (const PointLoad& load : loads) {
    if (load.at <= state.from) continue;
    state.shear += load.force;
    state.moment -= load.force * (load.at - state.from);
  }
  return state;
}

// A span with these moments over its supports.
BeamPiece span_state(const Beam& beam, Interval span, std::span<const PointLoad> loads, double left, double right) {
  const double length = span.length();
  BeamPiece state;
  state.from = span.lo;
  state.moment = left;
  state.shear = (right - left) / length;
  double turn = length * (2 * left + right) / 6;
  for (const PointLoad& load : loads) {
    if (load.at <= span.lo || load.at >= span.hi) continue;  // over a support it goes straight down
    const double b = span.hi - load.at;
    state.shear += load.force * b / length;
    turn += load.force * b * (length * length - b * b) / (6 * length);
  }
  state.slope = turn / beam.stiffness;
  return state;
}

// Takes the state of the point loads on to `at`, just before a load that stands there.
BeamPiece taken_to(BeamPiece state, double at, std::span<const PointLoad> loads, double stiffness) {
  for (const double cut : cuts_of({}, {state.from, at}, loads)) {
    state = advanced(state, cut - state.from, stiffness);
    state.shear -= force_at(loads, cut);
  }
  return advanced(state, at - state.from, stiffness);
}

double greatest_sagging(const BeamPeaks& own, double left, double right) {
  return std::max(0.0, own.sagging.value + std::max(left, right));
}

}  // namespace

Influence::Influence(const Beam& beam) : beam_(beam), own_(solve_beam(beam, {})), inverse_(inverse_of(beam.supports)) {
  const std::size_t stretches = beam_.supports.size() + 1;
  std::size_t piece = 0;
  for (std::size_t i = 0; i < stretches; ++i) {
    first_piece_.push_back(piece);
    own_peaks_.emplace_back();
    for (; piece < own_.pieces.size() && (own_.pieces[piece].from < stretch(i).hi || i + 1 == stretches); ++piece)
      raise_moments(own_.pieces[piece], beam_.stiffness, own_peaks_.back());
  }
  first_piece_.push_back(piece);
}

std::size_t Influence::stretch_at(double at) const {
  const std::vector<double>& supports = beam_.supports;
  if (at == supports.back()) return supports.size() - 1;
  return static_cast<std::size_t>(std::upper_bound(supports.begin(), supports.end(), at) - supports.begin());
}

Interval Influence::stretch(std::size_t i) const {
  return {i > 0 ? beam_.supports[i - 1] : beam_.ends.lo, i < beam_.supports.size() ? beam_.supports[i] : beam_.ends.hi};
}

double Influence::support_moment(std::size_t support, std::span<const PointLoad> loads) const {
  double moment = 0.0;
  for (const PointLoad& load : loads)
    for (const RightSide& side : right_side(beam_.supports, stretch_at(load.at), load))
      moment += inverse_[side.row * beam_.supports.size() + support] * side.value;
  return moment;
}

std::vector<double> Influence::support_moments(std::span<const PointLoad> loads) const {
  const std::size_t n = beam_.supports.size();
  std::vector<double> moments(n, 0.0);
  for (const PointLoad& load : loads)
    for (const RightSide& side : right_side(beam_.supports, stretch_at(load.at), load))
      if (side.value != 0.0)
        for (std::size_t i = 0; i < n; ++i) moments[i] += inverse_[side.row * n + i] * side.value;
  return moments;
}

// Of the point loads alone, just behind the support.
double Influence::shear_right_of(std::size_t support, std::span<const PointLoad> loads) const {
  double shear = 0.0;
  const bool overhang = support + 1 == beam_.supports.size();
  const Interval span = stretch(support + 1);
  for (const PointLoad& load : loads)
    if (stretch_at(load.at) == support + 1)
      shear += load.force * (overhang ? 1.0 : (span.hi - load.at) / span.length());
  if (overhang) return shear;
  return shear + (support_moment(support + 1, loads) - support_moment(support, loads)) / span.length();
}

// Of the point loads alone, just before the support.
double Influence::shear_left_of(std::size_t support, std::span<const PointLoad> loads) const {
  double shear = 0.0;
  const bool overhang = support == 0;
  const Interval span = stretch(support);
  for (const PointLoad& load : loads)
    if (stretch_at(load.at) == support) shear -= load.force * (overhang ? 1.0 : (load.at - span.lo) / span.length());
  if (overhang) return shear;
  return shear + (support_moment(support, loads) - support_moment(support - 1, loads)) / span.length();
}

BeamPiece Influence::left_state(std::size_t i, std::span<const PointLoad> loads) const {
  const std::size_t last = beam_.supports.size() - 1;
  if (i == 0) return left_overhang_state(beam_, loads, left_state(1, loads).slope);
  if (i <= last) return span_state(beam_, stretch(i), loads, support_moment(i - 1, loads), support_moment(i, loads));
  const BeamPiece end = taken_to(left_state(last, loads), beam_.supports.back(), loads, beam_.stiffness);
  return right_overhang_state(beam_, loads, end.slope);
}

BeamPiece Influence::point_state(double at, std::span<const PointLoad> loads) const {
  return taken_to(left_state(stretch_at(at), loads), at, loads, beam_.stiffness);
}

double Influence::moment(double at, std::span<const PointLoad> loads) const {
  return moment_at(own_, at) + point_state(at, loads).moment;
}

double Influence::deflection(double at, std::span<const PointLoad> loads) const {
  return deflection_at(own_, at) + point_state(at, loads).deflection;
}

double Influence::reaction(std::size_t support, std::span<const PointLoad> loads) const {
  return own_.reactions[support] + shear_right_of(support, loads) - shear_left_of(support, loads);
}

// `state` is that of the point loads at the stretch's left end.
void Influence::raise_stretch(std::size_t i, std::span<const PointLoad> loads, BeamPiece state,
                              BeamPeaks& peaks) const {
  const std::span<const BeamPiece> own{own_.pieces.data() + first_piece_[i], first_piece_[i + 1] - first_piece_[i]};
  const std::vector<double> cuts = cuts_of(own, stretch(i), loads);
  std::size_t under = 0;
  for (std::size_t c = 0; c < cuts.size(); ++c) {
    state = advanced(state, cuts[c] - state.from, beam_.stiffness);
    if (cuts[c] > stretch(i).lo) state.shear -= force_at(loads, cuts[c]);
    while (under + 1 < own.size() && own[under + 1].from <= cuts[c]) ++under;
    BeamPiece both = sum(advanced(own[under], cuts[c] - own[under].from, beam_.stiffness), state);
    both.length = (c + 1 < cuts.size() ? cuts[c + 1] : stretch(i).hi) - cuts[c];
    raise_moments(both, beam_.stiffness, peaks);
    raise_deflections(both, beam_.stiffness, peaks);
  }
}

void Influence::raise_unloaded_span(std::size_t i, double left, double right, BeamPeaks& peaks) const {
  const double length = stretch(i).length(), sagging = greatest_sagging(own_peaks_[i], left, right);
  const double hogging = own_peaks_[i].hogging.value + std::max(-left, -right);
  const double down = sagging * length * length / (8 * beam_.stiffness);
  if (sagging <= peaks.sagging.value && hogging <= peaks.hogging.value && down <= peaks.down.value) return;
  raise_stretch(i, {}, span_state(beam_, stretch(i), {}, left, right), peaks);
}

void Influence::raise_peaks(std::span<const PointLoad> loads, BeamPeaks& peaks) const {
  const std::vector<double> moments = support_moments(loads);
  const std::size_t last = beam_.supports.size() - 1;
  std::vector<bool> loaded(last + 2, false);
  loaded.front() = beam_.ends.lo < beam_.supports.front();
  loaded.back() = beam_.ends.hi > beam_.supports.back();
  for (const PointLoad& load : loads) loaded[stretch_at(load.at)] = true;
  for (std::size_t i = 0; i <= last + 1; ++i)  // first where there is most, so that the others are soon passed over
    if (loaded[i]) raise_stretch(i, loads, left_state(i, loads), peaks);
  for (std::size_t i = 1; i <= last; ++i)
    if (!loaded[i]) raise_unloaded_span(i, moments[i - 1], moments[i], peaks);
}

}  // namespace stowpath
