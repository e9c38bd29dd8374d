#include "sim/mechanism/model.h"

#include "sim/mechanism/contacts.h"
#include "sim/mechanism/hand_room.h"
#include "sim/mechanism/held_by.h"
#include "sim/mechanism/holding.h"
#include "sim/mechanism/hook_parts.h"
#include "sim/mechanism/mass.h"
#include "sim/mechanism/pivot_play.h"
#include "sim/mechanism/procedure.h"
#include "sim/mechanism/room_line.h"
#include "sim/mechanism/room_parts.h"
#include "sim/mechanism/rope_parts.h"
#include "sim/mechanism/rope_slabs.h"
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
  model.home_within = scene.home_within;
  model.inside = {{0.0, scene.room.depth}, {scene.floor.level, scene.room.ceiling}, {0.0, scene.room.length}};
}

void add_stair(const Scene& scene, Model& model) {
  add_side_rails(scene, model.linkage, model.working_lean, model.stair);
  add_treads(scene, model.linkage, model.working_lean, model.stair, model.faults);
  add_joints(scene, model.linkage, model.stair);
  add_hooks(scene, model.arc_tolerance, model.stair);
  add_casters(scene, model.linkage, model.working_lean, model.stair);
  model.wheels = wheels_of(scene.stair);
  add_handrails(scene, model.linkage, model.stair);
  add_extras(scene, model.stair);
}

void add_lines(const Scene& scene, Model& model) {
  const double hangs_to = hanging_end(scene, model.linkage, model.working_lean);
  model.ropes = rope_runs(scene, hangs_to);
  model.tackle = tackle_of(scene);
  model.room_ropes = led_off_runs(scene);
  for (RoomRope& rope : hanging_line(scene, hangs_to)) model.room_ropes.push_back(std::move(rope));
  int thing = model.room.empty() ? 0 : model.room.back().thing + 1;
  for (const RoomRope& rope : model.room_ropes) {
    for (RoomPart& part : rope_slabs(rope, 0.0, 0.0)) {
      part.thing = thing;
      model.room.push_back(std::move(part));
    }
    ++thing;
  }
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
  model.axle = standing.axle;
  model.hook_slack = scene.stair.hooks.inside - 0.5 * scene.rail.pipe.diameter;
  model.hook_play = hook_play(scene);
  model.span = station_span(scene);
  add_stair(scene, model);
  model.room = room_parts(scene, model.arc_tolerance);
  add_lines(scene, model);
  model.zones = zone_parts(scene);
  if (const auto room = hand_room(scene)) model.zones.push_back(*room);
  model.masses = section_masses(scene, model.linkage, model.stair);
  model.moves = procedure_moves(scene, model, standing);
  allow_assumed_play(model);
  number_parts(model);
  model.contacts = contact_rules(scene, model);
  add_faults(procedure_faults(scene), model);
  add_faults(fastening_faults(held_by(scene, model)), model);
  add_faults(holding_faults(scene, model), model);
  return model;
}

}  // namespace stowpath
