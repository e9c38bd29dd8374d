#include "render/window/painter.h"

#include <tuple>

#include "render/studio/swept_outline.h"
#include "render/window/screen_canvas.h"

namespace stowpath {
namespace {

sf::Vector2f corner_of(const Pane& pane, double dots) {
  return {static_cast<float>(pane.corner.x * dots), static_cast<float>(pane.corner.y * dots)};
}

bool same(const std::optional<Configuration>& a, const std::optional<Configuration>& b) {
  if (!a || !b) return a.has_value() == b.has_value();
  return a->station == b->station && a->lean == b->lean && a->folds == b->folds;
}

}  // namespace

bool Painter::Key::operator==(const Key& o) const {
  const auto all = [](const Key& k) {
    return std::tie(k.revision, k.dots, k.size, k.zero, k.ratio, k.place.move, k.chosen, k.shown, k.trimmed);
  };
  return all(*this) == all(o) && same(pose, o.pose);
}

void Painter::draw(sf::RenderTarget& target, const Board& board, const PictureWish& wish, unsigned revision, double dots) {
  for (const Pane& pane : board.panes()) {
    Key key{revision, dots, pane.view.size, pane.view.frame.zero, pane.view.frame.scale.ratio, wish.place, {},
            wish.chosen_finding};
    key.shown = {wish.show_sweep, wish.show_findings, wish.show_names, wish.show_dimensions};
    key.trimmed = wish.trim.has_value();
    if (pane.kind == PaneKind::side) {
      draw_side(target, pane, wish, key);
    } else {
      key.pose = wish.pose;
      draw_whole(target, pane, wish, key);
    }
  }
}

const std::vector<std::vector<Vec2>>* Painter::swept(const PictureWish& wish, unsigned revision) {
  const std::size_t move = wish.place.move;
  if (!swept_ || swept_->revision != revision || swept_->move != move)
    swept_ = {revision, move, swept_outline(wish.subject.model, move)};
  return &swept_->rings;
}

void Painter::draw_side(sf::RenderTarget& target, const Pane& pane, const PictureWish& wish, const Key& key) {
  Kept& kept = kept_[pane.kind];
  if (!(kept.key == key)) {
    PictureWish with_sweep = wish;
    with_sweep.swept = swept(wish, key.revision);
    StillSide still = still_side(with_sweep, pane.view);
    ScreenCanvas canvas(lettering_, key.dots);
    kept = {key, canvas.picture(still.under), canvas.picture(still.over), std::move(still.labels)};
  }
  const sf::Vector2f corner = corner_of(pane, key.dots);
  kept.under.draw(target, corner);
  ScreenCanvas(lettering_, key.dots).picture(moving_side(wish, pane.view, kept.labels)).draw(target, corner);
  kept.over.draw(target, corner);
}

void Painter::draw_whole(sf::RenderTarget& target, const Pane& pane, const PictureWish& wish, const Key& key) {
  Kept& kept = kept_[pane.kind];
  if (!(kept.key == key)) kept = {key, ScreenCanvas(lettering_, key.dots).picture(pane_picture(wish, pane)), {}, {}};
  kept.under.draw(target, corner_of(pane, key.dots));
}

void Painter::draw_tag(sf::RenderTarget& target, const Board& board, const std::string& words, Vec2 at, double dots) {
  const Pane* pane = board.pane_at(at);
  if (!pane || words.empty()) return;
  const DisplayList tag = pointer_tag(words, pane->inside(at), pane->view.size);
  ScreenCanvas(lettering_, dots).picture(tag).draw(target, corner_of(*pane, dots));
}

}  // namespace stowpath
