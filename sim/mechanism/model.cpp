#include "sim/mechanism/model.h"

#include "sim/mechanism/held_by.h"
#include "sim/mechanism/holding.h"
#include "sim/mechanism/hook_parts.h"
#include "sim/mechanism/mass.h"
#include "sim/mechanism/procedure.h"
#include "sim/mechanism/room_parts.h"
#include "sim/mechanism/rope_parts.h"
#include "sim/mechanism/stair_parts.h"
#include "sim/mechanism/standing.h"
#include "sim/mechanism/tread_parts.h"

namespace stowpath {

namespace {

void copy_settings(const Scene& scene, Model& model) {
  model.name = scene.name;
  model.units = scene.units;
  model.margin = scene.margin;
  model.seat_range = scene.stair.hooks.seat_range;
  model.floor_uneven = scene.floor.uneven;
  model.floor_level = scene.floor.level;
  model.loft_span = scene.loft.stations;
  model.home = home_station(scene);
}

void add_stair(const Scene& scene, Model& model) {
  add_side_rails(scene, model.linkage, model.working_lean, model.stair);
  add_treads(scene, model.linkage, model.working_lean, model.stair, model.faults);
  add_joints(scene, model.linkage, model.stair);
  add_hooks(scene, model.arc_tolerance, model.stair);
  add_casters(scene, model.linkage, model.working_lean, model.stair);
  add_handrails(scene, model.linkage, model.stair);
  add_extras(scene, model.stair);
}

void add_faults(std::vector<BuildFault> faults, Model& model) {
  for (BuildFault& fault : faults) model.faults.push_back(std::move(fault));
}

}  // namespace

Model build_model(const Scene& scene) {
  Model model;
  copy_settings(scene, model);
  model.linkage = make_linkage(scene);
  const Standing standing = stand(scene, model.linkage);
  model.working_lean = standing.lean;
  model.working_leans = standing.leans;
  model.hook_slack = scene.stair.hooks.inside - 0.5 * scene.rail.pipe.diameter;
  model.hook_play = hook_play(scene);
  model.span = station_span(scene);
  add_stair(scene, model);
  model.ropes = rope_runs(scene);
  model.room = room_parts(scene, model.arc_tolerance);
  model.zones = zone_parts(scene);
  model.masses = section_masses(scene, model.linkage, model.stair);
  model.moves = procedure_moves(scene, model, standing);
  add_faults(procedure_faults(scene), model);
  add_faults(fastening_faults(held_by(scene, model)), model);
  add_faults(holding_faults(scene, model), model);
  return model;
}

}  // namespace stowpath
