#include "sim/scene/source_text.h"

#include <catch2/catch.hpp>

#include <string>

using namespace stowpath;

TEST_CASE("source text: columns count characters, not bytes", "[scene]") {
  const std::string text = "name: café\nspan: ½ in\n";
  const SourceText source(text);
  const SourcePos place = source.place(text.find("in\n"), 2);
  CHECK(place.line == 2);
  CHECK(place.column == 9);
  CHECK(place.length == 2);
  CHECK(source.place(text.find("caf"), 5).length == 4);
}

TEST_CASE("source text: a place ends with its line", "[scene]") {
  const std::string text = "one\r\ntwo";
  const SourceText source(text);
  CHECK(source.lines() == 2);
  CHECK(source.line(0) == "one");
  CHECK(source.line(1) == "two");
  CHECK(source.place(1, 100).length == 2);
  CHECK(source.place(text.size()).line == 2);
  CHECK(source.place(text.size()).column == 4);
}

TEST_CASE("source text: columns are right far along a line as long as the file", "[scene]") {
  std::string text;
  for (int i = 0; i < 3000; ++i) text += "½";  // two bytes each
  const SourceText source(text);
  CHECK(source.place(2 * 1024).column == 1025);
  CHECK(source.place(2 * 2999).column == 3000);
}

TEST_CASE("source text: an empty text has one empty line", "[scene]") {
  const SourceText source("");
  CHECK(source.lines() == 1);
  CHECK(source.line(0).empty());
  CHECK(source.place(0).column == 1);
}

TEST_CASE("source text: a quoted value ends at its own quote", "[scene]") {
  CHECK(quoted_end("'it''s' b", 0) == 7);
  CHECK(quoted_end(R"("a \" b" c)", 0) == 8);
  CHECK(quoted_end("'a", 0) == std::string_view::npos);
  CHECK(quoted_end("\"a\n\"", 0) == std::string_view::npos);
}

// Unicode 15, table 3-7: the first and last of each row, and what lies just outside.
TEST_CASE("source text: what is UTF-8 and what is not", "[scene][published]") {
  for (const char* good : {"\x7F", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF", "\xEE\x80\x80",
                           "\xEF\xBF\xBF", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF"}) {
    CHECK(is_utf8(good));
  }
  for (const char* bad : {"\x80", "\xC0\x80", "\xC1\xBF", "\xC2", "\xE0\x9F\xBF", "\xED\xA0\x80", "\xEF\xBF",
                          "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF"}) {
    CHECK_FALSE(is_utf8(bad));
  }
}

TEST_CASE("source text: quotes, hashes and brackets within plain text are left alone", "[scene]") {
  for (const char* good :
       {"a: 9' 10-1/2\"\n", "a: [1/2\", 3\", 9' 4\"]\n", "a: x#y # a \"comment\n", "# it's\n",
        "- 'it''s': \"a # b\" # c\n", "a: {b: [1,\n    2]}\n", "a: [\n  1\n]\n", "a: b]c\n", "a: x, \"y\"\n"}) {
    INFO(good);
    CHECK(check_source_text(SourceText(good)).empty());
  }
}

TEST_CASE("source text: one line may have several faults, and each is told", "[scene]") {
  const auto faults = check_source_text(SourceText("a:\t1\nb: 'x\nc: |\n  y\nd: [1\n"));
  REQUIRE(faults.size() == 4);
  for (int i = 0; i < 3; ++i) CHECK(faults[static_cast<std::size_t>(i)].at.line == i + 1);
  CHECK(faults[3].at.line == 5);
}
