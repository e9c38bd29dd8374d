#include "render/studio/board.h"

#include <algorithm>
#include <cmath>

#include "render/sheet/labels.h"
#include "render/studio/detail_picture.h"

namespace stowpath {
namespace {

ViewFrame fitted_frame(const Subject& subject, PaneKind kind, Vec2 size) {
  switch (kind) {
    case PaneKind::side:
      return whole_side(subject, size);
    case PaneKind::rail:
      return rail_frame(subject, size);
    case PaneKind::detail:
      return detail_frame(subject, size);
  }
  return {};
}

}  // namespace

std::string_view view_name(BoardView view) {
  switch (view) {
    case BoardView::side_and_span:
      return "side and span";
    case BoardView::side:
      return "side view";
    case BoardView::span:
      return "span view";
    case BoardView::detail:
      return "hook, full size";
  }
  return "";
}

bool Pane::holds(Vec2 at) const {
  const Vec2 p = inside(at);
  return p.x >= 0.0 && p.y >= 0.0 && p.x < view.size.x && p.y < view.size.y;
}

void Board::hang(const Subject& subject, PaneKind kind, Vec2 corner, Vec2 size) {
  Look& how = look(kind);
  if (how.fitted) how.frame = fitted_frame(subject, kind, size);
  panes_.push_back({kind, corner, {size, how.frame}});
}

void Board::lay_out(const Subject& subject, Vec2 size) {
  size_ = size;
  panes_.clear();
  const double under_side = view_ == BoardView::side_and_span ? std::round(kUpperShare * size.y) : 0.0;
  switch (view_) {
    case BoardView::side_and_span:
      hang(subject, PaneKind::side, {}, {size.x, under_side});
      return hang(subject, PaneKind::rail, {0.0, under_side}, {size.x, size.y - under_side});
    case BoardView::side:
      return hang(subject, PaneKind::side, {}, size);
    case BoardView::span:
      return hang(subject, PaneKind::rail, {}, size);
    case BoardView::detail:
      return hang(subject, PaneKind::detail, {}, size);
  }
}

// A drawing that fitted one pane does not fit another: each view shows all there is at first.
void Board::show(BoardView view, const Subject& subject) {
  view_ = view;
  fit(subject);
}

const Pane* Board::pane_at(Vec2 at) const {
  const auto found = std::find_if(panes_.begin(), panes_.end(), [at](const Pane& pane) { return pane.holds(at); });
  return found == panes_.end() ? nullptr : &*found;
}

const Pane* Board::pane(PaneKind kind) const {
  const auto found = std::find_if(panes_.begin(), panes_.end(), [kind](const Pane& pane) { return pane.kind == kind; });
  return found == panes_.end() ? nullptr : &*found;
}

void Board::fit(const Subject& subject) {
  for (Look& how : looks_) how.fitted = true;
  lay_out(subject, size_);
}

void Board::zoom(Vec2 about, double factor) {
  for (Pane& pane : panes_) {
    if (!pane.holds(about) || pane.kind == PaneKind::detail) continue;
    pane.view.frame = zoomed(pane.view.frame, pane.inside(about), factor);
    look(pane.kind) = {pane.view.frame, false};
  }
}

void Board::shift(PaneKind kind, Vec2 by) {
  for (Pane& pane : panes_) {
    if (pane.kind != kind) continue;
    pane.view.frame.zero = pane.view.frame.zero + by;
    look(kind) = {pane.view.frame, false};
  }
}

DisplayList pane_picture(const PictureWish& wish, const Pane& pane) {
  switch (pane.kind) {
    case PaneKind::side:
      return side_picture(wish, pane.view);
    case PaneKind::rail:
      return rail_picture(wish, pane.view);
    case PaneKind::detail:
      return detail_picture(wish, pane.view);
  }
  return {};
}

DisplayList board_picture(const PictureWish& wish, const Board& board) {
  std::vector<LaidSheet> drawings;
  for (const Pane& pane : board.panes()) drawings.push_back({pane_picture(wish, pane), pane.corner});
  return on_one_sheet(std::move(drawings));
}

DisplayList pointer_tag(const std::string& words, Vec2 at, Vec2 size) {
  constexpr double kAway = 4.0, kAir = 1.2;  // [mm]
  DisplayList list;
  list.width = size.x;
  list.height = size.y;
  const double width = text_width(words, kNotes) + 2.0 * kAir, height = kNotes + 2.0 * kAir;
  const bool left = at.x + kAway + width > size.x, above = at.y + kAway + height > size.y;
  const Vec2 corner{std::max(0.0, left ? at.x - kAway - width : at.x + kAway), above ? at.y - kAway - height : at.y + kAway};
  list.box(corner, corner + Vec2{width, height}, Pen{Ink::soft, kThin}, Ink::paper);
  list.text({corner + Vec2{kAir, height - kAir}, words, kNotes});
  return list;
}

}  // namespace stowpath
