#include "sim/scene/schema.h"

#include <cmath>
#include <initializer_list>
#include <string_view>
#include <vector>

#include "sim/scene/json_text.h"
#include "sim/scene/key_table.h"
#include "sim/scene/key_value.h"

namespace stowpath {
namespace {

using Json = JsonText;

// Fraction characters and typographic marks that the readers of measurements take as their plain kin.
constexpr std::string_view kFractions = "\u00BC-\u00BE\u2150-\u215E";
constexpr std::string_view kMarks = "'\"\u2032\u2033\u2018\u2019\u201C\u201D\u00B4\u02B9\u02BA\u02DD";
constexpr std::string_view kDashes = "\u2010-\u2014\u2212";

// "[fF][tT]": units are read in small and capital letters.
std::string in_any_case(std::string_view word) {
  std::string pattern;
  for (const char c : word) {
    pattern += "[" + std::string(1, c) + std::string(1, static_cast<char>(c - 'a' + 'A')) + "]";
  }
  return pattern;
}

std::string any_of(std::initializer_list<std::string_view> words) {
  std::string pattern;
  for (const std::string_view word : words) pattern += (pattern.empty() ? "" : "|") + in_any_case(word);
  return pattern;
}

std::string signed_start() {
  const std::string dashes(kDashes), fractions(kFractions);
  return "^\\s*[-+" + dashes + "]?\\s*[.0-9" + fractions + "]";
}

// Wider than the reader in how signs and numbers may follow each other, never narrower. The first letters of the metric
// units stand among the signs, so that no text can be taken apart in two ways: trying them all would take forever.
std::string length_pattern() {
  const std::string signs =
      "[-0-9./\\s" + std::string(kMarks) + std::string(kFractions) + std::string(kDashes) + "\u2044\u2215cCmM]";
  return signed_start() + "(?:" + signs + "|" +
         any_of({"feet", "foot", "ft", "inches", "inch", "in", "illimetres", "illimetre", "illimeters", "illimeter",
                 "entimetres", "entimetre", "entimeters", "entimeter", "etres", "etre", "eters", "eter"}) +
         ")*$";
}

std::string unit_pattern(std::initializer_list<std::string_view> units) {
  return signed_start() + "[-0-9./\\s" + std::string(kFractions) + "\u2044\u2215]*(?:" + any_of(units) + ")\\.?\\s*$";
}

// Wider than the reader in the letters after lb.
std::string torque_pattern() {
  return signed_start() + "[-0-9./\\s" + std::string(kFractions) +
         "\u2044\u2215]*(?:[nN][-\\s]*[mM]|(?:[fF][tT]|[iI][nN])[-\\s]*[lL][bB][fF]?)\\.?\\s*$";
}

Json text_matching(const std::string& pattern) {
  return Json::object({{"type", Json::text("string")}, {"pattern", Json::text(pattern)}});
}

Json reference(std::string_view name) { return Json::object({{"$ref", Json::text("#/$defs/" + std::string(name))}}); }

Json definitions() {
  Json length = Json::object();
  length.add("description", Json::text("A length: 900 (in the file's units), 9' 10-1/2\", 3/8 in, 2.5 m."));
  length.add("anyOf", Json::list({Json::object({{"type", Json::text("number")}}), text_matching(length_pattern())}));
  Json degrees = text_matching(signed_start() + "[0-9./\\s" + std::string(kFractions) +
                               "]*(?:" + any_of({"degrees", "degree", "deg"}) + "|\u00B0|\u00BA)?\\s*$");
  Json pair = Json::object({{"type", Json::text("array")},
                            {"items", reference("length")},
                            {"minItems", Json::number(2)},
                            {"maxItems", Json::number(2)}});
  return Json::object({{"length", length},
                       {"degrees", degrees},
                       {"mass", text_matching(unit_pattern({"kg", "g", "lbs", "lb", "oz"}))},
                       {"force", text_matching(unit_pattern({"kn", "n", "lbf", "lbs", "lb"}))},
                       {"torque", text_matching(torque_pattern())},
                       {"pair", pair}});
}

double shown_limit(double value, const KeyRow& row) {
  constexpr double kDegree = std::numbers::pi / 180.0;
  return number_form(row) == kAngle ? std::round(value / kDegree) : value;
}

Json limited_number(std::string_view type, const KeyRow& row) {
  return Json::object({{"type", Json::text(type)},
                       {"minimum", Json::number(shown_limit(row.range.low, row))},
                       {"maximum", Json::number(shown_limit(row.range.high, row))}});
}

Json list_of(Json items, const KeyRow& row) {
  return Json::object({{"type", Json::text("array")},
                       {"items", std::move(items)},
                       {"minItems", Json::number(row.range.fewest)},
                       {"maxItems", Json::number(row.range.most)}});
}

Json words_of(const KeyRow& row) {
  Json words = Json::list();
  for (const std::string_view word : row.word_list()) words.push(Json::text(word));
  return Json::object({{"enum", words}});
}

Json flag_values() {
  return Json::object(
      {{"enum", Json::list({Json::flag(true), Json::flag(false), Json::text("yes"), Json::text("no")})}});
}

Json plain_text() {
  // An unquoted 12 is text to the reader, and a number to whoever knows no better.
  return Json::object(
      {{"type", Json::list({Json::text("string"), Json::text("number")})}, {"minLength", Json::number(1)}});
}

Json angle_forms(const KeyRow& row) {
  return Json::object({{"anyOf", Json::list({limited_number("number", row), reference("degrees")})}});
}

Json any_form(std::initializer_list<Json> forms) { return Json::object({{"anyOf", Json::list(forms)}}); }

Json span_of(const KeyRow& row) {
  return Json::object({{"type", Json::text("array")},
                       {"items", limited_number("number", row)},
                       {"minItems", Json::number(2)},
                       {"maxItems", Json::number(2)}});
}

Json object_of(std::string_view path);

Json entries_of(const KeyRow& row) {
  Json entry = object_of(std::string(row.path) + "[]");
  if (row.path == "procedure") {
    entry.add("minProperties", Json::number(1));
    entry.add("maxProperties", Json::number(1));
  }
  return list_of(std::move(entry), row);
}

std::vector<Json> forms_of(const KeyRow& row) {
  std::vector<Json> forms;
  const auto add = [&](unsigned form, auto make) {
    if (row.takes(form)) forms.push_back(make());
  };
  add(kText, [] { return plain_text(); });
  add(kWord, [&] { return words_of(row); });
  add(kWords, [&] { return list_of(words_of(row), row); });
  add(kFlag, [] { return flag_values(); });
  add(kCount, [&] { return limited_number("integer", row); });
  add(kNumber, [&] { return limited_number("number", row); });
  add(kLength, [] { return reference("length"); });
  add(kAngle, [&] { return angle_forms(row); });
  add(kMass, [] { return reference("mass"); });
  add(kForce, [] { return reference("force"); });
  add(kTorque, [] { return reference("torque"); });
  if (row.takes(kLengths) && row.takes(kMaps)) {
    forms.push_back(list_of(any_form({reference("length"), object_of(std::string(row.path) + "[]")}), row));
  } else {
    add(kLengths, [&] { return list_of(reference("length"), row); });
    add(kMaps, [&] { return entries_of(row); });
  }
  add(kMasses, [&] { return list_of(any_form({reference("mass"), words_of(row)}), row); });
  add(kSpan, [&] { return span_of(row); });
  add(kAngles, [&] { return list_of(angle_forms(row), row); });
  add(kInterval, [] { return reference("pair"); });
  add(kIntervals | kPoints, [&] { return list_of(reference("pair"), row); });
  add(kMap, [&] { return object_of(row.path); });
  return forms;
}

std::string description_of(const KeyRow& row) {
  std::string text(row.help);
  const std::string range = range_text(row, LengthUnit::millimetre);
  if (!range.empty()) text += " From " + range + ".";
  if (!row.required()) text += " If missing: " + std::string(row.if_missing) + ".";
  return text + " Example: " + std::string(row.example);
}

Json setting_of(const KeyRow& row) {
  Json setting = Json::object({{"description", Json::text(description_of(row))}});
  std::vector<Json> forms = forms_of(row);
  return setting.add(forms.size() == 1 ? "allOf" : "anyOf", Json::list(std::move(forms)));
}

Json& add_object(Json& base, std::string_view path) {
  Json properties = Json::object(), required = Json::list();
  for (const KeyRow* row : keys_under(path)) {
    properties.add(std::string(row->name()), setting_of(*row));
    if (row->required()) required.push(Json::text(row->name()));
  }
  base.add("type", Json::text("object")).add("additionalProperties", Json::flag(false));
  if (!required.empty()) base.add("required", required);
  return base.add("properties", properties);
}

Json object_of(std::string_view path) {
  Json object = Json::object();
  return add_object(object, path);
}

}  // namespace

std::string scene_schema() {
  Json schema =
      Json::object({{"$schema", Json::text("https://json-schema.org/draft/2020-12/schema")},
                    {"title", Json::text("Stowpath scene")},
                    {"description", Json::text("Made from Stowpath's key table; see docs/scene-reference.md.")}});
  return add_object(schema, "").add("$defs", definitions()).written() + "\n";
}

}  // namespace stowpath
