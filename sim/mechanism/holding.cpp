#include "sim/mechanism/holding.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <optional>
#include <string>

#include "sim/mechanism/joint_hold.h"
#include "sim/trade/length.h"

namespace stowpath {

namespace {

constexpr double kStep = std::numbers::pi / 180.0;   // of the walk, of the section that turns most [rad]
constexpr double kPlumb = std::numbers::pi / 180.0;  // a stair this near to plumb hangs plumb [rad]
constexpr int kMostSteps = 400;

std::size_t index(int j) { return static_cast<std::size_t>(j); }

bool is_event(StepKind kind) {
  return kind == StepKind::pin || kind == StepKind::unpin || kind == StepKind::hook_on || kind == StepKind::hook_off;
}

const char* word_for(StepKind kind) {
  switch (kind) {
    case StepKind::roll:
      return "roll";
    case StepKind::lift:
      return "lift";
    case StepKind::fold:
      return "fold";
    case StepKind::together:
      return "together";
    case StepKind::drag:
      return "drag";
    case StepKind::hang:
      return "hang";
    case StepKind::pin:
      return "pin";
    case StepKind::unpin:
      return "unpin";
    case StepKind::hook_on:
      return "hook on";
    case StepKind::hook_off:
      return "hook off";
  }
  return "";
}

/// Where something is first held by nothing.
struct Loose {
  int step = 0;  ///< counted from 1
  StepKind kind = StepKind::lift;
  Configuration at;
  JointHold why = JointHold::opens;
  std::optional<double> folds_to{};  ///< the move turns this joint, to this fold [rad]
  std::vector<int> moves{};          ///< numbers in Model::moves
};

int steps_of(const Linkage& linkage, const Segment& segment) {
  const auto from = section_leans(linkage, segment.from), to = section_leans(linkage, segment.to);
  double turn = 0.0;
  for (std::size_t j = 0; j < from.size(); ++j) turn = std::max(turn, std::abs(to[j] - from[j]));
  return static_cast<int>(std::clamp(std::ceil(turn / kStep), 1.0, double{kMostSteps}));
}

/// Goes through the procedure once and notes what is loose, first place by first place.
class Watch {
 public:
  Watch(const Scene& scene, const Model& model)
      : scene_(scene), stops_{scene, model}, loads_(joint_loads(scene, model)) {}
  std::vector<BuildFault> faults();

 private:
  void step(int number);
  void event(const Step& step, int number);
  void move(int which);
  void park();
  void walk(const Segment& segment);
  void look(HeldPose pose, const Segment& segment, bool at_end);
  void note(int body, JointHold why, const HeldPose& pose, const Segment& segment);
  bool swings_through(const HeldPose& pose, const Segment& segment, int hinge) const;
  bool stair_held(const HeldPose& pose) const;
  std::string stair_text(const Loose& loose) const;
  std::string joint_text(int hinge, const Loose& loose) const;
  int move_of(int step) const;

  const Model& model() const { return stops_.model; }

  const Scene& scene_;
  JointStops stops_;
  JointLoads loads_;
  std::map<int, Loose> loose_{};  // by hinge; -1: the whole stair
  int step_ = 0, move_ = -1;
  bool hooked_on_ = false, was_on_ = false;
  std::vector<bool> pinned_ = std::vector<bool>(scene_.stair.hinges.size(), true);
  Configuration now_{};
};

int Watch::move_of(int step) const {
  for (std::size_t i = 0; i < model().moves.size(); ++i)
    if (model().moves[i].index == step && !is_state(model().moves[i].kind)) return static_cast<int>(i);
  return -1;
}

void Watch::step(int number) {
  const Step& step = scene_.procedure[index(number - 1)];
  step_ = number;
  move_ = -1;
  if (is_event(step.kind)) return event(step, number);
  if (const int which = move_of(number); which >= 0) move(which);
}

void Watch::event(const Step& step, int number) {
  if (step.kind == StepKind::hook_on) hooked_on_ = was_on_ = true;
  if (step.kind == StepKind::hook_off) hooked_on_ = false;
  if (step.kind == StepKind::pin) pinned_[index(step.hinge - 1)] = true;
  if (step.kind == StepKind::unpin) pinned_[index(step.hinge - 1)] = false;
  const bool last = number == static_cast<int>(scene_.procedure.size());
  // A pin pulled without a line is told by the procedure's own rules; one pulled before a move is looked at with that.
  const bool told = step.kind == StepKind::unpin && (!last || (scene_.hoist && !hooked_on_));
  if (step.kind == StepKind::hook_off || (step.kind == StepKind::unpin && !told))
    look({now_, hooked_on_, pinned_, {}}, {SegmentKind::straight, now_, now_, {}, {1.0, 0.0}}, true);
}

void Watch::move(int which) {
  const Move& move = model().moves[index(which)];
  move_ = which;
  now_ = move.segments.back().to;
  if (stands_over_stations(move)) {
    now_.lean = model().working_lean;
    return;
  }
  for (const Segment& segment : move.segments) walk(segment);
}

// The state that the last step leaves: its pose has been looked at, and what is loose in it stays so.
void Watch::park() {
  const std::vector<Move>& moves = model().moves;
  if (moves.empty() || moves.back().kind != MoveKind::park) return;
  move_ = static_cast<int>(moves.size()) - 1;
  const Segment& still = moves.back().segments.front();
  look({still.to, hooked_on_, pinned_, {}}, still, true);
}

void Watch::walk(const Segment& segment) {
  const int steps = steps_of(model().linkage, segment);
  HeldPose pose{{}, hooked_on_, pinned_, {}};
  for (std::size_t k = 0; k < pose.turning.size(); ++k) pose.turning[k] = segment.from.folds[k] != segment.to.folds[k];
  for (int i = 0; i <= steps; ++i) {
    pose.at = i < steps ? at(model().linkage, segment, static_cast<double>(i) / steps) : segment.to;
    look(pose, segment, i == steps);
  }
}

bool Watch::stair_held(const HeldPose& pose) const {
  return pose.hooked_on || stands(model(), pose.at) || pivot_off_plumb(loads_, pose.at) <= kPlumb;
}

// Whether the move takes the joint the way that its weight swings it, as far as plumb.
bool Watch::swings_through(const HeldPose& pose, const Segment& segment, int hinge) const {
  const auto k = index(hinge);
  const double way = segment.to.folds[k] - segment.from.folds[k];
  const JointBalance here = balance_of(loads_, pose.at, hinge, pose.hooked_on);
  return here.weight * way > 0.0;
}

void Watch::look(HeldPose pose, const Segment& segment, bool at_end) {
  if (!stair_held(pose)) note(-1, JointHold::opens, pose, segment);
  const std::vector<JointState> holds = joint_holds(loads_, stops_, pose);
  for (int k = 0; k < static_cast<int>(holds.size()); ++k) {
    const JointState& state = holds[index(k)];
    if (state.hold == JointHold::held) continue;
    if (state.near_plumb && !at_end && swings_through(pose, segment, k)) continue;
    note(k, state.hold, pose, segment);
  }
}

void Watch::note(int body, JointHold why, const HeldPose& pose, const Segment& segment) {
  Loose first{step_, scene_.procedure[index(step_ - 1)].kind, pose.at, why};
  if (body >= 0 && pose.turning[index(body)]) first.folds_to = segment.to.folds[index(body)];
  Loose& loose = loose_.try_emplace(body, first).first->second;
  if (move_ >= 0 && (loose.moves.empty() || loose.moves.back() != move_)) loose.moves.push_back(move_);
}

std::string Watch::stair_text(const Loose& loose) const {
  const std::string step = "step " + std::to_string(loose.step);
  if (loose.kind == StepKind::hook_off)
    return step + " takes the hoist line off while the stair is off the floor, at a lean of " +
           format_degrees(Nominal{loose.at.lean}) +
           ", and nothing holds it there; leave the line on, or bring the stair back to "
           "its casters first";
  const std::string remedy = !scene_.hoist ? "describe a `hoist` and write `hook on: hoist` before that step"
                                           : "write `hook on: hoist` before that step";
  return "in " + step + " (" + word_for(loose.kind) +
         ") the stair is off the floor and no line is on: nothing holds it, "
         "first at a lean of " +
         format_degrees(Nominal{loose.at.lean}) + "; " + remedy;
}

std::string why_text(JointHold why, int hinge) {
  const std::string upper = std::to_string(hinge + 1);
  switch (why) {
    case JointHold::buckles:
      return "it stands unpinned and no line is on";
    case JointHold::sinks:
      return "its weight swings it down towards plumb, and no line pulls the other way";
    case JointHold::closes:
      return "its weight lets it fall on, towards section " + upper + ", and no line pulls the other way";
    case JointHold::wrong_pull:
      return "its weight opens the joint, and the fold line's pull does not close it";
    case JointHold::other_joint:
      return "the fold line, tight enough for the other joint, does not hold this one too";
    default:
      return "its weight opens the joint";
  }
}

std::string remedy_for(JointHold why, int hinge, bool fold_line) {
  const std::string upper = std::to_string(hinge + 1), lower = std::to_string(hinge + 2);
  if (why == JointHold::buckles) return "leave the line on until the joint is pinned again";
  if (why == JointHold::sinks)
    return "let it down to plumb with `drag` and `hang` before it is folded, or keep it pinned";
  if (why == JointHold::closes)
    return "lean the stair less while it is folded, so that its weight pulls against the line up to the hinge's limit";
  if (why == JointHold::other_joint)
    return "fold one joint while the other is pinned, hangs plumb or lies at its limit";
  if (fold_line)
    return "lead the `fold line` so that it pulls section " + lower + " towards section " + upper + " there";
  return "give a `fold line` from section " + upper + " to section " + lower;
}

bool runs_over(const JointLoads& loads, int hinge) {
  for (std::size_t i = 0; i + 1 < loads.fold_line.size(); ++i)
    if ((loads.fold_line[i].section <= hinge) != (loads.fold_line[i + 1].section <= hinge)) return true;
  return false;
}

std::string Watch::joint_text(int hinge, const Loose& loose) const {
  const std::string section = "section " + std::to_string(hinge + 2), joint = "hinge " + std::to_string(hinge + 1);
  const std::string step = "step " + std::to_string(loose.step);
  const std::string fold = format_degrees(Nominal{loose.at.folds[index(hinge)]});
  const std::string where = "first at a fold of " + fold + " and a lean of " + format_degrees(Nominal{loose.at.lean});
  const std::string start = loose.folds_to ? step + " folds " + joint + " to " + format_degrees(Nominal{*loose.folds_to}) +
                                                 ", and nothing holds " + section + " on the way (" + where + ")"
                                           : "in " + step + " (" + word_for(loose.kind) + ") nothing holds " + section +
                                                 " at " + joint + ", " + where;
  return start + ": " + why_text(loose.why, hinge) + "; " + remedy_for(loose.why, hinge, runs_over(loads_, hinge));
}

std::vector<BuildFault> Watch::faults() {
  now_.lean = model().working_lean;
  for (int n = 1; n <= static_cast<int>(scene_.procedure.size()); ++n) step(n);
  park();
  std::vector<BuildFault> out;
  for (const auto& [body, loose] : loose_) {
    if (body < 0)
      out.push_back({stair_text(loose), {"stair", "hoist line"}, loose.moves});
    else
      out.push_back({joint_text(body, loose),
                     {"section " + std::to_string(body + 2), "hinge " + std::to_string(body + 1)},
                     loose.moves});
  }
  return out;
}

}  // namespace

std::vector<BuildFault> holding_faults(const Scene& scene, const Model& model) { return Watch(scene, model).faults(); }

}  // namespace stowpath
