#pragma once

#include <limits>
#include <numbers>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace stowpath {

/// In how many ways a setting may be written; a row joins those it takes.
enum Form : unsigned {
  kMap = 1U << 0U,         ///< keys under it
  kMaps = 1U << 1U,        ///< a list of maps
  kText = 1U << 2U,        ///< any text
  kWord = 1U << 3U,        ///< one of the row's words
  kWords = 1U << 4U,       ///< a list of the row's words
  kFlag = 1U << 5U,        ///< yes or no
  kCount = 1U << 6U,       ///< a whole number
  kNumber = 1U << 7U,      ///< a plain number
  kLength = 1U << 8U,      ///< [m]
  kAngle = 1U << 9U,       ///< [rad]
  kMass = 1U << 10U,       ///< [kg]
  kForce = 1U << 11U,      ///< [N]
  kLengths = 1U << 12U,    ///< a list of lengths [m]
  kAngles = 1U << 13U,     ///< a list of angles [rad]
  kInterval = 1U << 14U,   ///< two lengths, the smaller first [m]
  kIntervals = 1U << 15U,  ///< a list of intervals [m]
  kPoints = 1U << 16U,     ///< a list of points, two lengths each [m]
  kTorque = 1U << 17U,     ///< [N m]
  kMasses = 1U << 18U,     ///< a list of masses [kg]; the row's words may stand among them
  kSpan = 1U << 19U,       ///< two plain numbers, the smaller first
};

inline constexpr unsigned kMeasureForms = kCount | kNumber | kLength | kAngle | kMass | kForce | kTorque;

/// What each number of a setting must lie within, ends included, and how many a list may hold.
struct KeyRange {
  double low = -std::numeric_limits<double>::infinity();  ///< in SI
  double high = std::numeric_limits<double>::infinity();  ///< in SI
  int fewest = 0;
  int most = 1000;
};

/// A range of angles given in degrees.
constexpr KeyRange degrees(double low, double high) {
  constexpr double kDegree = std::numbers::pi / 180.0;
  return {low * kDegree, high * kDegree};
}

/// The range of a list that is limited in its entries only.
constexpr KeyRange list_of(int fewest, int most) {
  KeyRange range;
  range.fewest = fewest;
  range.most = most;
  return range;
}

/// One setting of the scene file. The parser, its hints, the JSON Schema and the reference page all come from these.
struct KeyRow {
  std::string_view path;        ///< `.` goes into a map, `[]` into each entry of a list: "stair.hinges[].face"
  unsigned forms = 0;           ///< Form bits
  KeyRange range;               ///< of its numbers
  std::string_view words;       ///< what it takes as a word, parted by `|`
  std::string_view if_missing;  ///< kRequired, a default as one would write it ("12 mm or 1/2 in"), or a remark in ( )
  std::string_view example;     ///< a value, written as in a file with `units: mm`
  std::string_view help;        ///< one sentence or two

  bool takes(unsigned form) const { return (forms & form) != 0; }
  bool required() const;
  std::string_view name() const;    ///< the path's last key
  std::string_view parent() const;  ///< path of the map it belongs to; empty at the top
  std::vector<std::string_view> word_list() const;
};

inline constexpr std::string_view kRequired = "required";

/// All settings, each after the one it belongs to, in the order of the reference page.
const std::vector<KeyRow>& key_table();

/// By its path in the table; null if there is none.
const KeyRow* find_key(std::string_view path);

/// The settings directly in a map; "" for the top, "stair.hinges[]" for an entry of a list.
const std::vector<const KeyRow*>& keys_under(std::string_view path);

/// The table's parts, by subject.
std::span<const KeyRow> site_keys();
std::span<const KeyRow> rail_keys();
std::span<const KeyRow> stair_keys();
std::span<const KeyRow> hoist_keys();
std::span<const KeyRow> work_keys();
std::span<const KeyRow> load_keys();

}  // namespace stowpath
