#include "render/sheet/lettering.h"

#include <catch2/catch.hpp>

using namespace stowpath;

namespace {

std::string joined(const Lettering& line) {
  std::string out;
  for (const LetterRun& run : line.runs) out += run.words;
  return out;
}

}  // namespace

TEST_CASE("lettering: widths add up to the type's own", "[sheet]") {
  // Routed Gothic: a figure 0 is 672 of 736 units to the capital, read from the font.
  CHECK(text_width("0", 7.36) == Approx(6.72).margin(1e-12));  // a product of exact table numbers
  CHECK(text_width("00", 3.5) == Approx(2 * text_width("0", 3.5)));
  CHECK(text_width("", 3.5) == 0.0);
}

TEST_CASE("lettering: foot and inch marks after figures become primes", "[sheet]") {
  CHECK(joined(letter("9'-4\"", 2.5)) == "9′-4″");
  CHECK(joined(letter("the loft's \"edge\"", 2.5)) == "the loft's \"edge\"");
}

TEST_CASE("lettering: a fraction is stacked where its figures stay readable, else it stays on the line", "[sheet]") {
  const Lettering large = letter("9'-4 3/16\" wide", 3.5);
  CHECK(joined(large) == "9′-43⁄16″ wide");
  REQUIRE(large.runs.size() == 5);
  CHECK(large.runs[1].words == "3");
  CHECK(large.runs[1].rise > 0.0);
  CHECK(large.runs[3].words == "16");
  CHECK(large.runs[3].rise < 0.0);
  CHECK(large.runs[3].size >= kSmallestFraction);
  CHECK(joined(letter("9'-4 3/16\"", 2.5)) == "9′-4 3/16″");
}

TEST_CASE("lettering: runs follow one another without overlap", "[sheet]") {
  for (const char* words : {"13'-5 7/16\"", "3/8\" = 1'-0\"", "1/2", "5/8 of 3/4", "plain"}) {
    double end = 0.0;
    for (const LetterRun& run : letter(words, 3.5).runs) {
      CHECK(run.x >= end - 1e-9);  // sums of the same numbers
      end = run.x + run.width;
    }
    CHECK(letter(words, 3.5).width >= end - 1e-9);
  }
}

TEST_CASE("lettering: wrapped lines fit, and lose nothing", "[sheet]") {
  const std::string words = "hook curl meets bracket arm at all 8 brackets while rolling, 3 1/2\" deep";
  std::string again;
  for (const std::string& line : wrap_text(words, 2.5, 50.0)) {
    CHECK(letter(line, 2.5).width <= 50.0);
    again += (again.empty() ? "" : " ") + line;
  }
  CHECK(again == words);
}

TEST_CASE("lettering: a turned text takes a turned box", "[sheet]") {
  Text text;
  text.at = {100.0, 100.0};
  text.words = "2950";
  text.size = 3.5;
  text.anchor = Anchor::middle;
  text.turn = 0.5 * std::numbers::pi;
  const PaperBox box = text_box(text);
  CHECK(box.greatest.y - box.least.y == Approx(letter(text.words, text.size).width));
  CHECK(box.greatest.x == Approx(100.0 + 0.3 * 3.5));  // descenders lie to the right of an upright baseline
}
