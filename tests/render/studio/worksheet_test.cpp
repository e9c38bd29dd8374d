#include "render/studio/worksheet.h"

#include <catch2/catch.hpp>
#include <random>

#include "tests/support/gallery.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

Worksheet demo_sheet() { return Worksheet(gallery_text("demo"), "demo.yaml"); }

ValueEdit width(int millimetres) { return {"stair.width", std::to_string(millimetres)}; }

std::string with_width(const std::string& written) {
  return changed(gallery_text("demo"), "  width: 560\n", "  width: " + written + "\n");
}

}  // namespace

TEST_CASE("worksheet: a change replaces its values and not a byte besides", "[studio][worksheet]") {
  Worksheet sheet = demo_sheet();
  REQUIRE_FALSE(sheet.set(width(600)));
  CHECK(sheet.text() == with_width("600"));
  CHECK(sheet.unsaved());
  CHECK(sheet.saved() == gallery_text("demo"));
  REQUIRE_FALSE(sheet.set({"stair.width", "22 1/2 in"}));
  CHECK(sheet.text() == with_width("22 1/2 in"));
  CHECK(sheet.reading().scene.stair.width == Approx(22.5 * 0.0254));
  REQUIRE_FALSE(sheet.set(width(560)));
  CHECK_FALSE(sheet.unsaved());
}

// The plain list is how undo is meant: a text for each step, and a finger on one of them.
TEST_CASE("worksheet: undo and redo are a finger on a list of texts", "[studio][worksheet]") {
  for (unsigned seed = 1; seed <= 8; ++seed) {
    std::mt19937 draw(seed);
    Worksheet sheet = demo_sheet();
    std::vector<std::string> texts{sheet.text()};
    std::size_t finger = 0;
    for (int k = 0; k < 60; ++k) {
      const auto what = draw() % 5;
      if (what < 2) {
        const int millimetres = 560 + static_cast<int>(draw() % 4);
        REQUIRE_FALSE(sheet.set(width(millimetres)));
        const std::string now = with_width(std::to_string(millimetres));
        if (now != texts[finger]) {
          texts.resize(finger + 1);
          texts.push_back(now);
          ++finger;
        }
      } else if (what == 2) {
        CHECK(sheet.set({"stair.width", "far too wide"}));
      } else if (what == 3) {
        CHECK(sheet.undo().empty() == (finger == 0));
        finger -= finger > 0 ? 1 : 0;
      } else {
        CHECK(sheet.redo().empty() == (finger + 1 == texts.size()));
        finger += finger + 1 < texts.size() ? 1 : 0;
      }
      REQUIRE(sheet.text() == texts[finger]);
      REQUIRE(sheet.can_undo() == (finger > 0));
      REQUIRE(sheet.can_redo() == (finger + 1 < texts.size()));
    }
  }
}

TEST_CASE("worksheet: a word typed is one step, and typed back it is none", "[studio][worksheet]") {
  Worksheet sheet = demo_sheet();
  for (const char* typed : {"565", "5650", "565", "566"}) sheet.set({"stair.width", typed}, true);
  CHECK(sheet.undo() == "stair.width: 560 becomes 566");
  CHECK(sheet.text() == gallery_text("demo"));
  for (const char* typed : {"565", "560"}) REQUIRE_FALSE(sheet.set({"stair.width", typed}, true));
  CHECK_FALSE(sheet.can_undo());
  REQUIRE_FALSE(sheet.set(width(561), true));
  sheet.end_typing();
  REQUIRE_FALSE(sheet.set(width(562), true));
  REQUIRE_FALSE(sheet.set({"hoist.home", "4300"}, true));
  CHECK(sheet.undo() == "hoist.home: 4340 becomes 4300");
  CHECK(sheet.undo() == "stair.width: 561 becomes 562");
  CHECK(sheet.undo() == "stair.width: 560 becomes 561");
  CHECK_FALSE(sheet.can_undo());
}

TEST_CASE("worksheet: typed back to where it began, a value takes no other step with it", "[studio][worksheet]") {
  Worksheet sheet = demo_sheet();
  REQUIRE_FALSE(sheet.set({"hoist.home", "4300"}));
  for (const char* typed : {"565", "560", "561"}) REQUIRE_FALSE(sheet.set({"stair.width", typed}, true));
  CHECK(sheet.undo() == "stair.width: 560 becomes 561");
  CHECK(sheet.undo() == "hoist.home: 4340 becomes 4300");
  CHECK_FALSE(sheet.can_undo());
}

// However a word is typed, one undo has what was there before it, where it left a difference at all.
TEST_CASE("worksheet: what was typed and is given up was never typed", "[studio][worksheet]") {
  Worksheet sheet = demo_sheet();
  REQUIRE_FALSE(sheet.set(width(561)));
  const std::string before = sheet.text();
  for (const char* typed : {"2", "25"}) REQUIRE_FALSE(sheet.set({"stair.hooks.seat range", typed}, true));
  CHECK_FALSE(sheet.forget_typed("stair.width"));
  CHECK(sheet.forget_typed("stair.hooks.seat range"));
  CHECK(sheet.text() == before);
  CHECK_FALSE(sheet.can_redo());
  CHECK_FALSE(sheet.forget_typed("stair.hooks.seat range"));
  for (const char* typed : {"565", "561"}) REQUIRE_FALSE(sheet.set({"stair.width", typed}, true));
  CHECK_FALSE(sheet.forget_typed("stair.width"));  // typed back to where it began
  REQUIRE_FALSE(sheet.set({"stair.width", "565"}, true));
  sheet.end_typing();
  CHECK_FALSE(sheet.forget_typed("stair.width"));
  CHECK(sheet.undo() == "stair.width: 561 becomes 565");
  CHECK(sheet.undo() == "stair.width: 560 becomes 561");
}

TEST_CASE("worksheet: each word is one step or none, whatever was typed on the way", "[studio][worksheet]") {
  int none = 0;
  for (unsigned seed = 1; seed <= 20; ++seed) {
    std::mt19937 draw(seed);
    Worksheet sheet = demo_sheet();
    std::vector<std::string> texts{sheet.text()};
    for (int word = 0; word < 10; ++word) {
      const std::string key = draw() % 2 == 0 ? "stair.width" : "hoist.home";
      for (auto letters = 1 + draw() % 4; letters > 0; --letters) {
        const auto value = (key == "hoist.home" ? 4340 : 560) + draw() % 3;
        REQUIRE_FALSE(sheet.set({key, std::to_string(value)}, true));
      }
      sheet.end_typing();
      none += sheet.text() == texts.back() ? 1 : 0;
      if (sheet.text() != texts.back()) texts.push_back(sheet.text());
    }
    for (; texts.size() > 1; texts.pop_back()) {
      REQUIRE(sheet.text() == texts.back());
      REQUIRE_FALSE(sheet.undo().empty());
    }
    REQUIRE(sheet.text() == texts.front());
    REQUIRE_FALSE(sheet.can_undo());
  }
  CHECK(none > 20);  // of 200 words
}

TEST_CASE("worksheet: what the reader refuses changes nothing, and is said in its words at its place",
          "[studio][worksheet]") {
  Worksheet sheet = demo_sheet();
  for (const char* wrong : {"wide", "", "[", "{a: b}", "- 5", "1,200", "5 # wide", "9000 m", "\"", "'", "&a", "*a", "a: b",
                            "560\n  sections: [1]"}) {
    INFO(wrong);
    const auto refused = sheet.set({"stair.width", wrong});
    REQUIRE(refused);
    REQUIRE_FALSE(refused->faults.empty());
    CHECK_FALSE(refused->faults.front().problem.empty());
    CHECK(sheet.text() == gallery_text("demo"));
    CHECK_FALSE(sheet.can_undo());
  }
  const auto refused = sheet.set({"stair.width", "5000"});
  REQUIRE(refused);
  CHECK(refused->faults.front().problem == "5000 is outside 100 to 3000 mm");
  CHECK(refused->text == with_width("5000"));
  const std::string said = format_diagnostic(refused->faults.front(), "demo.yaml", refused->text, false);
  CHECK_THAT(said, Catch::Contains("  width: 5000") && Catch::Contains("^~~~"));
}

TEST_CASE("worksheet: a name that would not read plain is put in quotes", "[studio][worksheet]") {
  Worksheet sheet = demo_sheet();
  REQUIRE_FALSE(sheet.set({"obstacles[0].name", "light: \"north\", # 2"}));
  CHECK(sheet.reading().scene.obstacles.front().name == "light: \"north\", # 2");
  CHECK(sheet.text() == changed(gallery_text("demo"), "name: strip light", "name: \"light: \\\"north\\\", # 2\""));
}

TEST_CASE("worksheet: a setting left out is added by what is typed, as one step", "[studio][worksheet]") {
  Worksheet sheet = demo_sheet();
  for (const char* typed : {"2", "25"}) REQUIRE_FALSE(sheet.set({"stair.hooks.seat range", typed}, true));
  CHECK(sheet.reading().scene.stair.hooks.seat_range == Approx(25.0 * 3.14159265358979 / 180.0));
  CHECK(sheet.set({"stair.hooks.seat range", "wide"}));
  CHECK(sheet.undo() == "stair.hooks.seat range: left out becomes 25");
  CHECK(sheet.text() == gallery_text("demo"));
}

TEST_CASE("worksheet: another text is a step like any other", "[studio][worksheet]") {
  Worksheet sheet = demo_sheet();
  REQUIRE_FALSE(sheet.replace(gallery_text("demo-cured"), "read again"));
  CHECK(sheet.reading().model.home);
  CHECK(sheet.replace("stowpath: 1\n", "read again"));
  CHECK(sheet.text() == gallery_text("demo-cured"));
  CHECK(sheet.undo() == "read again");
  CHECK(sheet.text() == gallery_text("demo"));
}
