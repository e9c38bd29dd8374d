#include "render/studio/unsaved.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <charconv>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <sstream>
#include <string_view>
#include <utility>

#include "render/command/faults.h"
#include "render/command/files.h"

namespace stowpath {
namespace {

constexpr std::string_view kHead = "stowpath unsaved work 1\n";
constexpr int kMostWindows = 16;  // on one scene
constexpr std::size_t kMostKept = 2 * kMostSceneText;

// FNV-1a, for names and to see damage; nothing here has to withstand a forger.
std::string sum_of(std::string_view bytes) {
  std::uint64_t sum = 0xcbf29ce484222325U;
  for (const char c : bytes) sum = (sum ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
  std::array<char, 16> digits{};
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), sum, 16);
  return {digits.data(), end.ptr};
}

std::string head_of(const std::string& subject) { return std::string(kHead) + "of " + subject + "\n"; }

std::string kept_form(const std::string& subject, const std::string& text) {
  return head_of(subject) + "sum " + sum_of(text) + "\n" + text;
}

// The text out of its kept form; none where a byte of it is not as it was written.
std::optional<std::string> text_of(const std::string& kept, const std::string& subject) {
  const std::string head = head_of(subject);
  if (kept.compare(0, head.size(), head) != 0) return std::nullopt;
  std::string text = kept.substr(kept.find('\n', head.size()) + 1);
  return kept == kept_form(subject, text) ? std::optional(std::move(text)) : std::nullopt;
}

std::string environment(const char* name) {
  const char* value = std::getenv(name);
  return value != nullptr && *value == '/' ? value : "";  // the standard has all others ignored
}

// The file's own name in front, to be found by a person.
std::string name_for(const std::string& subject) {
  std::string name = std::filesystem::path(subject).filename().string().substr(0, 80);
  return name + "-" + sum_of(subject);
}

std::time_t time_of(const std::string& file) {
  struct stat about {};
  return stat(file.c_str(), &about) == 0 ? about.st_mtime : 0;
}

}  // namespace

std::string state_folder() {
  if (const std::string state = environment("XDG_STATE_HOME"); !state.empty()) return state + "/stowpath";
  const std::string home = environment("HOME");
  return home.empty() ? "" : home + "/.local/state/stowpath";
}

Unsaved::Unsaved(std::string folder, const std::string& subject) : subject_(subject) {
  if (folder.empty()) {
    trouble_ = "Unsaved work is not kept: neither XDG_STATE_HOME nor HOME says where.";
    return;
  }
  std::error_code failed;
  if (std::filesystem::create_directories(folder, failed))
    std::filesystem::permissions(folder, std::filesystem::perms::owner_all, failed);
  find_place(folder, name_for(subject));
  if (lock_ < 0) trouble_ = "Unsaved work is not kept: " + folder + " cannot be written in.";
}

Unsaved::~Unsaved() {
  if (lock_ >= 0) close(lock_);
}

// The first place that no other window holds, one where something is left before all others.
void Unsaved::find_place(const std::string& folder, const std::string& name) {
  for (const bool left : {true, false}) {
    for (int k = 1; k <= kMostWindows && lock_ < 0; ++k) {
      const std::string place = folder + "/" + name + "-" + std::to_string(k);
      std::error_code ignored;
      if (std::filesystem::exists(place + ".unsaved", ignored) == left && take(place)) file_ = place + ".unsaved";
    }
  }
}

bool Unsaved::take(const std::string& place) {
  lock_ = open((place + ".lock").c_str(), O_CREAT | O_RDWR | O_CLOEXEC, 0600);
  if (lock_ >= 0 && flock(lock_, LOCK_EX | LOCK_NB) != 0) {
    close(lock_);
    lock_ = -1;
  }
  return lock_ >= 0;
}

std::optional<UnsavedWork> Unsaved::left() {
  std::error_code failed;
  if (file_.empty() || !std::filesystem::exists(file_, failed)) return std::nullopt;
  try {
    std::istringstream no_input;
    if (auto text = text_of(read_text(file_, no_input, kMostKept), subject_))
      return UnsavedWork{std::move(*text), time_of(file_)};
  } catch (const FileFault&) {
  }
  std::filesystem::rename(file_, file_ + ".damaged", failed);
  trouble_ = "Unsaved work was kept but is damaged and cannot be taken up. What is left of it: " + file_ + ".damaged";
  return std::nullopt;
}

void Unsaved::keep(const std::string& text) {
  if (file_.empty()) return;
  try {
    write_whole(file_, kept_form(subject_, text));
    trouble_.clear();
  } catch (const FileFault& fault) {
    trouble_ = "Unsaved work is not kept: " + fault.file + ": " + fault.what();
  }
}

void Unsaved::forget() {
  std::error_code ignored;
  if (!file_.empty()) std::filesystem::remove(file_, ignored);
}

}  // namespace stowpath
