#include "render/command/open_command.h"

#include <spawn.h>
#include <sys/wait.h>

#include <filesystem>
#include <vector>

#include "render/command/faults.h"

extern char** environ;  // as POSIX has it

namespace stowpath {
namespace {

constexpr const char* kViewer = "stowpath-view";

// Beside this program as it is installed or built, else wherever the PATH has it.
std::string viewer_path() {
  std::error_code failed;
  const std::filesystem::path self = std::filesystem::read_symlink("/proc/self/exe", failed);
  const std::filesystem::path beside = self.parent_path() / kViewer;
  return !failed && std::filesystem::exists(beside, failed) ? beside.string() : kViewer;
}

}  // namespace

int run_open(const std::optional<std::string>& scene) {
  if (scene && *scene == "-") throw UsageFault("a window cannot show a scene from standard input", "name a file");
  std::string program = viewer_path(), file = scene.value_or("");
  std::vector<char*> words{program.data()};
  if (scene) words.push_back(file.data());
  words.push_back(nullptr);
  pid_t child = 0;
  if (posix_spawnp(&child, program.c_str(), nullptr, nullptr, words.data(), environ) != 0)
    throw FileFault(kViewer, "is neither beside this program nor on the PATH: it is built where SFML and Dear ImGui are");
  int status = 0;
  waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : static_cast<int>(kExitOurFault);
}

}  // namespace stowpath
