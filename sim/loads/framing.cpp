#include "sim/loads/framing.h"

#include <algorithm>
#include <cmath>

#include "sim/mechanism/scene_fault.h"
#include "sim/trade/lumber.h"

namespace stowpath {

namespace {

constexpr double kTrussThickness = 0.0381;  // of its chords, 1 1/2 in [m]
constexpr double kOnTheLoft = 0.002;        // that a bracket's face may be off the loft's edge [m]

double thickness_of(const Framing& framing) {
  const auto size = dressed_size(framing.member);
  return size ? size->thickness : kTrussThickness;
}

const std::optional<Framing>& framing_of(const Scene& scene, const FramedPoint& point) {
  return point.ceiling ? scene.ceiling_framing : scene.loft.framing;
}

FramingLoad placed(const Framing& framing, const FramedPoint& point) {
  FramingLoad load{point, FramingPlace::not_said, 0.0, {}};
  if (!framing.every || !framing.first) return load;
  const double at = framing.direction == FramingDirection::out ? point.station : point.out;
  const double spaces = (at - *framing.first) / *framing.every, lower = std::floor(spaces);
  const double share = spaces - lower;  // of the upper member, by the lever rule
  const MemberShare below{*framing.first + lower * *framing.every, (1.0 - share) * point.force};
  const MemberShare above{below.at + *framing.every, share * point.force};
  load.off = std::min(at - below.at, above.at - at);
  const bool nearer_below = share <= 0.5;
  if (load.off <= 0.5 * thickness_of(framing)) {
    load.place = FramingPlace::on_member;
    load.members = {{nearer_below ? below.at : above.at, point.force}};
  } else {
    load.place = FramingPlace::between_members;
    load.members = nearer_below ? std::vector{below, above} : std::vector{above, below};
  }
  return load;
}

bool on_the_loft(const Scene& scene) {
  return std::abs(scene.rail.at.x - scene.rail.brackets.projection - scene.loft.edge) <= kOnTheLoft;
}

std::string member_text(const Framing& framing) {
  return framing.member == "truss" ? "trusses" : framing.member + " joists";
}

std::string place_words(const Scene& scene, const FramingLoad& load, const Framing& framing) {
  const std::string off = say_length(scene, Nominal{load.off});
  if (load.place == FramingPlace::on_member)
    return "on one of the " + member_text(framing) + ", " + off + " off its middle";
  return "between two of the " + member_text(framing) + ", " + off + " off the nearer one: a board must bridge them";
}

}  // namespace

std::vector<FramingLoad> framing_loads(const Scene& scene, const std::vector<FramedPoint>& points) {
  std::vector<FramingLoad> loads;
  for (const FramedPoint& point : points) {
    const std::optional<Framing>& framing = framing_of(scene, point);
    loads.push_back(framing ? placed(*framing, point) : FramingLoad{point, FramingPlace::not_said, 0.0, {}});
  }
  return loads;
}

std::vector<FramedPoint> ceiling_framed(const Scene& scene, double force, const std::string& where) {
  if (!scene.hoist || !scene.hoist->ceiling_point) return {};
  const RoomPoint& at = *scene.hoist->ceiling_point;
  return {{"ceiling point", true, at.at.x, at.station, force, where}};
}

std::vector<FramedPoint> brackets_framed(const Scene& scene, double force, const std::string& where) {
  std::vector<FramedPoint> points;
  if (!on_the_loft(scene)) return points;
  for (const double station : scene.rail.brackets.stations)
    points.push_back(
        {"bracket at station " + say_length(scene, Nominal{station}), false, scene.loft.edge, station, force, where});
  return points;
}

std::string framing_words(const Scene& scene, const FramingLoad& load,
                          std::string (*force_text)(const Scene&, double)) {
  const std::string who = load.point.name + ", " + force_text(scene, load.point.force) + ": ";
  if (load.place == FramingPlace::not_said) return who + "where the framing is, is not said; one member may get it all";
  std::string text = who + place_words(scene, load, *framing_of(scene, load.point));
  for (const MemberShare& member : load.members)
    text += "; " + force_text(scene, member.force) + " on the one at " + say_length(scene, Nominal{member.at});
  return text;
}

}  // namespace stowpath
