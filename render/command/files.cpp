#include "render/command/files.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <sys/stat.h>
#include <unistd.h>

#include "render/command/faults.h"

namespace stowpath {
namespace {

constexpr std::size_t kPiece = std::size_t{1} << 20U;  // read at a time

std::string reason(int error) { return std::strerror(error); }

std::string drained(std::istream& in, std::size_t most) {
  std::string text;
  while (in && text.size() <= most) {
    const std::size_t before = text.size(), wanted = std::min(kPiece, most + 1 - before);
    text.resize(before + wanted);
    in.read(text.data() + before, static_cast<std::streamsize>(wanted));
    text.resize(before + static_cast<std::size_t>(in.gcount()));
  }
  return text;
}

// A file beside the wanted one that goes away unless it is renamed.
class TemporaryFile {
 public:
  explicit TemporaryFile(const std::string& beside) : wanted_(beside), name_(beside + ".XXXXXX") {
    descriptor_ = mkstemp(name_.data());
    if (descriptor_ < 0) fail(errno);
    const mode_t mask = umask(0);  // there is no way to ask for it without setting it
    umask(mask);
    fchmod(descriptor_, 0666U & ~mask);
  }
  ~TemporaryFile() {
    if (descriptor_ >= 0) close(descriptor_);
    if (!renamed_) unlink(name_.c_str());
  }
  TemporaryFile(const TemporaryFile&) = delete;
  TemporaryFile& operator=(const TemporaryFile&) = delete;

  void write_all(std::string_view text) {
    while (!text.empty()) {
      const ssize_t written = write(descriptor_, text.data(), text.size());
      if (written < 0 && errno == EINTR) continue;
      if (written < 0) fail(errno);
      text.remove_prefix(static_cast<std::size_t>(written));
    }
  }

  void take_its_place() {
    const int descriptor = descriptor_;
    descriptor_ = -1;
    if (close(descriptor) != 0) fail(errno);  // a full disk may show only here
    if (std::rename(name_.c_str(), wanted_.c_str()) != 0) fail(errno);
    renamed_ = true;
  }

 private:
  // Only called where the object is complete or nothing is left to undo.
  [[noreturn]] void fail(int error) const { throw FileFault(wanted_, "cannot be written: " + reason(error)); }

  std::string wanted_, name_;
  int descriptor_ = -1;
  bool renamed_ = false;
};

void check_regular(const std::string& name) {
  std::error_code ignored;
  const auto there = std::filesystem::status(name, ignored);
  if (std::filesystem::exists(there) && !std::filesystem::is_regular_file(there))
    throw FileFault(name, "is not a file that can be written over");
}

}  // namespace

std::string read_text(const std::string& name, std::istream& standard_input, std::size_t most) {
  if (name == "-") return drained(standard_input, most);
  std::error_code ignored;
  if (std::filesystem::is_directory(name, ignored)) throw FileFault(name, "is a directory, not a file");
  errno = 0;
  std::ifstream in(name, std::ios::binary);
  if (!in) throw FileFault(name, "cannot be read: " + reason(errno));
  std::string text = drained(in, most);
  if (in.bad()) throw FileFault(name, "cannot be read to its end");
  return text;
}

void check_can_write(const std::string& name) {
  check_regular(name);
  const std::string folder = std::filesystem::path(name).parent_path();
  if (access(folder.empty() ? "." : folder.c_str(), W_OK | X_OK) != 0)
    throw FileFault(name, "cannot be written: " + reason(errno));
}

void write_whole(const std::string& name, std::string_view text) {
  check_regular(name);
  TemporaryFile file(name);
  file.write_all(text);
  file.take_its_place();
}

}  // namespace stowpath
