#pragma once

#include <ctime>
#include <optional>
#include <string>

namespace stowpath {

/// Where a program of ours keeps its state: $XDG_STATE_HOME/stowpath, else ~/.local/state/stowpath; empty where neither
/// is known.
std::string state_folder();

/// A scene's text as it was when its window ended without saving.
struct UnsavedWork {
  std::string text;
  std::string base;      ///< what its file said then
  std::time_t when = 0;  ///< it was changed last
};

/// Keeps a scene's unsaved text in a file of its own, so that it outlives the program, however that ends.
///
/// Two windows on one scene keep two files: each holds a lock on its own until it ends, and takes the lock's file away.
class Unsaved {
 public:
  /// @param folder   made where it is missing, for its owner alone; empty: nothing is kept
  /// @param subject  of whom the text is: a file's whole path, or a name for what has no file
  /// Where the folder cannot be used nothing is kept, and `trouble` says why.
  Unsaved(std::string folder, const std::string& subject);
  ~Unsaved();
  Unsaved(const Unsaved&) = delete;
  Unsaved& operator=(const Unsaved&) = delete;

  /// What a window that ended has left. Where that is damaged it is put aside, and `trouble` says so.
  std::optional<UnsavedWork> left();
  /// Takes the place of what is kept. @param base  what the scene's file says
  void keep(const std::string& text, const std::string& base);
  void forget();
  /// Writes a text as a scene of its own beside, which nothing here touches again, and forgets what is kept.
  /// @returns its file; empty where it cannot be written: `trouble` says why, and what is kept stays
  std::string set_aside(const std::string& text);

  /// Why nothing is kept, or what was damaged; empty where all is well.
  const std::string& trouble() const { return trouble_; }

 private:
  void find_place(const std::string& folder, const std::string& name);
  bool take(const std::string& place);

  std::string subject_, file_, trouble_, lock_file_;
  int lock_ = -1;  // descriptor of the lock's file
};

}  // namespace stowpath
