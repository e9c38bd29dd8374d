#include "sim/rehearsal/tally.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stowpath {

namespace {

constexpr double kSameTouch = 1.0;              // strokes nearer in time than this are one [s]
constexpr double kSameLift = 0.5;               // [s]
constexpr double kSlackLeast = 0.05;            // a slack spell shorter than this is a tremble [s]
constexpr double kJerkAfter = 0.5;              // how long after a slack spell a pull counts as its jerk [s]
constexpr double kStrays = 0.0872664625997165;  // 5 degrees: from there a stray is an event [rad]
constexpr const char* kHoistLine = "the hoist line";
constexpr double kUnderWay = 1.0;   // into a move, its line has its pull [s]
constexpr double kSwingSpan = 3.0;  // before a move's end [s]

std::size_t index(int i) { return static_cast<std::size_t>(i); }

const char* move_word(MoveKind kind) {
  switch (kind) {
    case MoveKind::stand:
      return "stand";
    case MoveKind::roll:
      return "roll";
    case MoveKind::lift:
      return "lift";
    case MoveKind::fold:
      return "fold";
    case MoveKind::together:
      return "together";
    case MoveKind::drag:
      return "drag";
    case MoveKind::hang:
      return "hang";
    case MoveKind::park:
      return "park";
  }
  return "";
}

bool lands(const WorldPart& a, const WorldPart& b) { return a.kind == PartKind::caster && b.kind == PartKind::floor; }

void take_touch(std::vector<TouchRun>& runs, const TouchRun& now, bool again) {
  const auto same = [&](const TouchRun& run) { return run.part == now.part && run.other == now.other; };
  const auto found = std::find_if(runs.begin(), runs.end(), same);
  if (found == runs.end()) return runs.push_back(now);
  if (!again) ++found->times;
  found->speed = std::max(found->speed, now.speed);
  found->energy = std::max(found->energy, now.energy);
}

}  // namespace

RecordedFrame frame_now(const SideWorld& world, const Crew& crew) {
  RecordedFrame frame;
  frame.time = world.time();
  frame.move = crew.move();
  frame.station = crew.meant().station;
  frame.yaw = crew.roller().yaw();
  frame.push = crew.roller().push();
  const SectionPoses X_W = world.poses();
  const auto turns = world.turns();
  for (std::size_t j = 0; j < turns.size(); ++j) frame.sections[j] = {X_W[j].p, turns[j]};
  const auto line = [](bool on, const LinePull& pull, const LineFeed& feed) {
    return RecordedLine{on, pull.hand, feed.paid, on ? std::max(0.0, -pull.stretch) : 0.0};
  };
  frame.hoist = line(crew.hooked_on(), crew.line(), crew.feed());
  const bool has_fold = crew.rig() != nullptr && crew.rig()->fold_line.has_value();
  if (has_fold) frame.fold = line(true, crew.fold_line(), crew.fold_feed());
  frame.hooks_on_pipe = world.hooks_on_pipe();
  frame.hook_force = world.hook_force();
  return frame;
}

void Tally::note(double time, RecordedEventKind kind, std::string what, std::string other, double value,
                 double energy) {
  auto& events = report.recording.events;
  const auto later = std::upper_bound(events.begin(), events.end(), time,
                                      [](double t, const RecordedEvent& event) { return t < event.time; });
  events.insert(later, {time, kind, std::move(what), std::move(other), value, energy});
}

void Tally::watch(const SideWorld& world, const Crew& crew, bool after) {
  leans_ = leans_in(world);
  watch_pins(world);
  watch_line(world, crew, after);
  watch_script(world, crew);
  watch_roll(crew);
  watch_loose(world, crew);
  watch_move(world, crew);
  watch_touches(world, crew, after);
  watch_zones(world, crew, after);
  watch_slack(world, crew);
  watch_hooks(world, crew);
  if (world.time() < next_frame_) return;
  next_frame_ += frame_;
  report.recording.frames.push_back(frame_now(world, crew));
}

void Tally::watch_script(const SideWorld& world, const Crew& crew) {
  const double now = world.time();
  if (crew.move() != move_) {
    if (move_ >= 0) end_move();
    move_ = crew.move();
    strayed_ = false;
    if (move_ >= 0) {
      MoveRun run;
      run.move = move_;
      run.back = crew.going_down();
      run.least_pull = crew.hooked_on() ? INFINITY : 0.0;
      run.begins = run.ends = now;
      run.seat = {world.seat(), world.seat()};
      run.least_hook = norm(world.hook_force());
      report.moves.push_back(run);
    }
  }
  if (!crew.begun()) return;
  const ScriptStep& step = *crew.begun();
  if (step.act == Act::go)
    note(now, RecordedEventKind::move_begins,
         std::string(move_word(model_.moves[index(step.move)].kind)) + (step.back ? " backwards" : ""));
  if (step.act == Act::park) note(now, RecordedEventKind::parked, crew.on_cleat() ? "the cleat" : "");
  if (step.act == Act::lower_away) note(now, RecordedEventKind::lowers_away);
  if (step.act == Act::unpin) begin_loose(world, step.hinge);
}

void Tally::watch_pins(const SideWorld& world) {
  const std::vector<bool>& now = world.pinned();
  for (std::size_t k = 0; k < std::min(pinned_.size(), now.size()); ++k)
    if (pinned_[k] != now[k])
      note(world.time(), now[k] ? RecordedEventKind::pinned : RecordedEventKind::unpinned, "", "",
           static_cast<double>(k + 1));
  pinned_ = now;
}

// A line that is let go or breaks is told by whoever does it.
void Tally::watch_line(const SideWorld& world, const Crew& crew, bool after) {
  const bool on = crew.hooked_on();
  if (on && !on_) note(world.time(), RecordedEventKind::hooked_on, kHoistLine);
  if (!on && on_ && !after) note(world.time(), RecordedEventKind::hooked_off, kHoistLine);
  on_ = on;
}

void Tally::watch_roll(const Crew& crew) {
  const RollWork& roller = crew.roller();
  if (!roller.under_way() && roller.news().empty()) return;
  const RollLeg& leg = roller.leg();
  if (report.rolls.empty() || report.rolls.back().begins != leg.begins) report.rolls.push_back(leg);
  report.rolls.back() = leg;
  for (const RecordedEvent& event : roller.news())
    note(event.time, event.kind, event.what, event.other, event.value, event.energy);
}

void Tally::begin_loose(const SideWorld& world, int hinge) {
  const double lean = leans_[index(hinge + 1)];
  const double height = (world.poses()[index(hinge)] * model_.linkage.distal(hinge)).y;
  loose_.push_back({report.loose.size(), lean, height});
  report.loose.push_back({hinge, world.time(), 0.0, lean, 0.0});
}

// Until the crew go on with the next move; one pin pulled after another does not end it.
void Tally::watch_loose(const SideWorld& world, const Crew& crew) {
  for (const Loose& loose : loose_) {
    LooseRun& run = report.loose[loose.run];
    const double height = (world.poses()[index(run.hinge)] * model_.linkage.distal(run.hinge)).y;
    if (std::abs(loose.height - height) > std::abs(run.sinks)) run.sinks = loose.height - height;
    const double lean = leans_[index(run.hinge + 1)], swings = std::abs(lean - loose.lean);
    if (swings <= run.swings) continue;
    run.swings = swings;
    run.to_lean = lean;
  }
  if (crew.move() >= 0) loose_.clear();
}

void Tally::watch_move(const SideWorld& world, const Crew& crew) {
  if (move_ < 0 || report.moves.empty()) return;
  MoveRun& run = report.moves.back();
  run.ends = world.time();
  run.leans = leans_;
  run.peak_pull = std::max(run.peak_pull, crew.line().hand);
  if (run.ends - run.begins > kUnderWay) run.least_pull = std::min(run.least_pull, crew.line().hand);
  run.foot_pull = std::max(run.foot_pull, std::abs(crew.foot_pull()));
  if (crew.fold_line_works()) run.peak_fold = std::max(run.peak_fold, crew.fold_line().hand);
  if (crew.stalled()) run.stalled += world.step_length();
  if (crew.hooked_on() && crew.line().hand <= 0.0) run.slack += world.step_length();
  if (world.hooks_on_pipe()) {
    run.seat = hull(run.seat, {world.seat(), world.seat()});
    run.least_hook = std::min(run.least_hook, norm(world.hook_force()));
  }
  const auto meant = section_leans(model_.linkage, crew.meant());
  for (int j = 0; j < model_.linkage.sections; ++j) {
    const double off = std::abs(leans_[index(j)] - meant[index(j)]);
    if (off <= run.stray) continue;
    run.stray = off;
    run.stray_section = j;
    run.stray_lean = leans_[index(j)];
    run.stray_meant = meant[index(j)];
    run.stray_time = world.time();
  }
  if (strayed_ || run.stray < kStrays) return;
  strayed_ = true;
  note(world.time(), RecordedEventKind::strays,
       "section " + std::to_string(run.stray_section + 1) + " is not where it is meant to be", "", run.stray);
}

// Of a section that hangs: what turns because it is meant to does not swing.
void Tally::end_move() {
  MoveRun& run = report.moves.back();
  if (!std::isfinite(run.least_pull)) run.least_pull = 0.0;
  run.about = run.leans;
  const MoveKind kind = model_.moves[index(run.move)].kind;
  if (kind != MoveKind::hang && kind != MoveKind::drag) return;
  for (int j = 0; j < model_.linkage.sections; ++j) {
    const Interval leans = last_leans(index(j), run.ends - kSwingSpan);
    run.about[index(j)] = leans.middle();
    run.swing = leans.length();  // the last section's stays
  }
}

Interval Tally::last_leans(std::size_t section, double from) const {
  double least = leans_[section], most = least;
  for (auto frame = report.recording.frames.rbegin(); frame != report.recording.frames.rend(); ++frame) {
    if (frame->time < from) break;
    const double lean = frame->sections[section].turn + 0.5 * std::numbers::pi;
    least = std::min(least, lean);
    most = std::max(most, lean);
  }
  return {least, most};
}

void Tally::watch_touches(const SideWorld& world, const Crew& crew, bool after) {
  const double now = world.time();
  for (const WorldTouch& touch : world.new_touches()) {
    const bool swapped = world.parts()[index(touch.a)].section < 0;
    const WorldPart& part = world.parts()[index(swapped ? touch.b : touch.a)];
    const WorldPart& other = world.parts()[index(swapped ? touch.a : touch.b)];
    if (other.kind == PartKind::zone || (part.kind == PartKind::hook && other.kind == PartKind::pipe)) continue;
    const std::pair<std::string, std::string> names{part.name, other.name};
    const bool again = touched_.count(names) > 0 && now - touched_[names] < kSameTouch;
    touched_[names] = now;
    report.bounds.touch_gap = std::max(report.bounds.touch_gap, touch.gap);
    const TouchRun run{part.name, other.name,  now,          crew.move(), crew.going_down(),
                       1,         touch.speed, touch.energy, touch.gap,   after};
    take_touch(lands(part, other) ? report.landings : report.touches, run, again);
    if (!again) note(now, RecordedEventKind::touch, part.name, other.name, touch.speed, touch.energy);
  }
}

void Tally::watch_zones(const SideWorld& world, const Crew& crew, bool after) {
  const ZoneState state = after ? ZoneState::moving : crew.state();
  for (const auto& [a, b] : world.inside_zones()) {
    const WorldPart& zone = world.parts()[index(b)];
    const WorldPart& part = world.parts()[index(a)];
    const bool named = std::any_of(zone.when.begin(), zone.when.end(),
                                   [&](ZoneState when) { return when == state || when == ZoneState::always; });
    if (!named || part.section < 0 || !zones_.insert({part.name, zone.name}).second) continue;
    report.zones.push_back({part.name, zone.name, world.time(), crew.move(), crew.going_down()});
    note(world.time(), RecordedEventKind::zone_entered, part.name, zone.name);
  }
}

// A spell is told once it is no tremble, its end once its jerk is known.
void Tally::watch_slack(const SideWorld& world, const Crew& crew) {
  const double now = world.time();
  const bool slack = crew.hooked_on() && crew.line().hand <= 0.0 && !crew.begun() && !crew.eases();
  if (slack && !slack_) slack_since_ = now;
  const bool long_enough = now - slack_since_ > kSlackLeast;
  if ((slack || slack_) && long_enough && !slack_told_) {
    note(slack_since_, RecordedEventKind::slack_begins, kHoistLine);
    slack_told_ = true;
  }
  if (!slack) slack_told_ = false;
  if (!slack && slack_ && long_enough) {
    end_slack();
    report.slack.push_back({slack_since_, now, 0.0, false});
    jerk_open_ = true;
  }
  slack_ = slack;
  if (!jerk_open_) return;
  SlackSpell& spell = report.slack.back();
  spell.jerk = std::max(spell.jerk, crew.line().hand);
  if (now >= spell.to + kJerkAfter) end_slack();
}

void Tally::end_slack() {
  if (!jerk_open_) return;
  jerk_open_ = false;
  const SlackSpell& spell = report.slack.back();
  note(spell.to, RecordedEventKind::slack_ends, kHoistLine, "", spell.jerk);
}

// A line that hangs slack as the run ends has a spell like any other, whose jerk nobody knows.
void Tally::keep_open_slack(double time) {
  if (slack_ && time - slack_since_ > kSlackLeast) report.slack.push_back({slack_since_, time, 0.0, true});
}

// Hooks that come down and are off again within half a second have not come to rest.
void Tally::watch_hooks(const SideWorld& world, const Crew& crew) {
  const double now = world.time();
  if (!world.hooks_on_pipe()) {
    if (!lift_open_) {
      report.hooks_off.push_back({now, now, 0.0, crew.move(), crew.going_down(), false});
      note(now, RecordedEventKind::hooks_lift);
    }
    lift_open_ = true;
    HookSpell& spell = report.hooks_off.back();
    spell.to = now;
    spell.lift = std::max(spell.lift, world.hook_lift());
    spell.off = spell.lift > hook_inside_;
  } else if (lift_open_ && now - report.hooks_off.back().to >= kSameLift) {
    end_lift();
  }
}

void Tally::end_lift() {
  lift_open_ = false;
  const HookSpell& spell = report.hooks_off.back();
  note(spell.to, RecordedEventKind::hooks_seat, "", "", spell.lift);
}

void Tally::close(double time) {
  if (move_ >= 0) end_move();
  report.seconds = time;
  const auto stronger = [](const TouchRun& a, const TouchRun& b) { return a.energy > b.energy; };
  std::stable_sort(report.touches.begin(), report.touches.end(), stronger);
  end_slack();
  keep_open_slack(time);
  if (lift_open_ && report.hooks_off.back().to < time) end_lift();
}

}  // namespace stowpath
