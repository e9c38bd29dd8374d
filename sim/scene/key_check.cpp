#include "sim/scene/key_check.h"

#include <algorithm>
#include <array>

#include "sim/scene/key_table.h"
#include "sim/scene/key_value.h"
#include "sim/scene/suggest.h"

namespace stowpath {
namespace {

using Kind = DocumentNode::Kind;

// Words that other programs read as yes or no, wherever they stand.
bool is_truth_word(std::string_view word) {
  constexpr std::array kWords{"yes", "no",  "on", "off", "true", "false", "y",
                              "n",   "Yes", "No", "On",  "Off",  "YES",   "NO"};
  return std::any_of(kWords.begin(), kWords.end(), [&](std::string_view w) { return w == word; });
}

bool means_none(std::string_view word) {
  constexpr std::array kWords{"no", "No", "NO", "off", "Off", "false", "n", "~", "null", "None", "NONE", "nothing"};
  return std::any_of(kWords.begin(), kWords.end(), [&](std::string_view w) { return w == word; });
}

std::string key_path(const std::string& parent, const std::string& key) {
  return parent.empty() ? key : parent + "." + key;
}

std::string item_path(const std::string& list, std::size_t index) { return list + "[" + std::to_string(index) + "]"; }

std::vector<std::string_view> names_of(const std::vector<const KeyRow*>& rows) {
  std::vector<std::string_view> names;
  for (const KeyRow* row : rows) names.push_back(row->name());
  return names;
}

// Where the setting called `name` belongs, if there is just one such place: a wrong indent puts keys under a neighbour.
std::string_view only_home(std::string_view name) {
  std::string_view home;
  int homes = 0;
  for (const KeyRow& row : key_table()) {
    if (row.name() != name) continue;
    home = row.parent();
    ++homes;
  }
  return homes == 1 ? home : std::string_view{};
}

class Checker {
 public:
  KeyCheck run(const DocumentNode& root) {
    check_.where[""] = {1, 1, 1};
    if (root.kind != Kind::map) {
      fault(root.at, "", "the file holds no keys", "start it with  stowpath: 1");
      return std::move(check_);
    }
    read_units(root);
    check_head(root);
    check_map(root, {1, 1, 1}, "", "");
    return std::move(check_);
  }

 private:
  // A value in its setting: the table's row, the path with its indices, the place for what concerns it as a whole.
  struct Spot {
    const KeyRow& row;
    std::string path;
    SourcePos key_at;
  };

  void fault(const SourcePos& at, const std::string& key, const std::string& problem, const std::string& hint) {
    check_.faults.push_back({at, key, problem, hint});
  }

  void read_units(const DocumentNode& root) {
    const DocumentEntry* units = root.find("units");
    if (units != nullptr && units->value.text == "in") check_.bare = LengthUnit::inch;
  }

  void check_head(const DocumentNode& root) {
    const DocumentEntry* head = root.find("stowpath");
    if (head == nullptr || &root.entries.front() == head) return;
    fault(head->key.at, "stowpath", "this does not stand first", "move it to the top: it says how the rest is read");
  }

  void check_map(const DocumentNode& map, const SourcePos& place, const std::string& path,
                 const std::string& row_path) {
    const std::vector<const KeyRow*>& rows = keys_under(row_path);
    for (const DocumentEntry& entry : map.entries) check_entry(entry, rows, path, row_path);
    for (const KeyRow* row : rows) {
      if (row->required() && map.find(row->name()) == nullptr) missing(*row, place, path);
    }
  }

  void missing(const KeyRow& row, const SourcePos& place, const std::string& path) {
    const std::string name(row.name());
    check_.faults.push_back({place, key_path(path, name), "this is missing",
                             "add  " + name + ": " + example_text(row, check_.bare) + "  (" + forms_text(row) + ")",
                             true});
  }

  void check_entry(const DocumentEntry& entry, const std::vector<const KeyRow*>& rows, const std::string& path,
                   const std::string& row_path) {
    const std::string& key = entry.key.text;
    const std::string own_path = key_path(path, key);
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const KeyRow* r) { return r->name() == key; });
    if (row == rows.end()) return unknown_key(entry, rows, own_path, row_path);
    check_.where[own_path] = entry.value.kind == Kind::text ? entry.value.at : entry.key.at;
    if (entry.value.kind == Kind::empty) return empty_value(entry, **row, own_path);
    check_value(entry.value, {**row, own_path, entry.key.at});
  }

  void empty_value(const DocumentEntry& entry, const KeyRow& row, const std::string& path) {
    if (entry.comment_follows) {
      return fault(entry.key.at, path, "this has no value: all from the # on is a comment",
                   "put text that starts with # in quotes");
    }
    fault(entry.key.at, path, "this has no value",
          "it takes " + forms_text(row) + ", such as " + example_text(row, check_.bare));
  }

  void unknown_key(const DocumentEntry& entry, const std::vector<const KeyRow*>& rows, const std::string& path,
                   const std::string& row_path) {
    const std::string& key = entry.key.text;
    const std::vector<std::string_view> names = names_of(rows);
    std::string hint;
    if (const auto near = nearest_word(key, names)) {
      hint = "did you mean " + std::string(*near) + "?";
    } else if (key.find(':') != std::string::npos) {
      hint = "write a space after the colon";
    } else if (is_truth_word(key)) {
      hint = "other programs read this word as yes or no, so no key here is called so; there are: " +
             join_words(names, "and");
    } else if (const std::string_view home = only_home(key); !home.empty()) {
      hint = "it belongs under " + std::string(home);
    } else {
      hint = "there are: " + join_words(names, "and");
    }
    const std::string map = row_path.empty() ? "a scene" : row_path;
    fault(entry.key.at, path, "there is no such key in " + map, hint);
  }

  void check_value(const DocumentNode& node, const Spot& spot) {
    switch (node.kind) {
      case Kind::empty:
        return fault(node.at, spot.path, "a value is missing here", "");
      case Kind::text:
        return check_text(node, spot);
      case Kind::list:
        return check_list(node, spot);
      case Kind::map:
        if (!spot.row.takes(kMap)) return wrong_form(node, spot, "keys of its own");
        check_map(node, spot.key_at, spot.path, std::string(spot.row.path));
    }
  }

  void wrong_form(const DocumentNode& node, const Spot& spot, const std::string& met) {
    fault(node.at, spot.path, "this has " + met + " where it takes " + forms_text(spot.row),
          "write it as  " + std::string(spot.row.name()) + ": " + example_text(spot.row, check_.bare));
  }

  void check_text(const DocumentNode& node, const Spot& spot) {
    const KeyRow& row = spot.row;
    const std::vector<std::string_view> words = row.word_list();
    if (row.takes(kWord) && std::find(words.begin(), words.end(), node.text) != words.end()) return;
    if (row.takes(kMeasureForms)) return check_number(node, spot);
    if (row.takes(kFlag)) return check_flag(node, spot);
    if (row.takes(kText)) return check_plain_text(node, spot);
    if (row.takes(kWord)) return wrong_word(node, spot);
    wrong_form(node, spot, "one value");
  }

  void check_number(const DocumentNode& node, const Spot& spot) {
    const Measure read = read_number(spot.row, node.text, check_.bare);
    if (read.value) return;
    if (spot.row.path == "stowpath") {
      return fault(node.at, spot.path, "version " + node.text + " is not known here",
                   "this program reads version 1 of the format");
    }
    fault(node.at, spot.path, read.problem, number_hint(node.text, read.hint, spot.row));
  }

  std::string number_hint(const std::string& text, const std::string& hint, const KeyRow& row) const {
    const bool has_digits = text.find_first_of("0123456789") != std::string::npos;
    if (!has_digits || row.takes(kWord))
      return "it takes " + forms_text(row) + ", such as " + example_text(row, check_.bare);
    const bool bare = text.find_first_not_of("0123456789.-+") == std::string::npos;
    if (!hint.empty() || number_form(row) != kLength || !bare) return hint;
    return check_.bare == LengthUnit::inch ? "numbers without a unit are inches in this file"
                                           : "numbers without a unit are millimetres in this file";
  }

  void check_flag(const DocumentNode& node, const Spot& spot) {
    if (read_flag(node.text)) return;
    fault(node.at, spot.path, quoted_text(node.text) + " is neither yes nor no", "write yes or no");
  }

  void check_plain_text(const DocumentNode& node, const Spot& spot) {
    constexpr std::size_t kLongestText = 200;
    if (node.text.empty()) return fault(node.at, spot.path, "this text is empty", "write a name");
    if (node.text.size() > kLongestText) fault(node.at, spot.path, "this text is longer than 200 bytes", "shorten it");
  }

  void wrong_word(const DocumentNode& node, const Spot& spot) {
    const std::vector<std::string_view> words = spot.row.word_list();
    const bool takes_none = std::find(words.begin(), words.end(), "none") != words.end();
    std::string hint =
        "it is written as in  " + std::string(spot.row.name()) + ": " + example_text(spot.row, check_.bare);
    if (takes_none && means_none(node.text)) {
      hint = "write none";
    } else if (const auto near = nearest_word(node.text, words)) {
      hint = "did you mean " + std::string(*near) + "?";
    }
    fault(node.at, spot.path, quoted_text(node.text) + " does not fit here: it takes " + forms_text(spot.row), hint);
  }

  void check_list(const DocumentNode& node, const Spot& spot) {
    constexpr unsigned kLists =
        kMaps | kWords | kLengths | kAngles | kMasses | kInterval | kSpan | kIntervals | kPoints;
    if (!spot.row.takes(kLists)) return wrong_form(node, spot, "a list");
    for (std::size_t i = 0; i < node.items.size(); ++i) check_.where[item_path(spot.path, i)] = node.items[i].at;
    if (!count_fits(spot.row, node.items.size())) return wrong_count(node, spot);
    for (std::size_t i = 0; i < node.items.size(); ++i) {
      check_item(node.items[i], {spot.row, item_path(spot.path, i), node.items[i].at});
    }
    if (spot.row.takes(kInterval | kSpan)) check_order(node, spot);
  }

  void wrong_count(const DocumentNode& node, const Spot& spot) {
    const bool pair = spot.row.takes(kInterval | kSpan);
    const int fewest = pair ? 2 : spot.row.range.fewest;
    const int most = pair ? 2 : spot.row.range.most;
    const auto count = static_cast<int>(node.items.size());
    const std::string wanted = fewest == most   ? std::to_string(fewest)
                               : count < fewest ? "at least " + std::to_string(fewest)
                                                : "at most " + std::to_string(most);
    fault(spot.key_at, spot.path,
          "this list has " + std::to_string(count) + (count == 1 ? " entry" : " entries") + " where it takes " + wanted,
          "write it as  " + std::string(spot.row.name()) + ": " + example_text(spot.row, check_.bare));
  }

  void check_item(const DocumentNode& item, const Spot& spot) {
    const bool also_plain = spot.row.takes(kLengths) && item.kind == Kind::text;
    if (spot.row.takes(kMaps) && !also_plain) return check_list_map(item, spot);
    if (spot.row.takes(kIntervals | kPoints)) return check_pair(item, spot);
    if (item.kind != Kind::text) {
      return fault(item.at, spot.path, "one value was expected here",
                   "a list entry looks like those of " + example_text(spot.row, check_.bare));
    }
    if (spot.row.takes(kWords)) return check_word_item(item, spot);
    const std::vector<std::string_view> words = spot.row.word_list();
    if (spot.row.takes(kMasses) && std::find(words.begin(), words.end(), item.text) != words.end()) return;
    check_number(item, spot);
  }

  void check_list_map(const DocumentNode& item, const Spot& spot) {
    if (item.kind != Kind::map) {
      return fault(item.at, spot.path, "this entry has no keys",
                   "write it as in  " + example_text(spot.row, check_.bare));
    }
    check_map(item, spot.key_at, spot.path, std::string(spot.row.path) + "[]");
  }

  void check_word_item(const DocumentNode& item, const Spot& spot) {
    const std::vector<std::string_view> words = spot.row.word_list();
    if (std::find(words.begin(), words.end(), item.text) == words.end()) wrong_word(item, spot);
  }

  void check_pair(const DocumentNode& item, const Spot& spot) {
    if (item.kind != Kind::list || item.items.size() != 2) {
      return fault(item.at, spot.path, "a pair of lengths was expected here",
                   "write two lengths in brackets, as in " + example_text(spot.row, check_.bare));
    }
    for (std::size_t i = 0; i < 2; ++i) {
      const Spot inner{spot.row, item_path(spot.path, i), item.items[i].at};
      check_.where[inner.path] = item.items[i].at;
      if (item.items[i].kind != Kind::text) {
        fault(item.items[i].at, inner.path, "a length was expected here", "");
      } else {
        check_number(item.items[i], inner);
      }
    }
    if (spot.row.takes(kIntervals)) check_order(item, spot);
  }

  void check_order(const DocumentNode& pair, const Spot& spot) {
    if (pair.items[0].kind != Kind::text || pair.items[1].kind != Kind::text) return;
    const Measure low = read_number(spot.row, pair.items[0].text, check_.bare);
    const Measure high = read_number(spot.row, pair.items[1].text, check_.bare);
    if (!low.value || !high.value || *low.value < *high.value) return;
    fault(pair.at, spot.path, pair.items[0].text + " to " + pair.items[1].text + " is no stretch",
          *low.value > *high.value ? "write the smaller one first" : "its two ends must differ");
  }

  KeyCheck check_;
};

}  // namespace

KeyCheck check_keys(const DocumentNode& root) { return Checker().run(root); }

std::string quoted_text(const std::string& text) {
  constexpr std::size_t kShown = 40;
  if (text.size() <= kShown) return "\u201C" + text + "\u201D";
  std::size_t length = kShown;
  while (length > 0 && (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U) --length;
  return "\u201C" + text.substr(0, length) + "\u2026\u201D";
}

}  // namespace stowpath
