#pragma once

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>
#include <variant>
#include <vector>

#include "render/sheet/lettering.h"

namespace stowpath::testing {

/// All items of one kind, in order.
template <typename Kind>
std::vector<Kind> all_of(const DisplayList& list) {
  std::vector<Kind> out;
  for (const Item& item : list.items) {
    if (const Kind* kind = std::get_if<Kind>(&item)) out.push_back(*kind);
  }
  return out;
}

inline bool has_text(const DisplayList& list, const std::string& words) {
  const std::vector<Text> all = all_of<Text>(list);
  return std::any_of(all.begin(), all.end(), [&](const Text& t) { return t.words.find(words) != std::string::npos; });
}

/// Every text lies within the sheet's frame, and on no other.
inline void check_lettering(const DisplayList& list) {
  const std::vector<Text> all = all_of<Text>(list);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const PaperBox box = text_box(all[i]);
    INFO(all[i].words);
    CHECK(box.least.x >= 8.0);  // the frame
    CHECK(box.least.y >= 8.0);
    CHECK(box.greatest.x <= list.width - 8.0);
    CHECK(box.greatest.y <= list.height - 8.0);
    for (std::size_t j = 0; j < i; ++j) {
      INFO(all[j].words);
      CHECK_FALSE(overlap(box, text_box(all[j])));
    }
  }
}

}  // namespace stowpath::testing
