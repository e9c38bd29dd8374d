#include "sim/hoist/pull_events.h"

#include <cmath>
#include <functional>

namespace stowpath {

namespace {

constexpr int kHalvings = 40;  // a quarter of a degree to 1e-15 rad

using Measure = std::function<double(const PullSample&)>;

bool binds(const PullSample& sample) { return sample.on_floor && !sample.solvable; }

bool sticks(const PullSample& sample) { return sample.on_floor && !sample.lets_down; }

bool lifts_hook(const PullSample& sample) { return sample.solvable && !sample.slack && sample.reactions.hook.y < 0.0; }

bool same_segment(const PullSample& a, const PullSample& b) { return a.move == b.move && a.segment == b.segment; }

/// Walks the samples and notes what changes from one to the next.
class Watch {
 public:
  Watch(const LiftRig& rig, const Model& model) : rig_(rig), model_(model) {}

  void begin(const PullSample& first);
  void look(const PullSample& before, const PullSample& after);
  std::vector<PullEvent> events;

 private:
  void note(PullEventKind kind, const PullSample& at) { events.push_back({kind, at.move, at.progress, at.pose}); }
  void look_for_slack(const PullSample& before, const PullSample& after);
  void look_for_crossing(PullEventKind kind, const PullSample& before, const PullSample& after, const Measure& measure);
  void look_for_foot(const PullSample& before, const PullSample& after);
  PullSample crossing(const PullSample& before, const PullSample& after, const Measure& measure) const;

  const LiftRig& rig_;
  const Model& model_;
};

PullSample Watch::crossing(const PullSample& before, const PullSample& after, const Measure& measure) const {
  if (!same_segment(before, after)) return after;
  double lo = before.u, hi = after.u;
  const bool positive = measure(before) > 0.0;
  PullSample here = after;
  for (int i = 0; i < kHalvings; ++i) {
    const double u = 0.5 * (lo + hi);
    const PullSample middle = sample_pull(rig_, model_, before.move, before.segment, u);
    const bool still = (measure(middle) > 0.0) == positive;
    (still ? lo : hi) = u;
    if (!still) here = middle;
  }
  return here;
}

void Watch::look_for_crossing(PullEventKind kind, const PullSample& before, const PullSample& after,
                              const Measure& measure) {
  if ((measure(before) > 0.0) != (measure(after) > 0.0)) note(kind, crossing(before, after, measure));
}

void Watch::look_for_slack(const PullSample& before, const PullSample& after) {
  if (before.slack == after.slack || !before.solvable || !after.solvable) return;
  const auto kind = after.slack ? PullEventKind::slack_begins : PullEventKind::slack_ends;
  const Measure slack = [](const PullSample& sample) { return sample.slack ? -1.0 : 1.0; };
  note(kind, crossing(before, after, slack));
}

void Watch::look_for_foot(const PullSample& before, const PullSample& after) {
  if (before.on_floor && !after.on_floor) note(PullEventKind::foot_leaves_floor, before);
  if (!binds(before) && binds(after)) note(PullEventKind::foot_binds, after);
  if (!sticks(before) && sticks(after)) note(PullEventKind::foot_sticks, after);
  const Move& move = model_.moves[after.move];
  if (!same_segment(before, after) && settles({move, move.segments[after.segment], after.u}))
    note(PullEventKind::swings_plumb, after);
}

void Watch::begin(const PullSample& first) {
  if (first.slack) note(PullEventKind::slack_begins, first);
  if (cannot_lift(first)) note(PullEventKind::cannot_lift, first);
  if (binds(first)) note(PullEventKind::foot_binds, first);
  if (sticks(first)) note(PullEventKind::foot_sticks, first);
  if (lifts_hook(first)) note(first.on_floor ? PullEventKind::hook_lifts : PullEventKind::turns_over, first);
}

void Watch::look(const PullSample& before, const PullSample& after) {
  look_for_slack(before, after);
  look_for_crossing(PullEventKind::line_over_pivot, before, after, [](const PullSample& s) { return s.line_lever; });
  look_for_crossing(PullEventKind::centre_over_pivot, before, after, [](const PullSample& s) { return s.centre_out; });
  if (!cannot_lift(before))
    look_for_crossing(PullEventKind::cannot_lift, before, after,
                      [](const PullSample& s) { return cannot_lift(s) ? 1.0 : -1.0; });
  if (lifts_hook(after) && (!lifts_hook(before) || before.on_floor != after.on_floor))
    look_for_crossing(after.on_floor ? PullEventKind::hook_lifts : PullEventKind::turns_over, before, after,
                      [&](const PullSample& s) { return lifts_hook(s) && s.on_floor == after.on_floor ? 1.0 : -1.0; });
  look_for_foot(before, after);
}

}  // namespace

bool cannot_lift(const PullSample& sample) { return sample.raises && sample.hauling <= 0.0; }

std::vector<PullEvent> pull_events(const LiftRig& rig, const Model& model, const std::vector<PullSample>& samples) {
  Watch watch(rig, model);
  if (!samples.empty()) watch.begin(samples.front());
  for (std::size_t i = 1; i < samples.size(); ++i) watch.look(samples[i - 1], samples[i]);
  return watch.events;
}

std::string_view event_text(PullEventKind kind) {
  switch (kind) {
    case PullEventKind::slack_begins:
      return "the line goes slack: the stair moves by itself";
    case PullEventKind::slack_ends:
      return "the line takes the load again";
    case PullEventKind::line_over_pivot:
      return "the line passes through the pipe's axis";
    case PullEventKind::centre_over_pivot:
      return "the centre of mass passes the pipe's axis";
    case PullEventKind::foot_leaves_floor:
      return "the foot leaves the floor";
    case PullEventKind::swings_plumb:
      return "the lower section swings plumb by itself";
    case PullEventKind::cannot_lift:
      return "hauling in no longer raises the stair";
    case PullEventKind::hook_lifts:
      return "the hooks press up: nothing but their curl keeps the stair from lifting off the pipe";
    case PullEventKind::turns_over:
      return "the stair would turn over about its pick: nothing but the hooks' curl holds its head down";
    case PullEventKind::foot_binds:
      return "the foot binds on the floor: with this much friction no pull slides it";
    case PullEventKind::foot_sticks:
      return "let down, the foot sticks on the floor and props the joint";
  }
  return "";
}

}  // namespace stowpath
