#pragma once

#include <chrono>
#include <iosfwd>
#include <string>

namespace stowpath {

/// One line of a terminal that says how far long work has come, written over and over and wiped at the end. Work of less
/// than half a second leaves no trace of it.
class Progress {
 public:
  /// @param out  null: nothing is shown
  explicit Progress(std::ostream* out) : out_(out) {}
  ~Progress();
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  void tell(const std::string& words);

 private:
  std::ostream* out_;
  std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
  bool shown_ = false;
};

}  // namespace stowpath
