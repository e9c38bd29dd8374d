#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace stowpath::testing {

/// The least that a scene needs: a straight stair of one section.
std::string_view plain_scene();

/// Every setting of the scene file that can stand beside the others; of alternatives, one here and the rest in tests.
std::string_view full_scene();

/// That one, and others with the alternatives that cannot stand beside its own: all settings there are, between them.
std::vector<std::string> full_scenes();

/// `text` with the first `from` replaced. @throws std::invalid_argument if there is none, so that no test goes stale.
std::string replaced(std::string_view text, std::string_view from, std::string_view to);

}  // namespace stowpath::testing
