#pragma once

#include <numbers>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "sim/geometry/vec2.h"

namespace stowpath {

// A display list is one sheet of paper, drawn once and painted many ways. All of it is in millimetres of paper, x right
// and y down from the sheet's upper left corner, so that line weights, dashes and lettering never scale with the model.

/// What a stroke or a fill means; a painter's palette says which colour that is.
enum class Ink { paper, line, soft, faint, red, red_wash, blue, wood, wall };
inline constexpr int kInks = 9;

enum class Dash {
  solid,
  hidden,  ///< short strokes: what lies behind, or has moved on
  chain    ///< long and short: axes, zones
};

struct Pen {
  Ink ink = Ink::line;
  double width = 0.25;  ///< [mm]
  Dash dash = Dash::solid;
};

/// The three weights of a shop drawing [mm].
inline constexpr double kHeavy = 0.5;
inline constexpr double kMedium = 0.3;
inline constexpr double kThin = 0.18;

struct Path {
  std::vector<Vec2> points;  ///< [mm]
  bool closed = false;
  std::optional<Pen> pen;
  std::optional<Ink> fill;
};

/// Part of a circle, or all of it.
struct Arc {
  Vec2 centre;                            ///< [mm]
  double radius = 0.0;                    ///< [mm]
  double from = 0.0;                      ///< counter-clockwise as seen, from the right [rad]
  double sweep = 2.0 * std::numbers::pi;  ///< [rad]
  std::optional<Pen> pen;
  std::optional<Ink> fill;

  bool whole() const { return sweep >= 2.0 * std::numbers::pi - 1e-9; }
};

enum class Anchor { start, middle, end };

/// One line of lettering; `at` lies on its baseline.
struct Text {
  Vec2 at;  ///< [mm]
  std::string words;
  double size = 2.5;  ///< height of a capital [mm]
  Anchor anchor = Anchor::start;
  Ink ink = Ink::line;
  double turn = 0.0;  ///< counter-clockwise as seen [rad]
  bool halo = false;  ///< clear the paper behind it
};

/// Opens or closes a layer; a painter may name, hide or move it.
struct Group {
  std::string id, title;
  bool opens = true;
};

/// Between its two ends the items are a sheet of their own, laid on this one and cut off at its edges.
struct Inset {
  Vec2 corner;  ///< its upper left one [mm]
  Vec2 size;    ///< [mm]
  bool opens = true;
};

using Item = std::variant<Path, Arc, Text, Group, Inset>;

struct DisplayList {
  double width = 0.0;   ///< [mm]
  double height = 0.0;  ///< [mm]
  std::string title, description;
  std::vector<Item> items;

  void path(std::vector<Vec2> points, bool closed, std::optional<Pen> pen, std::optional<Ink> fill = {});
  void line(Vec2 a, Vec2 b, const Pen& pen) { path({a, b}, false, pen); }
  void box(Vec2 least, Vec2 greatest, std::optional<Pen> pen, std::optional<Ink> fill = {});
  void circle(Vec2 centre, double radius, std::optional<Pen> pen, std::optional<Ink> fill = {});
  void arc(Vec2 centre, double radius, double from, double sweep, const Pen& pen);
  void text(Text lettering);
  void open(std::string id, std::string says);
  void close();
  /// Lays a sheet on this one, which grows to hold it. Its title becomes that of a layer.
  void lay(const DisplayList& sheet, Vec2 corner);
};

struct LaidSheet {
  DisplayList sheet;
  Vec2 corner;  ///< its upper left one [mm]
};

/// Sheets on one sheet, which has the first one's title and what each of them says of itself. One alone stays itself.
DisplayList on_one_sheet(std::vector<LaidSheet> sheets);

}  // namespace stowpath
