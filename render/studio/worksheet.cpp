#include "render/studio/worksheet.h"

#include <stdexcept>
#include <utility>

namespace stowpath {

Worksheet::Worksheet(std::string text, const std::string& name)
    : reading_(reading_of(std::move(text), name)), saved_(this->text()), steps_{{saved_, ""}} {}

void Worksheet::rename(const std::string& name) { reading_ = reading_of(text(), name); }

SceneDraft Worksheet::saved_draft() const {
  try {
    return {saved_, reading_.draft.name()};
  } catch (const SceneError&) {
    return reading_.draft;
  }
}

std::optional<RefusedEdit> Worksheet::write(const std::vector<ValueEdit>& edits) {
  const SceneDraft& draft = reading_.draft;
  std::string changed = draft.text();
  try {
    changed = edits.size() == 1 && draft.value(edits.front().key) == nullptr ? draft.add(edits.front()) : draft.write(edits);
    reading_ = reading_of(changed, draft.name());
  } catch (const SceneError& error) {
    return RefusedEdit{error.diagnostics, std::move(changed)};
  } catch (const std::logic_error& error) {
    return RefusedEdit{{{{}, edits.front().key, error.what(), "write it as one line of plain text"}}, std::move(changed)};
  }
  return std::nullopt;
}

std::optional<RefusedEdit> Worksheet::set(const ValueEdit& edit, bool typing) {
  const bool goes_on = typing && edit.key == typed_.key;
  const DocumentNode* old = reading_.draft.value(edit.key);
  Typed typed{edit.key, goes_on ? typed_.before : old == nullptr ? "left out" : old->text};
  if (auto refused = write({edit})) return refused;
  typed.has_step = push(edit.key + ": " + typed.before + " becomes " + edit.text, goes_on && typed_.has_step);
  typed_ = typing ? std::move(typed) : Typed{};
  return std::nullopt;
}

bool Worksheet::forget_typed(const std::string& key) {
  if (typed_.key != key || !typed_.has_step) return false;
  go(now_ - 1);
  steps_.pop_back();
  return true;
}

std::optional<RefusedEdit> Worksheet::change(const std::vector<ValueEdit>& edits, const std::string& deed) {
  if (auto refused = write(edits)) return refused;
  push(deed, false);
  end_typing();
  return std::nullopt;
}

std::optional<RefusedEdit> Worksheet::replace(std::string text, const std::string& deed) {
  try {
    reading_ = reading_of(text, reading_.draft.name());
  } catch (const SceneError& error) {
    return RefusedEdit{error.diagnostics, std::move(text)};
  }
  push(deed, false);
  end_typing();
  return std::nullopt;
}

// What was undone before can no longer be done again. Typed back to where it began, a value leaves no step.
// Tells whether the last step is now the deed's.
bool Worksheet::push(const std::string& deed, bool joins) {
  if (steps_[now_].text == text()) return joins;
  steps_.resize(now_ + 1);
  if (joins) steps_.pop_back();
  const bool differs = steps_.back().text != text();
  if (differs) steps_.push_back({text(), deed});
  now_ = steps_.size() - 1;
  return differs;
}

void Worksheet::go(std::size_t step) {
  now_ = step;
  reading_ = reading_of(steps_[step].text, reading_.draft.name());
  end_typing();
}

std::string Worksheet::undo() {
  if (!can_undo()) return "";
  std::string deed = steps_[now_].deed;
  go(now_ - 1);
  return deed;
}

std::string Worksheet::redo() {
  if (!can_redo()) return "";
  go(now_ + 1);
  return steps_[now_].deed;
}

}  // namespace stowpath
