#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sim/geometry/interval.h"
#include "sim/geometry/vec2.h"
#include "sim/scene/document.h"
#include "sim/scene/key_check.h"
#include "sim/scene/key_table.h"

namespace stowpath {

/// A setting of the scene being built, given or not, read by its row of the key table.
///
/// The key check has told every fault of a setting by itself. What it refused reads as NaN here (or as the default
/// word), and checks between settings are written so that NaN passes them: no fault is told twice.
class Setting {
 public:
  /// The file as a whole.
  Setting(const DocumentNode& root, KeyCheck& check);

  Setting at(std::string_view key) const;  ///< a key under this one
  std::vector<Setting> items() const;      ///< the entries of a list; none where their count was refused

  bool given() const { return node_ != nullptr && node_->kind != DocumentNode::Kind::empty; }
  bool is_map() const { return given() && node_->kind == DocumentNode::Kind::map; }
  bool is_empty_map() const { return is_map() && node_->entries.empty(); }
  bool is_list() const { return given() && node_->kind == DocumentNode::Kind::list; }

  double number() const;                          ///< in SI; the default where not given
  std::optional<double> number_if_given() const;  ///< in SI
  int count() const;                              ///< the default, else the least allowed, where refused
  std::string text() const;                       ///< the default where not given
  /// One of the row's words; where none of them is given, the default one.
  std::string word() const;
  bool is_word(std::string_view word) const;
  bool flag() const;
  Interval interval() const;
  std::vector<Interval> intervals() const;
  std::vector<double> numbers() const;  ///< of a list; NaN for each entry that was refused, none where their count was
  std::vector<Vec2> points() const;

  const std::string& path() const { return path_; }
  bool is_known() const;  ///< the table has a row for it; without one it reads as nothing
  LengthUnit bare() const { return check_->bare; }
  SourcePos place() const;
  /// Adds a fault to this setting, or to the nearest one above it that is given.
  void fault(const std::string& problem, const std::string& hint) const;
  /// Adds that this setting is missing.
  void missing(const std::string& hint) const;

 private:
  Setting(const DocumentNode* node, KeyCheck* check, std::string path, std::string row_path);

  double number_of(const DocumentNode& node) const;
  /// Whether it is a list with as many entries as may be.
  bool has_entries() const;

  const DocumentNode* node_ = nullptr;  // null where not given
  KeyCheck* check_ = nullptr;
  const KeyRow* row_;  // never null
  std::string path_;
  std::string row_path_;
};

/// A length for a message, in the file's units: "45 mm", "1.77 in".
std::string length_text(double metres, LengthUnit bare);

}  // namespace stowpath
