#include "sim/rehearsal/crew.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "sim/hoist/rope_geometry.h"
#include "sim/hoist/pull.h"
#include "sim/hoist/weights.h"

namespace stowpath {

namespace {

constexpr double kTakeUp = 1.0;              // of the line's weight, on hooking on [s]
constexpr double kPause = 1.5;               // to look, after a pin or the hook [s]
constexpr double kSettle = 1.0;              // after a move [s]
constexpr double kStart = 0.4, kStop = 0.3;  // to full speed and from it [s]
constexpr double kCreep = 0.02;              // least share of full speed
constexpr double kFeel = 1.5;                // how soon the hands take in what the line stretches by [s]
constexpr double kCatchUp = 2.0;             // times the usual speed, at most
constexpr double kMeet = 1.0;                // over which a fold line or a hand brings a joint to where it is meant [s]
constexpr double kFirm = 10.0;               // of a joint held by hand: its free frequency [rad/s]
constexpr double kFoldFall = 1.0;            // rope beyond the fold line's last pulley; judgement [m]
constexpr double kLooseFold = 0.05;          // slack of a fold line that nobody holds [m]
constexpr double kLift = 0.9;       // taking up weight, the crew do not lift the standing stair: at most this share
constexpr double kInsist = 2.0;     // how much harder a foot is drawn for every second that it does not come [1/s]
constexpr double kLoose = 0.03;     // of a line that is paid out, before they stop to look [m]
constexpr double kPatience = 6.0;   // with a line that hangs loose, or a pin that does not go in [s]
constexpr double kPinFits = 0.005;  // a pin goes in with its joint this near to straight; judgement [rad]
constexpr double kEase = 0.01;      // how fast the line is eased for a pin [m/s]
constexpr double kDraw = 15.0;      // of a foot drawn by hand: its free frequency [rad/s]

std::size_t index(int i) { return static_cast<std::size_t>(i); }

double smooth(double u) {
  const double v = std::clamp(u, 0.0, 1.0);
  return v * v * (3.0 - 2.0 * v);
}

ElasticLine elastic(const Rigging& rigging, double strength, double fall) {
  return {rigging, rope_stiffness(rigging.diameter, strength), fall};
}

bool frees_joints(MoveKind kind) { return kind == MoveKind::drag || kind == MoveKind::hang; }

// Of all sections from `first` on, about the joint that carries them.
struct Carried {
  double inertia = 0.0;  // [kg m2]
  double moment = 0.0;   // that holds them against gravity [N m]
};
Carried carried(const Model& model, const SideWorld& world, int first) {
  const SectionPoses X_W = world.poses();
  const Vec2 joint = X_W[index(first)] * model.linkage.proximal(first);
  Carried all;
  for (int j = first; j < model.linkage.sections; ++j) {
    const SectionMass& section = world.masses()[index(j)];
    const Vec2 arm = X_W[index(j)] * section.centre - joint;
    all.inertia += section.inertia + section.mass * norm_squared(arm);
    all.moment += section.mass * kGravity * arm.x;
  }
  return all;
}

// Turn of a section against the one above; of section 1 against plumb.
double turn_at(const SideWorld& world, int hinge) {
  constexpr double kPlumb = -0.5 * std::numbers::pi;
  const auto turns = world.turns();
  return turns[index(hinge + 1)] - (hinge < 0 ? kPlumb : turns[index(hinge)]);
}

double rate_at(const SideWorld& world, int hinge) {
  return world.motion(hinge + 1).rate - (hinge < 0 ? 0.0 : world.motion(hinge).rate);
}

}  // namespace

Crew::Crew(const Scene& scene, const Model& model, FrictionEnd friction, Orders orders)
    : scene_(scene),
      model_(model),
      speeds_(crew_speeds(scene)),
      orders_(std::move(orders)),
      roller_(scene, model, friction, orders_.hand) {
  const std::size_t hinges = scene.stair.hinges.size();
  held_.resize(hinges, false);
  holds_.resize(hinges);
  meant_.pose.lean = model.working_lean;
  meant_.pose.station = model.home.value_or(model.span.middle());
  if (orders_.no_pins.empty()) script_ = script_of(scene, model, orders_.comes_down);
  if (orders_.from && rolls_standing(model)) meant_.pose.station = free_station(scene, model, *orders_.from);
  if (!scene.hoist || !scene.hoist->ceiling_point) return;
  rig_ = lift_rig(scene, model, friction, PullOptions{}.hinge_radius);
  hoist_ = elastic(rig_->line, scene.hoist->line.strength.value_or(0.0), 0.0);
  if (rig_->fold_line) fold_ = elastic(*rig_->fold_line, 0.0, kFoldFall);
  measure_lines();
}

// From the pose meant, the station in it.
void Crew::measure_lines() {
  if (!rig_) return;
  meant_.line = rope_length(rig_->line, rig_->linkage, meant_.pose);
  if (fold_) fold_now_.length = rope_length(*rig_->fold_line, rig_->linkage, meant_.pose);
}

// A roll that has nowhere to go is over as it begins, and never at hand.
int Crew::move() const {
  if (next_ >= script_.size() || script_[next_].act != Act::go) return -1;
  const int move = script_[next_].move;
  return started_ || !rolls_standing(model_.moves[index(move)]) ? move : -1;
}

bool Crew::parked() const {
  return moved_ && !going_down_ && !stopped_ && (finished() || script_[next_].act == Act::park);
}

ZoneState Crew::state() const {
  if (parked()) return ZoneState::parked;
  if (at_standing_roll()) return ZoneState::standing;
  return moved_ && (!finished() || stopped_) ? ZoneState::moving : ZoneState::standing;
}

bool Crew::eases() const {
  return started_ && !finished() && (script_[next_].act == Act::hook_off || script_[next_].act == Act::pin);
}

bool Crew::at_standing_roll() const { return move() >= 0 && rolls_standing(model_.moves[index(move())]); }

bool Crew::along_rail() const {
  if (!started_ || move() < 0) return false;
  return roller_.under_way() || goes_along_raised(model_.moves[index(move())]);
}

void Crew::let_go() {
  hooked_on_ = on_cleat_ = fold_works_ = false;
  looks_on_ = true;
  line_now_ = {};
  stand_by();
}

void Crew::stand_by() {
  stopped_ = true;
  script_.clear();
  next_ = 0;
  foot_pull_ = waits_ = 0.0;
}

void Crew::give_up(std::string why) {
  gave_up_ = std::move(why);
  stand_by();
}

void Crew::work(SideWorld& world) {
  const double dt = world.step_length();
  begun_.reset();
  roller_.clear_news();
  if (!finished() && !started_) begin(world);
  clock_ += dt;
  go_on(world, dt);
  feed_lines(world, dt);
  pull_lines(world, dt);
  hold_joints(world, dt);
  draw_foot(world, dt);
}

void Crew::begin(SideWorld& world) {
  const ScriptStep& step = script_[next_];
  begun_ = step;
  started_ = true;
  clock_ = progress_ = waits_ = 0.0;
  if (step.act == Act::go) eased_ = 0.0;
  if (step.act == Act::unpin) set_pin(world, step.hinge, false);
  if (step.act == Act::hook_on) take_up(world);
  if (step.act == Act::park) make_fast();
  if (step.act == Act::lower_away) on_cleat_ = false;
  going_down_ = going_down_ || step.act == Act::lower_away;
  if (at_standing_roll()) {
    begin_roll(world.time() + world.step_length());
  } else if (step.act == Act::go) {
    begin_move(world);
  }
}

void Crew::make_fast() { on_cleat_ = hooked_on_ && scene_.hoist->cleat; }

void Crew::set_pin(SideWorld& world, int hinge, bool in) {
  auto pinned = world.pinned();
  pinned[index(hinge)] = in;
  if (in) held_[index(hinge)] = false;
  world.set_pinned(pinned);
}

bool Crew::pin_fits(const SideWorld& world, int hinge) const {
  return std::abs(turn_at(world, hinge)) < kPinFits && std::abs(rate_at(world, hinge)) < kPinFits;
}

// The fold line works a hinge that it spans and that turns; every other joint that turns or stays bent is held by hand.
void Crew::begin_move(const SideWorld& world) {
  const Move& doing = model_.moves[index(move())];
  path_ = move_path(rig(), model_, move(), speeds_);
  if (script_[next_].back) path_ = backwards(path_);
  moved_ = true;
  meant_ = path_.front();
  if (!hoist_ && !lean_held_) lean_hold_ = {turn_at(world, -1) - meant_.pose.lean, world.time()};
  lean_held_ = !hoist_;
  for (int k = 0; k < static_cast<int>(held_.size()); ++k) {
    const double turned = path_.back().pose.folds[index(k)] - path_.front().pose.folds[index(k)];
    const bool by_line = fold_ && rope_spans(fold_->rigging, k) && !world.pinned()[index(k)];
    const bool was = held_[index(k)];
    held_[index(k)] = !frees_joints(doing.kind) && !world.pinned()[index(k)] && !by_line;
    if (held_[index(k)] && !was)
      holds_[index(k)] = {turn_at(world, k) - model_.linkage.fold_sign[index(k)] * meant_.pose.folds[index(k)],
                          world.time()};
    if (!by_line || frees_joints(doing.kind)) continue;
    if (!fold_works_ && turned == 0.0) continue;
    if (fold_works_) continue;
    fold_from_ = fold_now_.length - meant_.fold;
    fold_feed_ = {fold_now_.length, 0.0};
    fold_since_ = world.time();
    fold_works_ = true;
  }
  if (frees_joints(doing.kind)) fold_works_ = false;
}

// As much as the next hauled move needs to hold its first pose, and not enough to lift the stair as it stands.
double Crew::first_pull() const {
  for (std::size_t i = next_; i < script_.size(); ++i) {
    if (script_[i].act != Act::go) continue;
    const PullSample first = sample_pull(*rig_, model_, index(script_[i].move), 0, 0.0);
    const double weight = weigh(scene_, model_).stair * kGravity;
    const double lifts = first.line_lever > 0.0 ? weight * first.centre_out / first.line_lever : 0.0;
    return first.holds ? std::clamp(first.hand_holding, 0.0, std::max(0.0, kLift * lifts)) : 0.0;
  }
  return 0.0;
}

void Crew::take_up(const SideWorld& world) {
  hooked_on_ = true;
  wanted_pull_ = first_pull();
  feed_.paid = line_pull(*hoist_, feed_, world, meant_.pose.station).length;
  follow_ = 0.0;
}

void Crew::go_on(SideWorld& world, double dt) {
  if (finished() || !started_) return;
  const ScriptStep step = script_[next_];
  watch_patience(world, dt);
  if (finished()) return;
  if (step.act == Act::go ? !go_along(dt) : !done(world)) return;
  if (step.act == Act::pin) set_pin(world, step.hinge, true);
  if (step.act == Act::hook_off) hooked_on_ = false;
  started_ = false;
  ++next_;
  if (parked()) make_fast();
}

// Whether what is no move has had its time.
bool Crew::done(const SideWorld& world) const {
  const ScriptStep& step = script_[next_];
  if (step.act == Act::park) return clock_ >= orders_.parked_for;
  if (step.act == Act::pin) return clock_ >= kPause && pin_fits(world, step.hinge);
  if (step.act == Act::hook_off) return clock_ >= kPause && line_now_.hand <= 0.0;
  return clock_ >= kPause + (step.act == Act::hook_on ? kTakeUp : 0.0);
}

// Back to where it was rolled from, on the way down.
void Crew::begin_roll(double now) {
  const ScriptStep& step = script_[next_];
  const double from = meant_.pose.station;
  const double there = model_.moves[index(step.move)].segments.front().to.station;
  if (!step.back) rolled_from_[step.move] = from;
  roller_.begin({step.move, step.back, from, step.back ? rolled_from_.at(step.move) : there}, now);
}

// Whether the move's end is reached.
bool Crew::go_along(double dt) {
  if (waits()) return false;
  if (at_standing_roll()) {
    if (roller_.under_way() && clock_ > dt) roller_.advance();
    meant_.pose.station = roller_.station();
    if (roller_.under_way()) return false;
    measure_lines();
    return true;
  }
  const double whole = path_.back().time, left = whole - progress_;
  progress_ += dt * std::clamp(std::min(clock_ / kStart, left / kStop), kCreep, 1.0);
  meant_ = on_path(path_, progress_);
  return left <= -kSettle * kCreep;  // past the end it creeps on: a pause
}

bool Crew::hangs_loose() const {
  return (hooked_on_ && line_now_.stretch < -kLoose) || (fold_works_ && fold_now_.stretch < -kLoose);
}

// On the way down a line that hangs loose holds nothing back: what it held is propped, or stays as it is.
void Crew::watch_patience(const SideWorld& world, double dt) {
  const ScriptStep& step = script_[next_];
  if (step.act == Act::pin && clock_ > kPause + kPatience && !pin_fits(world, step.hinge))
    return give_up("pin " + std::to_string(step.hinge + 1) + " does not go in: its joint is not straight");
  if (step.act != Act::go || !step.back || at_standing_roll()) return;
  waits_ = hangs_loose() ? waits_ + dt : 0.0;
  if (waits_ < kPatience) return;
  const bool line = hooked_on_ && line_now_.stretch < -kLoose;
  give_up(line ? "the hoist line hangs loose, and the stair does not follow it"
               : "the fold line hangs loose, and the section that it holds does not follow it");
}

// What the hands pay out is what the meant pose needs, less what the line stretches by, which they feel with a delay.
// They catch up no faster than at twice their speed, and haul no harder than they can.
void Crew::feed_one(const Hands& hands, double way, double& follow, LineFeed& feed, double dt) {
  const double felt = (std::max(0.0, hands.now.stretch) - follow) * dt / kFeel;
  follow += std::clamp(felt, -hands.speed * dt, hands.speed * dt);
  const double most = kCatchUp * hands.speed * dt;
  double change = std::clamp(way - follow - feed.paid, -most, most);
  if (change < 0.0 && hands.now.hand > hands.strength) {
    stalled_ = true;
    change = 0.0;
  }
  feed.speed = change / dt;
  feed.paid += change;
}

void Crew::feed_lines(const SideWorld& world, double dt) {
  stalled_ = false;
  if (hooked_on_) {
    const bool takes_up = started_ && script_[next_].act == Act::hook_on;
    const bool fits = eases() && script_[next_].act == Act::pin && pin_fits(world, script_[next_].hinge);
    if (eases() && !fits && line_now_.stretch > -kLoose) eased_ += kEase * dt;
    if (takes_up && line_now_.stiffness > 0.0) follow_ = smooth(clock_ / kTakeUp) * wanted_pull_ / line_now_.stiffness;
    if (takes_up) {
      const double paid = meant_.line - follow_;
      feed_.speed = (paid - feed_.paid) / dt;
      feed_.paid = paid;
    } else {
      feed_one({line_now_, speeds_.line, speeds_.strength}, meant_.line + eased_, follow_, feed_, dt);
    }
  }
  if (!fold_) return;
  if (!fold_works_) {
    fold_follow_ = 0.0;
    fold_feed_ = {fold_now_.length + kLooseFold, 0.0};
    return;
  }
  const double meets = fold_from_ * (1.0 - smooth((world.time() - fold_since_) / kMeet));
  feed_one({fold_now_, speeds_.fold_line, speeds_.by_hand}, meant_.fold + meets, fold_follow_, fold_feed_, dt);
}

void Crew::pull_lines(SideWorld& world, double dt) {
  const auto pull = [&](const ElasticLine& line, const LineFeed& feed) {
    const LinePull now = line_pull(line, feed, world, meant_.pose.station);
    for (const SectionLoad& load : now.loads) world.push(load.section, load.at, load.force);
    work_ -= now.hand * feed.speed * dt;
    swiftest_ = std::max(swiftest_, now.swiftness);
    return now;
  };
  if (hooked_on_) line_now_ = pull(*hoist_, feed_);
  if (!hooked_on_) line_now_ = {};
  if (fold_) fold_now_ = pull(*fold_, fold_feed_);
}

// Held firmly, with the weight borne: what is left over is a hand's give.
double Crew::hold_moment(const SideWorld& world, int hinge) const {
  const Hold& hold = hinge < 0 ? lean_hold_ : holds_[index(hinge)];
  const double pose =
      hinge < 0 ? meant_.pose.lean : model_.linkage.fold_sign[index(hinge)] * meant_.pose.folds[index(hinge)];
  const double meant = pose + hold.off * (1.0 - smooth((world.time() - hold.since) / kMeet));
  const Carried load = carried(model_, world, hinge + 1);
  const double off = turn_at(world, hinge) - meant;
  return load.moment - load.inertia * kFirm * (kFirm * off + 2.0 * rate_at(world, hinge));
}

void Crew::hold_joints(SideWorld& world, double dt) {
  if (looks_on_) return;
  const auto hold = [&](int hinge) {
    const double moment = hold_moment(world, hinge);
    world.turn(hinge, moment);
    work_ += moment * rate_at(world, hinge) * dt;
  };
  if (lean_held_) hold(-1);
  for (int k = 0; k < static_cast<int>(held_.size()); ++k)
    if (held_[index(k)] && !world.pinned()[index(k)]) hold(k);
}

// Someone stoops to the foot and draws it to where it is meant to stand: the harder the longer it sticks, but no harder
// than one can.
void Crew::draw_foot(SideWorld& world, double dt) {
  foot_pull_ = 0.0;
  if (!meant_.at_floor) foot_off_ = 0.0;
  if (!orders_.hand_at_foot || move() < 0 || at_standing_roll() || !script_[next_].back || !meant_.at_floor) return;
  const int last = model_.linkage.sections - 1;
  const Vec2 foot{model_.linkage.length[index(last)], 0.0};
  const double meant = (place_sections(model_.linkage, meant_.pose)[index(last)] * foot).x;
  const double off = (world.poses()[index(last)] * foot).x - meant, speed = world.point_velocity(last, foot).x;
  const double mass = world.masses()[index(last)].mass;
  const double most = speeds_.at_foot / (mass * kDraw * kDraw * kInsist);
  foot_off_ = std::clamp(foot_off_ + off * dt, -most, most);
  const double wanted = -mass * kDraw * (kDraw * (off + kInsist * foot_off_) + 2.0 * speed);
  foot_pull_ = std::clamp(wanted, -speeds_.at_foot, speeds_.at_foot);
  world.push(last, foot, {foot_pull_, 0.0});
  work_ += foot_pull_ * speed * dt;
}

}  // namespace stowpath
