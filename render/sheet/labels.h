#pragma once

#include <span>
#include <vector>

#include "render/sheet/display_list.h"
#include "render/sheet/lettering.h"

namespace stowpath {

/// Keeps the lettering of a sheet apart: every text goes through here, and none may lie on another.
class Labels {
 public:
  /// Sets a text where it is told to; later labels keep off it.
  void fix(DisplayList& list, Text text);

  /// Sets a text as near to `at` as it can stand clear of all other lettering, within `bounds`, with a thin leader
  /// where that is far. Tries the nearest places first, beginning to the right; keeps off the lines to be avoided if it
  /// can.
  /// @param farthest  how far it may stand from `at` [mm]
  /// @returns false, with nothing drawn, where there is no room
  bool place(DisplayList& list, Text text, Vec2 at, const PaperBox& bounds, double farthest = 40.0);

  /// Sets a text inside a box, as near to its middle as it fits clear of all other lettering and lines.
  /// @returns false, with nothing drawn, where there is no such place
  bool place_inside(DisplayList& list, Text text, const PaperBox& box);

  /// Whether lettering can stand in a box: within the bounds, on no other.
  bool free(const PaperBox& box, const PaperBox& bounds) const { return fits(box, bounds, false); }

  /// Keeps lettering off a box.
  void keep_off(const PaperBox& box) { taken_.push_back(box); }

  /// Asks lettering to keep off a line, where there is another place for it.
  void avoid(std::span<const Vec2> points, bool closed);

 private:
  bool fits(const PaperBox& box, const PaperBox& bounds, bool off_lines) const;
  bool place(DisplayList& list, Text& text, Vec2 at, const PaperBox& bounds, bool off_lines, double farthest);

  std::vector<PaperBox> taken_;
  std::vector<PaperBox> avoided_;
};

/// A dimension line from a to b, moved off to its left by `off` [mm] (seen walking from a to b, paper upright), with
/// the figures on it; turned so that it reads from the bottom or from the right.
void dimension(DisplayList& list, Labels& labels, Vec2 a, Vec2 b, double off, const std::string& figures);

/// A dimension where there is room for it: its figures slide along the line, or beyond an end, to where they stand clear
/// of other lettering within the bounds. @returns false, with nothing drawn, where they can stand nowhere
bool place_dimension(DisplayList& list, Labels& labels, Vec2 a, Vec2 b, double off, const std::string& figures,
                     const PaperBox& bounds);

/// An arrowhead with its tip at `tip`, pointing along `direction`.
void arrowhead(DisplayList& list, Vec2 tip, Vec2 direction, Ink ink);

/// The two strokes of a pencilled cross.
void cross_mark(DisplayList& list, Vec2 centre, double half, const Pen& pen);

/// The two strokes of a pencilled tick.
void tick_mark(DisplayList& list, Vec2 centre, double half, const Pen& pen);

inline constexpr double kFigures = 3.5;  ///< height of a dimension's figures [mm]
inline constexpr double kNotes = 2.5;    ///< height of notes and labels [mm]

}  // namespace stowpath
