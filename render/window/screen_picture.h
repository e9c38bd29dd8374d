#pragma once

#include <SFML/Graphics/RenderTarget.hpp>
#include <SFML/Graphics/Text.hpp>
#include <SFML/Graphics/VertexArray.hpp>
#include <variant>
#include <vector>

namespace stowpath {

/// A drawing made ready for the screen: triangles and lettering in the order of painting. It can be drawn again and
/// again while what it shows stays the same.
struct ScreenPicture {
  sf::Vector2f size;  ///< [pixels]
  std::vector<std::variant<sf::VertexArray, sf::Text>> parts;

  /// @param corner  of its paper on the target [pixels]; what lies outside of its paper is cut off
  void draw(sf::RenderTarget& target, sf::Vector2f corner) const;
};

}  // namespace stowpath
