#include "sim/scene/key_table.h"

#include <map>

namespace stowpath {
namespace {

std::vector<KeyRow> join_parts() {
  std::vector<KeyRow> all;
  for (const auto part : {site_keys(), rail_keys(), stair_keys(), hoist_keys(), work_keys(), load_keys()}) {
    all.insert(all.end(), part.begin(), part.end());
  }
  return all;
}

using Children = std::map<std::string_view, std::vector<const KeyRow*>>;

Children by_parent() {
  Children children;
  for (const KeyRow& row : key_table()) children[row.parent()].push_back(&row);
  return children;
}

std::map<std::string_view, const KeyRow*> by_path() {
  std::map<std::string_view, const KeyRow*> rows;
  for (const KeyRow& row : key_table()) rows[row.path] = &row;
  return rows;
}

}  // namespace

bool KeyRow::required() const { return if_missing == kRequired; }

std::string_view KeyRow::name() const {
  const auto dot = path.rfind('.');
  return dot == std::string_view::npos ? path : path.substr(dot + 1);
}

std::string_view KeyRow::parent() const {
  const auto dot = path.rfind('.');
  return dot == std::string_view::npos ? std::string_view{} : path.substr(0, dot);
}

std::vector<std::string_view> KeyRow::word_list() const {
  std::vector<std::string_view> list;
  for (std::string_view rest = words; !rest.empty();) {
    const auto bar = rest.find('|');
    list.push_back(rest.substr(0, bar));
    rest = bar == std::string_view::npos ? std::string_view{} : rest.substr(bar + 1);
  }
  return list;
}

const std::vector<KeyRow>& key_table() {
  static const std::vector<KeyRow> table = join_parts();
  return table;
}

const KeyRow* find_key(std::string_view path) {
  static const auto rows = by_path();
  const auto found = rows.find(path);
  return found != rows.end() ? found->second : nullptr;
}

const std::vector<const KeyRow*>& keys_under(std::string_view path) {
  static const auto children = by_parent();
  static const std::vector<const KeyRow*> none;
  const auto found = children.find(path);
  return found != children.end() ? found->second : none;
}

}  // namespace stowpath
