#pragma once

#include <cstdint>

#include "render/sheet/display_list.h"

namespace stowpath {

struct Colour {
  std::uint8_t red = 0, green = 0, blue = 0;
  double opacity = 1.0;
};

/// Warm paper, ink, wood, and the two pencils: for the screen.
constexpr Colour paper_colour(Ink ink) {
  switch (ink) {
    case Ink::paper:
      return {0xFA, 0xF5, 0xE9};
    case Ink::line:
      return {0x24, 0x2A, 0x33};
    case Ink::soft:
      return {0x5E, 0x5F, 0x5C};
    case Ink::faint:
      return {0xC9, 0xBE, 0xA4};
    case Ink::red:
      return {0xB8, 0x32, 0x27};
    case Ink::red_wash:
      return {0xB8, 0x32, 0x27, 0.16};
    case Ink::blue:
      return {0x2F, 0x5D, 0x8A};
    case Ink::wood:
      return {0xE8, 0xD5, 0xAE};
    case Ink::wall:
      return {0xE6, 0xDD, 0xC8};
  }
  return {};
}

/// The same for the printer, whose paper is white already.
constexpr Colour print_colour(Ink ink) { return ink == Ink::paper ? Colour{0xFF, 0xFF, 0xFF} : paper_colour(ink); }

}  // namespace stowpath
