#include "render/report/rehearsal_page.h"

#include "render/report/motion_page.h"
#include "render/report/recording_words.h"

namespace stowpath {

std::string rehearsal_page(const RecordingSubject& subject) {
  return motion_page(subject, {"Rehearsal: " + subject.model.name, recording_answer(subject.recording, subject.units),
                               "What happened", recording_cautions()});
}

}  // namespace stowpath
