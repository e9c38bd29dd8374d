#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "sim/scene/draft.h"
#include "sim/scene/reader.h"
#include "sim/scene/scene_error.h"
#include "tests/fuzz/checks.h"
#include "tests/support/scene_numbers.h"

namespace stowpath::testing {
namespace {

void require(bool kept, const char* promise) {
  if (!kept) throw std::logic_error(promise);
}

std::string cut_line(std::string_view& text) {
  const std::size_t end = std::min(text.find('\n'), text.size());
  const std::string line(text.substr(0, end));
  text.remove_prefix(std::min(end + 1, text.size()));
  return line;
}

// What the scene says, or none where it is refused.
template <class Read>
std::optional<std::vector<double>> numbers_if_read(const Read& read) {
  try {
    return numbers_of(read());
  } catch (const SceneError&) {
    return std::nullopt;
  }
}

std::optional<std::string> written(const SceneDraft& draft, const ValueEdit& edit) {
  try {
    return draft.write({edit});
  } catch (const std::invalid_argument&) {
    require(draft.value(edit.key) == nullptr, "a key that has a value is not refused for having none");
  } catch (const std::logic_error&) {
    require(draft.value(edit.key) != nullptr, "a key without a value is refused for that");
  }
  return std::nullopt;
}

// What is before and after the stretch that differs is the same by its making; the stretch has to lie where the value
// stood, and be no longer than it, every sign of it escaped.
void check_place(const std::string& before, const std::string& after, const DocumentNode& old) {
  const std::size_t shorter = std::min(before.size(), after.size());
  std::size_t same = 0, tail = 0;
  while (same < shorter && before[same] == after[same]) ++same;
  while (tail < shorter - same && before[before.size() - 1 - tail] == after[after.size() - 1 - tail]) ++tail;
  const std::string stretch = before.substr(same, before.size() - tail - same);
  require(stretch.find('\n') == std::string::npos, "only one line changes");
  require(stretch.size() <= (old.quoted ? 10 : 1) * old.text.size() + 2, "no more than the value changes");
  if (before.find('\r') != std::string::npos || before == after) return;
  const auto line = 1 + std::count(before.begin(), before.begin() + static_cast<std::ptrdiff_t>(same), '\n');
  require(line == old.at.line, "the value's line changes");
}

void check_text(const SceneDraft& draft, const ValueEdit& edit) {
  const std::optional<std::string> text = written(draft, edit);
  if (!text) return;
  const DocumentNode& old = *draft.value(edit.key);
  check_place(draft.text(), *text, old);
  const SceneDraft again(*text, "scene.yaml");
  const DocumentNode* now = again.value(edit.key);
  require(now != nullptr && now->text == edit.text, "the value reads back");
  require(numbers_if_read([&] { return draft.read({edit}); }) ==
              numbers_if_read([&] { return parse_scene(*text, "scene.yaml"); }),
          "tried and written, it is the same scene");
  // Put in quotes, a value stays in them.
  if (!old.quoted && !now->quoted) require(again.write({{edit.key, old.text}}) == draft.text(), "the old value brings back every byte");
}

void check_number(const SceneDraft& draft, const std::string& key, double to) {
  const std::optional<ValueEdit> edit = draft.edit(key, to);
  if (!edit) return;
  const std::optional<double> back = SceneDraft(draft.write({*edit}), "scene.yaml").number(key);
  require(back.has_value(), "a number stays one");
  require(std::abs(*back - to) <= 2e-6 * std::max(1.0, std::abs(to)), "it reads back as what was asked for");
}

}  // namespace

void check_edit(std::string_view text) {
  const std::string key = cut_line(text), value = cut_line(text);
  try {
    const SceneDraft draft(std::string(text), "scene.yaml");
    check_text(draft, {key, value});
    if (const std::optional<double> number = draft.number(key))
      for (const double to : {*number, 1.1 * *number + 0.001, 0.0, -*number, 1234.5678}) check_number(draft, key, to);
  } catch (const SceneError&) {
    // no scene file to begin with
  }
}

}  // namespace stowpath::testing
