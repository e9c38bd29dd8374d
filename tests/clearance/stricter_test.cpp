// A larger margin, a wider range or one thing more never makes an answer greener: over the gallery and random scenes.
#include <algorithm>
#include <catch2/catch.hpp>

#include "sim/remedy/assess.h"
#include "sim/scene/draft.h"
#include "sim/scene/reader.h"
#include "sim/scene/scene_error.h"
#include "tests/support/gallery.h"
#include "tests/support/random_scene.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

std::vector<std::string> scenes() {
  std::vector<std::string> out;
  for (const char* name : {"demo", "demo-cured", "costume-loft", "crowded-workshop", "post-rail", "three-section"})
    out.push_back(gallery_text(name));
  for (unsigned seed = 70; seed < 76; ++seed) out.push_back(random_scene(seed));
  return out;
}

struct Answer {
  std::string text;
  DryFit fit;
};

DryFit fit_of(const std::string& text) { return assess(parse_scene(text, "scene.yaml"), AssessOptions{}).fit; }

const std::vector<Answer>& answers() {
  static const std::vector<Answer> all = [] {
    std::vector<Answer> out;
    for (const std::string& text : scenes()) out.push_back({text, fit_of(text)});
    return out;
  }();
  return all;
}

bool is_met(const Finding& finding) {
  return finding.kind == FindingKind::interference || finding.kind == FindingKind::zone;
}

bool names_both(const Finding& finding, const Finding& other) {
  return finding.parts == other.parts || (finding.parts[0] == other.parts[1] && finding.parts[1] == other.parts[0]);
}

/// What is met before is met after, whatever else is: as some finding of the same two.
void check_no_greener(const DryFit& before, const DryFit& after) {
  INFO(told(before) << "\nbecame\n" << told(after));
  CHECK((before.verdict == Verdict::clear || after.verdict != Verdict::clear));
  for (const Finding& finding : before.findings) {
    if (!is_met(finding)) continue;
    const auto same = [&](const Finding& other) { return names_both(finding, other); };
    CHECK(std::any_of(after.findings.begin(), after.findings.end(), same));
  }
}

/// The text with a number changed; none where it does not stand there or the scene refuses it.
std::optional<std::string> with_number(const std::string& text, const std::string& key, double times, double more) {
  const SceneDraft draft(text, "scene.yaml");
  const std::optional<double> now = draft.number(key);
  const auto edit = now ? draft.edit(key, *now * times + more) : std::nullopt;
  if (!edit) return std::nullopt;
  std::string out = draft.write({*edit});
  try {
    parse_scene(out, "scene.yaml");
  } catch (const SceneError&) {
    return std::nullopt;
  }
  return out;
}

/// The text with a setting added that it leaves out; none where it has it.
std::optional<std::string> with_setting(const std::string& text, const std::string& key, const std::string& value) {
  try {
    return SceneDraft(text, "scene.yaml").add({key, value});
  } catch (const std::logic_error&) {
    return std::nullopt;
  }
}

template <class Change>
void check_all(Change change, int least) {
  int changed = 0;
  for (const Answer& answer : answers()) {
    const std::optional<std::string> text = change(answer.text);
    if (!text) continue;
    ++changed;
    check_no_greener(answer.fit, fit_of(*text));
  }
  CHECK(changed >= least);
}

}  // namespace

TEST_CASE("stricter: twice any margin never makes an answer greener", "[clearance]") {
  for (const char* key : {"margin.default", "margin.hook", "margin.self"})
    check_all([&](const std::string& text) { return with_number(text, key, 2.0, 0.0); }, 10);
}

TEST_CASE("stricter: a more uneven floor never makes an answer greener", "[clearance]") {
  check_all([](const std::string& text) { return with_number(text, "floor.uneven", 1.0, 0.004); }, 10);
}

TEST_CASE("stricter: a stair that stands less exactly at home never makes an answer greener", "[clearance]") {
  check_all([](const std::string& text) { return with_setting(text, "hoist.home within", "0.03 m"); }, 6);
}

TEST_CASE("stricter: hooks that may lie further off the crown never make an answer greener", "[clearance]") {
  check_all([](const std::string& text) { return with_setting(text, "stair.hooks.seat range", "40 deg"); }, 6);
}

TEST_CASE("stricter: a wider range of friction never makes an answer greener", "[clearance]") {
  const auto wider = [](const std::string& text) -> std::optional<std::string> {
    const std::string narrow = "friction: {floor: [0.02, 0.08]}";
    if (text.find(narrow) == std::string::npos) return std::nullopt;
    return changed(text, narrow, "friction: {floor: [0.01, 0.3], hook: [0.1, 0.6]}");
  };
  check_all(wider, 3);
}

TEST_CASE("stricter: a thing more in the room never makes an answer greener", "[clearance]") {
  for (const char* box : {"box: {out: [2000, 2200], up: [1500, 1700]}", "box: {out: [3000, 3100], up: [3000, 3100]}",
                          "box: {out: [1200, 1400], up: [0, 800]}"}) {
    const auto more = [&](const std::string& text) -> std::optional<std::string> {
      if (text.find("units: mm") == std::string::npos || text.find("obstacles:\n") == std::string::npos)
        return std::nullopt;
      return changed(text, "obstacles:\n",
                     "obstacles:\n  - {name: thing, " + std::string(box) + ", stations: [1000, 2000]}\n");
    };
    check_all(more, 6);
  }
}

TEST_CASE("stricter: a part more on the stair never makes an answer greener", "[clearance]") {
  const auto railed = [](const std::string& text) -> std::optional<std::string> {
    if (text.find("handrails: none") == std::string::npos || text.find("units: mm") == std::string::npos)
      return std::nullopt;
    return changed(text, "handrails: none", "handrails: {height: 800, diameter: 30, sides: both, post every: 1200}");
  };
  check_all(railed, 3);
}
