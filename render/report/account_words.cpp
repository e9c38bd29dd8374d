#include "render/report/account_words.h"

#include "render/report/hoist_words.h"
#include "render/report/rehearsal_report.h"
#include "render/report/words.h"
#include "sim/rehearsal/side_world.h"
#include "sim/trade/figure.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

std::string counted_text(double count, const char* one, const char* many) {
  return counted(static_cast<long long>(count), one, many);
}

std::string held_at(const Trouble& trouble, DisplayUnits units) {
  return ", pushed " + place_text(Nominal{trouble.also}, units) + " above the floor";
}

// Differences are small: they keep more figures than what they are differences of.
std::string small_force(AtMost newtons, DisplayUnits units) {
  return units == DisplayUnits::metric ? format_decimal(newtons, 1) + " N"
                                       : format_decimal(Figure(newtons).in(kPoundForce), 2) + " lbf";
}

std::string small_speed(AtMost speed, DisplayUnits units) {
  return units == DisplayUnits::metric ? format_decimal(speed, 3) + " m/s"
                                       : format_decimal(Figure(speed).in(kFoot), 3) + " ft/s";
}

std::string small_length(Figure metres, DisplayUnits units) {
  return units == DisplayUnits::metric ? format_decimal(metres.in(1e-3), 2) + " mm"
                                       : format_decimal(metres.in(kInch), 3) + "\"";
}

// What the step changes, of all that can be compared.
std::vector<std::string> differences(const RehearsalBounds& bounds, DisplayUnits units) {
  std::vector<std::string> all;
  if (bounds.pull > 0.0) all.push_back("peak pulls by up to " + small_force({bounds.pull}, units));
  if (bounds.lean > 0.0) all.push_back("leans at the moves' ends by " + format_degrees(AtMost{bounds.lean}, 2));
  if (bounds.swing > 0.0)
    all.push_back("how wide the last section still swings there by " + format_degrees(AtMost{bounds.swing}, 2));
  if (bounds.push) all.push_back("pushes along the rail by " + small_force({*bounds.push}, units));
  if (bounds.speed) all.push_back("the greatest speed afterwards by " + small_speed({*bounds.speed}, units));
  return all;
}

// What one of the two runs has and the other has not.
std::string seen_once(const RehearsalBounds& bounds) {
  std::string text;
  if (!bounds.only_here.empty()) text += " Seen at this step alone: " + joined(bounds.only_here, ", ") + ".";
  if (!bounds.only_finer.empty()) text += " Seen at half the step alone: " + joined(bounds.only_finer, ", ") + ".";
  return text.empty() ? text : text + " Such things hang on less than a run can tell: take them as possible.";
}

std::string half_step(const RehearsalBounds& bounds, DisplayUnits units) {
  if (bounds.too_swift_again)
    return " It could not be run again at half the step, as a rope bounced too swiftly: how far that changes the "
           "numbers "
           "is not known.";
  if (!bounds.compared) return " It was not run again at half the step.";
  const auto all = differences(bounds, units);
  const std::string once = seen_once(bounds);
  if (all.empty() && once.empty()) return " Run again at half the step, nothing of what is told here differs.";
  if (all.empty()) return " Run again at half the step, no number differs." + once;
  return " Run again at half the step, these differ: " + joined(all, ", ") + "." + once;
}

std::string touch_gap(const RehearsalBounds& bounds, DisplayUnits units) {
  if (!(bounds.touch_gap > 0.0)) return "";
  return " Parts seen to touch were at most " + small_length(AtMost{bounds.touch_gap}, units) +
         " apart by exact distance; the physics world is allowed " + small_length(Nominal{kWorldSkin}, units) + ".";
}

}  // namespace

std::string trouble_text(const Trouble& trouble, DisplayUnits units) {
  switch (trouble.kind) {
    case TroubleKind::refused:
      return "a rope is too stiff for the physics world, and nothing was rehearsed";
    case TroubleKind::moves_off:
      return trouble.what + " and " + trouble.other + " reaches " + speed_text(AtMost{trouble.value}, units);
    case TroubleKind::stays_up:
      return trouble.what + ", and what it held stays as it is for now";
    case TroubleKind::not_tried:
      return "not tried: " + trouble.what;
    case TroubleKind::gave_up:
      return "not carried through: " + trouble.what;
    case TroubleKind::stands_otherwise:
      return "the stair does not stand again as it stood";
    case TroubleKind::hooks_off:
      return "the hooks come off the pipe";
    case TroubleKind::roll_binds:
      return "rolled along, the hooks bind" + held_at(trouble, units);
    case TroubleKind::roll_too_weak:
      return "a push of " + force_text(AtMost{trouble.value}, units) + " does not roll the stair" +
             held_at(trouble, units);
    case TroubleKind::roll_sticks:
      return "a push of " + force_text(AtMost{trouble.value}, units) + " does not roll the stair all the way" +
             held_at(trouble, units);
    case TroubleKind::roll_meets:
      return "rolled along, " + trouble.what + " meets " + trouble.other;
    case TroubleKind::roll_leaves_pipe:
      return "rolled along, the hooks leave the pipe's end";
    case TroubleKind::roll_not_tried:
      return "a roll could not be rehearsed";
    case TroubleKind::touches:
      return counted_text(trouble.value, "pair of parts touches", "pairs of parts touch");
    case TroubleKind::zones:
      return counted_text(trouble.value, "part enters a keep-clear zone", "parts enter a keep-clear zone");
    case TroubleKind::overlaps:
      return counted_text(trouble.value, "pair of parts overlaps from the start",
                          "pairs of parts overlap from the start");
    case TroubleKind::at_half_step:
      return "at half the step besides: " + trouble.what;
    case TroubleKind::stalls:
      return "the crew cannot haul for " + seconds_text(AtMost{trouble.value});
    case TroubleKind::hooks_lift:
      return "the hooks lift " + format_small_length(AtMost{trouble.value}, units) + " off the pipe";
    case TroubleKind::slack:
      return counted_text(trouble.value, "slack spell of the line", "slack spells of the line");
    case TroubleKind::swings_loose:
      return "a section swings by " + format_degrees(AtMost{trouble.value}) + " when its pin is pulled";
    case TroubleKind::lands_hard:
      return "the foot strikes the floor at " + speed_text(AtMost{trouble.value}, units);
  }
  return {};
}

std::vector<std::string> trouble_texts(const std::vector<Trouble>& troubles, DisplayUnits units) {
  std::vector<std::string> texts;
  for (const Trouble& trouble : troubles) texts.push_back(trouble_text(trouble, units));
  return texts;
}

std::string bounds_sentences(const RehearsalBounds& bounds, DisplayUnits units) {
  return "Step 1/" + format_decimal(Nominal{1.0 / bounds.step}, 0) +
         " s. Energy from nowhere: " + energy_bound_text({bounds.energy_gain}, units, 2) + ", beside " +
         energy_text(AtLeast{bounds.energy_scale}, units) + " that came and went." + half_step(bounds, units) +
         touch_gap(bounds, units);
}

}  // namespace stowpath
