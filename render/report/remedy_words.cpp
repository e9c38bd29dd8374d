#include "render/report/remedy_words.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "render/report/hoist_words.h"
#include "render/report/words.h"

namespace stowpath {
namespace {

constexpr double kFelt = 0.001;              // changes of the reach that are told [m]
constexpr std::size_t kMostValuesNamed = 2;  // of one change; more are its corners, and the amount says enough

std::string_view way_words(Way way) {
  switch (way) {
    case Way::less:
      return "less";
    case Way::more:
      return "more";
    case Way::out:
      return "out";
    case Way::in:
      return "in";
    case Way::up:
      return "up";
    case Way::down:
      return "down";
    case Way::left:
      return "to the left";
    case Way::right:
      return "to the right";
  }
  return "";
}

// "out" of "obstacles[0].box.out[1]".
std::string last_key(const std::string& key) {
  std::string path = key.substr(0, key.find_last_not_of("[]0123456789") + 1);
  return path.substr(path.find_last_of(".]") == std::string::npos ? 0 : path.find_last_of(".]") + 1);
}

// "(out 2350, 2470 to 2681, 2801)", as the file has them.
std::string values_text(const Change& change) {
  const std::string name = last_key(change.values.front().key);
  std::string from, to;
  std::size_t told = 0;
  for (const ValueChange& value : change.values) {
    if (last_key(value.key) != name) continue;
    if (++told > kMostValuesNamed) return "";
    from += (from.empty() ? "" : ", ") + value.from_text;
    to += (to.empty() ? "" : ", ") + value.to_text;
  }
  return " (" + name + " " + from + " to " + to + ")";
}

std::string numbered(const std::string& thing, const Lever& lever) {
  return thing + " " + std::to_string(lever.number);
}

std::string stop_sentence(const Change& change) {
  const ValueChange& value = change.values.front();
  const std::string step = "step " + std::to_string(change.lever.number) + ", the " + change.lever.thing + ",";
  const std::string angles =
      format_degrees(Nominal{value.to}, 0) + " instead of " + format_degrees(Nominal{value.from}, 0);
  return change.lever.way == Way::less ? "end " + step + " at " + angles : "take " + step + " on to " + angles;
}

std::string along_stair(const Lever& lever) { return lever.way == Way::down ? "towards the foot" : "towards the rail"; }

std::string deed(const Change& change, DisplayUnits units) {
  const Lever& lever = change.lever;
  const std::string by = format_small_length(Nominal{change.amount}, units), way(way_words(lever.way));
  switch (lever.kind) {
    case ChangeKind::stop_move:
      return stop_sentence(change);
    case ChangeKind::trim_curl:
      return "trim the curl by " + format_small_length(Nominal{change.amount * lever.reach}, units) +
             " along its outer side";
    case ChangeKind::cut_tip:
      return "cut " + by + " off the hooks' tips";
    case ChangeKind::shorten_shank:
      return "make the hooks' shanks " + by + " shorter";
    case ChangeKind::cut_side_rails:
      return "cut the side rails " + by + " shorter at the top";
    case ChangeKind::set_treads_back:
      return "set the treads back by " + by;
    case ChangeKind::shorten_scab:
      return "make the scabs of " + numbered("joint", lever) + " " + by + " shorter";
    case ChangeKind::lower_handrail:
      return "set the handrails " + by + " lower";
    case ChangeKind::move_extra:
      return "move " + lever.thing + " by " + by + " " + along_stair(lever);
    case ChangeKind::move_pick:
      return "move the pick by " + by + " " + along_stair(lever);
    case ChangeKind::move_ceiling_point:
      return "move the ceiling point " + way + " by " + by;
    case ChangeKind::move_lead:
      return "move the lead " + way + " by " + by;
    case ChangeKind::move_home:
      return "move home " + way + " by " + by + ", with what is fixed over it";
    case ChangeKind::shift_bracket:
      return "shift " + numbered("bracket", lever) + " " + way + " by " + by;
    case ChangeKind::shift_brackets:
      return "shift all brackets " + way + " by " + by;
    case ChangeKind::shift_joint:
      return "shift " + numbered("pipe joint", lever) + " " + way + " by " + by;
    case ChangeKind::move_obstacle:
      return "move " + lever.thing + " " + way + " by " + by;
    case ChangeKind::shift_hinge:
      return "set " + numbered("hinge", lever) + " " + by + " " + along_stair(lever) + ", the stair as long as before";
    case ChangeKind::set_hinge_off:
      return "set " + numbered("hinge", lever) + " " + by + " farther off its face";
    case ChangeKind::lower_casters:
      return "set the casters " + by + " " + along_stair(lever);
    case ChangeKind::longer_curl:
      return "take hooks bent on by " + format_degrees(Nominal{change.amount}, 0);
    case ChangeKind::lower_arms:
      return "take brackets whose arms run " + by + " lower";
    case ChangeKind::shift_treads:
      return "start the treads " + by + (lever.way == Way::up ? " higher" : " lower");
  }
  return "";
}

bool trims(const Remedy& remedy) {
  return std::any_of(remedy.changes.begin(), remedy.changes.end(),
                     [](const Change& change) { return change.lever.kind == ChangeKind::trim_curl; });
}

// What the hook keeps of the pipe, and how far from its new end the pipe bears.
std::string hold_left(const Remedy& remedy) {
  const std::string covers = "the hook still covers " + format_degrees(AtLeast{remedy.wrap}, 0) + " of the pipe";
  if (!remedy.arc_left) return covers;
  return covers + ", which bears " + format_degrees(AtLeast{*remedy.arc_left}, 0) + " from its end at the least";
}

std::vector<std::string> gains(const Remedy& remedy, const Finding& finding, DisplayUnits units) {
  std::vector<std::string> out;
  if (remedy.clearance) {
    out.push_back("clears " + finding.parts[1] + " by " + format_small_length(AtLeast{*remedy.clearance}, units));
  } else if (finding.kind == FindingKind::zone) {
    out.push_back("stays out of " + finding.parts[1]);
  }
  if (trims(remedy)) out.push_back(hold_left(remedy));
  if (!remedy.cures_also.empty()) out.push_back("cures " + joined(remedy.cures_also, ", ") + " as well");
  if (remedy.reach_lost < -kFelt)
    out.push_back("the stair stands clear over " + place_text(AtLeast{-remedy.reach_lost}, units) +
                  " more of the loft");
  if (remedy.verdict == Verdict::clear) out.push_back("all clear then");
  return out;
}

std::vector<std::string> costs(const Remedy& remedy, const Finding& finding, DisplayUnits units) {
  std::vector<std::string> out;
  if (remedy.tighter && remedy.tighter->parts != finding.parts) {
    const Tighter& t = *remedy.tighter;
    out.push_back(t.parts[0] + " to " + t.parts[1] + " then only " + format_small_length(AtLeast{t.after}, units) +
                  " (" + format_small_length(AtLeast{t.before}, units) + " before)");
  }
  if (remedy.reach_lost > kFelt)
    out.push_back("the stair stands clear over " + place_text(AtMost{remedy.reach_lost}, units) + " less of the loft");
  if (remedy.pull_before && remedy.pull_after)
    out.push_back("pull at the hand " + force_text(AtMost{*remedy.pull_after}, units) + " instead of " +
                  force_text(AtMost{*remedy.pull_before}, units));
  return out;
}

}  // namespace

std::string change_sentence(const Change& change, DisplayUnits units) {
  return deed(change, units) + (change.lever.kind == ChangeKind::stop_move ? "" : values_text(change));
}

std::string remedy_sentence(const Remedy& remedy, const Finding& finding, DisplayUnits units) {
  std::vector<std::string> deeds;
  for (const Change& change : remedy.changes) deeds.push_back(change_sentence(change, units));
  std::vector<std::string> effects = gains(remedy, finding, units);
  for (std::string& cost : costs(remedy, finding, units)) effects.push_back(std::move(cost));
  return joined(deeds, ", and ") + (effects.empty() ? "" : ": " + joined(effects, "; "));
}

std::string cures_heading(const Cures& cures) {
  if (cures.levers == 0) return "No measurement of the scene was found that could cure it.";
  const std::string looked = counted(cures.levers, "change", "changes");
  if (cures.remedies.empty()) return "No cure found: " + looked + " looked into, alone and two together.";
  if (cures.remedies.front().changes.size() > 1) return "No single change cures it; proven on the whole scene:";
  return cures.remedies.size() == 1 ? "Cure, proven on the whole scene:" : "Cures, each proven on the whole scene:";
}

const Cures* cures_of(const std::vector<Cures>& cures, const Finding& finding) {
  const auto found = std::find_if(cures.begin(), cures.end(), [&](const Cures& c) { return c.finding == finding.id; });
  return found != cures.end() ? &*found : nullptr;
}

}  // namespace stowpath
