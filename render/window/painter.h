#pragma once

#include <SFML/Graphics/Font.hpp>
#include <SFML/Graphics/RenderTarget.hpp>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "render/studio/board.h"
#include "render/window/screen_picture.h"

namespace stowpath {

/// Paints the board on a screen, frame after frame. What does not change from one frame to the next is made once: the
/// room with its lettering and findings while scene, proof, move and frame stay; span and detail while the pose stays.
class Painter {
 public:
  /// @param lettering  must outlive it
  explicit Painter(const sf::Font& lettering) : lettering_(lettering) {}

  /// @param revision  another one where scene or proof are others
  /// @param dots      pixels for a millimetre of paper
  void draw(sf::RenderTarget& target, const Board& board, const PictureWish& wish, unsigned revision, double dots);

  /// A name beside the pointer. @param at  on the board [mm]
  void draw_tag(sf::RenderTarget& target, const Board& board, const std::string& words, Vec2 at, double dots);

 private:
  /// All that a kept picture was made from.
  struct Key {
    unsigned revision = 0;
    double dots = 0.0;
    Vec2 size, zero;
    double ratio = 0.0;
    Place place;
    std::optional<Configuration> pose;  // none where the picture does not show it
    std::optional<std::size_t> chosen;
    std::array<bool, 4> shown{};
    bool trimmed = false;

    bool operator==(const Key& other) const;
  };
  struct Kept {
    Key key;
    ScreenPicture under, over;
    Labels labels;
  };

  /// What the move sweeps: it stays while the room is looked at from nearer or further.
  struct Swept {
    unsigned revision = 0;
    std::size_t move = 0;
    std::vector<std::vector<Vec2>> rings;
  };

  const std::vector<std::vector<Vec2>>* swept(const PictureWish& wish, unsigned revision);
  void draw_side(sf::RenderTarget& target, const Pane& pane, const PictureWish& wish, const Key& key);
  void draw_whole(sf::RenderTarget& target, const Pane& pane, const PictureWish& wish, const Key& key);

  const sf::Font& lettering_;
  std::map<PaneKind, Kept> kept_;
  std::optional<Swept> swept_;
};

}  // namespace stowpath
