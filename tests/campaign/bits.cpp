// Prints one hash for each layer of the proofs, over every bit of the numbers that it answers with. Compilers and their
// levels of optimisation must agree on them.
#include <bit>
#include <cstdint>
#include <iomanip>
#include <iostream>
#include <random>
#include <string>

#include "sim/clearance/dry_fit.h"
#include "tests/campaign/scene_draw.h"
#include "tests/support/pair_draw.h"
#include "tests/support/random_outlines.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

/// FNV-1a over the bits of numbers.
class Hash {
 public:
  void add(std::uint64_t bits) {
    for (int k = 0; k < 8; ++k) {
      state_ = (state_ ^ (bits & 0xff)) * 0x100000001b3ull;
      bits >>= 8;
    }
  }
  void add(double number) { add(std::bit_cast<std::uint64_t>(number)); }
  void add(Vec2 v) { add(v.x), add(v.y); }
  void add(const Configuration& c) {
    add(c.station), add(c.lean);
    for (const double fold : c.folds) add(fold);
  }
  void print(const std::string& what) const {
    std::cout << what << " " << std::hex << std::setw(16) << std::setfill('0') << state_ << std::dec << "\n";
  }

 private:
  std::uint64_t state_ = 0xcbf29ce484222325ull;
};

std::uint64_t count(long long number) { return static_cast<std::uint64_t>(number); }

void distances() {
  std::mt19937 random(1);
  Hash drawn, hash;
  for (int n = 0; n < 2000; ++n) {
    const Pair pair = random_pair(random);
    for (const Vec2 v : pair.a.core) drawn.add(v);
    for (const Vec2 v : pair.b.core) drawn.add(v);
    const Outline b(placed(pair.b, pair.X_WB));
    Outline a;
    a.place(Outline(pair.a), pair.X_WA);
    const Separation s = separation(a, b);
    hash.add(signed_distance(a, b)), hash.add(s.distance), hash.add(s.on_a), hash.add(s.on_b);
  }
  drawn.print("outlines");
  hash.print("distances");
}

void motions() {
  Hash poses, proofs, least;
  for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
    PairDraw draw = draw_pair(seed);
    const ProofStage stage = draw.maker.stage();
    for (const double u : {0.0, 0.3, 1.0}) poses.add(at(stage.linkage, stage.segment, u));
    for (const double turn : half_turns(stage.linkage, stage.segment, 0.2, 0.7).joint) poses.add(turn);
    const Proof proof = prove(stage, draw.options);
    for (const Span& s : proof.spans) {
      proofs.add(s.u0), proofs.add(s.u1), proofs.add(s.open0), proofs.add(s.open1);
      proofs.add(count(static_cast<int>(s.verdict)));
    }
    proofs.add(count(proof.counts.distances)), proofs.add(count(proof.counts.rejects));
    const Least found = least_of_pair(stage, 0, 0, 0.0, 1.0, 1e-3 * draw.scale);
    least.add(found.at_least), least.add(found.at_most), least.add(found.u);
  }
  poses.print("poses");
  proofs.print("proofs");
  least.print("least clearances");
}

void scenes() {
  Hash hash;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const DryFit fit = dry_fit(draw_scene(seed));
    for (const MoveResult& r : fit.moves) hash.add(r.at_least), hash.add(r.at_most), hash.add(r.closest_at);
    for (const Finding& f : fit.findings) {
      hash.add(f.clearance), hash.add(f.worst), hash.add(f.from), hash.add(f.to);
      hash.add(f.witness.on_a), hash.add(f.witness.on_b);
      for (const Interval i : f.stations) hash.add(i.lo), hash.add(i.hi);
    }
    for (const Interval i : fit.reach.standing) hash.add(i.lo), hash.add(i.hi);
    hash.add(count(fit.work.distances));
  }
  hash.print("dry fits");
}

}  // namespace

int main() {
  distances();
  motions();
  scenes();
  return 0;
}
