#pragma once

#include <cstddef>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "sim/scene/scene.h"

namespace stowpath {

/// One thing wrong with a scene, said to the person who wrote the file.
struct Diagnostic {
  SourcePos at;
  std::string key;       ///< path of the setting, empty for the file as a whole
  std::string problem;   ///< what is wrong, with the value met
  std::string hint;      ///< what to write instead; may be empty
  bool missing = false;  ///< something is not there; its place is that of the setting it belongs to
};

/// "attic.yaml:4:14: error: stair.hinges[0].limit: 190 is outside 0 to 180 degrees", the line, a caret, the hint.
/// @param source  the file's whole text, for the quoted line; may be empty
std::string format_diagnostic(const Diagnostic& diagnostic, std::string_view file, std::string_view source,
                              bool colour);

/// More would bury the first ones, from which the rest often follow.
inline constexpr std::size_t kMostDiagnostics = 100;

/// All that was found wrong in one pass. what() is the first message with its place.
class SceneError : public std::runtime_error {
 public:
  SceneError(const std::string& file_name, std::vector<Diagnostic> all);

  std::string file;
  std::vector<Diagnostic> diagnostics;  ///< 1 to kMostDiagnostics; in the file's order, what is missing last
};

}  // namespace stowpath
