#include "sim/remedy/judge.h"

#include <algorithm>

#include "sim/clearance/findings.h"

namespace stowpath {
namespace {

constexpr double kSlack = 1.5e-4;  // two clearances, each known to 0.1 mm [m]

int graveness(FindingKind kind) {
  switch (kind) {
    case FindingKind::undecided:
      return 0;
    case FindingKind::margin:
      return 1;
    default:
      return 2;
  }
}

bool holds(const std::vector<int>& moves, int move) {
  return std::find(moves.begin(), moves.end(), move) != moves.end();
}

// Moves that were clear before: worse than any depth can say.
bool further_moves(const Finding& before, const Finding& after) {
  const auto known = [&](int move) { return holds(before.moves, move) || holds(before.undecided_moves, move); };
  return !std::all_of(after.moves.begin(), after.moves.end(), known) ||
         !std::all_of(after.undecided_moves.begin(), after.undecided_moves.end(), known);
}

// Of the hooks' seat: less arc is left, or none.
bool less_seated(const Finding& before, const Finding& after) {
  return after.kind == FindingKind::seat && after.missing_margin() > before.missing_margin() + kSlack;
}

bool worse_than(const Finding& before, const Finding& after) {
  return less_seated(before, after) || graveness(after.kind) > graveness(before.kind) || after.things > before.things ||
         lacking_of(after) > lacking_of(before) + kSlack || further_moves(before, after);
}

const Finding* counterpart(const std::vector<Finding>& findings, const Finding& of) {
  const auto found =
      std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return same_matter(f, of); });
  return found != findings.end() ? &*found : nullptr;
}

}  // namespace

bool same_matter(const Finding& a, const Finding& b) {
  const bool build = a.kind == FindingKind::build, zone = a.part_kinds[1] == PartKind::zone;
  if (build != (b.kind == FindingKind::build) || zone != (b.part_kinds[1] == PartKind::zone)) return false;
  if (build) return a.parts == b.parts;
  return a.parts[1] == b.parts[1] && told_as(a.part_kinds[0], a.parts[0]) == told_as(b.part_kinds[0], b.parts[0]);
}

double lacking_of(const Finding& finding) {
  const bool distance = finding.kind != FindingKind::build && finding.kind != FindingKind::seat;
  return distance ? finding.needed - finding.clearance : 0.0;
}

Judgement judge(const std::vector<Finding>& before, const std::vector<Finding>& after, const Finding& target) {
  Judgement out;
  out.cured = true;
  for (const Finding& now : after) {
    const bool aimed_at = same_matter(now, target);
    const Finding* then = counterpart(before, now);
    if (aimed_at) out.cured = false;
    if (!aimed_at && then && !worse_than(*then, now)) continue;
    out.against.push_back(&now);
    const double more = aimed_at || !then ? lacking_of(now) : lacking_of(now) - lacking_of(*then) - kSlack;
    out.lacking = std::max(out.lacking, more);
  }
  return out;
}

}  // namespace stowpath
