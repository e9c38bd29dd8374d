#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "render/studio/scene_reading.h"
#include "sim/scene/scene_error.h"

namespace stowpath {

/// Why a change was not made, in the reader's words.
struct RefusedEdit {
  std::vector<Diagnostic> faults;  ///< never empty; their places are in `text`
  std::string text;                ///< the scene as it would have read
};

/// A scene's text under edit: what it says now, and every text before, to go back to.
///
/// The text always reads: a change that would not is refused and leaves everything as it was. A change replaces the values
/// it is about and not a byte besides.
class Worksheet {
 public:
  /// @throws SceneError where the text is no scene
  Worksheet(std::string text, const std::string& name);

  const SceneReading& reading() const { return reading_; }
  const std::string& text() const { return reading_.draft.text(); }
  /// The text as its file has it.
  const std::string& saved() const { return saved_; }
  /// It taken apart; where it does not read, the text as it is now.
  SceneDraft saved_draft() const;
  bool unsaved() const { return text() != saved_; }
  /// Of the name under which the text is read: that of its file.
  void rename(const std::string& name);

  /// Gives one value another text; a setting that the file leaves out is added.
  /// @param typing  joins the step before where that typed the same value: a word is one step, not one for each letter
  std::optional<RefusedEdit> set(const ValueEdit& edit, bool typing = false);
  /// Gives values other texts, as one step.
  /// @param deed  what is done, in few words: undo and redo say it again
  std::optional<RefusedEdit> change(const std::vector<ValueEdit>& edits, const std::string& deed);
  /// Another text as a whole, as one step.
  std::optional<RefusedEdit> replace(std::string text, const std::string& deed);
  /// What is typed next begins a step of its own.
  void end_typing() { typed_ = {}; }
  /// What is being typed for that value was never typed: no step is left of it. @returns whether there was one
  bool forget_typed(const std::string& key);

  bool can_undo() const { return now_ > 0; }
  bool can_redo() const { return now_ + 1 < steps_.size(); }
  /// @returns the deed that is taken back or done again; empty where there is none
  std::string undo();
  std::string redo();

  /// The file now has this text.
  void note_saved(std::string text) { saved_ = std::move(text); }

 private:
  struct Step {
    std::string text, deed;  // the text after the deed
  };
  // What is being typed: its value's key, what stood there before, and whether the last step is this typing's own. Typed
  // back to where it began it has none, and goes on all the same.
  struct Typed {
    std::string key, before;
    bool has_step = false;
  };
  std::optional<RefusedEdit> write(const std::vector<ValueEdit>& edits);
  bool push(const std::string& deed, bool joins);
  void go(std::size_t step);

  SceneReading reading_;
  std::string saved_;
  std::vector<Step> steps_;  // the first is the text as it was opened
  std::size_t now_ = 0;      // in steps_
  Typed typed_;              // empty where nothing is
};

}  // namespace stowpath
