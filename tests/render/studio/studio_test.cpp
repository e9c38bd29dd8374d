#include "render/studio/studio.h"

#include <catch2/catch.hpp>

#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

struct Open {
  Studio studio;
  explicit Open(const std::string& name) {
    REQUIRE(studio.open(gallery_text(name), name));
    studio.wait();
  }
};

}  // namespace

TEST_CASE("studio: what it shows of a scene is what the dry fit proves", "[studio]") {
  Open table("demo");
  const Model model = model_of(gallery_text("demo"));
  const Assessment found = assess(parse_scene(gallery_text("demo"), "demo"));
  REQUIRE(table.studio.fit().findings.size() == found.fit.findings.size());
  for (std::size_t i = 0; i < found.fit.findings.size(); ++i)
    CHECK(table.studio.fit().findings[i].clearance == found.fit.findings[i].clearance);
  CHECK_FALSE(table.studio.proving());
}

TEST_CASE("studio: a finding that is chosen is shown at its worst pose, as deep as it was found", "[studio]") {
  Open table("demo");
  for (std::size_t i = 0; i < table.studio.fit().findings.size(); ++i) {
    const Finding finding = table.studio.fit().findings[i];
    table.studio.choose(i);
    CHECK(table.studio.chosen_finding() == i);
    CHECK(table.studio.pose().lean == finding.worst.lean);
    // An undecided one keeps its margin as drawn: there is nothing met to show.
    if (finding.kind == FindingKind::undecided) continue;
    const auto& met = table.studio.news().met;
    CHECK(std::any_of(met.begin(), met.end(), [&](const PoseMeeting& m) {
      return m.parts == finding.parts && m.clearance == Approx(finding.clearance).margin(1e-6);
    }));
  }
  table.studio.choose(99);
  CHECK_FALSE(table.studio.chosen_finding());
}

TEST_CASE("studio: a finding's slip and lines are those of the move in which it is worst", "[studio]") {
  int earlier = 0;  // than the last move in which it happens
  for (const char* name : {"demo", "crowded-workshop", "three-section"}) {
    Open table(name);
    for (std::size_t i = 0; i < table.studio.fit().findings.size(); ++i) {
      const Finding finding = table.studio.fit().findings[i];
      if (finding.place.move < 0) continue;
      table.studio.choose(i);
      INFO(name << ": " << finding.id);
      CHECK(static_cast<int>(table.studio.place().move) == finding.place.move);
      const Move& shown = table.studio.model().moves.at(table.studio.place().move);
      if (!is_state(shown.kind) && !stands_over_stations(shown)) {
        const Configuration there = pose_at(table.studio.model(), table.studio.place());
        CHECK(there.lean == Approx(finding.worst.lean).margin(1e-9));
        CHECK(there.folds[0] == Approx(finding.worst.folds[0]).margin(1e-9));
      }
      earlier += shown.index == finding.moves.back() && shown.kind == finding.move_kinds.back() ? 0 : 1;
    }
  }
  CHECK(earlier > 0);
}

TEST_CASE("studio: held by hand, the stair stays within what a changed scene lets it do", "[studio]") {
  Open table("demo");
  Configuration far = table.studio.pose();
  far.station = table.studio.model().span.hi;
  far.folds[0] = table.studio.scene().stair.hinges[0].limit;
  table.studio.handle(far);
  REQUIRE(table.studio.open(changed(gallery_text("demo"), "limit: 178", "limit: 177"), "demo"));
  CHECK(table.studio.pose().folds[0] == table.studio.scene().stair.hinges[0].limit);
  CHECK(table.studio.pose().folds[0] < far.folds[0]);
  CHECK(table.studio.pose().station == far.station);
  REQUIRE(table.studio.open(changed(gallery_text("demo"), "stations: [200, 7400]", "stations: [200, 6400]"), "demo"));
  CHECK(table.studio.pose().station == table.studio.model().span.hi);
  CHECK(table.studio.pose().station < far.station);
}

TEST_CASE("studio: a scene with faults leaves the one on the table", "[studio]") {
  Open table("demo");
  CHECK_FALSE(table.studio.open("stowpath: 1\nname: half\n", "half.yaml"));
  CHECK_FALSE(table.studio.faults().empty());
  CHECK(table.studio.model().name == "Mould loft over the casting benches");
  CHECK(table.studio.open(gallery_text("demo-cured"), "cured"));
  CHECK(table.studio.faults().empty());
  table.studio.wait();
  CHECK(table.studio.fit().verdict == Verdict::clear);
}

TEST_CASE("studio: a scene taken up is another edition, a proof that comes in is not", "[studio]") {
  Studio studio;
  REQUIRE(studio.open(gallery_text("demo"), "demo"));
  const unsigned first = studio.edition(), drawn = studio.revision();
  studio.wait();
  CHECK(studio.edition() == first);
  CHECK(studio.revision() != drawn);
  CHECK_FALSE(studio.open("stowpath: 1\n", "broken"));
  CHECK(studio.edition() == first);
  REQUIRE(studio.open(gallery_text("demo-cured"), "demo-cured"));
  CHECK(studio.edition() != first);
}

TEST_CASE("studio: held at touch, the stair stops where it would meet something, and says what", "[studio]") {
  Open table("demo");
  table.studio.go({5, 0.0});
  Configuration up = table.studio.pose();
  up.lean += 0.5;
  table.studio.hold_at_touch = true;
  table.studio.handle(up);
  CHECK(table.studio.held_by());
  CHECK(table.studio.pose().lean < up.lean);
  CHECK_FALSE(table.studio.on_procedure());
  table.studio.hold_at_touch = false;
  table.studio.handle(up);
  CHECK(table.studio.pose().lean == up.lean);
  CHECK_FALSE(table.studio.held_by());
}

TEST_CASE("studio: stepping goes by the procedure", "[studio]") {
  Open table("demo-cured");
  table.studio.forward();
  CHECK(table.studio.pose().station == Approx(*table.studio.model().home));
  table.studio.back();
  table.studio.run(1e6);
  CHECK(at_end(table.studio.model(), table.studio.place(), true));
  CHECK(table.studio.on_procedure());
}
