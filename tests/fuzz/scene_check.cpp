#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "sim/scene/draft.h"
#include "sim/scene/reader.h"
#include "sim/scene/scene_error.h"
#include "tests/fuzz/checks.h"
#include "tests/support/scene_numbers.h"

namespace stowpath::testing {
namespace {

void require(bool kept, const char* promise) {
  if (!kept) throw std::logic_error(promise);
}

void check_diagnostic(const Diagnostic& diagnostic, std::string_view text) {
  const auto lines = 1 + std::count(text.begin(), text.end(), '\n');
  require(diagnostic.at.line >= 1 && diagnostic.at.line <= lines, "a fault lies on a line of the file");
  require(diagnostic.at.column >= 1 && diagnostic.at.length >= 1, "columns count from 1, and something is underlined");
  require(static_cast<std::size_t>(diagnostic.at.column) <= text.size() + 1, "a column lies within the file");
  require(!diagnostic.problem.empty(), "a fault says its problem");
  const std::string message = format_diagnostic(diagnostic, "scene.yaml", text, false);
  require(message.rfind("scene.yaml:" + std::to_string(diagnostic.at.line) + ":", 0) == 0, "a message gives the place");
}

void check_scene(const Scene& scene) {
  for (const double number : numbers_of(scene)) require(std::isfinite(number), "every number of a scene is finite");
  require(!scene.stair.sections.empty(), "a stair has sections");
  require(scene.stair.hinges.size() + 1 == scene.stair.sections.size(), "hinges join sections");
  require(scene.where.count("stair.sections") == 1, "keys have their places");
}

// All lengths and angles written a little larger, in one go: SceneDraft::write throws where more than they would change.
void check_edits(const Scene& scene, std::string_view text) {
  const SceneDraft draft(std::string(text), "scene.yaml");
  std::vector<ValueEdit> edits;
  for (const auto& [key, place] : scene.where) {
    const std::optional<double> number = draft.number(key);
    std::optional<ValueEdit> edit = number ? draft.edit(key, *number + 0.001) : std::nullopt;
    if (edit) edits.push_back(std::move(*edit));
  }
  draft.write(edits);
}

}  // namespace

void check_scene_text(std::string_view text) {
  try {
    const Scene scene = parse_scene(text, "scene.yaml");
    check_scene(scene);
    check_edits(scene, text);
  } catch (const SceneError& error) {
    require(!error.diagnostics.empty(), "a refusal says why");
    for (const Diagnostic& diagnostic : error.diagnostics) check_diagnostic(diagnostic, text);
  }
}

}  // namespace stowpath::testing
