#include "render/command/progress.h"

#include <catch2/catch.hpp>
#include <sstream>
#include <thread>

using namespace stowpath;
using namespace std::chrono_literals;

TEST_CASE("progress: long work says how far it is and wipes its line, short work says nothing", "[command]") {
  std::ostringstream out;
  {
    Progress progress(&out);
    progress.tell("1 of 3");
    CHECK(out.str().empty());
    std::this_thread::sleep_for(510ms);
    progress.tell("2 of 3");
    CHECK(out.str() == "\r2 of 3\033[K");
  }
  CHECK(out.str().ends_with("\r\033[K"));
  Progress(nullptr).tell("to nobody");
}
