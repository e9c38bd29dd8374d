#include "tests/support/pair_draw.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <random>

#include "tests/support/slow_motion.h"

namespace stowpath::testing {
namespace {

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : random_(static_cast<std::mt19937::result_type>(seed ^ (seed >> 32))) {}

  double uniform(double lo, double hi) { return std::uniform_real_distribution<double>(lo, hi)(random_); }
  bool chance(double share) { return uniform(0.0, 1.0) < share; }
  int below(int n) { return std::min(n - 1, static_cast<int>(uniform(0.0, n))); }
  double decades(double lo, double hi) { return std::pow(10.0, uniform(lo, hi)); }
  double either_way(double size) { return chance(0.5) ? size : -size; }
  Vec2 direction() {
    const double angle = uniform(0.0, 2.0 * std::numbers::pi);
    return {std::cos(angle), std::sin(angle)};
  }

  /// A step in a random direction.
  Vec2 step(double length) { return length * direction(); }

  PairDraw pair();

 private:
  void linkage();
  void motion();
  void drag();
  void rails();
  RoundedPolygon polygon(Vec2 centre, double size, double flatness);
  RoundedPolygon shape(Vec2 centre);
  std::vector<Interval> stretches(double middle, double spread);
  void mover();
  void needs();
  Vec2 point_of_mover(double u);
  void target();
  void graze();

  std::mt19937 random_;
  PairDraw out_;
};

void Draw::linkage() {
  Linkage& l = out_.maker.linkage;
  const double S = out_.scale;
  l.pivot = {uniform(-1.0, 1.0) * S, uniform(1.0, 3.0) * S};
  const bool folds = out_.motion != "swing" && out_.motion != "roll" && out_.motion != "slide";
  l.sections = (folds ? 2 : 1) + below(folds ? 2 : 3);
  for (std::size_t k = 0; k < 3; ++k) l.length[k] = uniform(0.4, 3.0) * S;
  for (std::size_t k = 0; k < 2; ++k) {
    l.hinge_across[k] = chance(0.2) ? 0.0 : uniform(-0.15, 0.15) * S;
    l.fold_sign[k] = either_way(1.0);
  }
}

void Draw::motion() {
  Segment& s = out_.maker.segment;
  const std::string& kind = out_.motion;
  s.from.lean = uniform(-0.2, 1.6);
  for (double& fold : s.from.folds) fold = chance(0.3) ? 0.0 : uniform(0.0, 3.1);
  s.from.station = 2.0 * out_.scale;
  s.to = s.from;
  const double turn = either_way(decades(-2.0, 0.3));
  if (kind == "swing" || kind == "together") s.to.lean += turn;
  if (kind == "fold" || kind == "together" || kind == "self") {
    for (std::size_t k = 0; k < 2; ++k) s.to.folds[k] += chance(0.7) ? either_way(decades(-2.0, 0.5)) : 0.0;
  }
  if (kind == "hang") {  // the fold keeps the lower section's lean
    s.to.lean += turn;
    s.to.folds[0] -= out_.maker.linkage.fold_sign[0] * turn;
  }
  if (kind == "slide" || kind == "together") s.to.station += either_way(uniform(0.01, 3.0) * out_.scale);
  if (kind == "self" && chance(0.5)) s.to.lean += turn;
  if (kind == "drag") drag();
}

/// The foot stands somewhere below the hinge and on its far side; where the turn would pull it off its height, the turn
/// is cut short: often right at full stretch.
void Draw::drag() {
  ProofMaker& m = out_.maker;
  Segment& s = m.segment;
  s.kind = SegmentKind::drag;
  s.drag.hinge = below(m.linkage.sections - 1);
  const auto k = static_cast<std::size_t>(s.drag.hinge);
  s.drag.axle = {uniform(0.5, 1.0) * m.linkage.length[k + 1], uniform(-0.1, 0.1) * out_.scale};
  for (int tries = 0; tries < 50; ++tries) {
    s.from.lean = uniform(0.0, 1.4);
    const HingeSwing swing = hinge_swing(m.linkage, s.from, s.drag.hinge);
    const double first = s.from.lean + swing.phase;
    if (first < 0.05 || first > 3.0) continue;
    s.to = s.from;
    s.to.lean = std::clamp(s.from.lean + either_way(decades(-2.0, 0.0)), 0.01 - swing.phase, 3.1 - swing.phase);
    const double reach = norm(s.drag.axle - m.linkage.proximal(s.drag.hinge + 1));
    const auto height = [&](double lean) { return m.linkage.pivot.y - swing.reach * std::cos(lean + swing.phase); };
    s.drag.axle_height = height(s.from.lean) - reach * std::cos(uniform(0.02, 1.4));
    if (height(s.to.lean) - s.drag.axle_height > reach) {  // to full stretch, or a little short of it
      const double top = s.drag.axle_height + reach * (chance(0.5) ? 1.0 : 1.0 - decades(-8.0, -2.0));
      s.to.lean = std::acos(std::clamp((m.linkage.pivot.y - top) / swing.reach, -1.0, 1.0)) - swing.phase;
    }
    if (height(s.to.lean) - s.drag.axle_height < -reach) continue;
    if (!std::isnan(at(m.linkage, s, 1.0).folds[k])) return;
  }
  s = {};  // such a chain cannot be dragged: it swings instead
  s.to.lean = 1.0;
  out_.motion = "swing";
}

RoundedPolygon Draw::polygon(Vec2 centre, double size, double flatness) {
  const int n = 3 + below(6);
  std::vector<double> angles;
  for (int k = 0; k < n; ++k) angles.push_back((k + uniform(0.05, 0.95)) * 2.0 * std::numbers::pi / n);
  const Vec2 along = direction();
  std::vector<Vec2> core;
  for (const double a : angles) {
    const double x = size * std::cos(a), y = flatness * size * std::sin(a);
    core.push_back(centre + Vec2{x * along.x - y * along.y, x * along.y + y * along.x});
  }
  const double radius = chance(0.5) ? 0.0 : size * decades(-3.0, -0.5);
  return make_rounded_polygon(std::move(core), radius);
}

/// Each number is drawn in a statement of its own: compilers evaluate arguments in different orders.
RoundedPolygon Draw::shape(Vec2 centre) {
  const double S = out_.scale;
  const int kind = below(6);
  if (kind == 0) return make_disc(centre, chance(0.5) ? 5e-4 * S : S * decades(-3.0, -0.5));
  if (kind == 1) {
    const Vec2 end = centre + step(S * decades(-2.0, 0.3));
    return make_capsule(centre, end, S * decades(-4.0, -1.0));
  }
  if (kind == 4) return make_box(centre, centre + S * Vec2{decades(-2.5, 0.0), decades(-2.5, 0.0)});
  const bool sliver = kind == 2, small = kind == 3;
  const double size = S * (sliver ? decades(-1.0, 0.3) : small ? decades(-3.0, -1.0) : decades(-1.5, 0.0));
  const double flatness = sliver ? decades(-6.0, -2.0) : uniform(small ? 0.2 : 0.1, 1.0);
  return polygon(centre, size, flatness);
}

std::vector<Interval> Draw::stretches(double middle, double spread) {
  std::vector<Interval> out;
  for (int k = 1 + (chance(0.3) ? below(3) : 0); k > 0; --k) {
    const double lo = middle + uniform(-spread, spread) * out_.scale;
    out.push_back({lo, lo + out_.scale * (chance(0.2) ? 4e-4 : uniform(0.0, 0.6))});
  }
  return out;
}

void Draw::mover() {
  ProofMaker& m = out_.maker;
  const bool self = out_.motion == "self";
  const int last = m.linkage.sections - 1;
  m.base = self ? below(last) : kRoom;
  const int body = self ? m.base + 1 + below(last - m.base) : below(last + 1);
  const double length = m.linkage.length[static_cast<std::size_t>(body)];
  std::vector<Interval> stations = stretches(-0.3 * out_.scale, 0.4);
  if (chance(0.08)) {
    const RopeAnchor a{self ? m.base : kRoom, {uniform(-2.0, 2.0) * out_.scale, uniform(0.0, 4.0) * out_.scale}};
    const RopeAnchor b{body, {uniform(0.0, length), uniform(-0.1, 0.1) * out_.scale}};
    m.rope(a, b, 0.004 * out_.scale, stations);
    return;
  }
  if (chance(0.25)) {  // a rod or a rail over all of the section
    m.part(make_capsule({0.0, 0.0}, {length, 0.0}, out_.scale * (chance(0.5) ? 5e-4 : 0.03)), body, stations);
    return;
  }
  const Vec2 centre{uniform(0.0, length), uniform(-0.15, 0.15) * out_.scale};
  m.part(shape(centre), body, stations);
}

void Draw::needs() {
  Need& need = out_.maker.need;
  const double S = out_.scale;
  need.margin = chance(0.2) ? 0.0 : chance(0.2) ? -uniform(0.0, 0.01) * S : uniform(0.0, 0.03) * S;
  if (chance(0.15)) need.play = uniform(0.0, 0.005) * S;
  if (chance(0.1)) out_.maker.movers[0].excess = 5e-5 * S;
}

/// Some point of the mover's core as it lies at u, in the base frame.
Vec2 Draw::point_of_mover(double u) {
  ProofMaker& m = out_.maker;
  const Mover& mover = m.movers[0];
  const Snapshot now = snapshot(m.stage(), u);
  if (mover.rope) return lerp(now.of(mover.a.body) * mover.a.at, now.of(mover.b.body) * mover.b.at, uniform(0.0, 1.0));
  const std::vector<Vec2>& core = mover.outline.core();
  const Vec2 a = core[static_cast<std::size_t>(below(static_cast<int>(core.size())))];
  const Vec2 b = core[static_cast<std::size_t>(below(static_cast<int>(core.size())))];
  const double share = chance(0.5) ? 0.0 : uniform(0.0, 1.0);
  return now.of(mover.body) * lerp(a, b, share);
}

/// Where the stair stands along the rail while the segment is at u.
void Draw::rails() {
  Segment& s = out_.maker.segment;
  if (out_.motion == "self") s.stations = {0.0, 0.0};
  if (out_.motion != "roll") return;
  const double lo = uniform(0.0, 3.0) * out_.scale;
  s.stations = {lo, lo + uniform(0.0, 4.0) * out_.scale};
}

void Draw::target() {
  ProofMaker& m = out_.maker;
  const double S = out_.scale, u = uniform(0.0, 1.0);
  const Vec2 met = point_of_mover(u);
  const Interval meant = stations_over(m.segment, u, u);
  const double middle = uniform(meant.lo, std::max(meant.lo, meant.hi)) - 0.3 * S;
  std::vector<Interval> stations = stretches(middle, chance(0.85) ? 0.2 : 1.5);
  if (chance(0.05)) {  // ends that meet, or all but
    const double end = uniform(meant.lo, std::max(meant.lo, meant.hi)) + m.movers[0].stations[0].hi;
    const double by = chance(0.3) ? 0.0 : either_way(decades(-9.0, -2.0) * S);
    stations = {{end + by, end + by + 0.3 * S}};
  }
  if (out_.placement == "twin" && !m.movers[0].rope) {  // the same outline, edge to edge or shifted
    const Outline& o = m.movers[0].outline;
    const RoundedPolygon same{o.core(), o.radius()};
    const Vec2 shift = chance(0.5) ? Vec2{} : step(decades(-9.0, -1.0) * S);
    Pose2 X = snapshot(m.stage(), u).of(m.movers[0].body);
    X.p = X.p + shift;
    m.post(placed(same, X), stations);
    return;
  }
  Vec2 centre = met;
  if (out_.placement == "near") centre = met + step(S * decades(-3.0, 0.0));
  if (out_.placement == "anywhere") centre = met + step(S * uniform(0.1, 2.0));
  if (out_.placement == "grazing") centre = met + step(S * decades(-1.5, 0.3));
  m.post(shape(centre), stations);
}

/// Sets the margin next to the true least clearance.
void Draw::graze() {
  ProofMaker& m = out_.maker;
  const ProofStage stage = m.stage();
  const double S = out_.scale;
  const SlowLeast least = slow_least(SlowMotion<double>(stage, 0, 0), 0.0, 1.0, 0.0, 1e-3 * S, -1e9);
  if (least.clearance > 0.5 * S || least.clearance < -0.05 * S) return;
  m.need = {true, false, least.clearance + either_way(decades(-9.0, -3.0) * S), 0.0};
  out_.options.resolution = 1e-8;
  out_.options.roll_resolution = 1e-8 * S;
}

PairDraw Draw::pair() {
  constexpr std::array<const char*, 8> kMotions{"swing", "fold", "hang", "drag", "roll", "slide", "together", "self"};
  out_.motion = kMotions[static_cast<std::size_t>(below(static_cast<int>(kMotions.size())))];
  const double place = uniform(0.0, 1.0);
  out_.placement = place < 0.4    ? "in the way"
                   : place < 0.7  ? "near"
                   : place < 0.95 ? "anywhere"
                   : place < 0.97 ? "grazing"
                                  : "twin";
  out_.scale = chance(0.8) ? 1.0 : chance(0.5) ? 12.0 : decades(-4.0, -1.0);
  out_.options.roll_resolution *= out_.scale;
  linkage();
  motion();
  rails();
  mover();
  needs();
  target();
  if (out_.placement == "grazing") graze();
  return out_;
}

}  // namespace

PairDraw draw_pair(std::uint64_t seed) { return Draw(seed * 0x9E3779B97F4A7C15ull + 0x632BE59BD9B4E019ull).pair(); }

}  // namespace stowpath::testing
