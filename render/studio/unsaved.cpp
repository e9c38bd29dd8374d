#include "render/studio/unsaved.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <iterator>
#include <sstream>
#include <string_view>
#include <utility>

#include "render/command/faults.h"
#include "render/command/files.h"

namespace stowpath {
namespace {

constexpr std::string_view kHead = "stowpath unsaved work 2\n";
constexpr int kMostWindows = 16;                       // on one scene
constexpr std::size_t kMostKept = 3 * kMostSceneText;  // two texts and a head

// FNV-1a, for names and to see damage; nothing here has to withstand a forger.
std::string sum_of(std::string_view bytes) {
  std::uint64_t sum = 0xcbf29ce484222325U;
  for (const char c : bytes) sum = (sum ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
  std::array<char, 16> digits{};
  const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), sum, 16);
  return {digits.data(), end.ptr};
}

std::string head_of(const std::string& subject) { return std::string(kHead) + "of " + subject + "\n"; }

std::string kept_form(const std::string& subject, const UnsavedWork& work) {
  const std::string both = " base " + std::to_string(work.base.size()) + "\n" + work.base + work.text;
  return head_of(subject) + "sum " + sum_of(both) + both;
}

// The work out of its kept form; none where a byte of it is not as it was written.
std::optional<UnsavedWork> work_in(const std::string& kept, const std::string& subject) {
  const std::string head = head_of(subject);
  if (kept.compare(0, head.size(), head) != 0) return std::nullopt;
  std::istringstream in(kept.substr(head.size()));
  std::string word;
  std::size_t base = 0;
  in >> word >> word >> word >> base;
  in.get();
  const std::string both(std::istreambuf_iterator<char>(in), {});
  UnsavedWork work{both.substr(std::min(base, both.size())), both.substr(0, base)};
  return kept == kept_form(subject, work) ? std::optional(std::move(work)) : std::nullopt;
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

// A name that nothing has yet: what was put aside before stays.
std::string fresh_name(const std::string& stem, const std::string& ending) {
  std::string name = stem + ending;
  std::error_code ignored;
  for (int k = 2; std::filesystem::exists(name, ignored); ++k) name = stem + "-" + std::to_string(k) + ending;
  return name;
}

// Whether a name still leads to an open file.
bool leads_to(const std::string& name, int descriptor) {
  struct stat named {
  }, opened{};
  return stat(name.c_str(), &named) == 0 && fstat(descriptor, &opened) == 0 && named.st_dev == opened.st_dev &&
         named.st_ino == opened.st_ino;
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
  if (lock_ < 0) return;
  unlink(lock_file_.c_str());
  close(lock_);
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

// A window that ends takes its lock's file away, maybe between our opening it and our lock, which then locks nothing.
bool Unsaved::take(const std::string& place) {
  lock_file_ = place + ".lock";
  while ((lock_ = open(lock_file_.c_str(), O_CREAT | O_RDWR | O_CLOEXEC, 0600)) >= 0) {
    const bool held = flock(lock_, LOCK_EX | LOCK_NB) == 0;
    if (held && leads_to(lock_file_, lock_)) return true;
    close(lock_);
    if (!held) break;
  }
  lock_ = -1;
  return false;
}

std::optional<UnsavedWork> Unsaved::left() {
  std::error_code failed;
  if (file_.empty() || !std::filesystem::exists(file_, failed)) return std::nullopt;
  try {
    std::istringstream no_input;
    if (auto work = work_in(read_text(file_, no_input, kMostKept), subject_)) {
      work->when = time_of(file_);
      return work;
    }
  } catch (const FileFault&) {
  }
  const std::string aside = fresh_name(file_ + ".damaged", "");
  std::filesystem::rename(file_, aside, failed);
  trouble_ =
      "Unsaved work was kept but is damaged, or of another version of this program, and cannot be taken up. What is "
      "left of it: ";
  trouble_ += failed ? std::exchange(file_, "") + ". It cannot be put aside, so that nothing else is kept." : aside;
  return std::nullopt;
}

void Unsaved::keep(const std::string& text, const std::string& base) {
  if (file_.empty()) return;
  try {
    write_whole(file_, kept_form(subject_, {text, base}));
    trouble_.clear();
  } catch (const FileFault& fault) {
    trouble_ = "Unsaved work is not kept: " + fault.file + ": " + fault.what();
  }
}

std::string Unsaved::set_aside(const std::string& text) {
  if (file_.empty()) return "";
  const std::string aside = fresh_name(file_.substr(0, file_.rfind('.')) + ".aside", ".yaml");
  try {
    write_whole(aside, text);
  } catch (const FileFault& fault) {
    trouble_ = "It cannot be put aside: " + fault.file + ": " + fault.what();
    return "";
  }
  forget();
  return aside;
}

void Unsaved::forget() {
  std::error_code ignored;
  if (!file_.empty()) std::filesystem::remove(file_, ignored);
}

}  // namespace stowpath
