#include "sim/rehearsal/trouble.h"

#include <algorithm>
#include <string>
#include <utility>

#include "sim/mechanism/room_parts.h"

namespace stowpath {
namespace {

constexpr double kLifts = 1e-4;                      // hooks that lift less only tremble [m]
constexpr double kStandsAgain = 0.0174532925199433;  // a degree [rad]
constexpr double kFootAgain = 0.03;                  // [m]
constexpr double kSwings = 0.0872664625997165;       // 5 degrees [rad]
constexpr double kGoes = 0.05;                       // less way than this is hardly any [m]

// The greatest of one figure over a list; 0 where it is empty.
template <typename Item>
double greatest(const std::vector<Item>& items, double Item::*figure) {
  double most = 0.0;
  for (const Item& item : items) most = std::max(most, item.*figure);
  return most;
}

bool came_off(const RehearsalReport& report) {
  return std::any_of(report.hooks_off.begin(), report.hooks_off.end(),
                     [](const HookSpell& spell) { return spell.off; });
}

bool as_it_stood(const StandsAgain& again) {
  return again.hooks_on_pipe && again.lean < kStandsAgain && again.foot < kFootAgain;
}

/// Gathers what is wrong; what was said already is not said again.
class Finder {
 public:
  void add(TroubleKind kind, std::string what = "", std::string other = "", double value = 0.0, double also = 0.0) {
    const auto said = [&](const Trouble& t) {
      return t.kind == kind && t.what == what && t.other == other && t.value == value && t.also == also;
    };
    if (std::none_of(found_.begin(), found_.end(), said))
      found_.push_back({kind, std::move(what), std::move(other), value, also});
  }
  void add_count(TroubleKind kind, std::size_t count) {
    if (count > 0) add(kind, "", "", static_cast<double>(count));
  }
  void add_over(double limit, TroubleKind kind, double value) {
    if (value > limit) add(kind, "", "", value);
  }
  void add(const Aftermath& after) {
    if (after.nothing) return;
    if (stays(after)) return add(TroubleKind::stays_up, after.cause);
    add(TroubleKind::moves_off, after.cause, after.fastest, after.top_speed);
  }
  void add(const RollTry& hold) {
    if (hold.end == RollEnd::bound) add(TroubleKind::roll_binds, "", "", 0.0, hold.height);
    if (hold.end == RollEnd::too_weak)
      add(hold.way > kGoes ? TroubleKind::roll_sticks : TroubleKind::roll_too_weak, "", "", hold.greatest_push,
          hold.height);
    if (hold.end == RollEnd::ran_into) add(TroubleKind::roll_meets, hold.stop->part, hold.stop->thing);
    if (hold.end == RollEnd::left_pipe) add(TroubleKind::roll_leaves_pipe);
  }
  void add(const RollLeg& leg) {
    for (const RollTry& hold : leg.tries) add(hold);
    if (!leg.not_tried.empty()) add(TroubleKind::roll_not_tried);
  }
  void add(const RollStop& stop) {
    if (stop.part.empty()) return add(TroubleKind::roll_leaves_pipe);
    if (stop.thing != kRailStop) add(TroubleKind::roll_meets, stop.part, stop.thing);
  }

  std::vector<Trouble> take() { return std::move(found_); }

 private:
  std::vector<Trouble> found_;
};

// What ends it, or leaves it otherwise than meant.
void add_outcome(Finder& find, const RehearsalReport& report) {
  if (report.refused) find.add(TroubleKind::refused);
  if (report.aftermath) find.add(*report.aftermath);
  for (const std::string& untried : report.not_tried) find.add(TroubleKind::not_tried, untried);
  if (!report.gave_up.empty()) find.add(TroubleKind::gave_up, report.gave_up);
  if (report.again && !as_it_stood(*report.again)) find.add(TroubleKind::stands_otherwise);
  if (came_off(report)) find.add(TroubleKind::hooks_off);
}

}  // namespace

bool stays(const Aftermath& after) { return after.at_rest && after.top_speed < kSettles; }

std::vector<Trouble> troubles(const RehearsalReport& report) {
  Finder find;
  add_outcome(find, report);
  for (const RollLeg& leg : report.rolls) find.add(leg);
  find.add_count(TroubleKind::touches, report.touches.size());
  find.add_count(TroubleKind::zones, report.zones.size());
  find.add_count(TroubleKind::overlaps, report.met_from_start.size());
  for (const std::string& besides : report.bounds.only_finer) find.add(TroubleKind::at_half_step, besides);
  double stalled = 0.0;
  for (const MoveRun& move : report.moves) stalled += move.stalled;
  find.add_over(0.0, TroubleKind::stalls, stalled);
  if (!came_off(report)) find.add_over(kLifts, TroubleKind::hooks_lift, greatest(report.hooks_off, &HookSpell::lift));
  find.add_count(TroubleKind::slack, report.slack.size());
  find.add_over(kSwings, TroubleKind::swings_loose, greatest(report.loose, &LooseRun::swings));
  find.add_over(kLands, TroubleKind::lands_hard, greatest(report.landings, &TouchRun::speed));
  return find.take();
}

std::vector<Trouble> troubles(const RollReport& report) {
  Finder find;
  const double force = norm(report.push.force);
  const double height = report.asked.height - report.floor_level;
  for (const RollRun& run : report.runs) {
    if (!run.push_needed) find.add(TroubleKind::roll_binds, "", "", 0.0, height);
    if (run.push_needed && !run.rolls) find.add(TroubleKind::roll_too_weak, "", "", force, height);
  }
  for (const RollRun& run : report.runs)
    for (const RollStop& stop : run.stops) find.add(stop);
  return find.take();
}

Account account_of(const RehearsalReport& report) { return {report.bounds, troubles(report), report.cautions}; }

}  // namespace stowpath
