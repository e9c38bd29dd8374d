#include "sim/scene/reader.h"

#include <utility>

#include "sim/scene/document.h"
#include "sim/scene/key_check.h"
#include "sim/scene/scene_error.h"
#include "sim/scene/scene_parts.h"
#include "sim/scene/setting.h"
#include "sim/scene/source_text.h"

namespace stowpath {
namespace {

Scene build(const DocumentNode& root, const std::string& name, KeyCheck& check) {
  const Setting file(root, check);
  Scene scene;
  scene.file = name;
  scene.name = file.at("name").given() ? file.at("name").text() : name;
  scene.units = check.bare == LengthUnit::inch ? FileUnits::inches : FileUnits::millimetres;
  read_room(file, scene);
  read_rail(file.at("rail"), scene);
  read_stair(file.at("stair"), scene);
  read_surroundings(file, scene);
  read_hoist(file, scene);
  read_loads(file, scene);
  read_procedure(file.at("procedure"), scene);
  return scene;
}

}  // namespace

Scene parse_scene(std::string_view text, const std::string& name) {
  const SourceText source(text);
  return read_scene(parse_document(source, name), name);
}

Scene read_scene(const DocumentNode& root, const std::string& name) {
  KeyCheck check = check_keys(root);
  Scene scene;
  if (root.kind == DocumentNode::Kind::map) scene = build(root, name, check);
  if (!check.faults.empty()) throw SceneError(name, std::move(check.faults));
  scene.where = std::move(check.where);
  return scene;
}

}  // namespace stowpath
