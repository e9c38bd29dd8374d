#include "sim/scene/reference.h"

#include <string_view>

#include "sim/scene/key_table.h"
#include "sim/scene/key_value.h"

namespace stowpath {
namespace {

constexpr std::string_view kIntroduction = R"(# Scene reference

Every setting of a scene file, made from the table that the reader itself goes by. Do not edit this page by hand:
`stowpath_tests "[.regenerate]"` writes it anew.

## How a scene is written

A scene is a YAML file of `key: value` lines; indented keys belong to the key above them, and `{a: 1, b: 2}` and
`[1, 2]` put maps and lists on one line. The first key is `stowpath: 1`.

- **Lengths**: `900` is in the file's `units`; with its own unit a length reads the same in every file: `9' 10-1/2"`,
  `9ft 10-1/2in`, `3/8 in`, `2.5 m`, `412 mm`. Inch marks need no quotes.
- **Angles** are degrees: `70` or `70 deg`. **Masses** need their unit, `0.6 kg` or `12 lb`, and so do **forces**, `8 kN`
  or `450 lbf`, and **torques**, `12 Nm` or `9 ft-lb`.
- **out** counts from the back wall, **up** from height 0 (the floor, where `floor.level` says nothing else), a
  **station** along the rail from the left side wall, facing the back wall. On the stair, **along** counts from the pivot or
  hinge towards the foot, **across** from the datum line towards the climber, and stations from the middle of its width.
- `yes` and `no` are written so; what is not there is written `none`.

What often goes wrong: a `#` after a space starts a comment, so text like `#8 x 3 in` needs quotes; a colon needs a space
behind it; tabs do not indent. Anchors, aliases, tags, text in several lines and several documents in one file are refused,
and so are files over 1 MiB, 20000 values or 24 levels.

A fault is told with its place, and all that can be found are told at once:

```
attic.yaml:2:12: error: room.ceiling: “high” lacks a number
  2 |   ceiling: high
    |            ^~~~
    = hint: it takes a length, such as 4100
```
)";

std::string code(std::string_view text) { return text.empty() ? "" : "`" + std::string(text) + "`"; }

std::string counts_text(const KeyRow& row) {
  if (!row.takes(kMaps | kWords | kLengths | kAngles | kMasses | kIntervals | kPoints)) return "";
  const std::string fewest = std::to_string(row.range.fewest), most = std::to_string(row.range.most);
  return fewest == most ? ", " + most + " of them" : ", " + fewest + " to " + most + " of them";
}

std::string value_text(const KeyRow& row) {
  const std::string range = range_text(row, LengthUnit::millimetre);
  return forms_text(row) + counts_text(row) + (range.empty() ? "" : "; " + range);
}

std::string default_text(const KeyRow& row) {
  const bool remark = !row.if_missing.empty() && row.if_missing.front() == '(';
  return row.required() ? "**required**" : remark ? std::string(row.if_missing) : code(row.if_missing);
}

std::string table_of(std::string_view path) {
  std::string text = "| key | value | if missing | example | meaning |\n| --- | --- | --- | --- | --- |\n";
  for (const KeyRow* row : keys_under(path)) {
    text += "| " + code(row->name()) + " | " + value_text(*row) + " | " + default_text(*row) + " | " +
            code(row->example) + " | " + std::string(row->help) + " |\n";
  }
  return text;
}

// A setting with keys of its own gets a section; a list's entries count as its keys.
std::string section_of(const KeyRow& row) {
  const std::string entries = std::string(row.path) + "[]";
  const bool list = !keys_under(entries).empty(), map = !keys_under(row.path).empty();
  if (!list && !map) return "";
  const bool top = row.parent().empty();
  std::string text = std::string(top ? "\n## " : "\n### ") + std::string(row.path) + "\n\n" + std::string(row.help);
  if (list) text += " Each entry of the list has these keys.\n\n" + table_of(entries);
  if (list && map) text += "\nWritten as one map it has these.";
  if (map) text += "\n\n" + table_of(row.path);
  return text;
}

}  // namespace

std::string scene_reference() {
  std::string page(kIntroduction);
  page += "\n## The file\n\n" + table_of("");
  for (const KeyRow& row : key_table()) page += section_of(row);
  return page;
}

}  // namespace stowpath
