#include "sim/clearance/findings.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace stowpath {
namespace {

/// Encounters that are told as one: the same two names, proven or not.
struct Key {
  std::string stair, room;
  bool zone = false;
  bool undecided = false;
  friend auto operator<=>(const Key&, const Key&) = default;
};

struct Group {
  std::vector<const Encounter*> all;
};

using Groups = std::map<Key, Group>;

Key key_of(const Encounter& e, bool undecided) {
  return {e.mover.name, e.target.name, e.target.kind == PartKind::zone, undecided};
}

bool proven(const Encounter& e) { return e.span.verdict == Verdict::interference; }

/// What could not be settled beside a proven violation of the same parts in the same move adds nothing to it.
bool told_already(const Encounter& e, const MoveTrial& move) {
  return std::any_of(move.encounters.begin(), move.encounters.end(),
                     [&](const Encounter& other) { return proven(other) && key_of(other, false) == key_of(e, false); });
}

Groups group(const std::vector<MoveTrial>& moves) {
  Groups out;
  for (const MoveTrial& move : moves) {
    for (const Encounter& e : move.encounters) {
      if (proven(e)) {
        out[key_of(e, false)].all.push_back(&e);
      } else if (!told_already(e, move)) {
        out[key_of(e, true)].all.push_back(&e);
      }
    }
  }
  return out;
}

FindingKind kind_of(const Key& key, const Encounter& worst) {
  if (key.undecided) return FindingKind::undecided;
  if (key.zone) return FindingKind::zone;
  return worst.least.at_most < 0.0 ? FindingKind::interference : FindingKind::margin;
}

std::string why_undecided(const Encounter& e) {
  if (!e.span.by_play) return "the clearance is within the proof's resolution of what is wanted";
  return e.need.play > 0.0 ? "it keeps the margin as drawn, but the play of hook and floor could use it up"
                           : "the rope or post is known only to within its enclosure";
}

int things_in_all(const TargetCast& room, const std::string& name) {
  std::set<double> things;
  for (std::size_t i = 0; i < room.roles.size(); ++i) {
    if (room.roles[i].name != name) continue;
    const Target& t = room.targets[static_cast<int>(i)];
    for (const Interval j : t.stations) things.insert(t.stations.size() > 1 ? j.middle() : room.roles[i].thing);
  }
  return static_cast<int>(things.size());
}

void add_moves(const Model& model, const Group& group, Finding& f) {
  std::set<int> numbers;
  for (const Encounter* e : group.all) numbers.insert(e->move);
  for (const int n : numbers) {
    f.moves.push_back(model.moves[static_cast<std::size_t>(n)].index);
    f.move_kinds.push_back(model.moves[static_cast<std::size_t>(n)].kind);
  }
}

/// The encounter that matters most: the deepest, or the one that lacks most of its margin.
const Encounter& worst_of(const Group& group) {
  return **std::min_element(group.all.begin(), group.all.end(), [](const Encounter* a, const Encounter* b) {
    return a->least.at_most - a->need.margin < b->least.at_most - b->need.margin;
  });
}

Finding tell(const Model& model, const Trial& trial, const Key& key, const Group& group) {
  const Encounter& worst = worst_of(group);
  Finding f;
  f.kind = kind_of(key, worst);
  f.parts = {key.stair, key.room};
  f.part_kinds = {worst.mover.kind, worst.target.kind};
  add_moves(model, group, f);
  const auto order = [](const Encounter* a, const Encounter* b) {
    return std::tuple(a->move, a->span.u0) < std::tuple(b->move, b->span.u0);
  };
  f.from = (*std::min_element(group.all.begin(), group.all.end(), order))->from;
  f.to = (*std::max_element(group.all.begin(), group.all.end(), [](const Encounter* a, const Encounter* b) {
           return std::tuple(a->move, a->span.u1) < std::tuple(b->move, b->span.u1);
         }))->to;
  std::set<double> things;
  for (const Encounter* e : group.all) {
    f.stations.insert(f.stations.end(), e->stations.begin(), e->stations.end());
    things.insert(e->things.begin(), e->things.end());
  }
  f.stations = unite(std::move(f.stations));
  f.things = static_cast<int>(things.size());
  const ZoneState state = model.moves[static_cast<std::size_t>(worst.move)].state;
  f.things_in_all = worst.target.section >= 0 ? f.things : things_in_all(trial.room(state), key.room);
  f.worst = worst.at;
  f.clearance = worst.least.at_most;
  f.needed = worst.need.margin;
  f.play = worst.need.play;
  f.witness = worst.worst.witness;
  f.outlines = worst.outlines;
  if (key.undecided) f.note = why_undecided(worst);
  return f;
}

/// Gravest first: what meets, then zones, margins, rules of building, and last what is undecided.
int rank(FindingKind kind) {
  switch (kind) {
    case FindingKind::interference:
      return 0;
    case FindingKind::zone:
      return 1;
    case FindingKind::margin:
      return 2;
    case FindingKind::build:
      return 3;
    case FindingKind::undecided:
      return 4;
  }
  return 5;
}

std::vector<Finding> build_findings(const Model& model) {
  std::vector<Finding> out;
  for (const BuildFault& fault : model.faults) {
    Finding f;
    f.kind = FindingKind::build;
    for (std::size_t i = 0; i < std::min<std::size_t>(2, fault.parts.size()); ++i) f.parts[i] = fault.parts[i];
    f.note = fault.text;
    f.from.lean = f.to.lean = f.worst.lean = model.working_lean;
    out.push_back(std::move(f));
  }
  return out;
}

}  // namespace

std::vector<Finding> gather_findings(const Model& model, const Trial& trial, const std::vector<MoveTrial>& moves) {
  std::vector<Finding> out;
  for (const auto& [key, group] : group(moves)) out.push_back(tell(model, trial, key, group));
  for (Finding& f : lead_line_findings(model)) out.push_back(std::move(f));
  for (Finding& f : build_findings(model)) out.push_back(std::move(f));
  std::stable_sort(out.begin(), out.end(), [](const Finding& a, const Finding& b) {
    return std::tuple(rank(a.kind), a.clearance - a.needed) < std::tuple(rank(b.kind), b.clearance - b.needed);
  });
  for (std::size_t i = 0; i < out.size(); ++i) out[i].id = "F" + std::to_string(i + 1);
  return out;
}

}  // namespace stowpath
