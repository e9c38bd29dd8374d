#pragma once

#include <set>
#include <string>

namespace stowpath {

/// Which files may be written without a question: those that are not there yet, and those written in this sitting.
class OutFiles {
 public:
  /// Whether to write under that name now. A file that someone else wrote is written over when it is asked for twice
  /// in a row.
  bool may_write(const std::string& name);

  /// It was written by us.
  void wrote(const std::string& name);

 private:
  std::set<std::string> ours_;
  std::string asked_;  // the last name that was refused
};

}  // namespace stowpath
