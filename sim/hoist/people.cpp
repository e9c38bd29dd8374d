#include "sim/hoist/people.h"

#include <algorithm>
#include <utility>

namespace stowpath {
namespace {

constexpr Source kOwn{"given", "the user's own limit", SourceStatus::derived};

void add_figures(std::vector<PersonLimit>& limits, const std::vector<StrengthFigure>& figures) {
  for (const StrengthFigure& figure : figures) {
    limits.push_back({std::string(figure.posture) + " (" + std::string(figure.percentile) + ")", figure.force,
                      figure.person, figure.source});
  }
}

std::vector<PersonLimit> weakest_first(std::vector<PersonLimit> limits, std::optional<double> own) {
  if (own) limits.push_back({"your own limit", *own, Person::neither, kOwn});
  std::stable_sort(limits.begin(), limits.end(),
                   [](const PersonLimit& a, const PersonLimit& b) { return a.force < b.force; });
  return limits;
}

}  // namespace

std::vector<PersonLimit> hand_pull_limits(std::optional<double> own) {
  std::vector<PersonLimit> limits{{"easy, suggested", kEasyPull, Person::neither, kPullSource},
                                  {"hard, suggested", kHardPull, Person::neither, kPullSource}};
  add_figures(limits, hand_pull_figures(Person::weak));
  add_figures(limits, hand_pull_figures(Person::strong));
  return weakest_first(std::move(limits), own);
}

std::vector<PersonLimit> crank_limits(std::optional<double> own) {
  std::vector<PersonLimit> limits;
  add_figures(limits, crank_figures(Person::weak));
  add_figures(limits, crank_figures(Person::strong));
  return weakest_first(std::move(limits), own);
}

std::vector<LimitMargin> limit_margins(double force, std::span<const PersonLimit> limits) {
  std::vector<LimitMargin> margins;
  for (const PersonLimit& limit : limits) margins.push_back({limit, limit.force - force, force / limit.force});
  return margins;
}

Interval hand_over_hand_minutes(double haul_length) {
  return {haul_length / kHandOverHand.hi, haul_length / kHandOverHand.lo};
}

}  // namespace stowpath
