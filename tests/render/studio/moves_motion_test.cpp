#include "render/studio/moves_motion.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <sstream>

#include "render/command/run.h"
#include "render/studio/playback.h"
#include "tests/support/lettering_check.h"
#include "tests/support/scratch_folder.h"
#include "tests/support/shown_scene.h"
#include "tests/support/xml_check.h"

using namespace stowpath;
using namespace stowpath::testing;
using Catch::Contains;

TEST_CASE("moves: every frame stands where the procedure does, and no section jumps", "[studio]") {
  for (const char* name : {"demo", "three-section", "rolling-ladder"}) {
    const ShownScene shown(name);
    const Recording recording = moves_recording(shown.model, DisplayUnits::metric);
    REQUIRE(recording.frames.size() > 10);
    CHECK(recording.events.size() == shown.model.moves.size());
    for (std::size_t i = 0; i < recording.frames.size(); ++i) {
      const RecordedFrame& frame = recording.frames[i];
      const Configuration pose = pose_at(shown.model, i == 0 ? Place{} : run_on(shown.model, {}, frame.time));
      const SectionPoses poses = place_sections(shown.model.linkage, pose);
      for (std::size_t j = 0; j < static_cast<std::size_t>(recording.sections); ++j) {
        const Vec2 along{std::cos(frame.sections[j].turn), std::sin(frame.sections[j].turn)};
        CHECK(norm(poses[j] * Vec2{} - frame.sections[j].origin) < 1e-12);
        CHECK(norm(poses[j] * Vec2{1.0, 0.0} - poses[j] * Vec2{} - along) < 1e-12);
        if (i > 0) CHECK(std::abs(frame.sections[j].turn - recording.frames[i - 1].sections[j].turn) < 0.2);
      }
    }
  }
}

TEST_CASE("moves: a picture says which move, how fast, what was found, and that it has no forces", "[studio]") {
  const ShownScene demo("demo");
  const DisplayList list = moves_picture(demo.subject(), 4.0, 3);
  for (const char* words : {"lean", "3 times as fast", "INTERFERENCE", "no forces"}) CHECK(has_text(list, words));
}

TEST_CASE("moves: the page lists each move, tells no forces and asks nothing of a network", "[studio]") {
  const ShownScene demo("demo");
  const std::string html = moves_page(demo.subject());
  CHECK_THAT(html, Contains("Order of work") && Contains("no forces") && Contains("INTERFERENCE"));
  CHECK_THAT(html, Contains("default-src 'none'") && !Contains("http:") && !Contains("https:"));
  CHECK_THAT(html, Contains("\"forces\":false") && !Contains("Against time") && !Contains("greatest pull"));
  for (const Move& move : demo.model.moves) CHECK_THAT(html, Contains(std::string(move_name(move.kind)) + " "));
}

TEST_CASE("moves: the command writes them by the name's ending", "[studio]") {
  const ScratchFolder folder;
  const auto ran = [&](const std::string& name) {
    std::istringstream in(gallery_text("rolling-ladder"));
    std::ostringstream out, err;
    const int code = run({"dryfit", "-", "--quiet", "-o", folder.file(name)}, {}, in, out, err);
    CHECK(code <= 1);
    return content(folder.file(name));
  };
  CHECK(ran("moves.html").substr(0, 15) == "<!DOCTYPE html>");
  CHECK(ran("moves.webp").substr(8, 4) == "WEBP");
}
