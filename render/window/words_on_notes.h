#pragma once

#include <string>
#include <utility>
#include <vector>

#include "render/window/shade.h"
#include "sim/clearance/dry_fit.h"

namespace stowpath {

// Words on the notes, broken as the reports are, so that no number is parted from its unit.

void words(const std::string& text);
void words(const std::string& text, Ink ink);
void large_words(const std::string& text, Ink ink);
/// How high they stand where they would be put next, the gap under them included [pixels].
float height_of(const std::string& text);

/// A field for one line of text, however long. @param flags  ImGuiInputTextFlags @returns whether it was changed, or as
/// the flags say
bool text_field(const char* id, std::string& text, int flags = 0);

/// In front of what stands in the same line, at the height of its words.
void label(const char* text);
/// A button of that name goes on in the line where it has room there, else it begins the next.
/// @param round  a radio button: its name stands beside it
void beside(const std::string& name, bool round = false);

/// Keys and what they do, a line each.
void key_lines(const std::vector<std::pair<std::string, std::string>>& lines);

/// Over a group of notes, with a line under it.
void heading(const char* text);

/// A tick, a cross or a question mark.
const char* mark(Verdict verdict);

}  // namespace stowpath
