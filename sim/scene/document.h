#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "sim/scene/scene_error.h"
#include "sim/scene/source_text.h"

namespace stowpath {

struct DocumentEntry;

/// A value of a scene file as it stands there: nothing, text, a list or a map.
struct DocumentNode {
  enum class Kind { empty, text, list, map };

  Kind kind = Kind::empty;
  std::string text;                    ///< without its quotes
  bool quoted = false;                 ///< stood in quotes
  SourcePos at;                        ///< a block map's place is its first key's
  std::vector<DocumentNode> items;     ///< of a list
  std::vector<DocumentEntry> entries;  ///< of a map, in the file's order, no key twice

  const DocumentEntry* find(std::string_view key) const;
};

struct DocumentEntry {
  DocumentNode key;
  DocumentNode value;
  bool comment_follows = false;  ///< a comment stands on the key's line where a value could
};

/// Takes a scene's text apart.
///
/// Of YAML it reads maps, lists and one-line texts. Anchors, aliases, tags, several documents, keys given twice, more
/// than 24 levels or 20 000 values are refused.
/// @throws SceneError with every fault found.
DocumentNode parse_document(const SourceText& source, const std::string& file);

}  // namespace stowpath
