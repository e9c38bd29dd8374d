#include "tests/support/dense_beam.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "tests/support/solve_dense.h"

namespace stowpath::testing {

namespace {

std::vector<double> nodes_of(const Beam& beam, const std::vector<PointLoad>& loads) {
  std::vector<double> nodes{beam.ends.lo, beam.ends.hi};
  nodes.insert(nodes.end(), beam.supports.begin(), beam.supports.end());
  for (const PointLoad& load : loads) nodes.push_back(load.at);
  for (const SpreadLoad& spread : beam.spread)
    for (const double edge : {spread.at.lo, spread.at.hi})
      nodes.push_back(std::clamp(edge, beam.ends.lo, beam.ends.hi));
  std::sort(nodes.begin(), nodes.end());
  nodes.erase(std::unique(nodes.begin(), nodes.end()), nodes.end());
  return nodes;
}

double per_length(const Beam& beam, double middle) {
  double sum = 0.0;
  for (const SpreadLoad& spread : beam.spread)
    if (spread.at.contains(middle)) sum += spread.per_length;
  return sum;
}

using Element = std::array<std::array<double, 4>, 4>;

// Of deflection down and turn (its slope) at the left and the right node.
Element element(double length, double stiffness) {
  const double a = 12 * stiffness / (length * length * length), b = 6 * stiffness / (length * length);
  const double c = 4 * stiffness / length, d = 2 * stiffness / length;
  return {{{a, b, -a, b}, {b, c, -b, d}, {-a, -b, a, -b}, {b, d, -b, c}}};
}

std::array<double, 4> element_load(double length, double q) {
  return {q * length / 2, q * length * length / 12, q * length / 2, -q * length * length / 12};
}

void assemble(const Beam& beam, const std::vector<double>& nodes, Matrix& m) {
  const std::size_t last = m.size();
  for (std::size_t i = 0; i + 1 < nodes.size(); ++i) {
    const double length = nodes[i + 1] - nodes[i];
    const Element k = element(length, beam.stiffness);
    const auto f = element_load(length, per_length(beam, 0.5 * (nodes[i] + nodes[i + 1])));
    for (std::size_t r = 0; r < 4; ++r) {
      for (std::size_t c = 0; c < 4; ++c) m[2 * i + r][2 * i + c] += k[r][c];
      m[2 * i + r][last] += f[r];
    }
  }
}

std::size_t node_at(const std::vector<double>& nodes, double at) {
  return static_cast<std::size_t>(std::lower_bound(nodes.begin(), nodes.end(), at) - nodes.begin());
}

// The moment at an element's right end: what its right node's turn gets from it, with the sign of sagging.
double right_moment(const Beam& beam, const std::vector<double>& nodes, const std::vector<double>& u, std::size_t i) {
  const double length = nodes[i + 1] - nodes[i];
  const Element k = element(length, beam.stiffness);
  double sum = -element_load(length, per_length(beam, 0.5 * (nodes[i] + nodes[i + 1])))[3];
  for (std::size_t c = 0; c < 4; ++c) sum += k[3][c] * u[2 * i + c];
  return -sum;
}

// 6 / L times the first moment, about a span's far end, of its simple-beam moments. Each is a cubic at most between
// cuts, so Simpson's rule is exact.
double diagram(const Beam& beam, const std::vector<PointLoad>& loads, Interval span, bool from_left) {
  const auto simple = solve_beam({{span.lo, span.hi}, span, 1.0, beam.spread}, [&] {
    std::vector<PointLoad> on;
    for (const PointLoad& load : loads)
      if (span.contains(load.at)) on.push_back(load);
    return on;
  }());
  double sum = 0.0;
  for (const BeamPiece& piece : simple.pieces) {
    const auto term = [&](double x) { return moment_at(simple, x) * (from_left ? x - span.lo : span.hi - x); };
    const double x = piece.from, h = piece.length;
    sum += h / 6 * (term(x) + 4 * term(x + h / 2) + term(x + h));
  }
  return 6.0 * sum / span.length();
}

double overhang_moment(const Beam& beam, const std::vector<PointLoad>& loads, Interval overhang, double root) {
  double moment = 0.0;
  for (const PointLoad& load : loads)
    if (overhang.contains(load.at)) moment -= load.force * std::abs(load.at - root);
  for (const SpreadLoad& spread : beam.spread) {
    const Interval on = meet(spread.at, overhang);
    if (on.length() > 0.0) moment -= spread.per_length * on.length() * std::abs(on.middle() - root);
  }
  return moment;
}

}  // namespace

DenseBeam dense_beam(const Beam& beam, const std::vector<PointLoad>& loads) {
  DenseBeam out;
  out.nodes = nodes_of(beam, loads);
  const std::size_t n = 2 * out.nodes.size();
  Matrix free(n, std::vector<double>(n + 1, 0.0));
  assemble(beam, out.nodes, free);
  for (const PointLoad& load : loads) free[2 * node_at(out.nodes, load.at)][n] += load.force;
  Matrix held = free;
  for (const double support : beam.supports) {
    auto& row = held[2 * node_at(out.nodes, support)];
    std::fill(row.begin(), row.end(), 0.0);
    row[2 * node_at(out.nodes, support)] = 1.0;
  }
  const std::vector<double> u = solve_dense(held);
  for (std::size_t i = 0; i < out.nodes.size(); ++i) {
    out.deflections.push_back(u[2 * i]);
    out.moments.push_back(i == 0 ? 0.0 : right_moment(beam, out.nodes, u, i - 1));
  }
  for (const double support : beam.supports) {
    const auto& row = free[2 * node_at(out.nodes, support)];
    double force = row[n];
    for (std::size_t c = 0; c < n; ++c) force -= row[c] * u[c];
    out.reactions.push_back(force);
  }
  return out;
}

std::vector<double> three_moments_overhung(const Beam& beam, const std::vector<PointLoad>& loads) {
  const std::vector<double>& s = beam.supports;
  const std::size_t n = s.size();
  Matrix m(n, std::vector<double>(n + 1));
  m.front().front() = m.back()[n - 1] = 1.0;
  m.front()[n] = overhang_moment(beam, loads, {beam.ends.lo, s.front()}, s.front());
  m.back()[n] = overhang_moment(beam, loads, {s.back(), beam.ends.hi}, s.back());
  for (std::size_t i = 1; i + 1 < n; ++i) {
    m[i][i - 1] = s[i] - s[i - 1];
    m[i][i] = 2.0 * (s[i + 1] - s[i - 1]);
    m[i][i + 1] = s[i + 1] - s[i];
    m[i][n] = -diagram(beam, loads, {s[i - 1], s[i]}, true) - diagram(beam, loads, {s[i], s[i + 1]}, false);
  }
  return solve_dense(m);
}

}  // namespace stowpath::testing
