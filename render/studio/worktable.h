#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <utility>

#include "render/studio/studio.h"
#include "render/studio/unsaved.h"
#include "render/studio/worksheet.h"

namespace stowpath {

/// What has to be decided before work goes on; both ways out are offered.
struct Question {
  std::string words, first, second;
};

/// A scene's file under work: its worksheet, the file itself, what is kept across a crash, and the studio that shows it.
///
/// Nothing that somebody wrote is lost without a word: the file is written over only while it is as it was read, or when
/// that is asked for, and all unsaved work is kept aside after every change. Of such work from before that is not wanted, or
/// does not read any more, a file of its own stays.
class Worktable {
 public:
  struct Source {
    std::string text;
    std::string file;  ///< empty: the scene has no file yet
    std::string name;  ///< for messages; the file's, or what the scene is called without one
  };

  /// Opens the scene in the studio. Unsaved work that an earlier window left becomes the first question.
  /// @param folder  where unsaved work is kept; empty: nowhere
  /// @throws SceneError
  Worktable(Studio& studio, Source source, std::string folder);

  Studio& studio() { return studio_; }
  const Worksheet& sheet() const { return sheet_; }
  const std::string& file() const { return file_; }

  // Changes: the studio shows them at once. Refused while a question about unsaved work waits.
  std::optional<RefusedEdit> set(const ValueEdit& edit, bool typing = false);
  std::optional<RefusedEdit> apply(const Remedy& remedy);
  void end_typing() { sheet_.end_typing(); }
  void forget_typed(const std::string& key);  ///< see Worksheet
  void undo();
  void redo();

  /// Writes the file. @returns whether it is written; if not, the message or a question says why
  bool save();
  /// Under another name, which becomes the scene's file.
  bool save_as(const std::string& name);
  /// Sees whether the file changed on disk: takes it up where nothing is unsaved, else asks.
  void look_at_file();

  const std::optional<Question>& question() const { return question_; }
  /// Does what the question's first, or its second way out says.
  void answer(bool first);

  /// What there is to say since it was asked last; empty for nothing.
  std::string news() { return std::exchange(news_, {}); }
  /// What becomes of unsaved work when the window closes now; empty where there is none.
  std::string farewell() const;

 private:
  enum class Asked { nothing, work_left, file_changed, name_taken };

  void offer_work_left();
  void ask_about_work();
  void tell(const RefusedEdit& refused);
  void after_change();
  void ask(Asked what, Question question);
  void take_up_work();
  void put_work_aside(const std::string& why);
  void keep_work();
  void settle_file(bool keep_mine);
  void take_file(const std::string& text, const std::string& deed);
  void weigh_file(const std::string& text);
  bool write_to(const std::string& name);
  std::optional<std::string> on_disk() const;
  std::optional<RefusedEdit> held_up() const;

  Studio& studio_;
  std::string file_, name_, folder_;
  Worksheet sheet_;
  std::unique_ptr<Unsaved> unsaved_;
  std::optional<UnsavedWork> left_;
  std::string theirs_;      // the file's text, where that is asked about
  std::string other_name_;  // where to write over is asked about
  Asked asked_ = Asked::nothing;
  std::optional<Question> question_;
  std::string news_;
  std::filesystem::file_time_type file_time_{};
};

}  // namespace stowpath
