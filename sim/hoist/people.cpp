#include "sim/hoist/people.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "sim/mechanism/line_route.h"

namespace stowpath {
namespace {

constexpr Source kOwn{"given", "the user's own limit", SourceStatus::derived};

void add_figures(std::vector<PersonLimit>& limits, const std::vector<StrengthFigure>& figures) {
  for (const StrengthFigure& figure : figures) {
    limits.push_back({std::string(figure.posture) + " (" + std::string(figure.percentile) + ")", figure.force,
                      figure.person, figure.source, figure.hands, figure.lasting});
  }
}

std::vector<PersonLimit> weakest_first(std::vector<PersonLimit> limits, std::optional<double> own) {
  if (own) limits.push_back({"your own limit", *own, Person::neither, kOwn});
  std::stable_sort(limits.begin(), limits.end(),
                   [](const PersonLimit& a, const PersonLimit& b) { return a.force < b.force; });
  return limits;
}

}  // namespace

Effort haul_task(const Scene& scene) {
  const std::vector<RoomPoint> route = line_route(scene);
  if (route.size() < 2) return Effort::pull_down;
  const RoomPoint &hand = route.back(), &from = route[route.size() - 2];
  const double up = from.at.y - hand.at.y, level = std::hypot(from.at.x - hand.at.x, from.station - hand.station);
  if (up < 0.0 && -up >= level) return Effort::pull_up;
  return up >= level ? Effort::pull_down : Effort::pull_across;
}

std::vector<PersonLimit> hand_pull_limits(Effort task, std::optional<double> own) {
  std::vector<PersonLimit> limits{{"easy, suggested", kEasyPull, Person::neither, kPullSource},
                                  {"hard, suggested", kHardPull, Person::neither, kPullSource}};
  for (const Person person : {Person::weak, Person::strong, Person::neither})
    add_figures(limits, fitting_figures(task, person));
  return weakest_first(std::move(limits), own);
}

std::vector<PersonLimit> crank_limits(std::optional<double> own) {
  std::vector<PersonLimit> limits;
  for (const Person person : {Person::weak, Person::strong})
    add_figures(limits, fitting_figures(Effort::crank, person));
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
