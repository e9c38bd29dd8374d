#include "sim/scene/scene_error.h"

#include <catch2/catch.hpp>

#include <string>

using namespace stowpath;

namespace {

const Diagnostic kLimit{{1, 9, 3}, "stair.hinges[0].limit", "190 is outside 0 to 180 degrees", "fold less"};

}  // namespace

TEST_CASE("scene error: a message gives place, line, caret and hint", "[scene]") {
  CHECK(format_diagnostic(kLimit, "attic.yaml", "limit:  190\n", false) ==
        "attic.yaml:1:9: error: stair.hinges[0].limit: 190 is outside 0 to 180 degrees\n"
        "  1 | limit:  190\n"
        "    |         ^~~\n"
        "    = hint: fold less");
}

TEST_CASE("scene error: colour goes round the word and the caret only", "[scene]") {
  const std::string message = format_diagnostic(kLimit, "attic.yaml", "limit:  190\n", true);
  CHECK(message.find("\033[31merror:\033[0m stair") != std::string::npos);
  CHECK(message.find("\033[31m^~~\033[0m") != std::string::npos);
}

TEST_CASE("scene error: without the source, or where it cannot be shown, the message stands alone", "[scene]") {
  const std::string head = "attic.yaml:1:9: error: stair.hinges[0].limit: 190 is outside 0 to 180 degrees";
  CHECK(format_diagnostic(kLimit, "attic.yaml", "", false) == head + "\n    = hint: fold less");
  CHECK(format_diagnostic(kLimit, "attic.yaml", "limit:  \xFF\xFF\n", false) == head + "\n    = hint: fold less");
  CHECK(format_diagnostic(kLimit, "attic.yaml", std::string(5000, 'x'), false) == head + "\n    = hint: fold less");
}

TEST_CASE("scene error: a fault nowhere in the file has no place", "[scene]") {
  CHECK(format_diagnostic({{}, "", "it is gone", ""}, "attic.yaml", "", false) == "attic.yaml: error: it is gone");
}

TEST_CASE("scene error: the caret stands under characters, and tabs keep their width", "[scene]") {
  const Diagnostic fault{{1, 4, 1}, "", "here", ""};
  CHECK(format_diagnostic(fault, "a", "é\té½", false) == "a:1:4: error: here\n  1 | é\té½\n    |  \t ^");
}

TEST_CASE("scene error: faults are put in the file's order, what is missing last", "[scene]") {
  const SceneError error(
      "attic.yaml",
      {{{1, 1, 1}, "b", "this is missing", "", true}, {{7, 2, 1}, "c", "second", ""}, {{7, 1, 1}, "a", "first", ""}});
  CHECK(error.diagnostics[0].problem == "first");
  CHECK(error.diagnostics[1].problem == "second");
  CHECK(error.diagnostics[2].missing);
  CHECK(std::string(error.what()) == "attic.yaml:7:1: error: a: first");
  CHECK_THROWS_AS(SceneError("attic.yaml", {}), std::invalid_argument);
}
