#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sim/scene/scene_parts.h"
#include "sim/scene/suggest.h"

namespace stowpath {
namespace {

struct ShapeKeys {
  BracketShape shape;
  std::string_view name;
  std::vector<std::string_view> needed;
  std::vector<std::string_view> taken;
};

// What each shape is measured by.
const std::array<ShapeKeys, 4> kShapes{{
    {BracketShape::wall_saddle,
     "wall-saddle",
     {"projection", "drop", "arm", "saddle", "plate"},
     {"bend", "flat", "saddle heads", "plate heads"}},
    {BracketShape::strap, "strap", {"strap", "projection"}, {"tab", "arc", "plate"}},
    {BracketShape::post_mounted,
     "post-mounted",
     {"post", "saddle"},
     {"projection", "drop", "arm", "bend", "flat", "saddle heads"}},
    {BracketShape::outline, "outline", {"parts"}, {}},
}};

const ShapeKeys& keys_of(const Setting& brackets) {
  const std::string word = brackets.at("shape").word();
  return *std::find_if(kShapes.begin(), kShapes.end(), [&](const ShapeKeys& keys) { return keys.name == word; });
}

constexpr std::array kMeasures{"projection", "drop",        "arm",   "bend", "saddle", "flat", "saddle heads",
                               "plate",      "plate heads", "strap", "tab",  "arc",    "post", "parts"};

std::string called(const ShapeKeys& keys) {
  return keys.shape == BracketShape::outline ? "a bracket by outline" : "a " + std::string(keys.name) + " bracket";
}

bool among(const std::vector<std::string_view>& keys, std::string_view key) {
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}

void refuse_needless(const Setting& brackets, const ShapeKeys& keys, const std::string& key) {
  const Setting given = brackets.at(key);
  if (keys.shape == BracketShape::outline) {
    given.fault("a bracket by outline takes parts instead", "leave it out, or write shape: wall-saddle");
  } else if (key == "parts") {
    given.fault(called(keys) + " takes no parts", "write shape: outline to draw one of your own");
  } else {
    std::vector<std::string_view> all = keys.needed;
    all.insert(all.end(), keys.taken.begin(), keys.taken.end());
    given.fault(called(keys) + " takes no " + key, "it takes " + join_words(all, "and"));
  }
}

void check_keys(const Setting& brackets, const ShapeKeys& keys) {
  if (!brackets.is_map()) return;
  const bool outline = keys.shape == BracketShape::outline;
  for (const std::string_view key : keys.needed) {
    if (brackets.at(key).given()) continue;
    brackets.at(key).missing(called(keys) + " takes " +
                             (outline ? "the list of its parts" : join_words(keys.needed, "and")));
  }
  for (const char* key : kMeasures) {
    if (brackets.at(key).given() && !among(keys.needed, key) && !among(keys.taken, key))
      refuse_needless(brackets, keys, key);
  }
}

std::optional<ScrewHeads> read_heads(const Setting& heads) {
  if (!heads.given()) return std::nullopt;
  return ScrewHeads{heads.at("diameter").number(), heads.at("height").number(), heads.at("apart").number(), {}};
}

std::optional<BracketPost> read_post(const Setting& brackets, const Scene& scene) {
  const Setting post = brackets.at("post");
  if (!post.given()) return std::nullopt;
  BracketPost read;
  const std::vector<double> size = post.at("size").numbers();
  if (size.size() == 2) read.depth = size[0], read.width = size[1];
  read.beside = brackets.at("projection").given();
  read.above = post.at("above").number();
  read.foot = post.at("foot").number_if_given().value_or(scene.floor.level);
  return read;
}

// An arm needs its measures; without one there is nothing to measure.
void check_post(const Setting& brackets, const Rail& rail) {
  const bool beside = rail.brackets.post && rail.brackets.post->beside;
  for (const char* key : {"drop", "arm"}) {
    if (beside && !brackets.at(key).given())
      brackets.at(key).missing("a post beside the pipe carries it on an arm, which takes projection, drop and arm");
  }
  for (const char* key : {"drop", "arm", "bend"}) {
    if (!beside && brackets.at(key).given())
      brackets.at(key).fault("without a projection the post stands right under the pipe and has no arm",
                             "leave it out, or give projection, the post's near face to the pipe's centre");
  }
  if (!rail.brackets.post) return;
  const BracketPost& post = *rail.brackets.post;
  const double under = beside ? rail.brackets.drop - post.above
                              : rail.pipe.diameter / 2 - rail.brackets.flat + rail.brackets.saddle_thickness;
  if (post.foot >= rail.at.y - under)
    brackets.at("post").at("foot").fault(
        "the post stands above its own top, which is at " + length_text(rail.at.y - under, brackets.bare()),
        "give the height that it stands on");
}

void read_measures(const Setting& brackets, Brackets& read) {
  const std::vector<double> saddle = brackets.at("saddle").numbers(), plate = brackets.at("plate").numbers();
  const std::vector<double> strap = brackets.at("strap").numbers();
  if (brackets.at("projection").given()) read.projection = brackets.at("projection").number();
  if (brackets.at("drop").given()) read.drop = brackets.at("drop").number();
  if (brackets.at("arm").given()) read.arm = brackets.at("arm").number();
  if (saddle.size() == 2) read.saddle_length = saddle[0], read.saddle_thickness = saddle[1];
  if (plate.size() == 3) read.plate_width = plate[0], read.plate_height = plate[1], read.plate_thickness = plate[2];
  if (strap.size() == 2) read.strap_width = strap[0], read.strap_thickness = strap[1];
  read.bend = brackets.at("bend").number();
  read.flat = brackets.at("flat").number();
  read.saddle_heads = read_heads(brackets.at("saddle heads"));
  read.plate_heads = read_heads(brackets.at("plate heads"));
  if (read.plate_heads) read.plate_heads->at = brackets.at("plate heads").at("at").numbers();
  read.strap_arc = brackets.at("arc").number();
  read.tab = brackets.at("tab").word() == "wall" ? TabWay::wall : TabWay::up;
}

void check_flat(const Setting& brackets, const Rail& rail) {
  if (rail.brackets.flat > 0.0 && rail.brackets.flat >= rail.pipe.wall)
    brackets.at("flat").fault(
        "the flat would go through the pipe's wall of " + length_text(rail.pipe.wall, brackets.bare()),
        "file less, or take a pipe with a thicker wall");
}

void check_arm(const Setting& brackets, const Rail& rail) {
  const Brackets& read = rail.brackets;
  const double pipe = rail.pipe.diameter / 2, least_drop = pipe + read.arm / 2;
  if (read.drop < least_drop) {
    brackets.at("drop").fault(
        "the arm would run through the pipe",
        "its centre line lies at least " + length_text(least_drop, brackets.bare()) + " below the pipe's centre");
  }
  if (read.projection - read.plate_thickness < pipe) {
    const bool post = read.shape == BracketShape::post_mounted;
    brackets.at("projection")
        .fault(std::string(post ? "the post" : "the plate") + " would run through the pipe",
               post ? "it is measured from the post's near face to the pipe's centre, level"
                    : "it is measured from the mounting face to the pipe's centre, level");
    return;
  }
  const double room =
      std::min(read.drop - pipe + read.flat - read.saddle_thickness, read.projection - read.plate_thickness) -
      read.arm / 2;
  if (read.drop >= least_drop && read.bend > 0.0 && read.bend > room + 1e-9)
    brackets.at("bend").fault(
        "the arm has no room for this bend between the saddle and what it is fixed to",
        room > 0.0 ? "at most " + length_text(room, brackets.bare()) + " fits" : "leave it out: the elbow is sharp");
}

void check_strap(const Setting& brackets, const Rail& rail) {
  const double outside = rail.pipe.diameter / 2 + rail.brackets.strap_thickness + rail.brackets.plate_thickness;
  if (rail.brackets.projection < outside)
    brackets.at("projection")
        .fault("the band does not fit between the pipe's centre and the mounting face",
               "it takes at least " + length_text(outside, brackets.bare()));
}

void check_shape(const Setting& brackets, const Rail& rail) {
  const Brackets& read = rail.brackets;
  if (read.shape == BracketShape::post_mounted) check_post(brackets, rail);
  if (read.shape == BracketShape::strap && brackets.at("projection").given()) check_strap(brackets, rail);
  const bool arm = read.shape == BracketShape::wall_saddle || (read.post && read.post->beside);
  if (arm && brackets.at("drop").given() && brackets.at("projection").given()) check_arm(brackets, rail);
  check_flat(brackets, rail);
}

BracketPiece read_piece(const Setting& part) {
  BracketPiece piece;
  piece.name = part.at("name").text();
  piece.radius = part.at("radius").number();
  piece.corners = read_outline(part.at("outline"), piece.radius);
  piece.width = part.at("width").number();
  return piece;
}

}  // namespace

void read_brackets(const Setting& brackets, Scene& scene) {
  Brackets& read = scene.rail.brackets;
  const ShapeKeys& keys = keys_of(brackets);
  check_keys(brackets, keys);
  read.shape = keys.shape;
  read_measures(brackets, read);
  if (read.shape == BracketShape::post_mounted) read.post = read_post(brackets, scene);
  if (read.shape == BracketShape::outline)
    for (const Setting& part : brackets.at("parts").items()) read.pieces.push_back(read_piece(part));
  check_shape(brackets, scene.rail);
  read.stations = read_bracket_stations(brackets, scene.rail);
  if (brackets.at("screws").given()) read.screws = read_screws(brackets.at("screws"));
}

}  // namespace stowpath
