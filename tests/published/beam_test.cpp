#include "sim/loads/beam.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "sim/loads/influence.h"
#include "sim/loads/moving_load.h"
#include "sim/trade/lumber.h"
#include "sim/trade/pipe.h"
#include "sim/trade/section.h"

using namespace stowpath;

namespace {

constexpr double kInch = 0.0254, kPound = 4.4482216152605, kPsi = 6894.757293168;
constexpr double kInchPound = kInch * kPound;

BeamSolution under(const Beam& beam, const std::vector<PointLoad>& loads) { return solve_beam(beam, loads); }

// n equal spans of 1, E I = 1: answers are the coefficients of P L, P L^3 / EI and so on.
Beam spans(int n) {
  Beam beam{{}, {0.0, static_cast<double>(n)}, 1.0, {}};
  for (int i = 0; i <= n; ++i) beam.supports.push_back(i);
  return beam;
}

MovingPeaks one_load_moving(const Beam& beam, Interval travel) {
  const std::vector<PointLoad> group{{0.0, 1.0}};
  return moving_peaks(beam, group, travel);
}

double pipe_stiffness() { return 29e6 * kPsi * 0.3099 * std::pow(kInch, 4); }  // NPS 1-1/2, I as the table prints it

}  // namespace

// Civil Engineering Formulas p. 50 (digilib.universitaspertamina.ac.id), verified: M = Pab/L, greatest deflection
// Pab(a+2b) sqrt(3a(a+2b)) / 27EIL for a > b; under the load P a^2 b^2 / 3EIL, civilengcalculations.com, verified.
TEST_CASE("beam: a simple span under a load anywhere is the book's", "[loads][published]") {
  for (const double a : {0.5, 0.55, 0.7, 0.9, 0.98}) {
    const double b = 1.0 - a;
    const auto solution = under(spans(1), {{a, 1.0}});
    const BeamPeaks peaks = beam_peaks(solution);
    CHECK(peaks.sagging.value == Approx(a * b).epsilon(1e-12));  // closed forms: rounding only, here and below
    CHECK(deflection_at(solution, a) == Approx(a * a * b * b / 3).epsilon(1e-12));
    const double most = a * b * (a + 2 * b) * std::sqrt(3 * a * (a + 2 * b)) / 27;
    CHECK(peaks.down.value == Approx(most).epsilon(1e-12));
    CHECK(peaks.down.at == Approx(std::sqrt(a * (a + 2 * b) / 3)).epsilon(1e-6));  // a flat top: half the digits
  }
}

// AISC 2005, as printed at onlinestructuraldesign.com, verified: two equal loads a from each end.
TEST_CASE("beam: two equal loads set in evenly from both ends are the book's", "[loads][published]") {
  for (const double a : {0.1, 0.25, 0.4}) {
    const auto solution = under(spans(1), {{a, 1.0}, {1 - a, 1.0}});
    CHECK(beam_peaks(solution).sagging.value == Approx(a).epsilon(1e-12));
    CHECK(beam_peaks(solution).down.value == Approx(a * (3 - 4 * a * a) / 24).epsilon(1e-12));
  }
}

// piping-designer.com, two equal spans and a load at any point of one, verified (the page prints R3 without its sign).
TEST_CASE("beam: two equal spans under a load at any point are the book's", "[loads][published]") {
  for (const double a : {0.1, 0.3, 0.43232, 0.5, 0.9}) {
    const double b = 1.0 - a;
    const auto solution = under(spans(2), {{a, 1.0}});
    CHECK(solution.reactions[0] == Approx(b * (4 - a * (1 + a)) / 4).epsilon(1e-12));
    CHECK(solution.reactions[1] == Approx(a * (2 + b * (1 + a)) / 2).epsilon(1e-12));
    CHECK(solution.reactions[2] == Approx(-a * b * (1 + a) / 4).epsilon(1e-12));
    CHECK(moment_at(solution, 1.0) == Approx(-a * b * (1 + a) / 4).epsilon(1e-12));
    CHECK(beam_peaks(solution).sagging.value == Approx(a * b * (4 - a * (1 + a)) / 4).epsilon(1e-12));
  }
}

// Derived; AISC prints 0.203, 0.094 and 0.015 at 0.480 L (from memory).
TEST_CASE("beam: a load at the middle of one of two spans gives 13/64, 3/32 and 0.015012", "[loads][published]") {
  const auto solution = under(spans(2), {{0.5, 1.0}});
  const BeamPeaks peaks = beam_peaks(solution);
  CHECK(peaks.sagging.value == Approx(13.0 / 64).epsilon(1e-12));
  CHECK(peaks.hogging.value == Approx(3.0 / 32).epsilon(1e-12));
  CHECK(solution.reactions[0] == Approx(13.0 / 32).epsilon(1e-12));
  CHECK(solution.reactions[1] == Approx(11.0 / 16).epsilon(1e-12));
  CHECK(solution.reactions[2] == Approx(-3.0 / 32).epsilon(1e-12));
  CHECK(peaks.down.value == Approx(0.015012).margin(5e-7));  // half of the last place given
  CHECK(peaks.down.at == Approx(0.4804).margin(5e-5));
}

// Acceptance test A12: derived from the verified formula above; tolerance 1e-5 as agreed there.
TEST_CASE("beam: a load moving over two equal spans peaks where the closed form does", "[loads][published]") {
  const MovingPeaks peaks = one_load_moving(spans(2), {0.0, 1.0});
  CHECK(peaks.sagging.value == Approx(0.207427).margin(5e-7));
  CHECK(peaks.sagging.position == Approx(0.43232).margin(1e-5));
  CHECK(peaks.hogging.value == Approx(std::sqrt(3.0) / 18).epsilon(1e-10));
  CHECK(peaks.hogging.value == Approx(0.096225).margin(5e-7));
  CHECK(peaks.hogging.position == Approx(0.57735).margin(1e-5));
  CHECK(peaks.down.value == Approx(0.015097).margin(5e-7));
  CHECK(peaks.down.position == Approx(0.469).margin(5e-4));
  CHECK(peaks.down.at == Approx(0.469).margin(5e-4));
}

// Derived, by scanning the three-moment equation.
TEST_CASE("beam: a load moving over three equal spans peaks where the scanned equation does", "[loads][published]") {
  const MovingPeaks end = one_load_moving(spans(3), {0.0, 1.0}), centre = one_load_moving(spans(3), {1.0, 2.0});
  CHECK(end.sagging.value == Approx(0.204915).margin(5e-7));
  CHECK(end.sagging.position == Approx(0.4277).margin(5e-5));
  CHECK(end.hogging.value == Approx(0.102640).margin(5e-7));
  CHECK(end.hogging.position == Approx(0.5774).margin(5e-5));
  CHECK(centre.sagging.value == Approx(0.175).margin(1e-9));
  CHECK(centre.sagging.position == Approx(1.5).margin(1e-5));
  CHECK(centre.hogging.value == Approx(0.080110).margin(5e-7));
  const double from_its_support = std::min(centre.hogging.position - 1.0, 2.0 - centre.hogging.position);
  CHECK(from_its_support == Approx(0.3837).margin(5e-5));
  CHECK(moment_at(under(spans(3), {{1.5, 1.0}}), 1.0) == Approx(-0.075).epsilon(1e-12));
}

// Civil Engineering Formulas p. 96, verified.
TEST_CASE("beam: a spread load over one, two and three spans has the book's coefficients", "[loads][published]") {
  const auto loaded = [](int n) {
    Beam beam = spans(n);
    beam.spread = {{beam.ends, 1.0}};
    return under(beam, {});
  };
  const auto two = loaded(2), three = loaded(3);
  CHECK(two.reactions[0] == Approx(3.0 / 8).epsilon(1e-12));
  CHECK(two.reactions[1] == Approx(5.0 / 4).epsilon(1e-12));
  CHECK(beam_peaks(two).hogging.value == Approx(1.0 / 8).epsilon(1e-12));
  CHECK(beam_peaks(two).sagging.value == Approx(0.0703).margin(5e-5));  // printed with four decimals; 9/128
  CHECK(three.reactions[0] == Approx(0.4).epsilon(1e-12));
  CHECK(three.reactions[1] == Approx(1.1).epsilon(1e-12));
  CHECK(beam_peaks(three).hogging.value == Approx(0.1).epsilon(1e-12));
  CHECK(beam_peaks(three).sagging.value == Approx(0.08).epsilon(1e-12));
  CHECK(moment_at(three, 1.5) == Approx(0.025).epsilon(1e-12));
  CHECK(beam_peaks(loaded(1)).down.value == Approx(5.0 / 384).epsilon(1e-12));  // from memory
}

// AISC's two equal moving loads, from memory and derived: P (L - s/2)^2 / 2L at L/2 - s/4, for s < 0.586 L.
TEST_CASE("beam: two loads that move together peak at the known place", "[loads][published]") {
  for (const double s : {0.1, 0.25, 0.5}) {
    const std::vector<PointLoad> group{{0.0, 1.0}, {s, 1.0}};
    const MovingPeaks peaks = moving_peaks(spans(1), group, {0.0, 1.0 - s});
    CHECK(peaks.sagging.value == Approx(std::pow(1 - s / 2, 2) / 2).epsilon(1e-10));
    const double from_end = std::min(peaks.sagging.at, 1.0 - peaks.sagging.at);
    CHECK(from_end == Approx(0.5 - s / 4).margin(1e-6));  // a flat top: half the digits
  }
}

// Acceptance tests A4 and W5: pipe properties verified (Mott, appendix 16-6), the beam derived; 0.1 % as agreed there.
TEST_CASE("beam: 300 lb in the middle of a six-foot span of 1-1/2 in pipe", "[loads][published]") {
  const Section section = pipe_section(*find_pipe("1-1/2"));
  CHECK(section.second_moment / std::pow(kInch, 4) == Approx(0.3099).epsilon(0.001));
  CHECK(section.modulus / std::pow(kInch, 3) == Approx(0.3262).epsilon(0.001));
  const Beam beam{{0.0, 72 * kInch}, {0.0, 72 * kInch}, kSteelElasticity * section.second_moment, {}};
  const BeamPeaks peaks = beam_peaks(under(beam, {{36 * kInch, 300 * kPound}}));
  CHECK(peaks.sagging.value / kInchPound == Approx(5400.0).epsilon(1e-9));
  CHECK(peaks.sagging.value / section.modulus / kPsi == Approx(16'554).epsilon(0.001));
  CHECK(peaks.down.value / kInch == Approx(0.2596).epsilon(0.001));
}

// W30, derived; 0.05 % as agreed there.
TEST_CASE("beam: 1-1/2 in pipe under 300 lb moving, set off the middle, or on two hooks", "[loads][published]") {
  const double span = 72 * kInch;
  const Beam two{{0.0, span, 2 * span}, {0.0, 2 * span}, pipe_stiffness(), {}};
  const std::vector<PointLoad> person{{0.0, 300 * kPound}};
  const MovingPeaks rolling = moving_peaks(two, person, two.ends);
  CHECK(rolling.sagging.value / kInchPound == Approx(4480.4).epsilon(5e-4));
  CHECK(rolling.hogging.value / kInchPound == Approx(2078.5).epsilon(5e-4));

  const Beam one{{0.0, span}, {0.0, span}, pipe_stiffness(), {}};
  const std::vector<PointLoad> hooks{{0.0, 150 * kPound}, {18 * kInch, 150 * kPound}};
  const MovingPeaks pair = moving_peaks(one, hooks, {0.0, span - 18 * kInch});
  CHECK(pair.sagging.value / kInchPound == Approx(4134.38).epsilon(5e-4));
  CHECK(std::min(pair.sagging.at, span - pair.sagging.at) / kInch == Approx(31.5).epsilon(5e-4));

  const auto off = under(one, {{30 * kInch, 300 * kPound}});
  CHECK(beam_peaks(off).sagging.value / kInchPound == Approx(5250.0).epsilon(5e-4));
  CHECK(beam_peaks(off).down.value / kInch == Approx(0.250185).epsilon(5e-4));
  CHECK(deflection_at(off, 30 * kInch) / kInch == Approx(0.245352).epsilon(5e-4));
}

// W2, derived: section verified (PS 20), C_F verified (NELMA), F_b from memory; 0.1 % as agreed there.
TEST_CASE("beam: a 2x8 stringer of Douglas Fir-Larch No. 2 may carry 14,192 in-lb", "[loads][published]") {
  const DressedSize size = dressed_size("2x8").value();
  const double value = bending_value(*find_species("DF-L"), size.width);
  CHECK(value / kPsi == Approx(1080.0).epsilon(0.001));
  const double moment = value * rectangle_section(size.thickness, size.width).modulus;
  CHECK(moment / kInchPound == Approx(14'192).epsilon(0.001));
  CHECK(moment == Approx(1603).epsilon(0.001));
}

// S-BM-ss-any (Civil Engineering Formulas p. 50, verified): as a load moves, the moment at a place a of a simple span
// is greatest when the load stands there, Pab/L. S-BM-2any (piping-designer.com, verified) gives the moment over the
// middle of two spans; its greatest, sqrt(3)/18 at 0.57735 L, is S-BM-2mv, derived.
TEST_CASE("beam: moments at one place under a moving load are the book's", "[loads][published]") {
  const std::vector<PointLoad> one{{0.0, 1.0}};
  for (const double a : {0.1, 0.3, 0.5, 0.8}) {
    const MovingMoments simple = moving_moments(Influence(spans(1)), one, {0.0, 1.0}, a);
    CHECK(simple.sagging.value == Approx(a * (1 - a)).epsilon(1e-12));  // closed forms: rounding only
    CHECK(simple.sagging.position == Approx(a).epsilon(1e-12));
    CHECK(simple.hogging.value == 0.0);
  }
  const MovingMoments middle = moving_moments(Influence(spans(2)), one, {0.0, 2.0}, 1.0);
  CHECK(middle.hogging.value == Approx(std::sqrt(3.0) / 18).epsilon(1e-12));
  CHECK(std::min(middle.hogging.position, 2.0 - middle.hogging.position) == Approx(std::sqrt(1.0 / 3)).margin(1e-7));
  CHECK(middle.sagging.value == Approx(0.0).margin(1e-15));
}

// S-BM-2any, S-BM-3mv and S-BM-udl through the influence lines: a second way to the same rows.
TEST_CASE("beam: influence lines give the book's reactions and moments", "[loads][published]") {
  for (const double a : {0.1, 0.43232, 0.5, 0.9}) {
    const double b = 1.0 - a;
    const std::vector<PointLoad> load{{a, 1.0}};
    const Influence two(spans(2));
    CHECK(two.reaction(0, load) == Approx(b * (4 - a * (1 + a)) / 4).epsilon(1e-12));
    CHECK(two.reaction(1, load) == Approx(a * (2 + b * (1 + a)) / 2).epsilon(1e-12));
    CHECK(two.reaction(2, load) == Approx(-a * b * (1 + a) / 4).epsilon(1e-12));
    CHECK(two.moment(a, load) == Approx(a * b * (4 - a * (1 + a)) / 4).epsilon(1e-12));
  }
  const std::vector<PointLoad> one{{0.0, 1.0}};
  CHECK(moving_moments(Influence(spans(3)), one, {0.0, 1.0}, 1.0).hogging.value == Approx(0.102640).margin(5e-7));
  CHECK(moving_moments(Influence(spans(3)), one, {1.0, 2.0}, 1.0).hogging.value == Approx(0.080110).margin(5e-7));
  Beam loaded = spans(3);
  loaded.spread = {{loaded.ends, 1.0}};
  CHECK(Influence(loaded).reaction(1, {}) == Approx(1.1).epsilon(1e-12));
  CHECK(Influence(loaded).moment(1.0, {}) == Approx(-0.1).epsilon(1e-12));
}

// Of two spans with one moving load no support is pressed by more than the load; the far end is lifted by at most
// 0.096225 P: S-BM-2any's R3 with S-BM-2mv's place.
TEST_CASE("beam: a far support must hold down what the closed form says", "[loads][published]") {
  const MovingPeaks peaks = one_load_moving(spans(2), {0.0, 1.0});
  CHECK(peaks.hold[2].value == Approx(std::sqrt(3.0) / 18).epsilon(1e-12));
  CHECK(peaks.hold[0].value == 0.0);
  CHECK(peaks.press[1].value == Approx(1.0).epsilon(1e-12));
}

// S-thread, ASME B1.20.1: pitch and thread depth as unifiedalloys.com/p/pipe-threads prints them in inches, verified.
// What is left of the section is derived: 0.44 for NPS 1, 0.50 for NPS 1-1/2, 0.53 for NPS 2.
TEST_CASE("pipe: threads are those of the published table and leave about half of the section", "[trade][published]") {
  struct Row {
    double outside, pitch, depth;
  };
  const std::vector<Row> rows{{0.405, 0.03704, 0.02963}, {0.540, 0.05556, 0.04444}, {0.675, 0.05556, 0.04444},
                              {0.840, 0.07143, 0.05714}, {1.050, 0.07143, 0.05714}, {1.315, 0.08696, 0.06957},
                              {1.660, 0.08696, 0.06957}, {1.900, 0.08696, 0.06957}, {2.375, 0.08696, 0.06957},
                              {2.875, 0.12500, 0.10000}, {3.500, 0.12500, 0.10000}};
  for (const Row& row : rows) {
    const PipeThread thread = pipe_thread(row.outside * kInch);
    CHECK(thread.pitch / kInch == Approx(row.pitch).margin(5e-6));  // half of the last place printed
    CHECK(thread.depth / kInch == Approx(row.depth).margin(1.1e-5));
    CHECK(thread.source.status == SourceStatus::verified);
  }
  const auto left = [](const char* name) {
    const PipeSize& pipe = *find_pipe(name);
    return threaded_section(pipe.outside_diameter, pipe.wall)->modulus / pipe_section(pipe).modulus;
  };
  CHECK(left("1") == Approx(0.441).margin(5e-4));
  CHECK(left("1-1/2") == Approx(0.495).margin(5e-4));
  CHECK(left("2") == Approx(0.528).margin(5e-4));
  CHECK_FALSE(threaded_section(0.0334, 0.0017));  // thinner than the thread is deep
}
