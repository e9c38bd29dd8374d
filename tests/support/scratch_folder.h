#pragma once

#include <string>

namespace stowpath::testing {

/// An empty folder of its own that goes away with all that is in it.
class ScratchFolder {
 public:
  ScratchFolder();
  ~ScratchFolder();
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;

  std::string file(const std::string& name) const { return path_ + "/" + name; }
  int entries() const;

 private:
  std::string path_;
};

/// A file's bytes; empty where there is none.
std::string content(const std::string& file);

}  // namespace stowpath::testing
