#include "render/report/rehearsal_page.h"

#include "render/report/motion_page.h"
#include "render/report/recording_words.h"

namespace stowpath {

std::string rehearsal_page(const RecordingSubject& subject) {
  const Recording& recording = subject.recording;
  MotionWords words{"Rehearsal: " + subject.model.name, recording_answer(recording, subject.units), "What happened",
                    recording_cautions()};
  words.notes.push_back({"How good the numbers are", account_sentences(recording, subject.units)});
  const std::string taken = taken_for_granted(recording);
  if (!taken.empty()) words.notes.push_back({"Taken for granted", taken});
  return motion_page(subject, words);
}

}  // namespace stowpath
