#include "tests/support/hoist_report_parts.h"

#include "sim/loads/hoist_loads.h"

namespace stowpath::testing {

HoistParts::HoistParts(Scene its_scene)
    : scene(std::move(its_scene)),
      model(build_model(scene)),
      pull(pull_through(scene, model)),
      effort(reckon_effort(scene, pull)),
      holding(what_holds(scene, pull, effort)),
      weights(weigh(scene, model)),
      hardware(hoist_hardware_list({scene, model, climb(scene, model), {}, hoist_loads(scene, model, pull)})),
      loads(look_at_loads(scene, model, hoist_loads(scene, model, pull))) {}

HoistSubject HoistParts::hoist(DisplayUnits units) const {
  return {scene, model, pull, effort, holding, weights, hardware, units};
}

LoadsSubject HoistParts::loaded(DisplayUnits units) const { return {scene, model, loads, weights, true, units}; }

}  // namespace stowpath::testing
