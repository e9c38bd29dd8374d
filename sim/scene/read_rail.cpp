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

void read_wall_saddle(const Setting& brackets, Brackets& read) {
  for (const char* key : {"projection", "drop", "arm", "saddle", "plate"}) {
    if (brackets.is_map() && !brackets.at(key).given()) {
      brackets.at(key).missing("a wall-saddle bracket takes projection, drop, arm, saddle and plate");
    }
  }
  const std::vector<double> saddle = brackets.at("saddle").numbers(), plate = brackets.at("plate").numbers();
  read.projection = brackets.at("projection").number();
  read.drop = brackets.at("drop").number();
  read.arm = brackets.at("arm").number();
  if (saddle.size() == 2) read.saddle_length = saddle[0], read.saddle_thickness = saddle[1];
  if (plate.size() == 3) read.plate_width = plate[0], read.plate_height = plate[1], read.plate_thickness = plate[2];
  if (brackets.at("parts").given()) {
    brackets.at("parts").fault("a wall-saddle bracket takes no parts", "write shape: outline to draw one of your own");
  }
}

void check_wall_saddle(const Setting& brackets, const Rail& rail) {
  const Brackets& read = rail.brackets;
  const double least_drop = rail.pipe.diameter / 2 + read.arm / 2;
  if (read.drop < least_drop) {
    brackets.at("drop").fault(
        "the arm would run through the pipe",
        "its centre line lies at least " + length_text(least_drop, brackets.bare()) + " below the pipe's centre");
  }
  if (read.projection - read.plate_thickness < rail.pipe.diameter / 2) {
    brackets.at("projection")
        .fault("the plate would run through the pipe",
               "it is measured from the mounting face to the pipe's centre, level");
  }
}

BracketPiece read_piece(const Setting& part) {
  BracketPiece piece;
  piece.name = part.at("name").text();
  piece.radius = part.at("radius").number();
  piece.corners = read_outline(part.at("outline"), piece.radius);
  piece.width = part.at("width").number();
  return piece;
}

void read_pieces(const Setting& brackets, Brackets& read) {
  for (const Setting& part : brackets.at("parts").items()) read.pieces.push_back(read_piece(part));
  if (!brackets.at("parts").given()) {
    brackets.at("parts").missing("a bracket by outline takes the list of its parts");
  }
  for (const char* key : {"projection", "drop", "arm", "saddle", "plate"}) {
    if (!brackets.at(key).given()) continue;
    brackets.at(key).fault("a bracket by outline takes parts instead", "leave it out, or write shape: wall-saddle");
  }
}

double bracket_width(const Brackets& brackets) {
  double widest = std::max({brackets.saddle_length, brackets.plate_width, brackets.arm});
  for (const BracketPiece& piece : brackets.pieces) widest = std::max(widest, piece.width);
  return widest;
}

// What lies under the pipe and so has to end with it.
double width_on_pipe(const Brackets& brackets) {
  return brackets.shape == BracketShape::wall_saddle ? brackets.saddle_length : bracket_width(brackets);
}

void check_on_pipe(const Setting& key, double station, double half, Interval pipe) {
  const double past_left = pipe.lo - (station - half), past_right = station + half - pipe.hi;
  if (!(past_left > 1e-9) && !(past_right > 1e-9)) return;
  const bool left = past_left > past_right;
  const double limit = left ? pipe.lo + half : pipe.hi - half;
  key.fault("the bracket at " + length_text(station, key.bare()) + " ends " +
                length_text(left ? past_left : past_right, key.bare()) + " past the pipe's " +
                (left ? "left" : "right") + " end",
            "move it to " + length_text(limit, key.bare()) + (left ? " or more" : " or less"));
}

std::vector<double> read_repeated(const Setting& brackets, const Rail& rail) {
  const Setting first = brackets.at("first"), every = brackets.at("every");
  const double half = width_on_pipe(rail.brackets) / 2, start = first.number(), step = every.number();
  check_on_pipe(first, start, half, rail.stations);
  std::vector<double> stations;
  if (!std::isfinite(start) || !std::isfinite(step) || !std::isfinite(rail.stations.hi)) return stations;
  // Multiples of the step rather than sums of it, so that the last station is as exact as the first.
  for (int i = 0; start + i * step + half <= rail.stations.hi + 1e-9; ++i) stations.push_back(start + i * step);
  if (step < bracket_width(rail.brackets)) {
    every.fault("brackets this close together overlap",
                "each is " + length_text(bracket_width(rail.brackets), every.bare()) + " wide along the rail");
  }
  return stations;
}

std::vector<double> read_listed(const Setting& at, const Rail& rail) {
  const std::vector<double> stations = at.numbers();
  const std::vector<Setting> items = at.items();
  const double width = bracket_width(rail.brackets);
  for (std::size_t i = 0; i < stations.size(); ++i) {
    check_on_pipe(items[i], stations[i], width_on_pipe(rail.brackets) / 2, rail.stations);
    if (i > 0 && stations[i] - stations[i - 1] < width) {
      items[i].fault(stations[i] > stations[i - 1] ? "this bracket overlaps the one before it"
                                                   : "this bracket does not lie to the right of the one before it",
                     "list them from left to right, at least " + length_text(width, at.bare()) + " apart");
    }
  }
  return stations;
}

std::vector<double> read_bracket_stations(const Setting& brackets, const Rail& rail) {
  const Setting at = brackets.at("at"), first = brackets.at("first"), every = brackets.at("every");
  const bool listed = at.given(), repeated = first.given() && every.given();
  if (brackets.is_map() && listed && (first.given() || every.given())) {
    at.fault("the brackets' stations are given twice", "give first and every, or at, not both");
  } else if (brackets.is_map() && !listed && !repeated) {
    brackets.fault("the brackets have no stations", "give first and every, or at: [300, 1200, 2050]");
  }
  if (listed) return read_listed(at, rail);
  return repeated ? read_repeated(brackets, rail) : std::vector<double>{};
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
  const Setting brackets = rail.at("brackets");
  const bool outline = brackets.at("shape").word() == "outline";
  read.brackets.shape = outline ? BracketShape::outline : BracketShape::wall_saddle;
  outline ? read_pieces(brackets, read.brackets) : read_wall_saddle(brackets, read.brackets);
  if (!outline) check_wall_saddle(brackets, read);
  read.brackets.stations = read_bracket_stations(brackets, read);
  if (brackets.at("screws").given()) read.brackets.screws = read_screws(brackets.at("screws"));
}

}  // namespace stowpath
