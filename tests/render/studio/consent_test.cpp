#include "render/studio/consent.h"

#include <catch2/catch.hpp>

using namespace stowpath;

TEST_CASE("consent: asked for twice in a row it is given, and then has to be asked for anew", "[studio]") {
  Consent consent;
  CHECK_FALSE(consent.asked());
  consent.pass(0.9 * kConsentLasts);
  CHECK(consent.asked());
  CHECK_FALSE(consent.waits());
  CHECK_FALSE(consent.asked());
}

TEST_CASE("consent: it does not outlive its time, nor anything else that is done", "[studio]") {
  Consent consent;
  CHECK_FALSE(consent.asked());
  for (int frame = 0; frame < 100; ++frame) consent.pass(0.011 * kConsentLasts);
  CHECK_FALSE(consent.waits());
  CHECK_FALSE(consent.asked());
  consent.withdraw();
  CHECK_FALSE(consent.asked());
  CHECK(consent.asked());
}
