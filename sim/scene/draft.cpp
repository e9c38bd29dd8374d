#include "sim/scene/draft.h"

#include <algorithm>
#include <charconv>
#include <stdexcept>
#include <utility>

#include "sim/scene/key_value.h"
#include "sim/scene/reader.h"
#include "sim/scene/rewrite.h"

namespace stowpath {
namespace {

// One step of a key path: into a map by name, or into a list by number.
struct PathStep {
  std::string name;
  std::size_t number = 0;
};

std::vector<PathStep> path_steps(const std::string& key) {
  std::vector<PathStep> steps;
  for (std::size_t at = 0; at < key.size();) {
    if (key[at] == '[') {
      const std::size_t close = std::min(key.find(']', at), key.size());
      PathStep step;
      std::from_chars(key.data() + at + 1, key.data() + close, step.number);
      steps.push_back(std::move(step));
      at = close + 1;
    } else {
      if (key[at] == '.') ++at;
      const std::size_t end = std::min(key.find_first_of(".[", at), key.size());
      steps.push_back({key.substr(at, end - at), 0});
      at = std::max(end, at + 1);
    }
  }
  return steps;
}

// Whatever stands there; null where nothing does.
template <class Node>
Node* follow_to_any(Node& root, const std::string& key) {
  Node* node = &root;
  for (const PathStep& step : path_steps(key)) {
    if (step.name.empty()) {
      if (step.number >= node->items.size()) return nullptr;
      node = &node->items[step.number];
    } else {
      const auto entry = std::find_if(node->entries.begin(), node->entries.end(),
                                      [&](const DocumentEntry& e) { return e.key.text == step.name; });
      if (entry == node->entries.end()) return nullptr;
      node = &entry->value;
    }
  }
  return node;
}

template <class Node>
Node* follow(Node& root, const std::string& key) {
  Node* node = follow_to_any(root, key);
  return node != nullptr && node->kind == DocumentNode::Kind::text ? node : nullptr;
}

bool same(const DocumentNode& a, const DocumentNode& b) {
  const auto same_entry = [](const DocumentEntry& x, const DocumentEntry& y) {
    return x.key.text == y.key.text && same(x.value, y.value);
  };
  return a.kind == b.kind && a.text == b.text &&
         std::equal(a.items.begin(), a.items.end(), b.items.begin(), b.items.end(), same) &&
         std::equal(a.entries.begin(), a.entries.end(), b.entries.begin(), b.entries.end(), same_entry);
}

bool reads_as(const std::string& text, const std::string& name, const DocumentNode& wanted) {
  try {
    return same(parse_document(SourceText(text), name), wanted);
  } catch (const SceneError&) {
    return false;
  }
}

// Bytes of the text that a value takes, its quotes included.
struct Extent {
  std::size_t from = 0, to = 0;
};

Extent extent_of(const SourceText& source, const DocumentNode& value) {
  const std::string_view all = source.text();
  std::size_t from = source.line_start(static_cast<std::size_t>(value.at.line - 1));
  for (int column = 1; column < value.at.column && from < all.size(); ++column) {
    do ++from;
    while (from < all.size() && (static_cast<unsigned char>(all[from]) & 0xC0U) == 0x80U);
  }
  return {from, value.quoted ? quoted_end(all, from) : from + value.text.size()};
}

// In the quotes that the old value stood in.
std::string in_quotes(const std::string& text, char quote) {
  std::string out(1, quote);
  for (const char c : text) {
    if (c == quote || (quote == '"' && c == '\\')) out += quote == '\'' ? '\'' : '\\';
    out += c;
  }
  return out + quote;
}

// Byte where a line ends that holds a byte, its end included.
std::size_t line_end(const std::string& text, std::size_t at) {
  const std::size_t end = text.find('\n', at);
  return end == std::string::npos ? text.size() : end + 1;
}

// A new setting as a piece of text, and where it goes.
struct Insertion {
  std::size_t at = 0;
  std::string piece;
};

Insertion first_in(const SourceText& source, const DocumentNode& map, const std::string& setting, bool top) {
  const std::string text(source.text());
  const std::size_t from = extent_of(source, map).from;
  if (from < text.size() && text[from] == '{') return {from + 1, setting + ", "};
  const std::size_t next = line_end(text, from);
  const std::string end = next > 1 && text[next - 2] == '\r' ? "\r\n" : "\n";
  if (top) return {next, setting + end};
  return {from, setting + end + std::string(static_cast<std::size_t>(map.at.column - 1), ' ')};
}

}  // namespace

const KeyRow* row_of(const std::string& key) {
  std::string path;
  bool within = false;
  for (const char c : key) {
    if (c == ']') within = false;
    if (!within) path += c;
    if (c == '[') within = true;
  }
  const KeyRow* row = find_key(path);
  while (row == nullptr && path.size() > 2 && path.compare(path.size() - 2, 2, "[]") == 0) {
    path.resize(path.size() - 2);
    row = find_key(path);
  }
  return row;
}

SceneDraft::SceneDraft(std::string text, std::string name) : text_(std::move(text)), name_(std::move(name)) {
  root_ = parse_document(SourceText(text_), name_);
  const DocumentNode* units = value("units");
  if (units != nullptr && units->text == "in") bare_ = LengthUnit::inch;
}

const DocumentNode* SceneDraft::value(const std::string& key) const { return follow(root_, key); }

std::optional<double> SceneDraft::number(const std::string& key) const {
  const DocumentNode* node = value(key);
  const KeyRow* row = row_of(key);
  if (node == nullptr || row == nullptr || number_form(*row) == 0) return std::nullopt;
  return read_number(*row, node->text, bare_).value;
}

std::optional<ValueEdit> SceneDraft::edit(const std::string& key, double to) const {
  const DocumentNode* node = value(key);
  const KeyRow* row = row_of(key);
  if (node == nullptr || row == nullptr) return std::nullopt;
  std::optional<std::string> text = rewritten_number(*row, node->text, to, bare_);
  return text ? std::optional(ValueEdit{key, std::move(*text)}) : std::nullopt;
}

DocumentNode SceneDraft::with(const std::vector<ValueEdit>& edits) const {
  DocumentNode root = root_;
  for (const ValueEdit& edit : edits) {
    DocumentNode* node = follow(root, edit.key);
    if (node == nullptr) throw std::invalid_argument(edit.key + " has no value in " + name_ + " that could be changed");
    node->text = edit.text;
  }
  return root;
}

Scene SceneDraft::read(const std::vector<ValueEdit>& edits) const {
  return edits.empty() ? read_scene(root_, name_) : read_scene(with(edits), name_);
}

std::string SceneDraft::written(const std::vector<ValueEdit>& edits, bool quote) const {
  const SourceText source(text_);
  std::vector<std::pair<Extent, std::string>> places;
  for (const ValueEdit& edit : edits) {
    const DocumentNode& old = *value(edit.key);
    const Extent extent = extent_of(source, old);
    const char mark = old.quoted ? text_[extent.from] : '"';
    places.emplace_back(extent, old.quoted || quote ? in_quotes(edit.text, mark) : edit.text);
  }
  std::sort(places.begin(), places.end(), [](const auto& a, const auto& b) { return a.first.from > b.first.from; });
  std::string out = text_;
  for (const auto& [extent, text] : places) out.replace(extent.from, extent.to - extent.from, text);
  return out;
}

std::string SceneDraft::write(const std::vector<ValueEdit>& edits) const {
  const DocumentNode wanted = with(edits);
  for (const bool quote : {false, true}) {
    std::string out = written(edits, quote);
    if (reads_as(out, name_, wanted)) return out;
  }
  throw std::logic_error("the change cannot be written into " + name_ + " without changing more");
}

std::string SceneDraft::add(const ValueEdit& setting) const {
  const std::size_t dot = setting.key.rfind('.');
  const bool top = dot == std::string::npos;
  const std::string owner = top ? "" : setting.key.substr(0, dot), name = setting.key.substr(top ? 0 : dot + 1);
  DocumentNode wanted = root_;
  DocumentNode* map = follow_to_any(wanted, owner);
  if (map == nullptr || map->kind != DocumentNode::Kind::map || map->find(name) != nullptr || map->entries.empty())
    throw std::invalid_argument(setting.key + " cannot be added to " + name_);
  const DocumentNode before = *map;
  DocumentEntry entry;
  entry.key.kind = entry.value.kind = DocumentNode::Kind::text;
  entry.key.text = name;
  entry.value.text = setting.text;
  map->entries.insert(map->entries.begin() + (top ? 1 : 0), std::move(entry));
  for (const bool quote : {false, true}) {
    const std::string value = quote ? in_quotes(setting.text, '"') : setting.text;
    const Insertion in = first_in(SourceText(text_), before, name + ": " + value, top);
    std::string out = text_;
    out.insert(in.at, in.piece);
    if (reads_as(out, name_, wanted)) return out;
  }
  throw std::logic_error(setting.key + " cannot be added to " + name_ + " without changing more");
}

}  // namespace stowpath
