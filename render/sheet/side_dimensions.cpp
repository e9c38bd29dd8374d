#include "render/sheet/side_dimensions.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "render/report/words.h"

namespace stowpath {
namespace {

Vec2 foot_at(const Model& model, const Configuration& at) {
  const auto last = static_cast<std::size_t>(model.linkage.sections - 1);
  return place_sections(model.linkage, at).at(last) * Vec2{model.linkage.length.at(last), 0.0};
}

/// Out from the back wall, under the floor.
Dimension out(const Subject& subject, const ViewFrame& frame, double to, double off) {
  const double floor = frame.y(subject.model.floor_level);
  return {{frame.x(0.0), floor}, {frame.x(to), floor}, -off, dimension_text(Nominal{to}, subject.units)};
}

}  // namespace

std::vector<Dimension> room_heights(const Subject& subject, const ViewFrame& frame) {
  const double floor = subject.model.floor_level, wall = frame.x(0.0);
  const auto height = [&](double up, double off) {
    return Dimension{
        {wall, frame.y(floor)}, {wall, frame.y(up)}, off, dimension_text(Nominal{up - floor}, subject.units)};
  };
  return {height(subject.scene.loft.deck, 9.0), height(subject.model.linkage.pivot.y, 17.0),
          height(subject.scene.room.ceiling, 25.0)};
}

Dimension rail_out(const Subject& subject, const ViewFrame& frame) {
  return out(subject, frame, subject.model.linkage.pivot.x, 6.5);
}

Dimension foot_out(const Subject& subject, const ViewFrame& frame, const Configuration& at) {
  return out(subject, frame, foot_at(subject.model, at).x, 13.5);
}

Dimension loft_out(const Subject& subject, const ViewFrame& frame) {
  const double deck = frame.y(subject.scene.loft.deck), edge = subject.scene.loft.edge;
  return {{frame.x(0.0), deck}, {frame.x(edge), deck}, 5.0, dimension_text(Nominal{edge}, subject.units)};
}

std::vector<Dimension> section_lengths(const Subject& subject, const ViewFrame& frame, const Configuration& at) {
  constexpr double kOff = 9.0;  // [mm]
  const Linkage& linkage = subject.model.linkage;
  const SectionPoses poses = place_sections(linkage, at);
  std::vector<Dimension> out;
  for (int k = 0; k < linkage.sections; ++k) {
    const auto section = static_cast<std::size_t>(k);
    const double length = linkage.length.at(section);
    out.push_back({frame(poses.at(section) * Vec2{}), frame(poses.at(section) * Vec2{length, 0.0}), kOff,
                   dimension_text(Nominal{length}, subject.units)});
  }
  return out;
}

// The angle's arc lies where the climber is: out from the stair, under the pivot.
double angle_radius(const Model& model, const ViewFrame& frame) {
  return std::min(30.0, frame.scale.paper(0.45 * model.linkage.length[0]));
}

void draw_lean(DisplayList& list, const Model& model, const ViewFrame& frame, double lean) {
  const Vec2 pivot = frame(model.linkage.pivot);
  const double radius = angle_radius(model, frame);
  list.line(pivot, pivot + Vec2{0.0, radius + 4.0}, {Ink::line, kThin, Dash::chain});
  list.arc(pivot, radius, -0.5 * std::numbers::pi, lean, {Ink::line, kThin});
}

Vec2 lean_mark(const Model& model, const ViewFrame& frame, double lean) {
  const double part = 0.4 * lean;
  return frame(model.linkage.pivot) + angle_radius(model, frame) * Vec2{std::sin(part), std::cos(part)};
}

}  // namespace stowpath
