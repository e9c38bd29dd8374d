#pragma once

#include <SFML/Graphics/Font.hpp>
#include <SFML/Graphics/VertexArray.hpp>
#include <span>

#include "render/sheet/display_list.h"
#include "render/window/screen_picture.h"

namespace stowpath {

/// Makes display lists ready for the screen. Strokes and rims are feathered triangles, smooth on any driver without
/// multisampling; lettering is set at whole pixels and never scaled. What lies off the paper is left out.
/// Sheets that lie on one sheet are for files: the window shows each by itself.
class ScreenCanvas {
 public:
  /// @param lettering  must outlive what is made
  /// @param dots       pixels for a millimetre of paper
  ScreenCanvas(const sf::Font& lettering, double dots);

  ScreenPicture picture(const DisplayList& list);

  void operator()(const Group&) {}
  void operator()(const Inset&) {}
  void operator()(const Path& path);
  void operator()(const Arc& arc);
  void operator()(const Text& text);

 private:
  sf::Vector2f dot(Vec2 paper) const;
  void triangle(sf::Vector2f a, sf::Color ca, sf::Vector2f b, sf::Color cb, sf::Vector2f c, sf::Color cc);
  void band(sf::Vector2f a, sf::Vector2f b, sf::Vector2f across, float from, float to, sf::Color near, sf::Color far);
  void stroke(std::span<const Vec2> points, bool closed, const Pen& pen);
  void straight(sf::Vector2f a, sf::Vector2f b, float half, sf::Color colour);
  void round_end(sf::Vector2f centre, float radius, sf::Color colour);
  void fill(std::span<const Vec2> corners, Ink ink);
  void flush();
  bool off_paper(Vec2 least, Vec2 greatest) const;

  const sf::Font& font_;
  double dots_;
  Vec2 paper_;  // [mm]
  ScreenPicture made_;
  sf::VertexArray triangles_{sf::Triangles};
};

}  // namespace stowpath
