#pragma once

#include <algorithm>
#include <ctime>
#include <limits>

#include <benchmark/benchmark.h>

namespace stowpath::bench {

/// Processor time, so that other programs' turns do not count.
template <class Job>
double seconds(Job&& job) {
  const std::clock_t start = std::clock();
  job();
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

/// Times two jobs by turns, so that whatever slows the machine slows both, and keeps the best of each. Register with
/// UseManualTime(); the time shown is the peer's.
/// @param questions  how many a job answers; the counters are seconds per question
template <class Ours, class Peer>
void side_by_side(benchmark::State& state, double questions, Ours&& ours, Peer&& peer) {
  double best_ours = std::numeric_limits<double>::infinity(), best_peer = best_ours;
  for (auto _ : state) {
    for (int k = 0; k < 10; ++k) best_ours = std::min(best_ours, seconds(ours));
    const double peers = seconds(peer);
    best_peer = std::min(best_peer, peers);
    state.SetIterationTime(peers);
  }
  state.counters["ours"] = best_ours / questions;
  state.counters["peer"] = best_peer / questions;
  state.counters["ratio"] = best_peer / best_ours;
}

}  // namespace stowpath::bench
