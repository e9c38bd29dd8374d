#include <algorithm>
#include <numbers>

#include "render/report/hoist_words.h"
#include "render/report/rehearsal_report.h"
#include "render/report/roll_report.h"
#include "render/report/words.h"
#include "sim/trade/figure.h"

namespace stowpath {
namespace {

constexpr double kGoes = 0.05;  // less way than this is hardly any [m]

/// One roll of the procedure in a few sentences, each with a space after it.
class LegTeller {
 public:
  LegTeller(const RehearsalSubject& subject, const RollLeg& leg)
      : leg_(leg),
        units_(subject.units),
        name_(move_text(subject.model, static_cast<std::size_t>(leg.move)) + (leg.back ? " backwards" : "")) {}

  std::string text() const {
    if (leg_.tries.empty() && leg_.not_tried.empty())
      return "In " + name_ + ", it stands at station " + place_text(Nominal{leg_.to}, units_) + " already. ";
    std::string text = "In " + name_ + ", it has to go from station " + place_text(Nominal{leg_.from}, units_) +
                       " to " + place_text(Nominal{leg_.to}, units_) + ". ";
    for (const RollTry& hold : leg_.tries) text += try_text(hold);
    if (!leg_.not_tried.empty()) text += "That is not rehearsed: " + leg_.not_tried + ". ";
    return text + (leg_.brought() ? "The run goes on as though it had been brought there, from station " +
                                        place_text(Nominal{leg_.reached}, units_) + ". "
                                  : "It took " + seconds_text(AtMost{leg_.ends - leg_.begins}) + " in all. ");
  }

 private:
  std::string try_text(const RollTry& hold) const {
    const std::string held = "With the hand " + place_text(Nominal{hold.height}, units_) + " above the floor ";
    switch (hold.end) {
      case RollEnd::bound:
        return held + "the hooks bind: they jam there from a friction on the pipe of " +
               friction_text(AtLeast{hold.jam_friction}) + " on, and this run has " +
               friction_text(Nominal{leg_.friction.hook}) + "; the foot came " +
               format_small_length(AtMost{hold.foot_aside}, units_) + " out of line. ";
      case RollEnd::too_weak:
        if (hold.way > kGoes)
          return held + "it goes " + place_text(AtLeast{hold.way}, units_) + ", turns out of line by " +
                 format_degrees(AtMost{hold.yaw}) + " and sticks there under " +
                 force_text(AtMost{hold.greatest_push}, units_) + ". ";
        return held + "the hand is too weak with " + force_text(AtMost{hold.greatest_push}, units_) + needs(hold) +
               ". ";
      case RollEnd::ran_into:
      case RollEnd::left_pipe:
        return held + "it rolls, and " + stop_sentence(*hold.stop, units_) + ". ";
      case RollEnd::arrived:
        return held + "it rolls to its mark" + needs(hold) + ", and the hand gave up to " +
               force_text(AtMost{hold.greatest_push}, units_) + "; it yawed by up to " +
               format_degrees(AtMost{hold.yaw}) + ", its foot by " +
               format_small_length(AtMost{hold.foot_aside}, units_) + ". ";
      case RollEnd::under_way:
        return held + "it was still on its way at the end. ";
    }
    return "";
  }

  std::string needs(const RollTry& hold) const {
    return hold.push_needed ? ": it takes " + force_text(AtMost{*hold.push_needed}, units_) + " to set it moving" : "";
  }

  const RollLeg& leg_;
  DisplayUnits units_;
  std::string name_;
};

}  // namespace

std::string rolls_sentences(const RehearsalSubject& subject) {
  std::string text;
  for (const RollLeg& leg : subject.report.rolls) text += LegTeller(subject, leg).text();
  return text;
}

}  // namespace stowpath
