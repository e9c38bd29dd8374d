#include "sim/scene/document.h"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <array>
#include <optional>
#include <sstream>
#include <utility>

namespace stowpath {
namespace {

constexpr std::size_t kMostLevels = 24;
constexpr int kMostValues = 20'000;

// Ends the reading at once: what follows would be noise.
struct Stop {
  Diagnostic fault;
};

// Builds the tree from yaml-cpp's events. Its node interface would hide keys given twice, move the marks of empty and
// anchored values, and overflow the stack on an alias to itself.
class TreeBuilder : public YAML::EventHandler {
 public:
  explicit TreeBuilder(const SourceText& source) : source_(source) {}

  DocumentNode take_root() { return std::move(root_); }
  std::vector<Diagnostic>& faults() { return faults_; }
  /// Values over several lines. Where the syntax is at fault as well, that is why they are.
  const std::vector<Diagnostic>& long_values() const { return long_values_; }

  void OnDocumentStart(const YAML::Mark&) override {}
  void OnDocumentEnd() override {}

  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    refuse_extras(mark, "", anchor);
    add(node(DocumentNode::Kind::empty, mark));
  }

  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
    fault(mark, "a value that starts with * stands for another one, which is not done here",
          "write the value out; put text that starts with * in quotes");
    add(node(DocumentNode::Kind::empty, mark));
  }

  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    refuse_extras(mark, tag, anchor);
    DocumentNode text = node(DocumentNode::Kind::text, mark);
    text.text = value;
    refuse_control_characters(mark, text.text);
    const std::string_view all = source_.text();
    const std::size_t from = offset(mark);
    text.quoted = tag == "!" && from < all.size() && (all[from] == '"' || all[from] == '\'');
    const std::size_t end = text.quoted ? quoted_end(all, from) : from + value.size();
    const bool on_one_line = text.quoted ? end != std::string_view::npos : all.substr(from, value.size()) == value;
    if (on_one_line) {
      text.at = source_.place(from, end - from);
    } else if (anchor == 0 && (tag.empty() || tag == "?" || tag == "!")) {
      long_values_.push_back(
          {source_.place(offset(mark)), "", "this value goes on over several lines", "write it on one line"});
    }
    add(std::move(text));
  }

  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value) override {
    open(DocumentNode::Kind::list, mark, tag, anchor);
  }
  void OnSequenceEnd() override { close(); }

  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value) override {
    open(DocumentNode::Kind::map, mark, tag, anchor);
  }
  void OnMapEnd() override { close(); }

 private:
  // A list or map that is not finished yet, and the key that waits for its value.
  struct Open {
    DocumentNode node;
    std::optional<DocumentNode> key;
  };

  // yaml-cpp counts lines and columns from 0, columns in bytes.
  std::size_t offset(const YAML::Mark& mark) const {
    const auto line = static_cast<std::size_t>(std::max(0, mark.line));
    const std::size_t from = source_.line_start(line) + static_cast<std::size_t>(std::max(0, mark.column));
    return std::min(from, source_.text().size());
  }

  DocumentNode node(DocumentNode::Kind kind, const YAML::Mark& mark) const {
    DocumentNode made;
    made.kind = kind;
    made.at = source_.place(offset(mark));
    return made;
  }

  void fault(const YAML::Mark& mark, const std::string& problem, const std::string& hint) {
    faults_.push_back({source_.place(offset(mark)), "", problem, hint});
  }

  void refuse_extras(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor) {
    if (anchor != 0) {
      fault(mark, "a value that starts with & is given a name, which is not done here",
            "write the value without it; put text that starts with & in quotes");
    }
    if (!tag.empty() && tag != "?" && tag != "!") {
      fault(mark, "a value that starts with ! is given a type, which is not done here",
            "write the value without it; put text that starts with ! in quotes");
    }
  }

  // "\n" and the like in double quotes: they would break the lines of every report.
  void refuse_control_characters(const YAML::Mark& mark, std::string& value) {
    const auto control = [](char c) { return (c >= 0 && c < ' ') || c == '\x7F'; };
    if (std::none_of(value.begin(), value.end(), control)) return;
    std::replace_if(value.begin(), value.end(), control, '?');
    fault(mark, "this text stands for a control character", "write it without the \\ escape");
  }

  void open(DocumentNode::Kind kind, const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor) {
    refuse_extras(mark, tag, anchor);
    if (stack_.size() >= kMostLevels) throw Stop{{source_.place(offset(mark)), "", "more than 24 levels deep", ""}};
    stack_.push_back({node(kind, mark), std::nullopt});
  }

  void close() {
    DocumentNode done = std::move(stack_.back().node);
    stack_.pop_back();
    add(std::move(done));
  }

  void add(DocumentNode value) {
    if (++values_ > kMostValues) throw Stop{{value.at, "", "the file holds more than 20000 values", ""}};
    if (stack_.empty()) {
      root_ = std::move(value);
    } else if (stack_.back().node.kind == DocumentNode::Kind::list) {
      stack_.back().node.items.push_back(std::move(value));
    } else if (!stack_.back().key) {
      if (value.kind != DocumentNode::Kind::text) {
        faults_.push_back({value.at, "", "a key was expected here", "write key: value"});
      }
      stack_.back().key = std::move(value);
    } else {
      add_entry(stack_.back(), std::move(value));
    }
  }

  void add_entry(Open& map, DocumentNode value) {
    DocumentNode key = std::move(*map.key);
    map.key.reset();
    if (value.kind == DocumentNode::Kind::empty) value.at = key.at;  // yaml-cpp marks the next token instead
    if (const DocumentEntry* first = map.node.find(key.text)) {
      faults_.push_back({key.at, "", "\u201C" + key.text + "\u201D is given twice here",
                         "it is first given on line " + std::to_string(first->key.at.line) + "; keep one"});
      return;
    }
    const bool comment = value.kind == DocumentNode::Kind::empty && comment_after(key);
    map.node.entries.push_back({std::move(key), std::move(value), comment});
  }

  // `screws: #8 x 3 in` says nothing: all from the # on is a comment.
  bool comment_after(const DocumentNode& key) const {
    const std::string_view line = source_.line(static_cast<std::size_t>(key.at.line - 1));
    const std::size_t from = line.find(key.text + ":");
    if (from == std::string_view::npos) return false;
    const std::size_t next = line.find_first_not_of(' ', from + key.text.size() + 1);
    return next != std::string_view::npos && line[next] == '#';
  }

  const SourceText& source_;
  std::vector<Diagnostic> faults_;
  std::vector<Diagnostic> long_values_;
  std::vector<Open> stack_;
  DocumentNode root_;
  int values_ = 0;
};

struct Wording {
  std::string_view theirs;
  std::string_view problem;
  std::string_view hint;
};

// yaml-cpp's words for what people get wrong most often, in ours.
constexpr std::array kWordings{
    Wording{"illegal map value", "a second key: value stands on one line, or this line is indented too far",
            "give each key its own line, indented as the keys beside it"},
    Wording{"end of map not found", "this line does not fit the ones above it",
            "indent it as the keys it belongs to, and write a space after each colon"},
    Wording{"end of map flow not found", "a { is not closed",
            "close it with }; note that a # after a space starts a comment"},
    Wording{"end of sequence not found", "this line does not fit the list above it",
            "start each entry with - and a space"},
    Wording{"end of sequence flow not found", "a [ is not closed",
            "close it with ]; note that a # after a space starts a comment"},
    Wording{"illegal block entry", "a list entry cannot start here", "put the list on the lines below its key"},
    Wording{"illegal map key", "a key cannot stand here",
            "give each key its own line, or put text with a colon in quotes"},
    Wording{"illegal flow end", "this closes nothing that was opened",
            "remove it, or add the [ or { that it should close"},
    Wording{"unknown token", "a value cannot start with this character", "put the value in quotes"},
};

Diagnostic syntax_fault(const SourceText& source, const YAML::Exception& error) {
  const std::size_t line = static_cast<std::size_t>(std::max(0, error.mark.line));
  const std::size_t offset = source.line_start(line) + static_cast<std::size_t>(std::max(0, error.mark.column));
  Diagnostic fault{source.place(std::min(offset, source.text().size())), "", "this is no YAML: " + error.msg,
                   "write key: value lines, indented alike; put odd text in quotes"};
  for (const Wording& wording : kWordings) {
    if (error.msg == wording.theirs) {
      fault.problem = wording.problem;
      fault.hint = wording.hint;
    }
  }
  return fault;
}

// A second document is looked for only once the first has been read to its end.
void refuse_second_document(YAML::Parser& parser, const SourceText& source, std::vector<Diagnostic>& faults) {
  class Finder : public TreeBuilder {
   public:
    using TreeBuilder::TreeBuilder;
    void OnDocumentStart(const YAML::Mark& mark) override { found = mark; }
    std::optional<YAML::Mark> found;
  } finder(source);
  if (!parser.HandleNextDocument(finder) || !finder.found) return;
  const std::size_t line = static_cast<std::size_t>(std::max(0, finder.found->line));
  faults.push_back({source.place(std::min(source.line_start(line), source.text().size())), "",
                    "a second document starts here (---)", "keep one scene in a file"});
}

DocumentNode read_events(const SourceText& source, std::vector<Diagnostic>& faults) {
  std::istringstream stream{std::string(source.text())};
  TreeBuilder builder(source);
  DocumentNode root;
  try {
    YAML::Parser parser(stream);
    const bool found = parser.HandleNextDocument(builder);
    faults = std::move(builder.faults());
    faults.insert(faults.end(), builder.long_values().begin(), builder.long_values().end());
    root = builder.take_root();
    if (!found || root.kind == DocumentNode::Kind::empty) {
      faults.push_back({{1, 1, 1}, "", "the file holds no scene", "start it with  stowpath: 1"});
      return root;
    }
    refuse_second_document(parser, source, faults);
  } catch (const Stop& stop) {
    faults.insert(faults.end(), builder.faults().begin(), builder.faults().end());
    faults.push_back(stop.fault);
  } catch (const YAML::Exception& error) {
    faults.insert(faults.end(), builder.faults().begin(), builder.faults().end());
    faults.push_back(syntax_fault(source, error));
  }
  return root;
}

}  // namespace

const DocumentEntry* DocumentNode::find(std::string_view key) const {
  const auto found =
      std::find_if(entries.begin(), entries.end(), [&](const DocumentEntry& e) { return e.key.text == key; });
  return found != entries.end() ? &*found : nullptr;
}

DocumentNode parse_document(const SourceText& source, const std::string& file) {
  std::vector<Diagnostic> faults = check_source_text(source);
  DocumentNode root;
  if (faults.empty()) root = read_events(source, faults);
  if (!faults.empty()) throw SceneError(file, std::move(faults));
  return root;
}

}  // namespace stowpath
