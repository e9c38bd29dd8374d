#pragma once

#include <string>
#include <string_view>

namespace stowpath::testing {

/// Scenes for what holds what, kept apart from the gallery, whose scenes are sound and change:
///
/// * "folding": mm, two sections that fold on a back hinge, with a fold line; the first bracket half past the loft's
/// end
/// * "inches": in, two sections, a crank winch, no fold line
/// * "three sections": mm, three sections, hinges on opposite faces, a powered winch in mid-room, no fold line
/// * "ladder": mm, one section, never hoisted; its brackets' plates hang below the loft
/// * "straps": mm, one section, straps whose plates reach below the loft, plate hooks
/// * "posts": mm, one section, brackets on posts
/// * "one piece in inches": in, one section, never hoisted
///
/// @throws std::logic_error for any other name.
std::string loose_scene(std::string_view name);

}  // namespace stowpath::testing
