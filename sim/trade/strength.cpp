#include "sim/trade/strength.h"

#include <algorithm>
#include <array>
#include <iterator>

namespace stowpath {
namespace {

constexpr SourceStatus kVerified = SourceStatus::verified;
constexpr SourceStatus kMemory = SourceStatus::memory;

constexpr Source kKodak{"S-HUM-horiz", "Eastman Kodak 1986, force table", kVerified};
constexpr Source kVertical{"S-HUM-vert", "Eastman Kodak and CCOHS, vertical forces", kMemory};
constexpr Source kMotor{"S-HUM-auto", "ergoweb.com, a car maker's guideline", kVerified};
constexpr Source kRescue{"S-HUM-crank30", "fallsafety.com, a rescue winch's maker", kVerified};
constexpr Source kArmy{"S-HUM-60lb", "US Army engineer manual", kVerified};
constexpr Source kAviation{"S-HUM-grip", "FAA design guide, ch. 14 (0.8 of MIL-STD-1472)", kVerified};
constexpr Source kGripMeans{"S-HUM-gripmean", "hand-grip strength of young men and women, studylib.net", kVerified};
constexpr Source kOneHand{"S-HUM-15kg", "taylorfrancis.com, 9780203719633 ch. 6", kVerified};
constexpr Source kTraction{"S-HUM-1472pp", "MIL-STD-1472, horizontal push and pull", kMemory};
constexpr Source kArm{"S-HUM-1472arm", "MIL-STD-1472, arm strength", kMemory};

constexpr std::string_view kLimit = "recommended upper limit";
constexpr std::string_view kSustained = "guideline, sustained";
constexpr std::string_view kFifth = "5th percentile of men";

using enum Effort;
using enum Person;

constexpr std::array kFigures{
    StrengthFigure{pull_across, 225, "standing, whole body", kLimit, strong, kKodak},
    StrengthFigure{pull_across, 110, "standing, arms and shoulders stretched out", kLimit, weak, kKodak},
    StrengthFigure{pull_across, 188, "kneeling", kLimit, neither, kKodak},
    StrengthFigure{pull_across, 130, "seated", kLimit, neither, kKodak},
    StrengthFigure{pull_down, 545, "above the head, hook grip", kLimit, strong, kVertical},
    StrengthFigure{pull_down, 200, "above the head, power grip", kLimit, strong, kVertical},
    StrengthFigure{pull_down, 315, "at the shoulder", kLimit, strong, kVertical},
    StrengthFigure{pull_up, 315, "25 cm above the floor", kLimit, neither, kVertical},
    StrengthFigure{pull_up, 148, "at the elbow", kLimit, neither, kVertical},
    StrengthFigure{pull_up, 75, "at the shoulder", kLimit, neither, kVertical},
    StrengthFigure{push_down, 287, "at the elbow", kLimit, neither, kVertical},
    StrengthFigure{push_up, 202, "at the shoulder", kLimit, neither, kVertical},
    StrengthFigure{pull_down, 107, "two hands", kSustained, weak, kMotor},
    StrengthFigure{push_across, 196, "two hands", "guideline, to start", neither, kMotor},
    StrengthFigure{push_across, 107, "two hands", kSustained, neither, kMotor},
    StrengthFigure{crank, 22, "hand crank", kSustained, weak, kMotor},
    StrengthFigure{lever, 129, "lever", kSustained, neither, kMotor},
    StrengthFigure{push_across, 67, "full arm, sideways", kSustained, neither, kMotor},
    StrengthFigure{crank, 133, "upper body, 12 in arm, minutes on end", "maker's figure", strong, kRescue},
    StrengthFigure{pull_across, 267, "on a rope, standing", "average man", strong, kArmy},
    StrengthFigure{grip, 200, "left hand, momentary", kFifth, neither, kAviation},
    StrengthFigure{grip, 208, "right hand, momentary", kFifth, neither, kAviation},
    StrengthFigure{grip, 541, "best effort", "mean of men 20 to 25", neither, kGripMeans},
    StrengthFigure{grip, 329, "best effort", "mean of women 20 to 25", neither, kGripMeans},
    StrengthFigure{pull_across, 147, "one hand, now and then", "mean of men", weak, kOneHand},
    StrengthFigure{pull_across, 100, "poor footing, friction 0.2 to 0.3", "men", neither, kTraction},
    StrengthFigure{pull_across, 200, "friction about 0.6", "men", neither, kTraction},
    StrengthFigure{pull_across, 300, "friction over 0.9", "men", neither, kTraction},
    StrengthFigure{pull_across, 490, "braced", "men", neither, kTraction},
    StrengthFigure{pull_down, 76, "seated, right arm straight", kFifth, neither, kArm},
    StrengthFigure{pull_down, 89, "seated, right elbow at 150 or 60 degrees", kFifth, neither, kArm},
    StrengthFigure{pull_down, 116, "seated, right elbow at 120 or 90 degrees", kFifth, neither, kArm}};

template <class Wanted>
std::vector<StrengthFigure> sorted_figures(Wanted wanted) {
  std::vector<StrengthFigure> found;
  std::copy_if(kFigures.begin(), kFigures.end(), std::back_inserter(found), wanted);
  std::stable_sort(found.begin(), found.end(),
                   [](const StrengthFigure& a, const StrengthFigure& b) { return a.force < b.force; });
  return found;
}

}  // namespace

std::span<const StrengthFigure> strength_figures() { return kFigures; }

std::vector<StrengthFigure> hand_pull_figures(Person person) {
  return sorted_figures([person](const StrengthFigure& figure) {
    return figure.person == person && figure.effort == pull_down;
  });
}

std::vector<StrengthFigure> unfit_pull_figures() {
  return sorted_figures([](const StrengthFigure& figure) {
    return figure.effort == pull_across || (figure.effort == pull_down && figure.person == neither);
  });
}

std::vector<StrengthFigure> crank_figures(Person person) {
  return sorted_figures(
      [person](const StrengthFigure& figure) { return figure.person == person && figure.effort == crank; });
}

}  // namespace stowpath
