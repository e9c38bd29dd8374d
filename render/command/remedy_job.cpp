#include "render/command/remedy_job.h"

#include "render/command/progress.h"

namespace stowpath {

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
  wanted.progress = [&](int done, int all) {
    progress.tell("looking for cures: " + std::to_string(done) + " of " + std::to_string(all) + " findings");
  };
  return find_remedies(SceneDraft(source.text, source.name), job.scene, assessed, options, wanted);
}

}  // namespace stowpath
