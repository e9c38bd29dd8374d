#include "sim/scene/setting.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "sim/scene/key_value.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kRefused = std::numeric_limits<double>::quiet_NaN();

/// What a setting that the table does not know is read by: nothing goes, nothing is the default. An entry of a list has
/// no row of its own, nor has a map's key where the table takes a plain value; the key check has told what is wrong.
constexpr KeyRow kNoRow{};

std::string strip_last(const std::string& path) {
  const auto end = path.find_last_of(".[");
  return end == std::string::npos ? "" : path.substr(0, end);
}

}  // namespace

Setting::Setting(const DocumentNode& root, KeyCheck& check) : node_(&root), check_(&check), row_(&kNoRow) {}

Setting::Setting(const DocumentNode* node, KeyCheck* check, std::string path, std::string row_path)
    : node_(node), check_(check), path_(std::move(path)), row_path_(std::move(row_path)) {
  const KeyRow* row = find_key(row_path_);
  row_ = row != nullptr ? row : &kNoRow;
}

bool Setting::is_known() const { return row_ != &kNoRow; }

Setting Setting::at(std::string_view key) const {
  const DocumentEntry* entry = is_map() ? node_->find(key) : nullptr;
  const std::string dot = path_.empty() ? "" : ".";
  const std::string row_dot = row_path_.empty() ? "" : ".";
  return {entry != nullptr ? &entry->value : nullptr, check_, path_ + dot + std::string(key),
          row_path_ + row_dot + std::string(key)};
}

std::vector<Setting> Setting::items() const {
  std::vector<Setting> all;
  if (!has_entries()) return all;
  for (std::size_t i = 0; i < node_->items.size(); ++i) {
    all.push_back({&node_->items[i], check_, path_ + "[" + std::to_string(i) + "]", row_path_ + "[]"});
  }
  return all;
}

bool Setting::has_entries() const { return is_list() && count_fits(*row_, node_->items.size()); }

double Setting::number_of(const DocumentNode& node) const {
  if (node.kind != DocumentNode::Kind::text) return kRefused;
  return read_number(*row_, node.text, bare()).value.value_or(kRefused);
}

double Setting::number() const {
  return given() ? number_of(*node_) : default_number(*row_, bare()).value.value_or(kRefused);
}

std::optional<double> Setting::number_if_given() const {
  return given() ? std::optional(number_of(*node_)) : std::nullopt;
}

int Setting::count() const {
  const double value = number();
  if (std::isfinite(value)) return static_cast<int>(value);
  return std::isfinite(row_->range.low) ? static_cast<int>(row_->range.low) : 0;
}

std::string Setting::text() const {
  if (given()) return node_->text;
  const bool has_default = !row_->required() && !row_->if_missing.empty() && row_->if_missing.front() != '(';
  return has_default ? std::string(row_->if_missing) : std::string();
}

std::string Setting::word() const {
  const std::vector<std::string_view> words = row_->word_list();
  const bool known = given() && std::find(words.begin(), words.end(), node_->text) != words.end();
  return known ? node_->text : std::string(row_->if_missing);
}

bool Setting::is_word(std::string_view word) const {
  if (given()) return node_->kind == DocumentNode::Kind::text && node_->text == word;
  return row_->if_missing == word;
}

bool Setting::flag() const { return read_flag(text()).value_or(false); }

Interval Setting::interval() const {
  const std::vector<double> ends = numbers();
  const bool stretch = ends.size() == 2 && ends[0] < ends[1];
  return stretch ? Interval{ends[0], ends[1]} : Interval{kRefused, kRefused};
}

std::vector<Interval> Setting::intervals() const {
  std::vector<Interval> all;
  for (const Vec2 pair : points()) all.push_back({pair.x, pair.y});
  return all;
}

std::vector<double> Setting::numbers() const {
  std::vector<double> all;
  if (!has_entries()) return all;
  for (const DocumentNode& item : node_->items) all.push_back(number_of(item));
  return all;
}

std::vector<Vec2> Setting::points() const {
  std::vector<Vec2> all;
  if (!has_entries()) return all;
  for (const DocumentNode& item : node_->items) {
    const bool pair = item.kind == DocumentNode::Kind::list && item.items.size() == 2;
    all.push_back(pair ? Vec2{number_of(item.items[0]), number_of(item.items[1])} : Vec2{kRefused, kRefused});
  }
  return all;
}

SourcePos Setting::place() const {
  for (std::string path = path_;; path = strip_last(path)) {
    const auto found = check_->where.find(path);
    if (found != check_->where.end()) return found->second;
    if (path.empty()) return {1, 1, 1};
  }
}

void Setting::fault(const std::string& problem, const std::string& hint) const {
  check_->faults.push_back({place(), path_, problem, hint});
}

void Setting::missing(const std::string& hint) const {
  check_->faults.push_back({place(), path_, "this is missing", hint, true});
}

std::string length_text(double metres, LengthUnit bare) {
  return bare == LengthUnit::inch ? short_number(metres / kInch) + " in" : short_number(metres * 1e3) + " mm";
}

}  // namespace stowpath
