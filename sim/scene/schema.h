#pragma once

#include <string>

namespace stowpath {

/// The scene file's JSON Schema (draft 2020-12), from the key table: keys, forms, words, how many; ranges where they do
/// not depend on the file's units. Editors check scenes against it; what holds between settings only the reader knows.
std::string scene_schema();

}  // namespace stowpath
