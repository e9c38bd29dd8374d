#include "render/window/screen_canvas.h"

#include <SFML/Graphics/Text.hpp>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "render/paint/palette.h"
#include "render/sheet/lettering.h"
#include "render/sheet/dashes.h"

namespace stowpath {
namespace {

constexpr float kFeather = 0.5F;   // half the width of a rim's fading [pixels]
constexpr float kFaintest = 0.35F;  // of a stroke thinner than a pixel

sf::Color colour_of(Ink ink) {
  const Colour c = paper_colour(ink);
  return {c.red, c.green, c.blue, static_cast<sf::Uint8>(std::lround(255.0 * c.opacity))};
}

sf::Color faded(sf::Color colour, float by) {
  colour.a = static_cast<sf::Uint8>(static_cast<float>(colour.a) * by);
  return colour;
}

sf::Vector2f across_of(sf::Vector2f a, sf::Vector2f b) {
  const sf::Vector2f d = b - a;
  const float length = std::hypot(d.x, d.y);
  return length > 1e-4F ? sf::Vector2f{-d.y / length, d.x / length} : sf::Vector2f{};
}

std::vector<Vec2> points_of(const Arc& arc, double dots) {
  const int steps = std::clamp(static_cast<int>(std::abs(arc.sweep) * std::sqrt(arc.radius * dots) * 1.6), 6, 240);
  std::vector<Vec2> out;
  for (int k = 0; k <= steps; ++k) {
    const double angle = arc.from + arc.sweep * k / steps;
    out.push_back(arc.centre + arc.radius * Vec2{std::cos(angle), -std::sin(angle)});
  }
  if (arc.whole()) out.pop_back();
  return out;
}

sf::String utf8(const std::string& words) { return sf::String::fromUtf8(words.begin(), words.end()); }

}  // namespace

ScreenCanvas::ScreenCanvas(const sf::Font& lettering, double dots) : font_(lettering), dots_(dots) {}

ScreenPicture ScreenCanvas::picture(const DisplayList& list) {
  paper_ = {list.width, list.height};
  made_ = {{static_cast<float>(list.width * dots_), static_cast<float>(list.height * dots_)}, {}};
  for (const Item& item : list.items) std::visit(*this, item);
  flush();
  return std::move(made_);
}

bool ScreenCanvas::off_paper(Vec2 least, Vec2 greatest) const {
  constexpr double kPen = 1.0;  // the thickest reaches less far [mm]
  return greatest.x < -kPen || greatest.y < -kPen || least.x > paper_.x + kPen || least.y > paper_.y + kPen;
}

void ScreenCanvas::operator()(const Path& path) {
  Vec2 least = path.points.front(), greatest = least;
  for (const Vec2 v : path.points) {
    least = {std::min(least.x, v.x), std::min(least.y, v.y)};
    greatest = {std::max(greatest.x, v.x), std::max(greatest.y, v.y)};
  }
  if (off_paper(least, greatest)) return;
  if (path.fill) fill(path.points, *path.fill);
  if (path.pen) stroke(path.points, path.closed, *path.pen);
}

void ScreenCanvas::operator()(const Arc& arc) {
  const Vec2 radius{arc.radius, arc.radius};
  if (off_paper(arc.centre - radius, arc.centre + radius)) return;
  const std::vector<Vec2> points = points_of(arc, dots_);
  if (arc.fill) fill(points, *arc.fill);
  if (arc.pen) stroke(points, arc.whole(), *arc.pen);
}

void ScreenCanvas::operator()(const Text& text) {
  const PaperBox box = text_box(text);
  if (off_paper(box.least, box.greatest)) return;
  const Lettering line = letter(text.words, text.size);
  const double start = line_start(text.anchor, line.width);
  const double c = std::cos(text.turn), s = std::sin(text.turn);
  const auto at = [&](double right, double up) { return text.at + Vec2{right * c - up * s, -right * s - up * c}; };
  if (text.halo) {
    const double m = kHaloMargin * text.size, end = start + line.width;
    fill(std::vector<Vec2>{at(start - m, -m), at(end + m, -m), at(end + m, text.size + m), at(start - m, text.size + m)},
         Ink::paper);
  }
  flush();
  for (const LetterRun& run : line.runs) {
    const double body = run.size * kBodyPerCapital * dots_;
    sf::Text set(utf8(run.words), font_, std::max(1U, static_cast<unsigned>(std::lround(body))));
    set.setFillColor(colour_of(text.ink));
    set.setOrigin(0.0F, static_cast<float>(set.getCharacterSize()));  // the baseline, as SFML lays it
    sf::Vector2f place = dot(at(start + run.x, run.rise));
    if (text.turn == 0.0) place = {std::round(place.x), std::round(place.y)};
    set.setPosition(place);
    set.setRotation(static_cast<float>(-text.turn * 180.0 / std::numbers::pi));
    made_.parts.emplace_back(std::move(set));
  }
}

sf::Vector2f ScreenCanvas::dot(Vec2 paper) const {
  return {static_cast<float>(paper.x * dots_), static_cast<float>(paper.y * dots_)};
}

void ScreenCanvas::triangle(sf::Vector2f a, sf::Color ca, sf::Vector2f b, sf::Color cb, sf::Vector2f c, sf::Color cc) {
  triangles_.append({a, ca});
  triangles_.append({b, cb});
  triangles_.append({c, cc});
}

void ScreenCanvas::band(sf::Vector2f a, sf::Vector2f b, sf::Vector2f across, float from, float to, sf::Color near,
                        sf::Color far) {
  const sf::Vector2f a0 = a + across * from, b0 = b + across * from, a1 = a + across * to, b1 = b + across * to;
  triangle(a0, near, b0, near, b1, far);
  triangle(a0, near, b1, far, a1, far);
}

void ScreenCanvas::straight(sf::Vector2f a, sf::Vector2f b, float half, sf::Color colour) {
  const sf::Vector2f across = across_of(a, b);
  const sf::Color clear = faded(colour, 0.0F);
  const float in = half - kFeather, out = half + kFeather;
  band(a, b, across, -in, in, colour, colour);
  band(a, b, across, in, out, colour, clear);
  band(a, b, across, -in, -out, colour, clear);
}

void ScreenCanvas::round_end(sf::Vector2f centre, float radius, sf::Color colour) {
  const int steps = std::max(10, static_cast<int>(3.0F * radius));
  const sf::Color clear = faded(colour, 0.0F);
  const float in = radius - kFeather, out = radius + kFeather;
  const auto spoke = [&](int k) {
    const float angle = 2.0F * std::numbers::pi_v<float> * static_cast<float>(k) / static_cast<float>(steps);
    return sf::Vector2f{std::cos(angle), std::sin(angle)};
  };
  for (int k = 0; k < steps; ++k) {
    const sf::Vector2f u = spoke(k), v = spoke(k + 1);
    triangle(centre, colour, centre + u * in, colour, centre + v * in, colour);
    triangle(centre + u * in, colour, centre + v * in, colour, centre + v * out, clear);
    triangle(centre + u * in, colour, centre + v * out, clear, centre + u * out, clear);
  }
}

// A hairline is drawn a pixel wide and paler.
void ScreenCanvas::stroke(std::span<const Vec2> points, bool closed, const Pen& pen) {
  const double wide = pen.width * dots_;
  const float half = 0.5F * static_cast<float>(std::max(wide, 1.0));
  const sf::Color colour = faded(colour_of(pen.ink), std::clamp(static_cast<float>(wide), kFaintest, 1.0F));
  for (const std::vector<Vec2>& dash : dashes(points, closed, pen.dash)) {
    for (std::size_t i = 0; i + 1 < dash.size(); ++i) straight(dot(dash[i]), dot(dash[i + 1]), half, colour);
    if (half <= 1.0F) continue;
    for (const Vec2& corner : dash) round_end(dot(corner), half, colour);
  }
}

// All fills of the drawings are convex.
void ScreenCanvas::fill(std::span<const Vec2> corners, Ink ink) {
  const sf::Color colour = colour_of(ink);
  for (std::size_t i = 1; i + 1 < corners.size(); ++i)
    triangle(dot(corners[0]), colour, dot(corners[i]), colour, dot(corners[i + 1]), colour);
}

void ScreenCanvas::flush() {
  if (triangles_.getVertexCount() > 0) made_.parts.emplace_back(triangles_);
  triangles_.clear();
}

}  // namespace stowpath
