#include "render/studio/prover.h"

#include <catch2/catch.hpp>

#include "tests/support/gallery.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

SceneReading demo_at(int home) {
  return reading_of(changed(gallery_text("demo"), "  home: 4340\n", "  home: " + std::to_string(home) + "\n"), "demo");
}

}  // namespace

TEST_CASE("prover: whatever was asked before, the answer is of the newest scene", "[studio][prover]") {
  Prover prover;
  for (int k = 0; k < 12; ++k) {
    prover.start(demo_at(4340 - 10 * k));
    if (k % 4 == 3) prover.wait_for_proof();  // the search for cures is then under way
  }
  prover.wait_for_cures();
  const Prover::News news = prover.poll();
  const SceneReading last = demo_at(4230);
  const Assessment wanted = assess(last.scene, last.model);
  REQUIRE(news.fit);
  REQUIRE(news.fit->findings.size() == wanted.fit.findings.size());
  for (std::size_t i = 0; i < wanted.fit.findings.size(); ++i) {
    CHECK(news.fit->findings[i].clearance == wanted.fit.findings[i].clearance);
    CHECK(news.fit->findings[i].stations.size() == wanted.fit.findings[i].stations.size());
  }
  REQUIRE(news.cures);
  CHECK(news.cures->size() == wanted.fit.findings.size());
  CHECK_FALSE(prover.proving());
  CHECK_FALSE(prover.curing());
  CHECK_FALSE(prover.poll().fit);
}

TEST_CASE("prover: asking does not wait, and neither does the end", "[studio][prover]") {
  Prover prover;
  prover.start(demo_at(4340));
  prover.wait_for_proof();
  prover.start(demo_at(4330));
  CHECK(prover.proving());
  CHECK_FALSE(prover.poll().cures);
}
