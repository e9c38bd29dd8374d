#include "sim/scene/scene_parts.h"

namespace stowpath {
namespace {

Interval read_span(const Setting& span, Interval otherwise) { return span.given() ? span.interval() : otherwise; }

Rating read_rating(const Setting& piece) {
  constexpr double kUsualFactor = 5.0;
  const bool breaking = piece.at("kind").is_word("breaking");
  const double factor = piece.at("factor").number_if_given().value_or(breaking ? kUsualFactor : 1.0);
  const double stated = piece.at("rating").number();
  return {piece.at("what").word(), breaking ? stated / factor : stated, factor};
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
