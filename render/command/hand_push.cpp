#include "render/command/hand_push.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <vector>

#include "sim/scene/suggest.h"
#include "sim/trade/length.h"
#include "sim/trade/measure.h"

namespace stowpath {
namespace {

const char* const kForm =
    "write it as \"120N at 1.1m along\", or \"27 lbf at 3ft 7in outward for 2s\"; a minus turns it round, and \"offset "
    "0.2m\" says how far from the stair's middle the hand is";

constexpr std::array<std::string_view, 5> kWords{"at", "along", "outward", "offset", "for"};

/// A word of the form, with the text that follows it up to the next one.
struct Clause {
  std::string word, rest;
};

// The text before the first word of the form is a clause without one.
std::vector<Clause> clauses_of(const std::string& text) {
  std::vector<Clause> out{{}};
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t from = text.find_first_not_of(' ', at);
    if (from == std::string::npos) break;
    at = std::min(text.find(' ', from), text.size());
    const std::string word = text.substr(from, at - from);
    if (std::count(kWords.begin(), kWords.end(), word) > 0) {
      out.push_back({word, ""});
    } else {
      out.back().rest += (out.back().rest.empty() ? "" : " ") + word;
    }
  }
  return out;
}

/// Fills a push clause by clause; the first thing wrong stops it.
class Reader {
 public:
  HandPushRead read(const std::string& text) {
    const std::vector<Clause> clauses = clauses_of(text);
    force(clauses.front().rest);
    for (std::size_t i = 1; i < clauses.size() && well(); ++i) {
      const bool again = std::any_of(clauses.begin() + 1, clauses.begin() + static_cast<std::ptrdiff_t>(i),
                                     [&](const Clause& before) { return before.word == clauses[i].word; });
      if (again) refuse("\"" + clauses[i].word + "\" stands there twice");
      if (well()) clause(clauses[i]);
    }
    if (well()) check();
    if (!well()) return {std::nullopt, problem_, hint_};
    return {push_, "", ""};
  }

 private:
  bool well() const { return problem_.empty(); }

  void refuse(std::string problem, std::string hint = kForm) {
    problem_ = std::move(problem);
    hint_ = std::move(hint);
  }

  std::optional<double> take(const std::string& what, const Measure& read) {
    if (!read.value) refuse(what + ": " + read.problem, kForm);
    return read.value;
  }

  void force(const std::string& text) {
    if (text.empty()) return refuse("it says no force");
    const bool against = text.front() == '-';
    const auto size = take("its force", parse_force(text.substr(against ? 1 : 0)));
    if (!size) return;
    if (!(*size > 0.0)) return refuse("its force must be over 0");
    push_.force = against ? -*size : *size;
  }

  void clause(const Clause& clause) {
    if (clause.word == "at") return height(clause.rest);
    if (clause.word == "offset") return offset(clause.rest);
    if (clause.word == "for") return time(clause.rest);
    if (way_said_) return refuse("it goes along the rail or outward, not both");
    way_said_ = true;
    push_.way = clause.word == "along" ? PushWay::along : PushWay::outward;
    if (!clause.rest.empty()) stray(clause.rest);
  }

  void stray(const std::string& words) {
    const std::string word = words.substr(0, words.find(' '));
    const auto near = nearest_word(word, kWords);
    refuse("\"" + word + "\" is no word of a push", near ? "did you mean " + std::string(*near) + "?" : kForm);
  }

  void height(const std::string& text) {
    at_said_ = true;
    if (const auto height = take("the hand's height", parse_length(text, LengthUnit::none))) push_.height = *height;
    if (well()) return;
    // "1.1m otward": the length is well, and a word after it is not.
    const auto last = text.find_last_of(' ');
    if (last == std::string::npos || !parse_length(text.substr(0, last), LengthUnit::none).value) return;
    stray(text.substr(last + 1));
  }

  void offset(const std::string& text) {
    if (const auto offset = take("the offset", parse_length(text, LengthUnit::none))) push_.offset = *offset;
  }

  void time(const std::string& text) {
    push_.seconds = read_seconds(text);
    if (!push_.seconds) refuse("how long it lasts cannot be read", "write it as \"for 2s\", or \"for 1.5 min\"");
  }

  void check() {
    if (!at_said_) return refuse("it does not say how high the hand is");
    const bool along = push_.way == PushWay::along;
    if (along && push_.seconds)
      return refuse("a hand that rolls the stair walks on with it",
                    "leave \"for\" out, or push outward: \"120N at 1.1m outward for 2s\"");
    if (!along && push_.offset != 0.0)
      return refuse("an outward push is run in the side view, which knows no offset",
                    "leave the offset out, or push along the rail: \"120N at 1.1m along offset 0.2m\"");
  }

  HandPush push_;
  bool way_said_ = false, at_said_ = false;
  std::string problem_, hint_;
};

}  // namespace

HandPushRead read_hand_push(const std::string& text) { return Reader().read(text); }

std::optional<double> read_seconds(const std::string& text) {
  const std::string word = trimmed(text);
  const bool minutes = word.ends_with("min");
  if (!minutes && !word.ends_with("s")) return std::nullopt;
  const Measure read = parse_number(trimmed(word.substr(0, word.size() - (minutes ? 3 : 1))));
  if (!read.value || *read.value < 0.0) return std::nullopt;
  return *read.value * (minutes ? 60.0 : 1.0);
}

}  // namespace stowpath
