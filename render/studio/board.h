#pragma once

#include <array>
#include <string_view>
#include <vector>

#include "render/studio/scene_picture.h"

namespace stowpath {

/// Which drawings hang on the board.
enum class BoardView { side_and_span, side, span, detail };
inline constexpr int kBoardViews = 4;

/// "side and span", "side view", "span view", "hook, full size".
std::string_view view_name(BoardView view);

/// Whether a side view, a span view over the story stick, or the hook at full size.
enum class PaneKind { side, rail, detail };

/// One drawing on the board.
struct Pane {
  PaneKind kind = PaneKind::side;
  Vec2 corner;    ///< its upper left one on the board [mm]
  PaneView view;  ///< its size, and how near it is looked at

  bool holds(Vec2 at) const;                               ///< a point of the board [mm]
  Vec2 inside(Vec2 at) const { return at - corner; }       ///< that point on the drawing's own paper [mm]
  Vec2 model(Vec2 at) const { return under(view.frame, inside(at)); }  ///< and in the room: out and up, or station and out [m]
};

/// The drawings as they hang over each other: which are shown, where, and how near each is looked at. What was zoomed
/// or shifted by hand stays so when the board is laid out anew; the rest shows all there is.
class Board {
 public:
  void lay_out(const Subject& subject, Vec2 size);  ///< @param size  of the board [mm]
  void show(BoardView view, const Subject& subject);
  BoardView view() const { return view_; }

  const std::vector<Pane>& panes() const { return panes_; }
  const Pane* pane_at(Vec2 at) const;  ///< none beside all of them
  const Pane* pane(PaneKind kind) const;  ///< none where it is not shown

  void fit(const Subject& subject);        ///< all of them show all there is
  void zoom(Vec2 about, double factor);    ///< the drawing under a point of the board; a full-size one stays so
  void shift(PaneKind kind, Vec2 by);      ///< [mm]

 private:
  struct Look {
    ViewFrame frame;
    bool fitted = true;
  };
  Look& look(PaneKind kind) { return looks_[static_cast<std::size_t>(kind)]; }
  void hang(const Subject& subject, PaneKind kind, Vec2 corner, Vec2 size);

  BoardView view_ = BoardView::side_and_span;
  Vec2 size_;
  std::array<Look, 3> looks_;
  std::vector<Pane> panes_;
};

/// What a pane shows.
DisplayList pane_picture(const PictureWish& wish, const Pane& pane);

/// All that hangs on the board, on one sheet.
DisplayList board_picture(const PictureWish& wish, const Board& board);

/// A name on a slip of paper beside a point of a pane, wherever it has room.
DisplayList pointer_tag(const std::string& words, Vec2 at, Vec2 size);

}  // namespace stowpath
