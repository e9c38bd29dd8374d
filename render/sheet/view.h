#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "render/sheet/display_list.h"
#include "sim/clearance/dry_fit.h"
#include "sim/trade/length.h"

namespace stowpath {

/// What a sheet shows: the scene, what was assembled from it, and what was proven.
struct Subject {
  const Scene& scene;
  const Model& model;
  const DryFit& fit;
  DisplayUnits units = DisplayUnits::metric;
};

/// A drawing scale of the trade.
struct DrawingScale {
  double ratio = 50.0;  ///< model lengths to paper lengths
  std::string label;    ///< "1:25", `1/2" = 1'-0"`

  double paper(double metres) const { return metres * 1000.0 / ratio; }  ///< [mm]
};

/// The ruler's scales, largest first.
const std::vector<DrawingScale>& common_scales(DisplayUnits units);

/// The largest common scale at which a model stretch fits the paper both ways; the smallest there is where none does.
/// @param paper  width and height [mm]
/// @param model  width and height [m]
DrawingScale common_scale(DisplayUnits units, Vec2 paper, Vec2 model);

/// How a view lies on the paper. Right in the model is right on the paper; `flipped` views run the second axis down.
struct ViewFrame {
  Vec2 zero;  ///< where the model's zero lies [mm]
  DrawingScale scale;
  bool flipped = false;  ///< second axis downward: a span seen from above

  double x(double right) const { return zero.x + scale.paper(right); }
  double y(double second) const { return zero.y + (flipped ? 1.0 : -1.0) * scale.paper(second); }
  Vec2 operator()(Vec2 model) const { return {x(model.x), y(model.y)}; }
};

std::vector<Vec2> on_paper(const ViewFrame& frame, std::span<const Vec2> corners);

/// An outline's corners on the paper, its rounding cut finer than a print shows.
std::vector<Vec2> on_paper(const ViewFrame& frame, const RoundedPolygon& outline);

/// Parallel strokes inside a convex polygon.
/// @param corners  either way round [mm]
/// @param angle    counter-clockwise as seen [rad]
/// @param every    distance between strokes [mm]
void hatch(DisplayList& list, std::span<const Vec2> corners, double angle, double every, const Pen& pen);

/// The common part of two convex polygons, either way round; empty where there is none [m or mm].
std::vector<Vec2> common_part(std::span<const Vec2> a, std::span<const Vec2> b);

/// Where the moving stair stands in the working pose, at home or in the middle of where it can stand.
Configuration working_configuration(const Model& model);

/// Where the procedure parks it; none where it only stands and rolls.
std::optional<Configuration> parked_configuration(const Model& model);

}  // namespace stowpath
