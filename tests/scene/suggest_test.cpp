#include "sim/scene/suggest.h"

#include <catch2/catch.hpp>

#include <array>
#include <random>
#include <string>

using namespace stowpath;

namespace {

constexpr std::array<std::string_view, 5> kKeys{"above pivot", "hinges", "hooks", "side rails", "treads"};

std::string random_word(std::mt19937& random) {
  std::string word(std::uniform_int_distribution<std::size_t>(0, 6)(random), 'a');
  for (char& c : word) c = static_cast<char>('a' + std::uniform_int_distribution<int>(0, 2)(random));
  return word;
}

}  // namespace

TEST_CASE("suggest: the distance of textbook words", "[scene]") {
  CHECK(edit_distance("kitten", "sitting") == 3);  // the usual example, e.g. Wikipedia, "Levenshtein distance"
  CHECK(edit_distance("", "abc") == 3);
  CHECK(edit_distance("hooks", "hooks") == 0);
  CHECK(edit_distance("depht", "depth") == 1);  // neighbours swapped
}

TEST_CASE("suggest: the distance is symmetric and no longer than the longer word", "[scene][random]") {
  std::mt19937 random(3);
  for (int i = 0; i < 2000; ++i) {
    const std::string a = random_word(random), b = random_word(random);
    INFO(a << " " << b);
    CHECK(edit_distance(a, b) == edit_distance(b, a));
    CHECK(edit_distance(a, b) <= static_cast<int>(std::max(a.size(), b.size())));
    CHECK((edit_distance(a, b) == 0) == (a == b));
  }
}

TEST_CASE("suggest: a slip of the keys finds its word, another word finds none", "[scene]") {
  CHECK(nearest_word("hoooks", kKeys) == "hooks");
  CHECK(nearest_word("Side_Rails", kKeys) == "side rails");
  CHECK(nearest_word("side-rail", kKeys) == "side rails");
  CHECK(nearest_word("abovepivot", kKeys) == "above pivot");
  CHECK_FALSE(nearest_word("obstacles", kKeys));
  CHECK_FALSE(nearest_word(std::string(5000, 'h'), kKeys));
}

TEST_CASE("suggest: words are joined as one says them", "[scene]") {
  CHECK(join_words({}) == "");
  CHECK(join_words(std::span(kKeys).first(1)) == "above pivot");
  CHECK(join_words(std::span(kKeys).first(3)) == "above pivot, hinges or hooks");
  CHECK(join_words(std::span(kKeys).first(2), "and") == "above pivot and hinges");
}
