#include <algorithm>
#include <cmath>
#include <string>

#include "sim/scene/scene_parts.h"
#include "sim/scene/suggest.h"
#include "sim/trade/pipe.h"

namespace stowpath {
namespace {

constexpr double kStopOverPipe = 0.020;   // collar's diameter less the pipe's: a judgement [m]
constexpr double kJointOverPipe = 0.008;  // coupling's diameter less the pipe's: a judgement [m]

Pipe read_named_pipe(const Setting& pipe) {
  if (const PipeSize* size = find_pipe(pipe.text())) {
    return {std::string(size->name), size->outside_diameter, size->wall, "A"};
  }
  pipe.fault(quoted_text(pipe.text()) + " is not a pipe size known here",
             "known are " + join_words(pipe_names(), "and") + "; or give {diameter: 33.4, wall: 3.4}");
  return {"", std::nan(""), std::nan(""), "A"};
}

Pipe read_measured_pipe(const Setting& pipe) {
  Pipe read;
  read.diameter = pipe.at("diameter").number();
  read.wall = pipe.at("wall").number();
  if (2 * read.wall > read.diameter) {
    pipe.at("wall").fault("twice the wall is more than the diameter", "give the thickness of the wall");
  }
  const Setting steel = pipe.at("steel");
  if (const PipeGrade* grade = find_pipe_grade(steel.text())) {
    read.steel = grade->name;
  } else if (!steel.is_list() && !steel.is_map()) {
    steel.fault(quoted_text(steel.text()) + " is not a grade of pipe steel known here",
                "known are " + join_words(pipe_grade_names(), "and") + " of ASTM A53");
  }
  return read;
}

Pipe read_pipe(const Setting& pipe) {
  if (pipe.is_map()) return read_measured_pipe(pipe);
  return pipe.given() && !pipe.is_list() ? read_named_pipe(pipe) : Pipe{"", std::nan(""), std::nan(""), "A"};
}

void refuse_thinner(const Setting& diameter, double pipe) {
  if (diameter.given() && diameter.number() < pipe - 1e-9) {
    diameter.fault("this is less than the pipe's " + length_text(pipe, diameter.bare()),
                   "give the outside diameter; the pipe's own where nothing stands out");
  }
}

RailStops read_stops(const Setting& stops, double pipe) {
  const Setting ends = stops.is_map() ? stops.at("ends") : stops;
  const std::string word = ends.word();
  RailStops read;
  read.left = word == "both ends" || word == "left";
  read.right = word == "both ends" || word == "right";
  read.diameter = stops.at("diameter").number_if_given().value_or(pipe + kStopOverPipe);
  read.width = stops.at("width").number();
  refuse_thinner(stops.at("diameter"), pipe);
  return read;
}

// `sizes` holds the coupling's diameter and length: the joint's own entry, or the map that goes for all.
PipeJoint read_joint(const Setting& at, double station, const Setting& sizes, const Rail& rail) {
  const double diameter = sizes.at("diameter").number_if_given().value_or(rail.pipe.diameter + kJointOverPipe);
  if (station <= rail.stations.lo || station >= rail.stations.hi) {
    at.fault("this joint lies beyond the pipe, which runs from " + length_text(rail.stations.lo, at.bare()) + " to " +
                 length_text(rail.stations.hi, at.bare()),
             "give stations along the rail, from the left side wall");
  }
  return {station, diameter, sizes.at("length").number()};
}

std::vector<PipeJoint> read_joints(const Setting& joints, const Rail& rail) {
  const Setting list = joints.is_map() ? joints.at("at") : joints;
  refuse_thinner(joints.at("diameter"), rail.pipe.diameter);
  const std::vector<double> stations = list.numbers();
  const std::vector<Setting> items = list.items();
  std::vector<PipeJoint> read;
  for (std::size_t i = 0; i < stations.size(); ++i) {
    if (!joints.is_map() && items[i].is_map()) {  // within `at`, a map is no station, and has been refused as such
      refuse_thinner(items[i].at("diameter"), rail.pipe.diameter);
      read.push_back(read_joint(items[i].at("at"), items[i].at("at").number(), items[i], rail));
    } else {
      read.push_back(read_joint(items[i], stations[i], joints, rail));
    }
  }
  return read;
}

void check_in_room(const Setting& rail, const Scene& scene) {
  const LengthUnit bare = rail.bare();
  if (scene.rail.stations.hi > scene.room.length) {
    rail.at("stations")
        .fault("the pipe ends at " + length_text(scene.rail.stations.hi, bare) + " in a room " +
                   length_text(scene.room.length, bare) + " long",
               "stations count from the left side wall");
  }
  if (scene.rail.at.x >= scene.room.depth) {
    rail.at("at").at("out").fault(
        "the pipe lies outside the room, which is " + length_text(scene.room.depth, bare) + " deep",
        "out counts from the back wall");
  }
  if (scene.rail.at.y >= scene.room.ceiling || scene.rail.at.y <= scene.floor.level) {
    rail.at("at").at("up").fault("the pipe does not lie between floor and ceiling", "give the height of its centre");
  }
}

}  // namespace

void read_rail(const Setting& rail, Scene& scene) {
  Rail& read = scene.rail;
  read.pipe = read_pipe(rail.at("pipe"));
  read.at = {rail.at("at").at("out").number(), rail.at("at").at("up").number()};
  read.stations = rail.at("stations").interval();
  check_in_room(rail, scene);
  read.stops = read_stops(rail.at("stops"), read.pipe.diameter);
  read.joints = read_joints(rail.at("joints"), read);
  read_brackets(rail.at("brackets"), scene);
}

}  // namespace stowpath
