#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

#include "sim/remedy/remedies.h"
#include "tests/bench/side_by_side.h"

namespace stowpath::bench {
namespace {

std::string scene_text(const std::string& name) {
  std::ifstream in(std::string(STOWPATH_SOURCE_DIR) + "/scenes/" + name + ".yaml", std::ios::binary);
  if (!in) throw std::logic_error("no scene " + name + " in the gallery");
  return {std::istreambuf_iterator<char>(in), {}};
}

/// All cures of a scene, beside its dry fit: `dry_fit` and `cures` in seconds, `ratio` one by the other.
void all_cures(benchmark::State& state, const char* name) {
  const SceneDraft draft(scene_text(name), name);
  const Scene scene = draft.read();
  const AssessOptions options;
  double fit = std::numeric_limits<double>::infinity(), cures = fit, found = 0.0;
  for (auto _ : state) {
    Assessment assessed;
    for (int k = 0; k < 10; ++k) fit = std::min(fit, seconds([&] { assessed = assess(scene, options); }));
    std::vector<Cures> all;
    const double time = seconds([&] { all = find_remedies(draft, scene, assessed, options); });
    cures = std::min(cures, time);
    state.SetIterationTime(time);
    found = 0.0;
    for (const Cures& of : all) found += static_cast<double>(of.remedies.size());
  }
  state.counters["dry_fit"] = fit;
  state.counters["cures"] = cures;
  state.counters["ratio"] = cures / fit;
  state.counters["offered"] = found;
}
BENCHMARK_CAPTURE(all_cures, demo, "demo")->UseManualTime()->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(all_cures, long_curl, "long-curl")->UseManualTime()->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(all_cures, crowded_workshop, "crowded-workshop")->UseManualTime()->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace stowpath::bench
