#include "sim/clearance/findings.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "sim/clearance/fixed_line.h"
#include "sim/clearance/hoist_findings.h"

namespace stowpath {
namespace {

/// Encounters that are told as one: all that is built into the stair's body counts as one part, and so does a hook.
struct Key {
  std::string stair, room;
  bool zone = false;
  friend auto operator<=>(const Key&, const Key&) = default;
};

struct Group {
  std::vector<const Encounter*> proven, undecided;
};

using Groups = std::map<Key, Group>;

Groups group(const std::vector<MoveTrial>& moves) {
  Groups out;
  for (const MoveTrial& move : moves) {
    for (const Encounter& e : move.encounters) {
      Group& g = out[{told_as(e.mover.kind, e.mover.name), e.target.name, e.target.kind == PartKind::zone}];
      (e.span.verdict == Verdict::interference ? g.proven : g.undecided).push_back(&e);
    }
  }
  return out;
}

FindingKind kind_of(const Encounter& worst) {
  if (worst.span.verdict == Verdict::undecided) return FindingKind::undecided;
  if (worst.target.kind == PartKind::zone) return FindingKind::zone;
  return worst.least.at_most < 0.0 ? FindingKind::interference : FindingKind::margin;
}

std::string why_undecided(const Encounter& e) {
  if (e.least.at_most < e.need.margin)
    return "what is drawn stands out of the true rope or post by more than is missing";
  if (e.need.play > 0.0) return "it keeps the margin as drawn, but the play of hook and floor could use it up";
  return "the clearance is within the proof's resolution of what is wanted";
}

int things_in_all(const TargetCast& room, const std::string& name) {
  std::set<double> things;
  for (std::size_t i = 0; i < room.roles.size(); ++i) {
    if (room.roles[i].name != name) continue;
    const Target& t = room.targets[static_cast<int>(i)];
    for (const Interval j : t.stations) things.insert(thing_number(t, room.roles[i], j));
  }
  return static_cast<int>(things.size());
}

using Encounters = std::vector<const Encounter*>;

std::set<int> moves_of(const Encounters& all) {
  std::set<int> numbers;
  for (const Encounter* e : all) numbers.insert(e->move);
  return numbers;
}

/// The moves in which it is proven; those where the same parts stay undecided are told apart.
void tell_moves(const Model& model, const Encounters& told, const Encounters& undecided, Finding& f) {
  const std::set<int> proven = moves_of(told);
  const auto move = [&](int n) -> const Move& { return model.moves[static_cast<std::size_t>(n)]; };
  for (const int n : proven) {
    f.moves.push_back(move(n).index);
    f.move_kinds.push_back(move(n).kind);
  }
  for (const int n : moves_of(undecided)) {
    if (proven.contains(n)) continue;
    f.undecided_moves.push_back(move(n).index);
    f.undecided_kinds.push_back(move(n).kind);
  }
}

/// The encounter that matters most: the one that lacks most of its margin.
const Encounter& worst_of(const Encounters& all) {
  return **std::min_element(all.begin(), all.end(), [](const Encounter* a, const Encounter* b) {
    return a->least.at_most - a->need.margin < b->least.at_most - b->need.margin;
  });
}

/// How much less than `witnessed` the clearance may be in any of them.
double unsettled_below(double witnessed, const Encounters& all) {
  double least = witnessed;
  for (const Encounter* e : all) least = std::min(least, e->least.at_least);
  return witnessed - least;
}

/// First and last pose in the procedure's order.
void tell_poses(const Encounters& all, Finding& f) {
  const auto along = [](const Encounter* e, double u) {
    return std::tuple(e->move, e->part, e->place.piece.lo + u * e->place.piece.length());
  };
  const auto starts = [&](const Encounter* a, const Encounter* b) {
    return along(a, a->span.u0) < along(b, b->span.u0);
  };
  const auto ends = [&](const Encounter* a, const Encounter* b) { return along(a, a->span.u1) < along(b, b->span.u1); };
  f.from = (*std::min_element(all.begin(), all.end(), starts))->from;
  f.to = (*std::max_element(all.begin(), all.end(), ends))->to;
}

/// The stretches, cut to where rail and hooks let the stair's middle be: what is met where it cannot stand (a floor
/// that has no end) is met nowhere.
IntervalSet where_it_can_stand(const IntervalSet& stations, Interval span) {
  IntervalSet out;
  for (const Interval stretch : stations) {
    const Interval part = meet(stretch, span);
    if (!part.empty()) out.push_back(part);
  }
  return out.empty() ? stations : out;
}

/// Stations, and how many of the room's like things are met.
void tell_places(const Model& model, const Trial& trial, const Encounters& all, const Encounter& worst, Finding& f) {
  std::set<double> things;
  for (const Encounter* e : all) {
    f.stations.insert(f.stations.end(), e->stations.begin(), e->stations.end());
    things.insert(e->things.begin(), e->things.end());
  }
  f.stations = where_it_can_stand(unite(std::move(f.stations)), model.span);
  f.things = static_cast<int>(things.size());
  const Move& move = model.moves[static_cast<std::size_t>(worst.move)];
  f.things_in_all = worst.target.section >= 0 ? f.things : things_in_all(trial.room(move.state, move.hooked_on), worst.target.name);
}

std::vector<std::string> other_parts(const Encounters& all, const std::string& told) {
  std::vector<std::string> out;
  for (const Encounter* e : all) {
    if (e->mover.name != told && std::find(out.begin(), out.end(), e->mover.name) == out.end())
      out.push_back(e->mover.name);
  }
  return out;
}

Finding tell(const Model& model, const Trial& trial, const Group& group) {
  const Encounters& all = group.proven.empty() ? group.undecided : group.proven;
  const Encounter& worst = worst_of(all);
  Finding f;
  f.kind = kind_of(worst);
  f.parts = {worst.mover.name, worst.target.name};
  f.also = other_parts(all, worst.mover.name);
  f.part_kinds = {worst.mover.kind, worst.target.kind};
  tell_moves(model, all, group.undecided, f);
  tell_poses(all, f);
  tell_places(model, trial, all, worst, f);
  f.worst = worst.at;
  f.place = worst.place;
  f.clearance = worst.least.at_most;
  f.unsettled = unsettled_below(f.clearance, all);
  f.needed = worst.need.margin;
  f.play = worst.need.play;
  f.witness = worst.worst.witness;
  f.outlines = worst.outlines;
  if (f.kind == FindingKind::undecided) f.note = why_undecided(worst);
  return f;
}

/// Gravest first: what meets, then hooks that come off, zones, margins, rules of building, and last what is undecided.
int rank(FindingKind kind) {
  switch (kind) {
    case FindingKind::interference:
      return 0;
    case FindingKind::seat:
      return 1;
    case FindingKind::zone:
      return 2;
    case FindingKind::margin:
      return 3;
    case FindingKind::build:
      return 4;
    case FindingKind::undecided:
      return 5;
  }
  return 6;
}

std::vector<Finding> build_findings(const Model& model) {
  std::vector<Finding> out;
  for (const BuildFault& fault : model.faults) {
    Finding f;
    f.kind = FindingKind::build;
    for (std::size_t i = 0; i < std::min<std::size_t>(2, fault.parts.size()); ++i) f.parts[i] = fault.parts[i];
    f.note = fault.text;
    f.from.lean = f.to.lean = f.worst.lean = model.working_lean;
    for (const int number : fault.moves) {
      f.moves.push_back(model.moves[static_cast<std::size_t>(number)].index);
      f.move_kinds.push_back(model.moves[static_cast<std::size_t>(number)].kind);
    }
    out.push_back(std::move(f));
  }
  return out;
}

}  // namespace

std::string told_as(PartKind kind, const std::string& name) {
  switch (kind) {
    case PartKind::side_rail:
    case PartKind::tread:
    case PartKind::scab:
    case PartKind::spacer_block:
    case PartKind::lock_pin:
    case PartKind::hinge:
    case PartKind::caster_plate:
    case PartKind::caster_block:
      return "the stair's body";
    case PartKind::hook:
      return "a hook";
    default:
      return name;
  }
}

std::vector<Finding> gather_findings(const Model& model, const Trial& trial, const std::vector<MoveTrial>& moves) {
  std::vector<Finding> out;
  for (const auto& [key, group] : group(moves)) out.push_back(tell(model, trial, group));
  for (Finding& f : fixed_line_findings(model)) out.push_back(std::move(f));
  for (Finding& f : block_findings(model)) out.push_back(std::move(f));
  for (Finding& f : fall_findings(model)) out.push_back(std::move(f));
  for (Finding& f : build_findings(model)) out.push_back(std::move(f));
  rank_findings(out);
  return out;
}

void rank_findings(std::vector<Finding>& findings) {
  std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
    return std::tuple(rank(a.kind), a.clearance - a.needed) < std::tuple(rank(b.kind), b.clearance - b.needed);
  });
  for (std::size_t i = 0; i < findings.size(); ++i) findings[i].id = "F" + std::to_string(i + 1);
}

}  // namespace stowpath
