#include "sim/scene/scene_parts.h"

namespace stowpath {
namespace {

Interval read_span(const Setting& span, Interval otherwise) { return span.given() ? span.interval() : otherwise; }

/// A carabiner is stamped with what breaks it, typically 20 kN (S-CARA): so much is no working load unless it is said.
void check_stamp(const Setting& piece, const Rating& rating) {
  constexpr double kSurelyAStamp = 15e3;  // [N], judgement
  if (rating.what != "carabiner" || piece.at("kind").given() || !(rating.force >= kSurelyAStamp)) return;
  piece.at("rating").fault(
      "a carabiner is stamped with the load that breaks it, and this would be taken as what it may carry",
      "add kind: breaking, or kind: working if its maker says so");
}

Rating read_rating(const Setting& piece) {
  const Rating read{piece.at("what").word(), piece.at("rating").number(), piece.at("kind").is_word("breaking"),
                    piece.at("factor").number_if_given()};
  check_stamp(piece, read);
  return read;
}

}  // namespace

void read_loads(const Setting& file, Scene& scene) {
  const Setting climber = file.at("climber");
  scene.climber = {climber.at("mass").number(),  climber.at("usual").number(),     climber.at("footfall").number(),
                   climber.at("aside").number(), climber.at("leans out").number(), climber.at("push").number()};
  const Setting friction = file.at("friction");
  scene.friction.hook = read_span(friction.at("hook"), scene.friction.hook);
  scene.friction.hinge = read_span(friction.at("hinge"), scene.friction.hinge);
  scene.friction.floor = read_span(friction.at("floor"), scene.friction.floor);
  for (const Setting& piece : file.at("hardware").items()) {
    scene.ratings.push_back(read_rating(piece));
  }
  scene.dynamic_factor = file.at("dynamic factor").number();
}

}  // namespace stowpath
