#include "render/studio/measures.h"

#include <algorithm>
#include <cctype>
#include <sstream>
#include <utility>

#include "sim/scene/key_value.h"

namespace stowpath {
namespace {

constexpr unsigned kPlain = kText | kWord | kFlag | kMeasureForms;

bool holds_keys(const DocumentNode& node) { return node.kind == DocumentNode::Kind::map; }
bool holds_maps(const DocumentNode& node) {
  return node.kind == DocumentNode::Kind::list && !node.items.empty() && holds_keys(node.items.front());
}

std::string name_of(const DocumentNode& node) {
  const DocumentEntry* name = node.find("name");
  return name != nullptr ? ", " + name->value.text : "";
}

std::string spaced(const std::string& label, const std::string& more) { return label.empty() ? more : label + " " + more; }

// Walks a scene as a person reads it: maps at the top and the maps in them are groups, the rest of a path is the label.
class Walk {
 public:
  Walk(const DocumentNode& root, const SceneDraft& saved) : saved_(saved) {
    for (const DocumentEntry& entry : root.entries) {
      if (entry.key.text == "stowpath") continue;  // no measure of anything
      if (holds_keys(entry.value)) {
        subject(entry.key.text, entry.key.text, entry.value);
      } else if (holds_maps(entry.value) && entry.key.text != "procedure") {
        things(entry.key.text, entry.value);
      } else {
        value(entry.key.text, entry.key.text == "procedure" ? "procedure" : "scene",
              entry.key.text == "procedure" ? "" : entry.key.text, entry.value);
      }
    }
    defaults("", "scene", "", root);
  }

  std::vector<MeasureLine> gathered() {
    std::vector<MeasureLine> out;
    for (const std::string& group : groups_)
      std::copy_if(lines_.begin(), lines_.end(), std::back_inserter(out),
                   [&](const MeasureLine& line) { return line.group == group; });
    return out;
  }

 private:
  void subject(const std::string& key, const std::string& group, const DocumentNode& node) {
    for (const DocumentEntry& entry : node.entries) {
      const std::string under = key + "." + entry.key.text;
      if (holds_keys(entry.value)) {
        value(under, group + " " + entry.key.text, "", entry.value);
      } else {
        value(under, group, entry.key.text, entry.value);
      }
    }
    defaults(key, group, "", node);
  }

  void things(const std::string& key, const DocumentNode& list) {
    for (std::size_t k = 0; k < list.items.size(); ++k)
      value(key + "[" + std::to_string(k) + "]", key + " " + std::to_string(k + 1) + name_of(list.items[k]), "",
            list.items[k]);
  }

  void value(const std::string& key, const std::string& group, const std::string& label, const DocumentNode& node) {
    if (node.kind == DocumentNode::Kind::text) add(key, group, label, node.text, true);
    for (std::size_t k = 0; k < node.items.size(); ++k)
      value(key + "[" + std::to_string(k) + "]", group, spaced(label, std::to_string(k + 1)), node.items[k]);
    for (const DocumentEntry& entry : node.entries)
      value(key + "." + entry.key.text, group, spaced(label, entry.key.text), entry.value);
    if (holds_keys(node)) defaults(key, group, label, node);
  }

  // Settings that the map leaves out, where the table knows what then counts.
  void defaults(const std::string& key, const std::string& group, const std::string& label, const DocumentNode& node) {
    const KeyRow* row = key.empty() ? nullptr : row_of(key);
    if (row == nullptr && !key.empty()) return;
    const bool of_list = key.ends_with("]");
    const std::string path = key.empty() ? "" : std::string(row->path) + (of_list ? "[]" : "");
    for (const KeyRow* under : keys_under(path)) {
      const std::string name(under->name());
      if (node.find(name) != nullptr || under->required() || !under->takes(kPlain)) continue;
      if (under->if_missing.empty() || under->if_missing.front() == '(') continue;
      add(key.empty() ? name : key + "." + name, group, spaced(label, name), std::string(under->if_missing), false);
    }
  }

  void add(const std::string& key, const std::string& group, const std::string& label, const std::string& text,
           bool in_file) {
    if (std::find(groups_.begin(), groups_.end(), group) == groups_.end()) groups_.push_back(group);
    MeasureLine line;
    line.key = key;
    line.group = group;
    line.label = label.empty() ? group : label;
    line.text = text;
    line.row = row_of(key);
    line.in_file = in_file;
    if (const DocumentNode* before = saved_.value(key)) line.saved = before->text;
    lines_.push_back(std::move(line));
  }

  const SceneDraft& saved_;
  std::vector<std::string> groups_;
  std::vector<MeasureLine> lines_;
};

std::string small_letters(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

}  // namespace

std::vector<MeasureLine> measure_lines(const SceneDraft& now, const SceneDraft& saved) {
  return Walk(now.root(), saved).gathered();
}

std::string measure_help(const MeasureLine& line, LengthUnit bare) {
  if (line.row == nullptr) return "";
  const KeyRow& row = *line.row;
  std::string out(row.help);
  out += " It takes " + forms_text(row);
  if (const std::string range = range_text(row, bare); !range.empty()) out += ", " + range;
  out += ".";
  if (row.required()) {
    out += " It has no default.";
  } else if (!row.if_missing.empty()) {
    out += " Left out: " + std::string(row.if_missing) + ".";
  }
  if (!row.example.empty()) out += " For example: " + example_text(row, bare);
  return out;
}

bool matches(const MeasureLine& line, const std::string& search) {
  std::string all = line.group + " " + line.label + " " + line.key + " " + line.text + " " + line.saved;
  if (line.row != nullptr) all += " " + std::string(line.row->help);
  all = small_letters(all);
  std::istringstream words(small_letters(search));
  for (std::string word; words >> word;) {
    if (all.find(word) == std::string::npos) return false;
  }
  return true;
}

std::vector<std::string> choices_of(const MeasureLine& line) {
  if (line.row == nullptr) return {};
  if (line.row->forms == kFlag) return {"yes", "no"};
  if (line.row->forms != kWord) return {};
  const std::vector<std::string_view> words = line.row->word_list();
  return {words.begin(), words.end()};
}

}  // namespace stowpath
