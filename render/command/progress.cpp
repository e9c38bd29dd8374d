#include "render/command/progress.h"

#include <ostream>

namespace stowpath {

Progress::~Progress() {
  if (shown_) *out_ << "\r\033[K" << std::flush;
}

void Progress::tell(const std::string& words) {
  using namespace std::chrono_literals;
  if (out_ == nullptr || std::chrono::steady_clock::now() - start_ < 500ms) return;
  *out_ << "\r" << words << "\033[K" << std::flush;
  shown_ = true;
}

}  // namespace stowpath
