#pragma once

#include <string>
#include <vector>

namespace stowpath {

/// A file as the command line names it.
struct NamedFile {
  std::string option;  ///< that it was given with; empty: the scene
  std::string name;    ///< empty: none
};

/// Whether two names mean one file, however they are written: links are followed, and it need not be there yet.
bool same_file(const std::string& a, const std::string& b);

/// Sees to it that nothing is written over what is read, and no two things into one file; asked before any work.
/// @throws UsageFault naming both
void check_apart(const std::vector<NamedFile>& read, const std::vector<NamedFile>& written);

/// Whether a recording can be kept under that name. @throws UsageFault
void check_recording_name(const std::string& name);

}  // namespace stowpath
