// How many seconds of the demo's procedure are rehearsed in a second, at the default step and without the second run that
// states the error. The bar is fifty times as fast as the world.
#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>

#include "sim/rehearsal/rehearsal.h"
#include "sim/scene/reader.h"

namespace stowpath {
namespace {

void rehearse_demo(benchmark::State& state) {
  const std::string name = STOWPATH_SOURCE_DIR "/scenes/demo.yaml";
  std::ifstream in(name, std::ios::binary);
  const Scene scene = parse_scene(std::string(std::istreambuf_iterator<char>(in), {}), name);
  const Model model = build_model(scene);
  RehearsalOptions options;
  options.compare = false;
  double seconds = 0.0;
  for (auto _ : state) seconds += rehearse(scene, model, options).seconds;
  state.counters["times_real_time"] = benchmark::Counter(seconds, benchmark::Counter::kIsRate);
}
BENCHMARK(rehearse_demo)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace stowpath
