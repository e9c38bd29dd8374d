#include "sim/rehearsal/run_difference.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>

namespace stowpath {

namespace {

using Words = std::set<std::string>;

void add_touches(const std::vector<TouchRun>& touches, Words& words) {
  for (const TouchRun& touch : touches) words.insert(touch.part + " meets " + touch.other);
}

// What a reader would have to know of, in words that do not hang on numbers.
Words happened(const RehearsalReport& report) {
  Words words;
  add_touches(report.touches, words);
  for (const ZoneRun& zone : report.zones) words.insert(zone.part + " comes into " + zone.zone);
  for (const HookSpell& spell : report.hooks_off)
    if (spell.off) words.insert("the hooks come off the pipe");
  if (!report.slack.empty()) words.insert("the line goes slack");
  if (report.aftermath && report.aftermath->turns_over) words.insert(report.aftermath->cause);
  if (!report.gave_up.empty()) words.insert("the crew give up (" + report.gave_up + ")");
  return words;
}

std::vector<std::string> only_in(const Words& these, const Words& those) {
  std::vector<std::string> only;
  std::set_difference(these.begin(), these.end(), those.begin(), those.end(), std::back_inserter(only));
  return only;
}

void compare_moves(RehearsalBounds& bounds, const MoveRun& a, const MoveRun& b) {
  bounds.pull = std::max({bounds.pull, std::abs(a.peak_pull - b.peak_pull), std::abs(a.peak_fold - b.peak_fold)});
  for (std::size_t j = 0; j < a.about.size(); ++j)
    bounds.lean = std::max(bounds.lean, std::abs(a.about[j] - b.about[j]));
  bounds.swing = std::max(bounds.swing, std::abs(a.swing - b.swing));
}

void compare_rolls(RehearsalBounds& bounds, const std::vector<RollTry>& a, const std::vector<RollTry>& b) {
  for (std::size_t t = 0; t < std::min(a.size(), b.size()); ++t)
    bounds.push = std::max(bounds.push.value_or(0.0), std::abs(a[t].greatest_push - b[t].greatest_push));
}

}  // namespace

void lay_beside(RehearsalReport& report, const RehearsalReport& finer) {
  RehearsalBounds& bounds = report.bounds;
  bounds.compared = !finer.refused;
  bounds.too_swift_again = finer.refused;
  if (finer.refused) return;
  for (std::size_t m = 0; m < std::min(report.moves.size(), finer.moves.size()); ++m)
    compare_moves(bounds, report.moves[m], finer.moves[m]);
  for (std::size_t r = 0; r < std::min(report.rolls.size(), finer.rolls.size()); ++r)
    compare_rolls(bounds, report.rolls[r].tries, finer.rolls[r].tries);
  if (report.aftermath && finer.aftermath)
    bounds.speed = std::abs(report.aftermath->top_speed - finer.aftermath->top_speed);
  bounds.touch_gap = std::max(bounds.touch_gap, finer.bounds.touch_gap);
  const Words here = happened(report), there = happened(finer);
  bounds.only_here = only_in(here, there);
  bounds.only_finer = only_in(there, here);
}

}  // namespace stowpath
