#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/scene/document.h"
#include "sim/scene/key_table.h"
#include "sim/scene/scene.h"
#include "sim/trade/length.h"

namespace stowpath {

/// Another text for one plain value of the file.
struct ValueEdit {
  std::string key;   ///< "stair.hooks.wrap", "obstacles[0].box.out[1]"
  std::string text;  ///< without quotes
};

/// A scene file taken apart once, so that other values can be tried without taking it apart again, and written into its
/// text in place.
///
/// A value is one line of plain or quoted text. A setting left to its default has no place in the text: it is added, not
/// changed.
class SceneDraft {
 public:
  /// @throws SceneError where the text is no scene file; what the values say is not checked yet.
  SceneDraft(std::string text, std::string name);

  const std::string& text() const { return text_; }
  const std::string& name() const { return name_; }

  /// All that stands in the file.
  const DocumentNode& root() const { return root_; }
  /// The plain value that stands under a key; null where there is none.
  const DocumentNode* value(const std::string& key) const;
  /// It as a number in SI, by its row of the key table; none where there is none or it is a word.
  std::optional<double> number(const std::string& key) const;
  /// The edit that gives a number another value, written in the manner of the old one; none where that cannot be done.
  /// @param to  in SI
  std::optional<ValueEdit> edit(const std::string& key, double to) const;

  /// The scene with other values. @throws SceneError where they are refused, std::invalid_argument for a key without a
  /// plain value.
  Scene read(const std::vector<ValueEdit>& edits = {}) const;

  /// The text with other values, and not a byte changed besides: comments, order, spacing, quotes and line ends stay. What
  /// would not read back without quotes is put in quotes.
  /// It is taken apart again, to see that those values and no others have changed.
  /// @throws std::invalid_argument for a key without a plain value, std::logic_error where more would change.
  std::string write(const std::vector<ValueEdit>& edits) const;
  /// The text with a setting that it leaves out, put first into the map that it belongs to; at the top behind the first
  /// key's line. Nothing besides changes, as above.
  /// @throws std::invalid_argument where there is no such map or the setting is there, std::logic_error as above
  std::string add(const ValueEdit& setting) const;

 private:
  std::string written(const std::vector<ValueEdit>& edits, bool quote) const;
  DocumentNode with(const std::vector<ValueEdit>& edits) const;

  std::string text_, name_;
  DocumentNode root_;
  LengthUnit bare_ = LengthUnit::millimetre;
};

/// The row of the key table for a place in a file: "obstacles[2].box.out[1]" is of the row "obstacles[].box.out"; null
/// if there is none.
const KeyRow* row_of(const std::string& key);

}  // namespace stowpath
