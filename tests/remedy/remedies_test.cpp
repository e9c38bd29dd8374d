#include "sim/remedy/remedies.h"

#include <catch2/catch.hpp>

#include "sim/remedy/judge.h"
#include "sim/remedy/search.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"
#include "tests/support/random_scene.h"

using namespace stowpath;

namespace {

struct Treated {
  explicit Treated(std::string text, const RemedyOptions& wanted = {}) : draft(std::move(text), "test.yaml") {
    scene = draft.read();
    found = assess(scene);
    cures = find_remedies(draft, scene, found, {}, wanted);
  }

  // Whether the scene with those edits, written and read, has the finding no more and nothing new or worse.
  bool proves(const Finding& target, const std::vector<ValueEdit>& edits) const {
    const Scene changed = parse_scene(draft.write(edits), "test.yaml");
    return judge(found.fit.findings, assess(changed).fit.findings, target).well();
  }

  SceneDraft draft;
  Scene scene;
  Assessment found;
  std::vector<Cures> cures;
};

}  // namespace

TEST_CASE("remedies: hooks that foul every bracket in rolling are trimmed, and then roll the whole span", "[remedy]") {
  // Common practice, no source: hooks that ran freely on the pipe fouled brackets spaced 3 ft when rolled; with the
  // curl's end taken off, the stair rolled all of it.
  const Treated loft(testing::gallery_text("long-curl"));
  REQUIRE(loft.cures.size() == 1);
  REQUIRE_FALSE(loft.cures.front().remedies.empty());
  const Remedy& best = loft.cures.front().remedies.front();
  CHECK(best.changes.front().lever.kind == ChangeKind::trim_curl);
  CHECK(best.verdict == Verdict::clear);
  const Assessment after = assess(parse_scene(loft.draft.write(edits_of(best)), "test.yaml"));
  REQUIRE(after.fit.reach.standing.size() == 1);
  CHECK(after.fit.reach.standing.front().lo == Approx(after.fit.reach.rail_span.lo));
  CHECK(after.fit.reach.standing.front().hi == Approx(after.fit.reach.rail_span.hi));
  CHECK(best.reach_lost ==
        Approx(total_length(loft.found.fit.reach.standing) - total_length(after.fit.reach.standing)).margin(1e-9));
}

TEST_CASE("remedies: each of the demo's findings has one, and one step less of it is refused", "[remedy]") {
  const Treated demo(testing::gallery_text("demo"));
  REQUIRE(demo.cures.size() == demo.found.fit.findings.size());
  for (std::size_t i = 0; i < demo.cures.size(); ++i) {
    const Finding& target = demo.found.fit.findings[i];
    INFO(target.id);
    REQUIRE_FALSE(demo.cures[i].remedies.empty());
    for (const Remedy& remedy : demo.cures[i].remedies) {
      CHECK(demo.proves(target, edits_of(remedy)));
      if (remedy.changes.size() > 1) continue;
      const Change& change = remedy.changes.front();
      const auto steps = static_cast<int>(std::lround(change.amount / change.lever.step));
      const auto less = edits_at(demo.draft, change.lever, steps - 1);
      REQUIRE(less);
      CHECK_FALSE(demo.proves(target, *less));
    }
  }
}

TEST_CASE("remedies: where no single change works, two together do, and neither alone", "[remedy]") {
  const Treated demo(testing::gallery_text("demo"), {4, 1, "F4", {}});
  REQUIRE(demo.cures.size() == 1);
  REQUIRE(demo.cures.front().remedies.size() == 1);
  const Remedy& pair = demo.cures.front().remedies.front();
  REQUIRE(pair.changes.size() == 2);
  for (const Change& change : pair.changes) {
    Remedy alone;
    alone.changes = {change};
    CHECK_FALSE(demo.proves(demo.found.fit.findings[3], edits_of(alone)));
  }
}

TEST_CASE("remedies: least labour first, then the smallest amount, numbered under their finding", "[remedy]") {
  const Treated demo(testing::gallery_text("demo"), {4, 1, "F3", {}});
  const std::vector<Remedy>& all = demo.cures.front().remedies;
  REQUIRE(all.size() == 4);
  for (std::size_t i = 0; i < all.size(); ++i) {
    CHECK(all[i].id == "F3." + std::to_string(i + 1));
    if (i > 0) CHECK(all[i - 1].changes.front().lever.labour <= all[i].changes.front().lever.labour);
  }
  CHECK(find_remedy(demo.cures, "F3.2") == &all[1]);
  CHECK(find_remedy(demo.cures, "F3.5") == nullptr);
}

TEST_CASE("remedies: no zone, margin or tolerance is ever changed", "[remedy]") {
  const Treated demo(testing::gallery_text("demo"));
  for (const Cures& of : demo.cures) {
    for (const Remedy& remedy : of.remedies) {
      for (const ValueEdit& edit : edits_of(remedy)) {
        CHECK(edit.key.find("keep clear") == std::string::npos);
        CHECK(edit.key.find("margin") == std::string::npos);
        CHECK(edit.key.find("tolerances") == std::string::npos);
      }
    }
  }
}

TEST_CASE("remedies: every one offered for random scenes cures, written and read again", "[remedy]") {
  RemedyOptions few;
  few.most = 2;
  int offered = 0, findings = 0;
  for (unsigned seed = 1; seed <= 8; ++seed) {
    const Treated random(testing::random_scene(seed), few);
    for (std::size_t i = 0; i < random.cures.size(); ++i) {
      ++findings;
      for (const Remedy& remedy : random.cures[i].remedies) {
        INFO("seed " << seed << " " << remedy.id);
        CHECK(random.proves(random.found.fit.findings[i], edits_of(remedy)));
        ++offered;
      }
    }
  }
  CHECK(findings > 8);
  CHECK(offered > findings / 2);  // most of what is met has a cure, or this test says little
}
