#include "sim/scene/json_text.h"

#include <catch2/catch.hpp>

#include <string>

using namespace stowpath;

TEST_CASE("json text: values are written as JSON has them", "[scene]") {
  CHECK(JsonText::text("a \"b\" \\ \n é").written() == "\"a \\\"b\\\" \\\\ \\u000a é\"");
  CHECK(JsonText::number(0.1).written() == "0.1");
  CHECK(JsonText::number(-45).written() == "-45");
  CHECK(JsonText::flag(true).written() == "true");
  CHECK(JsonText::list().written() == "[]");
  CHECK(JsonText::object().written() == "{}");
}

TEST_CASE("json text: what is short stands on one line, the rest is indented", "[scene]") {
  JsonText object = JsonText::object({{"a", JsonText::list({JsonText::number(1), JsonText::number(2)})}});
  CHECK(object.written() == "{\"a\": [1, 2]}");
  object.add("b", JsonText::text(std::string(100, 'x')));
  CHECK(object.written() == "{\n  \"a\": [1, 2],\n  \"b\": \"" + std::string(100, 'x') + "\"\n}");
}
