// Every measurement of a thing that a scene can state changes something that is drawn, that moves, or that holds. A key
// that may not is listed here, with why; a new key is seen by going over the key table.
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <numbers>
#include <set>

#include "sim/mechanism/model.h"
#include "sim/scene/draft.h"
#include "sim/scene/key_table.h"
#include "sim/scene/scene_error.h"
#include "tests/support/full_scene.h"
#include "tests/support/gallery.h"
#include "tests/support/model_digest.h"

using namespace stowpath;
using namespace stowpath::testing;

namespace {

constexpr unsigned kMeasures = kLength | kAngle | kLengths | kAngles | kInterval | kIntervals | kPoints;

/// Keys of lengths and angles that nothing drawn depends on.
const std::map<std::string_view, std::string_view> kNotDrawn{
    {"margin.hook", "a distance to keep, not a thing"},
    {"tolerances.default", "how far any measurement may be off, not a thing"},
    {"rail.pipe.wall", "the pipe's inside; the loads count it"},
    {"climber.aside", "where a foot may stand, for the loads"},
    {"climber.leans out", "where a body may be, for the loads"},
    {"loft.framing.first", "what is behind the loft's faces: told of in the loads, not drawn"},
    {"room.framing.every", "what is over the ceiling: told of in the loads, not drawn"},
    {"room.framing.first", "what is over the ceiling: told of in the loads, not drawn"},
    {"loft.framing.every", "what is behind the loft's faces: told of in the loads, not drawn"},
    {"hoist.line.tail", "spare line on the floor"},
    {"hoist.pulled by.crank winch.drum", "the winch's inside: where its line runs to is hoist.line.hand"},
    {"hoist.pulled by.crank winch.crank", "the winch's inside; who turns it has the hand's room"},
    {"hoist.pulled by.crank winch.drum length", "the winch's inside"},
    {"hoist.pulled by.crank winch.worm.lead angle", "the winch's inside"},
    {"hoist.pulled by.powered winch.drum", "the winch's inside"},
    {"hoist.pulled by.powered winch.crank", "the winch's inside"},
    {"hoist.pulled by.powered winch.drum length", "the winch's inside"},
    {"hoist.pulled by.powered winch.worm.lead angle", "the winch's inside"},
};

/// A screw is in the wood that it holds, where nothing else can be.
bool in_wood(std::string_view path) {
  for (const std::string_view end : {"screws.diameter", "screws.thread", "eye.diameter", "eye.thread"})
    if (path.size() > end.size() && path.substr(path.size() - end.size()) == end) return true;
  return false;
}

bool measures(const KeyRow& row) { return row.takes(kMeasures) && !in_wood(row.path); }

/// A full scene with steps that can be done.
std::string that_can_be_done(const std::string& text) {
  return replaced(replaced(text, "together: {station: 4000, ", "together: {"), "  - pin: 1\n", "");
}

/// On a ceiling point that rolls along, which leads its line nowhere.
std::string rolling_full_scene() {
  std::string text = replaced(replaced(full_scene(), "rolls: no", "rolls: yes"), "  - pin: 1\n", "");
  for (const char* line :
       {"    lead: {out: 60, up: 1200, station: 6900}\n", "    hand: {out: 60, up: 1200, station: 6900}\n"})
    text = replaced(text, line, "");
  return text;
}

/// The full scenes, one that rolls on its line, one whose part of a hook has round corners, and the gallery.
std::vector<std::string> scenes() {
  std::vector<std::string> out;
  for (const std::string& text : full_scenes()) out.push_back(that_can_be_done(text));
  out.push_back(rolling_full_scene());
  for (const char* name : {"demo-cured", "costume-loft", "crowded-workshop", "long-curl", "post-rail", "rolling-ladder",
                           "strap-rail", "three-section"})
    out.push_back(gallery_text(name));
  return out;
}

void values_under(const DocumentNode& node, const std::string& key, std::vector<std::string>& keys) {
  if (node.kind == DocumentNode::Kind::text) keys.push_back(key);
  for (std::size_t i = 0; i < node.items.size(); ++i)
    values_under(node.items[i], key + "[" + std::to_string(i) + "]", keys);
  for (const DocumentEntry& entry : node.entries)
    values_under(entry.value, key.empty() ? entry.key.text : key + "." + entry.key.text, keys);
}

std::string digest_of(const Scene& scene) { return digest(scene, build_model(scene)); }

/// Whether some other value of it changes anything; scenes that cannot be built tell nothing.
bool has_effect(const SceneDraft& draft, const std::string& key, const KeyRow& row, const std::string& before) {
  const std::optional<double> now = draft.number(key);
  if (!now) return false;
  const double step = row.takes(kAngle | kAngles) ? std::numbers::pi / 180.0 : 0.003;
  for (const double by : {step, -step, 0.2 * step, -0.2 * step, 10.0 * step, -10.0 * step}) {
    const std::optional<ValueEdit> edit = draft.edit(key, *now + by);
    if (!edit) continue;
    try {
      if (digest_of(draft.read({*edit})) != before) return true;
    } catch (const SceneError&) {
    }
  }
  return false;
}

struct Seen {
  std::set<std::string_view> given, telling;  // rows that stand in some scene; rows that change something
};

/// Empty for a scene that cannot be built, as its settings are there for the reader alone.
std::string digest_or_none(const SceneDraft& draft) {
  try {
    return digest_of(draft.read());
  } catch (const SceneError&) {
    return {};
  }
}

void look_at(const std::string& text, Seen& seen) {
  const SceneDraft draft(text, "scene.yaml");
  const std::string before = digest_or_none(draft);
  if (before.empty()) return;
  std::vector<std::string> keys;
  values_under(draft.root(), "", keys);
  for (const std::string& key : keys) {
    const KeyRow* row = row_of(key);
    if (row == nullptr || !measures(*row)) continue;
    seen.given.insert(row->path);
    if (!seen.telling.count(row->path) && has_effect(draft, key, *row, before)) seen.telling.insert(row->path);
  }
}

const Seen& seen() {
  static const Seen all = [] {
    Seen out;
    for (const std::string& text : scenes()) look_at(text, out);
    return out;
  }();
  return all;
}

}  // namespace

TEST_CASE("nothing forgotten: every length and angle of a thing changes what is drawn, moves or holds", "[mechanism]") {
  for (const KeyRow& row : key_table()) {
    if (!measures(row) || kNotDrawn.count(row.path)) continue;
    INFO(row.path);
    CHECK(seen().given.count(row.path) == 1);
    CHECK(seen().telling.count(row.path) == 1);
  }
}

TEST_CASE("nothing forgotten: what is listed as not drawn is there, and is not drawn", "[mechanism]") {
  for (const auto& [path, why] : kNotDrawn) {
    INFO(path << ": " << why);
    REQUIRE(find_key(path));
    CHECK(measures(*find_key(path)));
    CHECK(seen().telling.count(path) == 0);
  }
}

TEST_CASE("nothing forgotten: the same scene twice is the same to the last digit", "[mechanism]") {
  const SceneDraft draft(that_can_be_done(std::string(full_scene())), "scene.yaml");
  CHECK(digest_of(draft.read()) == digest_of(draft.read()));
}
