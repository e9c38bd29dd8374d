#pragma once

#include <map>
#include <string>
#include <vector>

#include "sim/scene/document.h"
#include "sim/trade/length.h"

namespace stowpath {

/// What holding a scene's tree against the key table found.
struct KeyCheck {
  std::vector<Diagnostic> faults;
  std::map<std::string, SourcePos> where;    ///< of every key and list entry: of a plain value, else of its key
  LengthUnit bare = LengthUnit::millimetre;  ///< what the file's `units` say
};

/// Checks keys, forms, units and ranges of all settings, each by itself.
KeyCheck check_keys(const DocumentNode& root);

/// What to say of a place where `of` names the setting it is meant for: shortened, in quotation marks.
std::string quoted_text(const std::string& text);

}  // namespace stowpath
