#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace stowpath {

/// Least number of letters to insert, drop, change or swap with a neighbour to turn one word into the other.
/// Source: Levenshtein (1966), with neighbouring letters swapped as one edit.
int edit_distance(std::string_view a, std::string_view b);

/// The known word that `word` was probably meant for: the nearest within a third of its length, small and capital
/// letters, spaces, dashes and underscores taken as equal. Empty if none is near.
std::optional<std::string_view> nearest_word(std::string_view word, std::span<const std::string_view> known);

/// "a, b or c".
std::string join_words(std::span<const std::string_view> words, std::string_view last = "or");

}  // namespace stowpath
