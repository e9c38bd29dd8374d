// The list of what may touch, held against the rules that it comes from.
#include "sim/clearance/contact_report.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

#include "tests/support/gallery.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

const MeantContact* of_parts(const std::vector<MeantContact>& contacts, const std::string& a, const std::string& b) {
  const auto same = [&](const MeantContact& contact) {
    return (contact.parts[0] == a && contact.parts[1] == b) || (contact.parts[0] == b && contact.parts[1] == a);
  };
  const auto found = std::find_if(contacts.begin(), contacts.end(), same);
  return found == contacts.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE("contact report: in a clear scene nothing that may touch is deeper than its rule says", "[clearance]") {
  for (const char* name : {"demo-cured", "costume-loft", "three-section"}) {
    const Model model = model_of(gallery_text(name));
    const std::vector<MeantContact> contacts = meant_contacts(model);
    CHECK(contacts.size() > 5);
    for (const MeantContact& contact : contacts) {
      INFO(name << ": " << contact.parts[0] << " and " << contact.parts[1]);
      const ContactRule& rule = model.contacts.at(static_cast<std::size_t>(contact.rule));
      CHECK_FALSE(rule.why.empty());
      // The rules' discs are cut off here, so that what lies deeper beyond them is not counted: only depth is.
      if (!std::isinf(rule.depth) && std::isinf(rule.radius)) CHECK(contact.deepest <= rule.depth + 1e-4);
    }
  }
}

TEST_CASE("contact report: a caster may touch the floor while the stair stands, and not when it is parked",
          "[clearance]") {
  const Model model = model_of(gallery_text("demo-cured"));
  const MeantContact* stands = of_parts(meant_contacts(model), "caster", "floor");
  REQUIRE(stands);
  CHECK(stands->deepest <= model.contacts.at(static_cast<std::size_t>(stands->rule)).depth);
  for (const int step : stands->moves)
    for (const Move& move : model.moves)
      if (move.index == step) CHECK(move.kind != MoveKind::park);
}

TEST_CASE("contact report: without rules nothing may touch", "[clearance]") {
  Model without = model_of(gallery_text("demo-cured"));
  without.contacts.clear();
  CHECK(count_meant_contacts(without) == 0);
  CHECK(meant_contacts(without).empty());
}
