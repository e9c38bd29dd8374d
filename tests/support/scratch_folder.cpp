#include "tests/support/scratch_folder.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <system_error>

namespace stowpath::testing {

ScratchFolder::ScratchFolder() : path_((std::filesystem::temp_directory_path() / "stowpath-XXXXXX").string()) {
  if (mkdtemp(path_.data()) == nullptr) throw std::runtime_error("no scratch folder");
}

ScratchFolder::~ScratchFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

std::string content(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

int ScratchFolder::entries() const {
  return static_cast<int>(
      std::distance(std::filesystem::directory_iterator(path_), std::filesystem::directory_iterator()));
}

}  // namespace stowpath::testing
