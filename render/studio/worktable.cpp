#include "render/studio/worktable.h"

#include <array>
#include <sstream>
#include <utility>

#include "render/command/faults.h"
#include "render/command/files.h"
#include "render/report/remedy_words.h"
#include "render/report/words.h"

namespace stowpath {
namespace {

std::string moment(std::time_t when) {
  std::array<char, 32> text{};
  const std::tm* local = std::localtime(&when);
  return local != nullptr && std::strftime(text.data(), text.size(), "%Y-%m-%d %H:%M", local) > 0 ? text.data() : "before";
}

// A link stays one: what it leads to is written.
std::string true_path(const std::string& file) {
  std::error_code failed;
  const std::filesystem::path path = std::filesystem::weakly_canonical(file, failed);
  return failed ? file : path.string();
}

std::filesystem::file_time_type time_of(const std::string& file) {
  std::error_code ignored;
  return std::filesystem::last_write_time(file, ignored);
}

std::string first_fault(const RefusedEdit& refused) {
  const Diagnostic& fault = refused.faults.front();
  return "line " + std::to_string(fault.at.line) + ": " + fault.problem;
}

}  // namespace

Worktable::Worktable(Studio& studio, Source source, std::string folder)
    : studio_(studio),
      file_(std::move(source.file)),
      name_(std::move(source.name)),
      folder_(std::move(folder)),
      sheet_(std::move(source.text), name_) {
  studio_.open(sheet_.reading());
  offer_work_left();
}

void Worktable::offer_work_left() {
  file_time_ = time_of(file_);
  unsaved_ = std::make_unique<Unsaved>(folder_, file_.empty() ? name_ : true_path(file_));
  left_ = unsaved_->left();
  news_ = unsaved_->trouble();
  if (!left_) return;
  if (left_->text == sheet_.text()) return left_.reset(), unsaved_->forget();
  ask_about_work();
}

void Worktable::ask_about_work() {
  const bool changed = !file_.empty() && left_->base != sheet_.text();
  ask(Asked::work_left, {"Unsaved work on this scene is there, of " + moment(left_->when) + "." +
                             (changed ? " The file was changed since that work was begun." : ""),
                         "Take it up", "Put it aside"});
}

void Worktable::ask(Asked what, Question question) {
  asked_ = what;
  question_ = std::move(question);
}

void Worktable::answer(bool first) {
  const Asked asked = std::exchange(asked_, Asked::nothing);
  question_.reset();
  switch (asked) {
    case Asked::work_left:
      return first ? take_up_work() : put_work_aside("The scene is as its file has it.");
    case Asked::file_changed:
      return settle_file(first);
    case Asked::name_taken:
      if (first) write_to(other_name_);
      return;
    case Asked::nothing:
      return;
  }
}

// The work goes on from the file as it was then: where that has changed since, it is asked whose text stands.
void Worktable::take_up_work() {
  const std::string now = sheet_.text();
  if (const auto refused = sheet_.replace(left_->text, "the unsaved work taken up"))
    return put_work_aside("The unsaved work does not read: " + first_fault(*refused) + ".");
  if (!file_.empty()) sheet_.note_saved(left_->base);
  left_.reset();
  after_change();
  if (news_.empty()) news_ = "Taken up. It is still not saved.";
  if (!file_.empty()) weigh_file(now);
}

void Worktable::put_work_aside(const std::string& why) {
  const std::string aside = unsaved_->set_aside(left_->text);
  if (aside.empty()) return void(news_ = unsaved_->trouble()), ask_about_work();
  left_.reset();
  news_ = why + " The unsaved work is put aside as " + aside + ".";
}

// What is left from before would be written over by what is kept next.
std::optional<RefusedEdit> Worktable::held_up() const {
  if (asked_ != Asked::work_left) return std::nullopt;
  return RefusedEdit{{{{}, "", "There is unsaved work from before", "take it up or put it aside first"}}, sheet_.text()};
}

void Worktable::tell(const RefusedEdit& refused) {
  news_ = refused.faults.front().problem + ": " + refused.faults.front().hint + ".";
}

void Worktable::after_change() {
  studio_.open(sheet_.reading());
  keep_work();
  news_ = unsaved_->trouble();
}

void Worktable::keep_work() {
  if (sheet_.unsaved()) {
    unsaved_->keep(sheet_.text(), sheet_.saved());
  } else {
    unsaved_->forget();
  }
}

std::optional<RefusedEdit> Worktable::set(const ValueEdit& edit, bool typing) {
  if (auto held = held_up()) return held;
  if (auto refused = sheet_.set(edit, typing)) return refused;
  after_change();
  return std::nullopt;
}

void Worktable::forget_typed(const std::string& key) {
  if (sheet_.forget_typed(key)) after_change();
}

std::optional<RefusedEdit> Worktable::apply(const Remedy& remedy) {
  if (auto held = held_up()) return held;
  std::vector<std::string> deeds;
  for (const Change& change : remedy.changes) deeds.push_back(change_sentence(change, studio_.units()));
  const std::string deed = joined(deeds, ", and ");
  if (auto refused = sheet_.change(edits_of(remedy), deed)) return refused;
  after_change();
  if (news_.empty()) news_ = "Done: " + deed + ". Ctrl-z takes it back.";
  return std::nullopt;
}

void Worktable::undo() {
  if (const auto held = held_up()) return tell(*held);
  const std::string deed = sheet_.undo();
  if (deed.empty()) return void(news_ = "There is nothing to take back.");
  after_change();
  if (news_.empty()) news_ = "Taken back: " + deed;
}

void Worktable::redo() {
  if (const auto held = held_up()) return tell(*held);
  const std::string deed = sheet_.redo();
  if (deed.empty()) return void(news_ = "There is nothing to do again.");
  after_change();
  if (news_.empty()) news_ = "Done again: " + deed;
}

// None where it is gone.
std::optional<std::string> Worktable::on_disk() const {
  std::error_code ignored;
  if (!std::filesystem::exists(file_, ignored)) return std::nullopt;
  std::istringstream no_input;
  return read_text(file_, no_input);
}

bool Worktable::save() {
  if (file_.empty()) {
    news_ = "This scene has no file yet: save it under a name.";
    return false;
  }
  if (const auto held = held_up()) return tell(*held), false;
  try {
    const std::optional<std::string> now = on_disk();
    if (now && *now != sheet_.saved()) {
      weigh_file(*now);
      if (asked_ == Asked::file_changed) news_ = "Not saved.";
      return !sheet_.unsaved();
    }
  } catch (const FileFault& fault) {
    news_ = "Not saved: " + fault.file + ": " + fault.what();
    return false;
  }
  return write_to(file_);
}

bool Worktable::save_as(const std::string& name) {
  std::error_code ignored;
  if (const auto held = held_up()) return tell(*held), false;
  if (name.empty()) {
    news_ = "Not saved: a file needs a name.";
    return false;
  }
  if (!file_.empty() && true_path(name) == true_path(file_)) return save();
  if (!std::filesystem::exists(name, ignored)) return write_to(name);
  other_name_ = name;
  ask(Asked::name_taken, {"There is a file " + name + " already.", "Write over it", "Leave it"});
  return false;
}

bool Worktable::write_to(const std::string& name) {
  try {
    write_whole(true_path(name), sheet_.text());
  } catch (const FileFault& fault) {
    news_ = "Not saved: " + fault.file + ": " + fault.what();
    return false;
  }
  sheet_.note_saved(sheet_.text());
  sheet_.end_typing();
  unsaved_->forget();
  file_time_ = time_of(name);
  news_.clear();
  if (name != file_) {
    file_ = name_ = name;
    sheet_.rename(name);
    offer_work_left();
  }
  // Where work on it is kept from now on may be in trouble.
  news_ = "Saved: " + name + (news_.empty() ? "" : ". " + news_);
  return true;
}

void Worktable::look_at_file() {
  if (file_.empty() || asked_ == Asked::work_left) return;
  const auto time = time_of(file_);
  if (time == file_time_) return;
  file_time_ = time;
  try {
    if (const auto text = on_disk()) weigh_file(*text);
  } catch (const FileFault& fault) {
    news_ = fault.file + ": " + fault.what();
  }
}

// What the file says now, beside what it said and what is here.
void Worktable::weigh_file(const std::string& text) {
  if (asked_ == Asked::file_changed) asked_ = Asked::nothing, question_.reset();
  if (text == sheet_.text() || text == sheet_.saved()) {
    sheet_.note_saved(text);
    if (!studio_.faults().empty()) studio_.open(sheet_.reading());
    if (!sheet_.unsaved()) unsaved_->forget();
  } else if (!sheet_.unsaved()) {
    take_file(text, "the file read again");
  } else {
    theirs_ = text;
    ask(Asked::file_changed,
        {"The file changed on disk, and here is work that is not saved.", "Keep mine", "Take the file's"});
  }
}

void Worktable::settle_file(bool keep_mine) {
  if (!keep_mine) return take_file(theirs_, "the file's text taken");
  sheet_.note_saved(theirs_);
  keep_work();
  news_ = "Kept. Saving will write over what changed in the file.";
}

// As a step like any other: undo brings back what was here.
void Worktable::take_file(const std::string& text, const std::string& deed) {
  if (const auto refused = sheet_.replace(text, deed)) {
    studio_.open(text, name_);  // which says what is wrong with it, and leaves the scene on the table
    news_ = "The file changed and has faults: the scene before is shown.";
    return;
  }
  sheet_.note_saved(text);
  after_change();
  if (news_.empty()) news_ = "Read again: the file changed.";
}

std::string Worktable::farewell() const {
  if (!sheet_.unsaved()) return "";
  if (!unsaved_->trouble().empty()) return "Unsaved work is lost. " + unsaved_->trouble();
  return "Unsaved work on " + name_ + " is kept: it is offered when the scene is opened again.";
}

}  // namespace stowpath
