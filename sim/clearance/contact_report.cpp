#include "sim/clearance/contact_report.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "sim/clearance/cast.h"
#include "sim/clearance/proof.h"
#include "sim/mechanism/rope_slabs.h"

namespace stowpath {
namespace {

constexpr double kTolerance = 1e-4;  // [m]

using Key = std::tuple<int, std::string, std::string>;

class Collector {
 public:
  explicit Collector(const Model& model) : model_(model) {}

  std::vector<MeantContact> collect() {
    for (const Move& move : model_.moves) {
      for (const Segment& segment : move.segments) {
        room(move, segment);
        for (int base = 0; base < model_.linkage.sections; ++base) section(move, segment, base);
      }
    }
    for (const RoomRope& rope : model_.room_ropes)
      for (const RoomPart& part : model_.room) fixed(rope, part);
    std::vector<MeantContact> out;
    for (auto& [key, contact] : found_) out.push_back(std::move(contact));
    return out;
  }

 private:
  void room(const Move& move, const Segment& segment) {
    const TargetCast targets = room_cast(model_, move.state, move.hooked_on);
    const NeedTable needs = room_needs(model_, wander_in(model_, move));
    for (const Stretch& stretch : room_stretches(model_, move, segment)) {
      MoverCast movers = stair_cast(model_, move, stretch.segment);
      allow_contacts(model_, stretch.state, needs, targets, movers);
      take({model_.linkage, stretch.segment, kRoom, movers.movers, targets.targets, needs}, stretch.state, move, movers,
           targets);
    }
  }

  void section(const Move& move, const Segment& segment, int base) {
    const TargetCast targets = section_cast(model_, move, base);
    const NeedTable needs = section_needs(model_, wander_in(model_, move));
    for (const Stretch& stretch : section_stretches(model_, move, segment, base)) {
      MoverCast movers = beyond_cast(model_, move, segment, base);
      allow_contacts(model_, stretch.state, needs, targets, movers);
      take({model_.linkage, stretch.segment, base, movers.movers, targets.targets, needs}, stretch.state, move, movers,
           targets);
    }
  }

  void take(const ProofStage& stage, const ContactState& state, const Move& move, const MoverCast& movers,
            const TargetCast& targets) {
    for (std::size_t m = 0; m < movers.movers.size(); ++m) {
      if (movers.movers[m].only_pairs) continue;
      for (const PairNeed& pair : movers.movers[m].pairs) {
        const Role &a = movers.roles[m], &b = targets.roles[static_cast<std::size_t>(pair.target)];
        const Least least = least_of_pair(stage, static_cast<int>(m), pair.target, 0.0, 1.0, kTolerance);
        note(rule_of(state, a.id, b.id), a.name, b.name, move.index, -least.at_most);
      }
    }
  }

  /// What stays where it is in the room is at no move.
  void fixed(const RoomRope& rope, const RoomPart& part) {
    for (std::size_t i = 0; i < model_.contacts.size(); ++i) {
      if (!model_.contacts[i].names(rope.id, part.id) || part.id == rope.id) continue;
      for (const RoomPart& slab : rope_slabs(rope, 0.0, 0.0)) {
        const Gaps gaps = rail_gaps(slab.stations, part.stations, {0.0, 0.0}, true);
        const double d = signed_distance(Outline(slab.outline), Outline(part.outline));
        note(static_cast<int>(i), rope.name, part.name, -1, -prism_clearance(d, gaps.least, gaps.overlap));
      }
    }
  }

  int rule_of(const ContactState& state, int a, int b) const {
    for (std::size_t i = 0; i < model_.contacts.size(); ++i)
      if (state.counts(model_.contacts[i]) && model_.contacts[i].names(a, b)) return static_cast<int>(i);
    return 0;
  }

  void note(int rule, const std::string& a, const std::string& b, int move, double depth) {
    auto [place, is_new] = found_.try_emplace({rule, a, b}, MeantContact{rule, {a, b}, {}, depth, move});
    MeantContact& contact = place->second;
    if (move >= 0 && (contact.moves.empty() || contact.moves.back() != move)) contact.moves.push_back(move);
    if (depth > contact.deepest) contact.deepest = depth, contact.move = move;
  }

  const Model& model_;
  std::map<Key, MeantContact> found_;
};

template <class Thing>
void add_names(const std::vector<Thing>& things, const std::vector<int>& ids, std::set<std::string>& names) {
  for (const Thing& thing : things)
    if (std::find(ids.begin(), ids.end(), thing.id) != ids.end()) names.insert(thing.name);
}

std::size_t names_of(const Model& model, const std::vector<int>& ids) {
  std::set<std::string> names;
  add_names(model.stair, ids, names);
  add_names(model.ropes, ids, names);
  add_names(model.room, ids, names);
  return names.size();
}

}  // namespace

std::vector<MeantContact> meant_contacts(const Model& model) { return Collector(model).collect(); }

std::size_t count_meant_contacts(const Model& model) {
  std::size_t count = 0;
  for (const ContactRule& rule : model.contacts) count += names_of(model, rule.a) * names_of(model, rule.b);
  return count;
}

}  // namespace stowpath
