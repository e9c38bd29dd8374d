#include "render/command/terminal.h"

#include <cstdlib>
#include <string_view>
#include <unistd.h>

namespace stowpath {
namespace {

std::string_view variable(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? std::string_view{} : std::string_view(value);
}

}  // namespace

Terminal this_terminal() {
  const bool dumb = variable("TERM") == "dumb";
  return {isatty(STDOUT_FILENO) == 1 && variable("NO_COLOR").empty() && !dumb, isatty(STDERR_FILENO) == 1 && !dumb};
}

}  // namespace stowpath
