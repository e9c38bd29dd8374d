#include "sim/scene/suggest.h"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace stowpath {
namespace {

// Longer words are no misspelt key, and the distance takes time that grows with the square of the length.
constexpr std::size_t kLongestWord = 40;

std::string folded(std::string_view word) {
  std::string plain;
  for (const char c : word) {
    if (c == '_' || c == '-') {
      plain += ' ';
    } else {
      plain += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
  }
  return plain;
}

}  // namespace

int edit_distance(std::string_view a, std::string_view b) {
  const std::size_t columns = b.size() + 1;
  std::vector<int> rows((a.size() + 1) * columns);
  const auto cell = [&](std::size_t i, std::size_t j) -> int& { return rows[i * columns + j]; };
  for (std::size_t i = 0; i <= a.size(); ++i) {
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        cell(i, j) = static_cast<int>(i + j);
        continue;
      }
      const int change = a[i - 1] == b[j - 1] ? 0 : 1;
      cell(i, j) = std::min({cell(i - 1, j) + 1, cell(i, j - 1) + 1, cell(i - 1, j - 1) + change});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) cell(i, j) = std::min(cell(i, j), cell(i - 2, j - 2) + 1);
    }
  }
  return cell(a.size(), b.size());
}

std::optional<std::string_view> nearest_word(std::string_view word, std::span<const std::string_view> known) {
  if (word.size() > kLongestWord) return std::nullopt;
  const std::string plain = folded(word);
  std::optional<std::string_view> best;
  int least = static_cast<int>(std::max<std::size_t>(1, word.size() / 3)) + 1;
  for (const std::string_view candidate : known) {
    const int distance = edit_distance(plain, folded(candidate));
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

std::string join_words(std::span<const std::string_view> words, std::string_view last) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " " + std::string(last) + " " : std::string(", ");
    text += words[i];
  }
  return text;
}

}  // namespace stowpath
