#include "render/report/remedy_json.h"

#include "render/report/remedy_words.h"

namespace stowpath {
namespace {

Json value_json(const ValueChange& value) {
  return {{"change", value.key},
          {"from", value.angle ? json_degrees(value.from) : json_number(value.from)},
          {"to", value.angle ? json_degrees(value.to) : json_number(value.to)},
          {"unit", value.angle ? "deg" : "m"},
          {"from_text", value.from_text},
          {"to_text", value.to_text}};
}

}  // namespace

Json remedy_json(const Remedy& remedy, const Finding& finding, DisplayUnits units) {
  Json changes = Json::array();
  for (const Change& change : remedy.changes)
    for (const ValueChange& value : change.values) changes.push_back(value_json(value));
  Json out{{"id", remedy.id}};
  out.update(changes.front());
  out["text"] = remedy_sentence(remedy, finding, units);
  out["proved"] = true;
  out["changes"] = std::move(changes);
  out["cures_also"] = remedy.cures_also;
  out["all_clear"] = remedy.verdict == Verdict::clear;
  out["clearance_at_least_m"] = json_number(remedy.clearance);
  out["reach_lost_m"] = json_number(remedy.reach_lost);
  out["pull_n"] = json_number(remedy.pull_after);
  return out;
}

Json remedies_json(const std::vector<Cures>& cures, const Finding& finding, DisplayUnits units) {
  Json out = Json::array();
  if (const Cures* of = cures_of(cures, finding))
    for (const Remedy& remedy : of->remedies) out.push_back(remedy_json(remedy, finding, units));
  return out;
}

}  // namespace stowpath
