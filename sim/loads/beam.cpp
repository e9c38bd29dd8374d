#include "sim/loads/beam.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

namespace stowpath {

namespace {

void refuse_unless(bool holds, const char* problem) {
  if (!holds) throw std::invalid_argument(problem);
}

bool finite(Interval i) { return std::isfinite(i.lo) && std::isfinite(i.hi); }

void check(const Beam& beam, std::span<const PointLoad> loads) {
  refuse_unless(beam.supports.size() >= 2, "solve_beam: a beam needs two supports");
  refuse_unless(
      finite(beam.ends) && beam.ends.contains(beam.supports.front()) && beam.ends.contains(beam.supports.back()),
      "solve_beam: a support is beyond the beam's ends");
  for (std::size_t i = 1; i < beam.supports.size(); ++i)
    refuse_unless(beam.supports[i] > beam.supports[i - 1], "solve_beam: the supports do not ascend");
  refuse_unless(beam.stiffness > 0.0 && std::isfinite(beam.stiffness), "solve_beam: the stiffness is not positive");
  for (const SpreadLoad& spread : beam.spread)
    refuse_unless(finite(spread.at) && std::isfinite(spread.per_length), "solve_beam: a spread load is not finite");
  for (const PointLoad& load : loads)
    refuse_unless(beam.ends.contains(load.at) && std::isfinite(load.force), "solve_beam: a load is off the beam");
}

// One span or overhang with what stands on it, measured from its left end. A load on a support belongs to none.
struct Stretch {
  double from = 0.0, length = 0.0;
  std::vector<PointLoad> points;
  std::vector<SpreadLoad> spread;
};

Stretch stretch_of(const Beam& beam, std::span<const PointLoad> loads, Interval at) {
  Stretch stretch{at.lo, at.length(), {}, {}};
  const auto supported = [&](double x) { return std::binary_search(beam.supports.begin(), beam.supports.end(), x); };
  for (const PointLoad& load : loads)
    if (at.contains(load.at) && !supported(load.at)) stretch.points.push_back({load.at - at.lo, load.force});
  std::sort(stretch.points.begin(), stretch.points.end(),
            [](const PointLoad& a, const PointLoad& b) { return a.at < b.at; });
  for (const SpreadLoad& spread : beam.spread) {
    const Interval common = meet(spread.at, at);
    if (common.length() > 0.0) stretch.spread.push_back({common + -at.lo, spread.per_length});
  }
  return stretch;
}

double weight(const Stretch& stretch) {
  double sum = 0.0;
  for (const PointLoad& load : stretch.points) sum += load.force;
  for (const SpreadLoad& spread : stretch.spread) sum += spread.per_length * spread.at.length();
  return sum;
}

// Of everything on the stretch about its left end.
double moment_of_loads(const Stretch& stretch) {
  double sum = 0.0;
  for (const PointLoad& load : stretch.points) sum += load.force * load.at;
  for (const SpreadLoad& spread : stretch.spread) sum += spread.per_length * spread.at.length() * spread.at.middle();
  return sum;
}

// Moments at both ends of a span that cannot turn there; a spread load is the integral of point loads.
struct FixedEnds {
  double left = 0.0, right = 0.0;
};

FixedEnds fixed_ends(const Stretch& span) {
  const double length = span.length, square = length * length;
  FixedEnds fixed;
  for (const PointLoad& load : span.points) {
    const double a = load.at, b = length - a;
    fixed.left -= load.force * a * b * b / square;
    fixed.right -= load.force * a * a * b / square;
  }
  const auto left = [&](double x) { return x * x * (square / 2 - 2 * length * x / 3 + x * x / 4) / square; };
  const auto right = [&](double x) { return x * x * x * (length / 3 - x / 4) / square; };
  for (const SpreadLoad& spread : span.spread) {
    fixed.left -= spread.per_length * (left(spread.at.hi) - left(spread.at.lo));
    fixed.right -= spread.per_length * (right(spread.at.hi) - right(spread.at.lo));
  }
  return fixed;
}

struct Layout {
  Stretch left, right;
  std::vector<Stretch> spans;
  std::vector<FixedEnds> fixed;
};

Layout lay_out(const Beam& beam, std::span<const PointLoad> loads) {
  Layout layout;
  layout.left = stretch_of(beam, loads, {beam.ends.lo, beam.supports.front()});
  layout.right = stretch_of(beam, loads, {beam.supports.back(), beam.ends.hi});
  for (std::size_t i = 0; i + 1 < beam.supports.size(); ++i) {
    layout.spans.push_back(stretch_of(beam, loads, {beam.supports[i], beam.supports[i + 1]}));
    layout.fixed.push_back(fixed_ends(layout.spans.back()));
  }
  return layout;
}

double left_end_moment(const Layout& layout) {
  return moment_of_loads(layout.left) - weight(layout.left) * layout.left.length;
}

double right_end_moment(const Layout& layout) { return -moment_of_loads(layout.right); }

// The symmetric matrix of three diagonals and its right side, in rotations times E I.
struct Equations {
  std::vector<double> diagonal, beside, right;
};

Equations equations_of(const Layout& layout) {
  const std::size_t n = layout.spans.size() + 1;
  Equations eq{std::vector<double>(n), std::vector<double>(n - 1), std::vector<double>(n)};
  for (std::size_t i = 0; i + 1 < n; ++i) {
    const double length = layout.spans[i].length;
    eq.diagonal[i] += 4.0 / length;
    eq.diagonal[i + 1] += 4.0 / length;
    eq.beside[i] = 2.0 / length;
    eq.right[i] -= layout.fixed[i].left;
    eq.right[i + 1] += layout.fixed[i].right;
  }
  eq.right.front() += left_end_moment(layout);
  eq.right.back() -= right_end_moment(layout);
  return eq;
}

// Elimination without pivoting: the diagonal dominates by a factor of two.
std::vector<double> solve(Equations eq) {
  const std::size_t n = eq.diagonal.size();
  for (std::size_t i = 1; i < n; ++i) {
    const double share = eq.beside[i - 1] / eq.diagonal[i - 1];
    eq.diagonal[i] -= share * eq.beside[i - 1];
    eq.right[i] -= share * eq.right[i - 1];
  }
  std::vector<double> turns(n);
  for (std::size_t i = n; i-- > 0;) {
    const double known = i + 1 < n ? eq.beside[i] * turns[i + 1] : 0.0;
    turns[i] = (eq.right[i] - known) / eq.diagonal[i];
  }
  return turns;
}

std::vector<double> cuts_of(const Stretch& stretch) {
  std::vector<double> cuts{0.0, stretch.length};
  for (const PointLoad& load : stretch.points) cuts.push_back(load.at);
  for (const SpreadLoad& spread : stretch.spread) {
    cuts.push_back(spread.at.lo);
    cuts.push_back(spread.at.hi);
  }
  std::sort(cuts.begin(), cuts.end());
  cuts.erase(std::unique(cuts.begin(), cuts.end()), cuts.end());
  return cuts;
}

double load_just_at(const Stretch& stretch, double at) {
  double sum = 0.0;
  for (const PointLoad& load : stretch.points)
    if (load.at == at) sum += load.force;
  return sum;
}

double spread_over(const Stretch& stretch, Interval at) {
  double sum = 0.0;
  for (const SpreadLoad& spread : stretch.spread)
    if (spread.at.contains(at.middle())) sum += spread.per_length;
  return sum;
}

// Appends the stretch's pieces; `state` holds what is at its left end, and then what is at its right end.
void march(const Stretch& stretch, BeamPiece& state, BeamSolution& out) {
  const std::vector<double> cuts = cuts_of(stretch);
  for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
    state.from = stretch.from + cuts[i];
    state.shear -= load_just_at(stretch, cuts[i]);
    state.length = cuts[i + 1] - cuts[i];
    state.per_length = spread_over(stretch, {cuts[i], cuts[i + 1]});
    out.pieces.push_back(state);
    state = advanced(state, state.length, out.stiffness);
  }
}

// The left overhang hangs on the first support's place and turn: march it level first, then turn it into place.
double march_left_overhang(const Stretch& stretch, double turn, BeamSolution& out) {
  if (!(stretch.length > 0.0)) return 0.0;
  BeamPiece state;
  march(stretch, state, out);
  const double slope = turn - state.slope, shift = -state.deflection - slope * stretch.length;
  for (BeamPiece& piece : out.pieces) {
    piece.deflection += shift + slope * (piece.from - stretch.from);
    piece.slope += slope;
  }
  return state.shear;
}

BeamPiece left_of_span(const Stretch& span, FixedEnds fixed, double turn, double next_turn) {
  const double left = (4 * turn + 2 * next_turn) / span.length + fixed.left;
  const double right = -(2 * turn + 4 * next_turn) / span.length + fixed.right;
  BeamPiece state;
  state.moment = left;
  state.shear = (right - left + weight(span) * span.length - moment_of_loads(span)) / span.length;
  return state;
}

void add_support_loads(const Beam& beam, std::span<const PointLoad> loads, std::vector<double>& reactions) {
  for (std::size_t i = 0; i < beam.supports.size(); ++i)
    for (const PointLoad& load : loads)
      if (load.at == beam.supports[i]) reactions[i] += load.force;
}

const BeamPiece& piece_at(const BeamSolution& solution, double at) {
  const auto after = std::upper_bound(solution.pieces.begin(), solution.pieces.end(), at,
                                      [](double x, const BeamPiece& piece) { return x < piece.from; });
  return after == solution.pieces.begin() ? *after : *(after - 1);
}

BeamPiece state_at(const BeamSolution& solution, double at) {
  const BeamPiece& piece = piece_at(solution, at);
  return advanced(piece, std::clamp(at - piece.from, 0.0, piece.length), solution.stiffness);
}

void raise(BeamPeak& peak, double value, double at) {
  if (value > peak.value) peak = {value, at};
}

// Where the slope passes zero between two places between which it only rises or only falls.
double level_place(const BeamPiece& piece, double lo, double hi, double stiffness) {
  const bool rising = advanced(piece, hi, stiffness).slope > advanced(piece, lo, stiffness).slope;
  for (int i = 0; i < 100 && hi - lo > 0.0; ++i) {
    const double middle = 0.5 * (lo + hi);
    if (middle <= lo || middle >= hi) break;
    const bool before = (advanced(piece, middle, stiffness).slope < 0.0) == rising;
    (before ? lo : hi) = middle;
  }
  return 0.5 * (lo + hi);
}

// The places within the piece where the moment is zero, framed by its ends: in between the slope is monotone.
std::array<double, 4> moment_zeros(const BeamPiece& piece) {
  std::array<double, 4> places{0.0, 0.0, piece.length, piece.length};
  const double a = -piece.per_length / 2, b = piece.shear, c = piece.moment;
  const double root = std::sqrt(std::max(0.0, b * b - 4 * a * c));
  const double q = -0.5 * (b + (b < 0.0 ? -root : root));
  const auto inside = [&](double x) { return std::isfinite(x) ? std::clamp(x, 0.0, piece.length) : 0.0; };
  places[1] = inside(a != 0.0 ? q / a : 0.0);
  places[2] = inside(q != 0.0 ? c / q : 0.0);
  if (places[1] > places[2]) std::swap(places[1], places[2]);
  return places;
}

}  // namespace

BeamPiece advanced(const BeamPiece& piece, double s, double stiffness) {
  BeamPiece next = piece;
  const double q = piece.per_length;
  next.from = piece.from + s;
  next.shear = piece.shear - q * s;
  next.moment = piece.moment + s * (piece.shear - q * s / 2);
  next.slope = piece.slope - s * (piece.moment + s * (piece.shear / 2 - q * s / 6)) / stiffness;
  next.deflection =
      piece.deflection + s * (piece.slope - s * (piece.moment / 2 + s * (piece.shear / 6 - q * s / 24)) / stiffness);
  return next;
}

void raise_deflections(const BeamPiece& piece, double stiffness, BeamPeaks& peaks) {
  const auto look = [&](double s) {
    const double y = advanced(piece, s, stiffness).deflection;
    raise(peaks.down, y, piece.from + s);
    raise(peaks.up, -y, piece.from + s);
  };
  const auto places = moment_zeros(piece);
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    look(places[i]);
    if (places[i + 1] > places[i]) look(level_place(piece, places[i], places[i + 1], stiffness));
  }
  look(piece.length);
}

void raise_moments(const BeamPiece& piece, double stiffness, BeamPeaks& peaks) {
  const double level = piece.per_length != 0.0 ? piece.shear / piece.per_length : 0.0;
  for (const double s : {0.0, std::clamp(level, 0.0, piece.length), piece.length}) {
    const BeamPiece state = advanced(piece, s, stiffness);
    raise(peaks.sagging, state.moment, state.from);
    raise(peaks.hogging, -state.moment, state.from);
    raise(peaks.shear, std::abs(state.shear), state.from);
  }
}

BeamSolution solve_beam(const Beam& beam, std::span<const PointLoad> loads) {
  check(beam, loads);
  const Layout layout = lay_out(beam, loads);
  const std::vector<double> turns = solve(equations_of(layout));  // times E I
  BeamSolution out{beam.stiffness, {}, std::vector<double>(beam.supports.size())};
  double shear = march_left_overhang(layout.left, turns.front() / beam.stiffness, out);
  for (std::size_t i = 0; i < layout.spans.size(); ++i) {
    BeamPiece state = left_of_span(layout.spans[i], layout.fixed[i], turns[i], turns[i + 1]);
    state.slope = turns[i] / beam.stiffness;
    out.reactions[i] = state.shear - shear;
    march(layout.spans[i], state, out);
    shear = state.shear;
  }
  out.reactions.back() = weight(layout.right) - shear;
  if (layout.right.length > 0.0) {
    BeamPiece state{0, 0, 0, turns.back() / beam.stiffness, right_end_moment(layout), weight(layout.right), 0};
    march(layout.right, state, out);
  }
  add_support_loads(beam, loads, out.reactions);
  return out;
}

double moment_at(const BeamSolution& solution, double at) { return state_at(solution, at).moment; }
double shear_at(const BeamSolution& solution, double at) { return state_at(solution, at).shear; }
double slope_at(const BeamSolution& solution, double at) { return state_at(solution, at).slope; }
double deflection_at(const BeamSolution& solution, double at) { return state_at(solution, at).deflection; }

BeamPeaks beam_peaks(const BeamSolution& solution) {
  BeamPeaks peaks;
  for (const BeamPiece& piece : solution.pieces) {
    raise_moments(piece, solution.stiffness, peaks);
    raise_deflections(piece, solution.stiffness, peaks);
  }
  return peaks;
}

}  // namespace stowpath
