#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace stowpath {

/// A JSON value to be written, its members in the order given.
class JsonText {
 public:
  static JsonText text(std::string_view utf8);
  static JsonText number(double value);
  static JsonText flag(bool value);
  static JsonText list(std::vector<JsonText> items = {});
  static JsonText object(std::vector<std::pair<std::string, JsonText>> members = {});

  /// Adds to an object.
  JsonText& add(std::string key, JsonText value);
  /// Adds to a list.
  JsonText& push(JsonText value);

  bool empty() const { return items_.empty() && members_.empty(); }

  /// Two blanks a level; what is short enough stands on one line.
  std::string written(int level = 0) const;

 private:
  enum class Kind { plain, list, object };

  std::string written_in_one_line() const;

  Kind kind_ = Kind::plain;
  std::string plain_;
  std::vector<JsonText> items_;
  std::vector<std::pair<std::string, JsonText>> members_;
};

}  // namespace stowpath
