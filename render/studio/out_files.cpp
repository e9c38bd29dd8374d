#include "render/studio/out_files.h"

#include <filesystem>
#include <system_error>
#include <utility>

namespace stowpath {

bool OutFiles::may_write(const std::string& name) {
  std::error_code unknown;
  const bool there = std::filesystem::exists(name, unknown);
  const std::string before = std::exchange(asked_, name);
  return !there || ours_.count(name) > 0 || before == name;
}

void OutFiles::wrote(const std::string& name) {
  ours_.insert(name);
  asked_.clear();
}

}  // namespace stowpath
