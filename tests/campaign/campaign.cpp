// The differential campaign: random and adversarial motions, each proven and then searched by a slow reference that
// shares no code with the proofs. Any false answer ends in exit 1, with the seed that draws it again.
#include <algorithm>
#include <chrono>
#include <cstdint>
#include <iostream>
#include <map>
#include <string>

#include "tests/campaign/pair_trial.h"
#include "tests/campaign/procedure_trial.h"
#include "tests/campaign/rehearsal_trial.h"
#include "tests/campaign/scene_draw.h"
#include "tests/campaign/scene_trial.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

struct Options {
  std::uint64_t pairs = 20'000, scenes = 200, rehearsals = 40, procedures = 40, seed = 1;
  double bound_scale = 1.0;  // less makes the proofs' bound too small: the campaign must then see false answers
};

struct Tally {
  long long draws = 0, clear = 0, interference = 0, undecided = 0;
  long long false_clear = 0, false_interference = 0, unexcused = 0;

  void add(const PairAnswer& a) {
    ++draws;
    clear += a.verdict == Verdict::clear;
    interference += a.verdict == Verdict::interference;
    undecided += a.verdict == Verdict::undecided;
    false_clear += a.false_clear;
    false_interference += a.false_interference;
    unexcused += a.unexcused;
  }
  long long wrong() const { return false_clear + false_interference + unexcused; }
};

double percent(long long part, long long whole) {
  return whole == 0 ? 0.0 : 100.0 * static_cast<double>(part) / static_cast<double>(whole);
}

void print(const std::string& what, const Tally& t) {
  std::cout << what << ": " << t.draws << " draws, clear " << percent(t.clear, t.draws) << " %, interference "
            << percent(t.interference, t.draws) << " %, undecided " << percent(t.undecided, t.draws)
            << " %; false clear " << t.false_clear << ", false interference " << t.false_interference
            << ", undecided without cause " << t.unexcused << "\n";
}

void complain(std::uint64_t seed, const PairDraw& draw, const PairAnswer& a) {
  std::cout << (a.false_clear          ? "false clear"
                : a.false_interference ? "false interference"
                                       : "undecided without cause")
            << ": " << draw.motion << ", " << draw.placement << ", scale " << draw.scale << ": --replay " << seed
            << std::endl;
}

/// Both answers must have come up often enough to mean something, and hardly any draw may be left undecided.
bool fair(const Tally& t) {
  if (t.draws < 1000) return true;  // too few for shares
  const double hit = percent(t.interference, t.draws);
  const bool balanced = hit >= 30.0 && hit <= 70.0, decided = percent(t.undecided, t.draws) <= 1.0;
  if (!balanced) std::cout << "the draws are out of balance\n";
  if (!decided) std::cout << "more than one draw in a hundred is undecided\n";
  return balanced && decided;
}

int run_pairs(const Options& options) {
  Tally all;
  std::map<std::string, Tally> by_kind;
  const auto start = std::chrono::steady_clock::now();
  for (std::uint64_t k = 0; k < options.pairs; ++k) {
    const std::uint64_t seed = options.seed + k;
    PairDraw draw = draw_pair(seed);
    draw.options.bound_scale = options.bound_scale;
    const PairAnswer answer = try_pair(draw, seed % 4 == 0);
    if (answer.false_clear || answer.false_interference || answer.unexcused) complain(seed, draw, answer);
    all.add(answer);
    by_kind["  " + draw.motion].add(answer);
    by_kind["  " + draw.placement].add(answer);
  }
  const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - start;
  print("pairs, seeds " + std::to_string(options.seed) + " on", all);
  for (const auto& [kind, tally] : by_kind) print(kind, tally);
  std::cout << spent.count() << " s\n";
  return fair(all) && all.wrong() == 0 ? 0 : 1;
}

int run_scenes(const Options& options) {
  const auto start = std::chrono::steady_clock::now();
  Tally all;
  long long moves = 0, moves_clear = 0;
  for (std::uint64_t k = 0; k < options.scenes; ++k) {
    const std::uint64_t seed = options.seed + k;
    const SceneAnswer answer = try_scene(draw_scene(seed));
    all.add({answer.verdict, answer.false_clear, answer.false_interference, false});
    moves += answer.moves;
    moves_clear += answer.moves_clear;
    if (!answer.false_clear && !answer.false_interference) continue;
    std::cout << (answer.false_clear ? "false clear" : "false interference") << ": a scene: --replay-scene " << seed
              << std::endl;
  }
  const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - start;
  print("scenes, seeds " + std::to_string(options.seed) + " on", all);
  std::cout << "  of their " << moves << " moves " << percent(moves_clear, moves) << " % are clear\n"
            << spent.count() << " s\n";
  return fair(all) && all.wrong() == 0 ? 0 : 1;
}

// Every touch that a physics world sees must be one by exact distance, and it must miss none.
int run_rehearsals(const Options& options) {
  RehearsalAnswer all;
  for (std::uint64_t k = 0; k < options.rehearsals; ++k) {
    const std::uint64_t seed = options.seed + k;
    const RehearsalAnswer answer = try_rehearsal(draw_scene(seed), seed);
    all.touches += answer.touches;
    all.looks += answer.looks;
    all.unconfirmed += answer.unconfirmed;
    all.missed += answer.missed;
    all.greatest = std::max(all.greatest, answer.greatest);
    if (answer.unconfirmed + answer.missed > 0)
      std::cout << answer.unconfirmed << " touches unconfirmed, " << answer.missed << " missed: a rehearsal: --seed "
                << seed << " --pairs 0 --scenes 0 --rehearsals 1" << std::endl;
  }
  std::cout << "rehearsals, seeds " << options.seed << " on: " << options.rehearsals << " draws, " << all.touches
            << " touches, " << all.unconfirmed << " not confirmed by exact distance, the widest " << 1e3 * all.greatest
            << " mm apart; " << all.missed << " missed in " << all.looks << " looks\n";
  const bool enough = options.rehearsals < 20 || 2 * all.touches > static_cast<int>(options.rehearsals);
  if (!enough) std::cout << "hardly anything touched\n";
  return enough && all.unconfirmed + all.missed == 0 ? 0 : 1;
}

// Every touch that a physics world sees while the stair is taken along a move must be one that the proof allows.
int run_procedures(const Options& options) {
  ProcedureAnswer all;
  for (std::uint64_t k = 0; k < options.procedures; ++k) {
    const std::uint64_t seed = options.seed + k;
    const ProcedureAnswer answer = try_procedure(draw_scene(seed), seed, options.bound_scale);
    all.moves += answer.moves;
    all.touches += answer.touches;
    all.on_course += answer.on_course;
    all.deciding += answer.deciding;
    all.contradicted += answer.contradicted;
    all.farthest = std::max(all.farthest, answer.farthest);
    if (answer.contradicted > 0)
      std::cout << answer.contradicted << " touches denied by the proof: a procedure: --replay-procedure " << seed
                << std::endl;
  }
  std::cout << "procedures, seeds " << options.seed << " on: " << options.procedures << " draws, " << all.moves
            << " moves rehearsed, " << all.touches << " touches; " << all.on_course
            << " lie on the procedure, no farther off than " << 1e3 * all.farthest << " mm; " << all.deciding
            << " break the margin there by themselves; denied by the proof: " << all.contradicted << "\n";
  const bool enough = options.procedures < 20 || 2 * all.deciding > static_cast<int>(options.procedures);
  if (!enough) std::cout << "hardly anything touched\n";
  return enough && all.contradicted == 0 ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
  Options options;
  for (int k = 1; k < argc; k += 2) {
    const std::string key = argv[k], value = k + 1 < argc ? argv[k + 1] : "";
    const bool number = !value.empty() && value.find_first_not_of("0123456789.") == std::string::npos;
    if (number && key == "--pairs") {
      options.pairs = std::stoull(value);
    } else if (number && key == "--scenes") {
      options.scenes = std::stoull(value);
    } else if (number && key == "--rehearsals") {
      options.rehearsals = std::stoull(value);
    } else if (number && key == "--procedures") {
      options.procedures = std::stoull(value);
    } else if (number && key == "--seed") {
      options.seed = std::stoull(value);
    } else if (number && key == "--replay") {
      options.seed = std::stoull(value), options.pairs = 1,
      options.scenes = options.rehearsals = options.procedures = 0;
    } else if (number && key == "--replay-scene") {
      options.seed = std::stoull(value), options.pairs = options.rehearsals = options.procedures = 0,
      options.scenes = 1;
    } else if (number && key == "--replay-procedure") {
      options.seed = std::stoull(value), options.pairs = options.rehearsals = options.scenes = 0,
      options.procedures = 1;
    } else if (number && key == "--broken") {
      options.bound_scale = std::stod(value);
    } else {
      std::cerr << "usage: stowpath_campaign [--pairs N] [--scenes N] [--rehearsals N] [--procedures N] [--seed S] "
                   "[--replay SEED] [--replay-scene SEED] [--replay-procedure SEED] [--broken BOUND_SCALE]\n";
      return 2;
    }
  }
  const int pairs = options.pairs > 0 ? run_pairs(options) : 0, scenes = options.scenes > 0 ? run_scenes(options) : 0;
  const int rehearsals = options.rehearsals > 0 ? run_rehearsals(options) : 0;
  const int procedures = options.procedures > 0 ? run_procedures(options) : 0;
  return pairs != 0 || scenes != 0 || rehearsals != 0 || procedures != 0 ? 1 : 0;
}
