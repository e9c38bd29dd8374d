#include "render/command/remedy_job.h"

#include <chrono>
#include <ostream>

namespace stowpath {
namespace {

// One line of a terminal, written over and wiped at the end.
class Progress {
 public:
  explicit Progress(std::ostream* out) : out_(out) {}
  ~Progress() {
    if (shown_) *out_ << "\r\033[K" << std::flush;
  }
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  void tell(int done, int all) {
    using namespace std::chrono_literals;
    if (out_ == nullptr || done == all || std::chrono::steady_clock::now() - start_ < 500ms) return;
    *out_ << "\rlooking for cures: " << done << " of " << all << " findings\033[K" << std::flush;
    shown_ = true;
  }

 private:
  std::ostream* out_;
  std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
  bool shown_ = false;
};

}  // namespace

Assessment assess_job(const SceneJob& job, const SceneText& source, const AssessOptions& options) {
  try {
    return assess(job.scene, job.model, options);
  } catch (const SceneError& error) {
    throw SceneFault(error, source.text);
  }
}

std::vector<Cures> cure_job(const SceneJob& job, const SceneText& source, const Assessment& assessed,
                            const AssessOptions& options, const Voice& voice, const std::string& only) {
  if (assessed.fit.findings.empty()) return {};
  Progress progress(voice.progress);
  RemedyOptions wanted;
  wanted.only = only;
  wanted.progress = [&](int done, int all) { progress.tell(done, all); };
  return find_remedies(SceneDraft(source.text, source.name), job.scene, assessed, options, wanted);
}

}  // namespace stowpath
