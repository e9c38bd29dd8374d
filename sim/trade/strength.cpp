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
    StrengthFigure{pull_across, 188, "kneeling", kLimit, neither, kKodak, Hands::not_said, Lasting::not_said, true},
    StrengthFigure{pull_across, 130, "seated", kLimit, neither, kKodak, Hands::not_said, Lasting::not_said, true},
    StrengthFigure{pull_down, 545, "above the head, hook grip", kLimit, strong, kVertical},
    StrengthFigure{pull_down, 200, "above the head, power grip", kLimit, strong, kVertical},
    StrengthFigure{pull_down, 315, "at the shoulder", kLimit, strong, kVertical},
    StrengthFigure{pull_up, 315, "25 cm above the floor", kLimit, neither, kVertical},
    StrengthFigure{pull_up, 148, "at the elbow", kLimit, neither, kVertical},
    StrengthFigure{pull_up, 75, "at the shoulder", kLimit, neither, kVertical},
    StrengthFigure{push_down, 287, "at the elbow", kLimit, neither, kVertical},
    StrengthFigure{push_up, 202, "at the shoulder", kLimit, neither, kVertical},
    StrengthFigure{pull_down, 107, "two hands", kSustained, weak, kMotor, Hands::both, Lasting::sustained},
    StrengthFigure{push_across, 196, "two hands", "guideline, to start", neither, kMotor, Hands::both, Lasting::moment},
    StrengthFigure{push_across, 107, "two hands", kSustained, neither, kMotor, Hands::both, Lasting::sustained},
    StrengthFigure{crank, 22, "hand crank", kSustained, weak, kMotor, Hands::not_said, Lasting::sustained},
    StrengthFigure{lever, 129, "lever", kSustained, neither, kMotor, Hands::not_said, Lasting::sustained},
    StrengthFigure{push_across, 67, "full arm, sideways", kSustained, neither, kMotor, Hands::one, Lasting::sustained},
    StrengthFigure{crank, 133, "upper body, 12 in arm, minutes on end", "maker's figure", strong, kRescue,
                   Hands::not_said, Lasting::sustained},
    StrengthFigure{pull_across, 267, "on a rope, standing", "average man", strong, kArmy},
    StrengthFigure{grip, 200, "left hand, momentary", kFifth, neither, kAviation, Hands::one, Lasting::moment},
    StrengthFigure{grip, 208, "right hand, momentary", kFifth, neither, kAviation, Hands::one, Lasting::moment},
    StrengthFigure{grip, 541, "best effort", "mean of men 20 to 25", neither, kGripMeans, Hands::one, Lasting::moment},
    StrengthFigure{grip, 329, "best effort", "mean of women 20 to 25", neither, kGripMeans, Hands::one,
                   Lasting::moment},
    StrengthFigure{pull_across, 147, "one hand, now and then", "mean of men", weak, kOneHand, Hands::one,
                   Lasting::moment},
    StrengthFigure{pull_across, 100, "poor footing, friction 0.2 to 0.3", "men", neither, kTraction, Hands::not_said,
                   Lasting::moment},
    StrengthFigure{pull_across, 200, "friction about 0.6", "men", neither, kTraction, Hands::not_said, Lasting::moment},
    StrengthFigure{pull_across, 300, "friction over 0.9", "men", neither, kTraction, Hands::not_said, Lasting::moment},
    StrengthFigure{pull_across, 490, "braced", "men", neither, kTraction, Hands::not_said, Lasting::moment},
    StrengthFigure{pull_down, 76, "seated, right arm straight", kFifth, neither, kArm, Hands::one, Lasting::moment,
                   true},
    StrengthFigure{pull_down, 89, "seated, right elbow at 150 or 60 degrees", kFifth, neither, kArm, Hands::one,
                   Lasting::moment, true},
    StrengthFigure{pull_down, 116, "seated, right elbow at 120 or 90 degrees", kFifth, neither, kArm, Hands::one,
                   Lasting::moment, true}};

bool hauls(Effort effort) { return effort == pull_down || effort == pull_across || effort == pull_up; }

/// Why a figure says nothing of the task; empty where it fits.
std::string_view misfit(const StrengthFigure& figure, Effort task) {
  if (figure.effort == pull_across && task != pull_across) return "for a level pull";
  if (figure.effort == pull_down && task != pull_down) return "for a pull down";
  if (figure.effort == pull_up && task != pull_up) return "for a pull up";
  return figure.seated ? "not standing" : "";
}

/// Whether one could take the figure for the task: another direction of the same work.
bool is_near(const StrengthFigure& figure, Effort task) {
  return figure.effort == task || (hauls(figure.effort) && hauls(task));
}

template <class Figure, class Force>
void weakest_first(std::vector<Figure>& figures, Force force) {
  std::stable_sort(figures.begin(), figures.end(),
                   [&](const Figure& a, const Figure& b) { return force(a) < force(b); });
}

}  // namespace

std::string_view hands_text(Hands hands) {
  if (hands == Hands::not_said) return "not said";
  return hands == Hands::one ? "one hand" : "both hands";
}

std::string_view lasting_text(Lasting lasting) {
  if (lasting == Lasting::not_said) return "not said";
  return lasting == Lasting::moment ? "a moment" : "minutes";
}

std::span<const StrengthFigure> strength_figures() { return kFigures; }

std::vector<StrengthFigure> fitting_figures(Effort task, Person person) {
  std::vector<StrengthFigure> found;
  std::copy_if(kFigures.begin(), kFigures.end(), std::back_inserter(found), [&](const StrengthFigure& figure) {
    return figure.person == person && figure.effort == task && misfit(figure, task).empty();
  });
  weakest_first(found, [](const StrengthFigure& figure) { return figure.force; });
  return found;
}

std::vector<UnfitFigure> unfit_figures(Effort task) {
  std::vector<UnfitFigure> found;
  for (const StrengthFigure& figure : kFigures) {
    const std::string_view why = misfit(figure, task);
    if (is_near(figure, task) && !why.empty()) found.push_back({figure, why});
  }
  weakest_first(found, [](const UnfitFigure& unfit) { return unfit.figure.force; });
  return found;
}

double greatest_figure(Effort task) {
  double most = 0.0;
  for (const StrengthFigure& figure : kFigures)
    if (figure.effort == task && misfit(figure, task).empty()) most = std::max(most, figure.force);
  return most;
}

}  // namespace stowpath
