#include "render/command/output_names.h"

#include <filesystem>

#include "render/command/faults.h"
#include "render/command/sheet_file.h"

namespace stowpath {
namespace {

// With its folders' links followed, whether or not the file is there.
std::filesystem::path whole_path(const std::string& name) {
  std::error_code fault;
  const auto path = std::filesystem::weakly_canonical(std::filesystem::absolute(name, fault), fault);
  return fault ? std::filesystem::path(name).lexically_normal() : path;
}

bool is_file(const NamedFile& file) { return !file.name.empty() && file.name != "-"; }

void check_not_over(const NamedFile& written, const NamedFile& read) {
  if (!same_file(written.name, read.name)) return;
  const std::string what = read.option.empty() ? "the scene itself" : "what " + read.option + " reads";
  throw UsageFault(written.option + " " + written.name + " would write over " + what,
                   "give it another name; nothing was written");
}

}  // namespace

bool same_file(const std::string& a, const std::string& b) {
  std::error_code ignored;
  return std::filesystem::equivalent(a, b, ignored) || whole_path(a) == whole_path(b);
}

void check_apart(const std::vector<NamedFile>& read, const std::vector<NamedFile>& written) {
  for (std::size_t i = 0; i < written.size(); ++i) {
    if (!is_file(written[i])) continue;
    for (const NamedFile& of : read)
      if (is_file(of)) check_not_over(written[i], of);
    for (std::size_t j = 0; j < i; ++j)
      if (is_file(written[j]) && same_file(written[i].name, written[j].name))
        throw UsageFault(written[j].option + " and " + written[i].option + " both write " + written[i].name,
                         "give them two names");
  }
}

void check_recording_name(const std::string& name) {
  const std::string hint = "give it a name of its own, as in --record run.txt";
  if (name == "-")
    throw UsageFault("--record -: a recording goes to a file, as the report goes to standard output", hint);
  if (ends_with(name, ".yaml") || ends_with(name, ".yml"))
    throw UsageFault("--record " + name + ": a scene is named so, and a recording is none", hint);
}

}  // namespace stowpath
