#include "sim/remedy/search.h"

#include <catch2/catch.hpp>

#include "sim/remedy/judge.h"
#include "sim/remedy/narrow.h"
#include "sim/scene/reader.h"
#include "tests/support/gallery.h"

using namespace stowpath;

namespace {

struct Case {
  explicit Case(std::string text) : draft(std::move(text), "test.yaml") {
    scene = draft.read();
    found = assess(scene, options);
  }

  const Finding& finding(const std::string& stair, const std::string& room) const {
    for (const Finding& f : found.fit.findings)
      if (concerns(f, stair) && f.parts[1] == room) return f;
    throw std::logic_error("no finding of " + stair + " and " + room);
  }

  std::vector<Lever> levers(const Finding& target, ChangeKind kind) const {
    std::vector<Lever> all = levers_for({draft, scene, found.model}, target);
    std::erase_if(all, [kind](const Lever& lever) { return lever.kind != kind; });
    return all;
  }

  LeverAnswer search(const Lever& lever, const Finding& target) const {
    return try_lever({draft, options, found.fit.findings, target}, lever);
  }

  // The whole proof, of the text as it would be written.
  bool works(const Lever& lever, const Finding& target, int steps) const {
    const auto edits = edits_at(draft, lever, steps);
    if (!edits) return false;
    const Scene changed = parse_scene(draft.write(*edits), "test.yaml");
    AssessOptions whole = options;
    whole.fit.least = false;
    return judge(found.fit.findings, assess(changed, whole).fit.findings, target).well();
  }

  // The slow search: every amount from the smallest up.
  int first_that_works(const Lever& lever, const Finding& target, int most) const {
    for (int steps = 1; steps <= most; ++steps)
      if (works(lever, target, steps)) return steps;
    return 0;
  }

  SceneDraft draft;
  Scene scene;
  AssessOptions options{};
  Assessment found;
};

}  // namespace

TEST_CASE("search: amounts agree with trying every smaller one on the whole scene", "[remedy]") {
  const Case demo(testing::gallery_text("demo"));
  const Finding& curl = demo.finding("hook curl", "bracket arm");
  int answered = 0;
  for (const ChangeKind kind : {ChangeKind::trim_curl, ChangeKind::move_home, ChangeKind::shift_brackets}) {
    for (const Lever& lever : demo.levers(curl, kind)) {
      const LeverAnswer answer = demo.search(lever, curl);
      INFO(static_cast<int>(kind) << " " << static_cast<int>(lever.way));
      if (answer.steps) ++answered;
      const int most = answer.steps.value_or(60);
      CHECK(demo.first_that_works(lever, curl, most) == answer.steps.value_or(0));
    }
  }
  CHECK(answered >= 3);
}

TEST_CASE("search: a long way to go is not gone step by step, and ends at the same amount", "[remedy]") {
  const Case crowded(testing::gallery_text("crowded-workshop"));
  const Finding& line = crowded.finding("hoist line", "drying line");
  const std::vector<Lever> levers = crowded.levers(line, ChangeKind::move_obstacle);
  REQUIRE(levers.front().way == Way::out);
  const LeverAnswer answer = crowded.search(levers.front(), line);
  REQUIRE(answer.steps);
  CHECK(*answer.steps > 20);
  CHECK(answer.narrow_proofs + answer.whole_proofs < *answer.steps / 2);
  CHECK(crowded.first_that_works(levers.front(), line, *answer.steps) == *answer.steps);
}

TEST_CASE("search: where no bound is known the stride's last stretch is searched to the step", "[remedy]") {
  const Case demo(testing::gallery_text("demo"));
  const Finding& curl = demo.finding("hook curl", "bracket arm");
  Lever home = demo.levers(curl, ChangeKind::move_home).front();
  const int exact = *demo.search(home, curl).steps;
  home.reach = 0.0;
  CHECK(*demo.search(home, curl).steps == exact);
}

TEST_CASE("search: a reach that is too small skips what works", "[remedy]") {
  // The bound is used: with a fifth of the true reach the search jumps too far and ends with more.
  const Case demo(testing::gallery_text("demo"));
  const Finding& curl = demo.finding("hook curl", "bracket arm");
  Lever home = demo.levers(curl, ChangeKind::move_home).front();
  const int exact = *demo.search(home, curl).steps;
  home.reach = 0.2;
  CHECK(*demo.search(home, curl).steps > exact);
}

TEST_CASE("search: what cures at a price is not called a cure, and the price is named", "[remedy]") {
  const Case demo(testing::gallery_text("demo"));
  const Finding& wall = demo.finding("side rail", "photo wall");
  bool priced = false;
  for (const Lever& lever : demo.levers(wall, ChangeKind::stop_move)) {
    const LeverAnswer answer = demo.search(lever, wall);
    CHECK_FALSE(answer.steps);
    priced = priced || (answer.cured_at && answer.price.front().parts[1] == "strip light");
  }
  CHECK(priced);
}

TEST_CASE("search: a narrow proof finds what the whole one does of the same matter", "[remedy]") {
  for (const char* name : {"demo", "long-curl", "crowded-workshop"}) {
    const Case scene(testing::gallery_text(name));
    for (const Finding& f : scene.found.fit.findings) {
      const DryFit narrow = dry_fit(narrowed(scene.found.model, {f}));
      INFO(name << " " << f.id);
      REQUIRE(narrow.findings.size() == 1);
      CHECK(same_matter(narrow.findings.front(), f));
      CHECK(narrow.findings.front().clearance == Approx(f.clearance).margin(2e-4));
    }
  }
}
