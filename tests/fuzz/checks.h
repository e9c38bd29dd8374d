#pragma once

#include <string_view>

namespace stowpath::testing {

// One function a fuzz target: feeds any text to a reader and throws std::logic_error if a promise of the reader is
// broken. NAME_fuzz.cpp hands it libFuzzer's inputs; corpus_test.cpp hands it the files of corpus/NAME in the ordinary
// tests.

/// The readers of sim/trade: lengths, masses, forces, angles, numbers, and the names of boards, species and pipes.
void check_length(std::string_view text);

/// The scene reader: a scene with finite numbers, or faults that lie within the file.
void check_scene_text(std::string_view text);

/// The reader of recordings: what it takes, written out, reads back the same; or a fault that lies within the text.
void check_recording_text(std::string_view text);

/// A value of a scene file given another text, in place: a key on the first line, the text on the second, the file after
/// them. Nothing else changes, and what is written reads as what was tried.
void check_edit(std::string_view text);

}  // namespace stowpath::testing
