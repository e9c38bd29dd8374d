#include "sim/scene/json_text.h"

#include <array>
#include <charconv>

namespace stowpath {
namespace {

std::string quoted(std::string_view utf8) {
  std::string text = "\"";
  for (const char c : utf8) {
    if (c == '"' || c == '\\') {
      text += '\\';
      text += c;
    } else if (c >= 0 && c < ' ') {
      constexpr std::string_view kDigits = "0123456789abcdef";
      text += "\\u00";
      text += kDigits[static_cast<std::size_t>(c) / 16];
      text += kDigits[static_cast<std::size_t>(c) % 16];
    } else {
      text += c;
    }
  }
  return text + "\"";
}

std::string indent(int level) { return std::string(static_cast<std::size_t>(2 * level), ' '); }

}  // namespace

JsonText JsonText::text(std::string_view utf8) {
  JsonText made;
  made.plain_ = quoted(utf8);
  return made;
}

JsonText JsonText::number(double value) {
  JsonText made;
  std::array<char, 32> digits{};
  const auto result = std::to_chars(digits.data(), digits.data() + digits.size(), value);
  made.plain_ = std::string(digits.data(), result.ptr);
  return made;
}

JsonText JsonText::flag(bool value) {
  JsonText made;
  made.plain_ = value ? "true" : "false";
  return made;
}

JsonText JsonText::list(std::vector<JsonText> items) {
  JsonText made;
  made.kind_ = Kind::list;
  made.items_ = std::move(items);
  return made;
}

JsonText JsonText::object(std::vector<std::pair<std::string, JsonText>> members) {
  JsonText made;
  made.kind_ = Kind::object;
  made.members_ = std::move(members);
  return made;
}

JsonText& JsonText::add(std::string key, JsonText value) {
  members_.emplace_back(std::move(key), std::move(value));
  return *this;
}

JsonText& JsonText::push(JsonText value) {
  items_.push_back(std::move(value));
  return *this;
}

std::string JsonText::written(int level) const {
  if (kind_ == Kind::plain) return plain_;
  constexpr std::size_t kLine = 100;
  const std::string short_form = written_in_one_line();
  if (short_form.size() <= kLine) return short_form;
  const bool list = kind_ == Kind::list;
  std::string text = list ? "[" : "{", part = "\n";
  for (const JsonText& item : items_) text += part + indent(level + 1) + item.written(level + 1), part = ",\n";
  for (const auto& [key, value] : members_) {
    text += part + indent(level + 1) + quoted(key) + ": " + value.written(level + 1);
    part = ",\n";
  }
  return text + "\n" + indent(level) + (list ? "]" : "}");
}

std::string JsonText::written_in_one_line() const {
  if (kind_ == Kind::plain) return plain_;
  std::string text = kind_ == Kind::list ? "[" : "{", part;
  for (const JsonText& item : items_) text += part + item.written_in_one_line(), part = ", ";
  for (const auto& [key, value] : members_) {
    text += part + quoted(key) + ": " + value.written_in_one_line();
    part = ", ";
  }
  return text + (kind_ == Kind::list ? "]" : "}");
}

}  // namespace stowpath
