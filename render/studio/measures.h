#pragma once

#include <string>
#include <vector>

#include "sim/scene/draft.h"

namespace stowpath {

/// One plain value of a scene as it is shown and edited.
struct MeasureLine {
  std::string key;            ///< "stair.hooks.stations[0]"
  std::string group, label;   ///< "stair hooks", "stations 1"
  std::string text;           ///< as the file has it; the default where it does not
  std::string saved;          ///< as the saved file has it
  const KeyRow* row = nullptr;  ///< null where the table has none
  bool in_file = true;        ///< else it is a default
  bool changed() const { return in_file && text != saved; }
};

/// All plain values of a scene by group, in the file's order, and the defaults of settings that it leaves out.
/// @param saved  the same scene as its file has it
std::vector<MeasureLine> measure_lines(const SceneDraft& now, const SceneDraft& saved);

/// What a setting is, what it takes, in which range, its default and an example, a sentence each.
std::string measure_help(const MeasureLine& line, LengthUnit bare);

/// Whether every word of a search stands somewhere in group, label, value, saved value or help, large or small letters.
bool matches(const MeasureLine& line, const std::string& search);

/// The words that the setting takes, where it takes nothing else; yes and no where it is one of the two.
std::vector<std::string> choices_of(const MeasureLine& line);

}  // namespace stowpath
