#include "tests/support/xml_check.h"

#include <cctype>
#include <set>
#include <vector>

namespace stowpath::testing {
namespace {

class XmlReader {
 public:
  explicit XmlReader(std::string_view text) : text_(text) {}

  std::string fault() {
    while (at_ < text_.size() && fault_.empty()) {
      if (text_[at_] == '<') {
        tag();
      } else {
        character();
      }
    }
    if (fault_.empty() && !open_.empty()) fault_ = "<" + open_.back() + "> is not closed";
    return fault_;
  }

 private:
  void character() {
    if (text_[at_] != '&') {
      ++at_;
      return;
    }
    for (const std::string_view entity : {"&amp;", "&lt;", "&gt;", "&quot;", "&apos;"}) {
      if (text_.substr(at_, entity.size()) != entity) continue;
      at_ += entity.size();
      return;
    }
    fault_ = "a bare & at " + std::to_string(at_);
  }

  std::string name() {
    const std::size_t from = at_;
    while (at_ < text_.size() &&
           (std::isalnum(static_cast<unsigned char>(text_[at_])) != 0 || text_[at_] == '-' || text_[at_] == ':'))
      ++at_;
    return std::string(text_.substr(from, at_ - from));
  }

  void tag() {
    ++at_;
    if (text_.substr(at_, 1) == "?") {
      at_ = text_.find("?>", at_) + 2;
      return;
    }
    if (text_.substr(at_, 1) == "/") {
      ++at_;
      close(name());
    } else {
      open_.push_back(name());
      attributes();
    }
    if (fault_.empty() && text_.substr(at_, 1) != ">") fault_ = "a tag without its end at " + std::to_string(at_);
    ++at_;
  }

  void close(const std::string& tag_name) {
    if (open_.empty() || open_.back() != tag_name) {
      fault_ = "</" + tag_name + "> closes nothing";
    } else {
      open_.pop_back();
    }
  }

  void attributes() {
    std::set<std::string> given;
    while (fault_.empty() && at_ < text_.size() && text_[at_] != '>') {
      if (text_[at_] == ' ') {
        ++at_;
      } else if (text_.substr(at_, 2) == "/>") {
        open_.pop_back();
        ++at_;
      } else {
        attribute(given);
      }
    }
  }

  void attribute(std::set<std::string>& given) {
    const std::string key = name();
    if (key.empty() || text_.substr(at_, 2) != "=\"" || !given.insert(key).second) {
      fault_ = "attribute " + key + " at " + std::to_string(at_);
      return;
    }
    at_ += 2;
    const std::size_t from = at_;
    while (at_ < text_.size() && text_[at_] != '"' && text_[at_] != '<' && fault_.empty()) character();
    if (text_.substr(at_, 1) != "\"") fault_ = "the value of " + key + " has no end";
    if (key == "id" && !ids_.insert(std::string(text_.substr(from, at_ - from))).second)
      fault_ = "an id is given twice";
    ++at_;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  std::string fault_;
  std::vector<std::string> open_;
  std::set<std::string> ids_;
};

}  // namespace

std::string xml_fault(std::string_view text) { return XmlReader(text).fault(); }

}  // namespace stowpath::testing
