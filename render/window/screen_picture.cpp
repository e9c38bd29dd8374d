#include "render/window/screen_picture.h"

namespace stowpath {

void ScreenPicture::draw(sf::RenderTarget& target, sf::Vector2f corner) const {
  if (size.x < 1.0F || size.y < 1.0F) return;
  const sf::Vector2u whole = target.getSize();
  const sf::View before = target.getView();
  sf::View pane(sf::FloatRect(0.0F, 0.0F, size.x, size.y));
  pane.setViewport({corner.x / static_cast<float>(whole.x), corner.y / static_cast<float>(whole.y),
                    size.x / static_cast<float>(whole.x), size.y / static_cast<float>(whole.y)});
  target.setView(pane);
  for (const auto& part : parts) std::visit([&target](const auto& shape) { target.draw(shape); }, part);
  target.setView(before);
}

}  // namespace stowpath
