#include "render/report/words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "sim/mechanism/pivot_play.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

struct Plural {
  std::string_view one, many;
};

// What the room has several of, as counted in "at 3 of 8 brackets".
Plural thing_words(PartKind kind) {
  switch (kind) {
    case PartKind::bracket:
      return {"bracket", "brackets"};
    case PartKind::pipe_joint:
      return {"pipe joint", "pipe joints"};
    case PartKind::rail_stop:
      return {"rail stop", "rail stops"};
    default:
      return {"place", "places"};
  }
}

std::string things_text(const Finding& finding) {
  if (finding.things_in_all <= 1) return "";
  const Plural words = thing_words(finding.part_kinds[1]);
  const std::string all = std::to_string(finding.things_in_all);
  if (finding.things < finding.things_in_all)
    return " at " + std::to_string(finding.things) + " of " + all + " " + std::string(words.many);
  return finding.things_in_all == 2 ? " at both " + std::string(words.many)
                                    : " at all " + all + " " + std::string(words.many);
}

std::string_view doing_words(MoveKind kind) {
  switch (kind) {
    case MoveKind::stand:
      return "standing";
    case MoveKind::roll:
      return "rolling";
    case MoveKind::lift:
      return "lifting";
    case MoveKind::fold:
      return "folding";
    case MoveKind::together:
      return "lifting and folding together";
    case MoveKind::drag:
      return "dragging the foot";
    case MoveKind::hang:
      return "lifting with the lower section hanging";
    case MoveKind::park:
      return "parked";
  }
  return "";
}

std::string listed(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " and " : ", ";
    out += words[i];
  }
  return out;
}

// "1, 4 to 7": the steps that move.
std::string runs_of_moves(const Finding& finding) {
  std::vector<std::string> runs;
  for (std::size_t i = 0; i < finding.moves.size(); ++i) {
    if (is_state(finding.move_kinds[i])) continue;
    std::size_t last = i;
    while (last + 1 < finding.moves.size() && !is_state(finding.move_kinds[last + 1]) &&
           finding.moves[last + 1] == finding.moves[last] + 1) {
      ++last;
    }
    if (last > i + 1) {
      runs.push_back(std::to_string(finding.moves[i]) + " to " + std::to_string(finding.moves[last]));
    } else {
      for (std::size_t k = i; k <= last; ++k) runs.push_back(std::to_string(finding.moves[k]));
    }
    i = last;
  }
  return listed(runs);
}

void add_once(std::vector<std::string>& words, std::string word) {
  if (std::find(words.begin(), words.end(), word) == words.end()) words.push_back(std::move(word));
}

// From the first to the last, both rounded outward.
std::string angle_range(double from, double to) {
  if (from == to) return format_degrees(Nominal{from});
  const bool rises = from < to;
  const std::string a = rises ? format_degrees(AtLeast{from}) : format_degrees(AtMost{from});
  const std::string b = rises ? format_degrees(AtMost{to}) : format_degrees(AtLeast{to});
  return a == b ? a : a + " to " + b;
}

std::string stretch_text(Figure from, Figure to, DisplayUnits units) {
  const std::string a = place_text(from, units), b = place_text(to, units);
  return a == b ? a : a + " to " + b;
}

// Whether a mark of the tape (a millimetre or 1/16 in) lies in the stretch at all.
bool shows(Interval stretch, DisplayUnits units) {
  const double step = units == DisplayUnits::imperial ? kInch / 16.0 : 1e-3;
  const Figure lo = AtMost{stretch.lo}, hi = AtLeast{stretch.hi};
  return lo.steps(step, kShownSlack) <= hi.steps(step, kShownSlack);
}

std::string first_of(const std::vector<std::string>& all, std::size_t most) {
  std::string out;
  for (std::size_t i = 0; i < all.size() && i < most; ++i) out += (i == 0 ? "" : ", ") + all[i];
  return all.size() > most ? out + " and " + std::to_string(all.size() - most) + " more" : out;
}

std::string parts_text(const Finding& finding) {
  return finding.parts[1].empty() ? finding.parts[0] : finding.parts[0] + " and " + finding.parts[1];
}

std::string spaced(const std::string& words) { return words.empty() ? "" : " " + words; }

std::string meeting_sentence(const Finding& finding, DisplayUnits units) {
  return finding.parts[0] + " meets " + finding.parts[1] + things_text(finding) + spaced(when_text(finding)) + ", " +
         format_small_length(-AtLeast{finding.proven_clearance()}, units) + " deep";
}

std::string margin_sentence(const Finding& finding, DisplayUnits units) {
  const std::string near = finding.clearance > 0.0
                               ? "comes within " + format_small_length(AtLeast{std::max(0.0, finding.proven_clearance())}, units) + " of "
                               : "touches ";
  return finding.parts[0] + " " + near + finding.parts[1] + things_text(finding) + spaced(when_text(finding)) + "; " +
         format_small_length(Nominal{finding.needed}, units) + " wanted";
}

std::string zone_sentence(const Finding& finding, DisplayUnits units) {
  const bool standing = std::all_of(finding.move_kinds.begin(), finding.move_kinds.end(),
                                    [](MoveKind kind) { return kind == MoveKind::stand; });
  if (finding.clearance >= 0.0) return margin_sentence(finding, units);
  return finding.parts[0] + (standing ? " stands in " : " hangs into ") + finding.parts[1] + " by " +
         format_small_length(-AtLeast{finding.proven_clearance()}, units) + spaced(when_text(finding));
}

// Of the hooks' seat: no distance of two parts.
bool of_seat(const Finding& finding) {
  return finding.place.move < 0 && finding.part_kinds[0] == PartKind::hook && finding.part_kinds[1] == PartKind::pipe;
}

std::string undecided_sentence(const Finding& finding) {
  if (of_seat(finding)) return finding.note + "," + spaced(when_text(finding));
  return parts_text(finding) + " not proven clear" + things_text(finding) + spaced(when_text(finding)) +
         (finding.note.empty() ? "" : ": " + finding.note);
}

// Counts of what the findings are, in the order of gravity.
std::string breakdown(const std::vector<Finding>& findings) {
  constexpr std::array<FindingKind, 6> kOrder{FindingKind::interference, FindingKind::seat,      FindingKind::margin,
                                              FindingKind::zone,         FindingKind::undecided, FindingKind::build};
  std::string out;
  for (const FindingKind kind : kOrder) {
    const auto count =
        std::count_if(findings.begin(), findings.end(), [kind](const Finding& f) { return f.kind == kind; });
    if (count == 0) continue;
    if (!out.empty()) out += ", ";
    const std::string_view verb = kind == FindingKind::interference && count > 1 ? "meet" : finding_kind_words(kind);
    out += std::to_string(count) + " " + std::string(verb);
  }
  return out;
}

}  // namespace

std::string counted(long long count, std::string_view one, std::string_view many) {
  return std::to_string(count) + " " + std::string(count == 1 ? one : many);
}

DisplayUnits units_of(const Scene& scene) {
  return scene.units == FileUnits::inches ? DisplayUnits::imperial : DisplayUnits::metric;
}

std::string joined(const std::vector<std::string>& words, const char* between) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : between) + word;
  return out;
}

std::string_view move_name(MoveKind kind) {
  switch (kind) {
    case MoveKind::stand:
      return "standing";
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
      return "parked";
  }
  return "";
}

std::string_view verdict_word(Verdict verdict) {
  switch (verdict) {
    case Verdict::clear:
      return "CLEAR";
    case Verdict::interference:
      return "INTERFERENCE";
    case Verdict::undecided:
      return "UNDECIDED";
  }
  return "";
}

std::string_view finding_kind_words(FindingKind kind) {
  switch (kind) {
    case FindingKind::interference:
      return "meets";
    case FindingKind::margin:
      return "too close";
    case FindingKind::seat:
      return "unseated";
    case FindingKind::zone:
      return "in a keep-clear zone";
    case FindingKind::undecided:
      return "undecided";
    case FindingKind::build:
      return "against a building rule";
  }
  return "";
}

std::string verdict_counts(const DryFit& fit) {
  if (fit.findings.empty())
    return "no findings in " + counted(static_cast<long long>(fit.moves.size()), "move or state", "moves and states");
  const std::string count = counted(static_cast<long long>(fit.findings.size()), "finding", "findings");
  const bool all_meet = std::all_of(fit.findings.begin(), fit.findings.end(),
                                    [](const Finding& f) { return f.kind == FindingKind::interference; });
  return all_meet ? count : count + " (" + breakdown(fit.findings) + ")";
}

std::string verdict_line(const Model& model, const DryFit& fit) {
  return std::string(verdict_word(fit.verdict)) + ": " + verdict_counts(fit) + "." + spaced(model.name);
}

std::string place_text(Figure metres, DisplayUnits units) {
  return units == DisplayUnits::imperial ? format_feet_inches(metres) : format_metres(metres, 3);
}

std::string dimension_text(Figure metres, DisplayUnits units) {
  if (units == DisplayUnits::imperial) return format_feet_inches(metres);
  const std::string text = format_millimetres(metres);
  return text.substr(0, text.find(' '));
}

std::string stretches_around(const IntervalSet& stations, DisplayUnits units, std::size_t most) {
  std::vector<std::string> all;
  for (const Interval s : stations) all.push_back(stretch_text(AtLeast{s.lo}, AtMost{s.hi}, units));
  return first_of(all, most);
}

std::string stretches_within(const IntervalSet& stations, DisplayUnits units, std::size_t most) {
  std::vector<std::string> all;
  for (const Interval s : stations)
    if (shows(s, units)) all.push_back(stretch_text(AtMost{s.lo}, AtLeast{s.hi}, units));
  return first_of(all, most);
}

std::string pose_text(const Linkage& linkage, const Configuration& pose) { return poses_text(linkage, pose, pose); }

std::string poses_text(const Linkage& linkage, const Configuration& from, const Configuration& to) {
  std::string out = "lean " + angle_range(from.lean, to.lean);
  for (int k = 0; k + 1 < linkage.sections; ++k) {
    const auto hinge = static_cast<std::size_t>(k);
    out += linkage.sections > 2 ? ", fold " + std::to_string(k + 1) + ": " : ", fold ";
    out += angle_range(from.folds[hinge], to.folds[hinge]);
  }
  return out;
}

std::string when_text(const Finding& finding) {
  constexpr std::size_t kMostNamed = 2;  // more than these read better by their numbers
  std::vector<std::string> doing, being;
  for (const MoveKind kind : finding.move_kinds)
    add_once(is_state(kind) ? being : doing, std::string(doing_words(kind)));
  std::vector<std::string> phrases;
  if (doing.size() > kMostNamed) {
    phrases.push_back("in moves " + runs_of_moves(finding));
  } else if (!doing.empty()) {
    phrases.push_back("while " + listed(doing));
  }
  if (!being.empty()) phrases.push_back("when " + listed(being));
  return listed(phrases);
}

std::string moves_text(const std::vector<int>& moves, const std::vector<MoveKind>& kinds) {
  std::string out;
  for (std::size_t i = 0; i < moves.size() && i < kinds.size(); ++i) {
    if (i > 0) out += ", ";
    if (!is_state(kinds[i])) out += std::to_string(moves[i]) + " ";
    out += move_name(kinds[i]);
  }
  return out;
}

std::string besides_text(const Finding& finding) {
  std::string out;
  for (const std::string& part : finding.also) out += (out.empty() ? "also " : ", ") + part;
  if (finding.undecided_moves.empty()) return out;
  if (!out.empty()) out += "; ";
  return out + "undecided besides: " + moves_text(finding.undecided_moves, finding.undecided_kinds);
}

std::string reach_sentence(const Reach& reach, DisplayUnits units) {
  if (reach.span.empty() || reach.span.length() <= 0.0) return "The scene has no loft to be served.";
  IntervalSet served;
  for (const Interval& stretch : reach.standing) {
    const Interval part = meet(stretch, reach.span);
    if (!part.empty()) served.push_back(part);
  }
  const double length = total_length(unite(served));
  const std::string whole = place_text(Nominal{reach.span.length()}, units);
  if (served.empty()) return "The stair is nowhere proven to stand clear along the loft's " + whole + ".";
  const std::string share = format_decimal(AtLeast{100.0 * length / reach.span.length()}, 0);
  const std::string where = stretches_within(served, units, 8);
  return "The stair is proven to stand clear over " + place_text(AtLeast{length}, units) + " of the loft's " + whole +
         " (" + share + " %)" + (where.empty() ? "" : ": ") + where + ".";
}

std::string assumed_sentence(const Model& model, DisplayUnits units) {
  const bool further = std::any_of(model.moves.begin(), model.moves.end(), [&](const Move& m) { return counts_further(model, m); });
  const auto small = [units](Figure metres) { return format_small_length(metres, units); };
  std::string text = "Margins: " + small(Nominal{model.margin.standard}) + " in general, " +
                     small(Nominal{model.margin.hook}) + " from hooks to what carries the rail, " +
                     small(Nominal{model.margin.self}) + " between sections. Hooks: " + "contact within " +
                     format_degrees(Nominal{model.seat_range}, 0) +
                     " of the pipe's crown, which lets the pivot wander by " + small(AtMost{model.hook_play}) +
                     (further ? ", and further in some moves, see the seat." : ".");
  if (model.floor_uneven > 0.0)
    text += " Floor: up or down by " + small(Nominal{model.floor_uneven}) + " under any caster.";
  if (model.pipe_sag > 0.0) text += " Pipe: gives way under the hooks by up to " + small(AtMost{model.pipe_sag}) + ".";
  return text + " Round things: drawn out by at most " + format_millimetres(AtMost{model.arc_tolerance}, 2) + ".";
}

std::string finding_sentence(const Finding& finding, DisplayUnits units) {
  switch (finding.kind) {
    case FindingKind::interference:
      return meeting_sentence(finding, units);
    case FindingKind::margin:
      return margin_sentence(finding, units);
    case FindingKind::seat:
      return finding.note + "," + spaced(when_text(finding));
    case FindingKind::zone:
      return zone_sentence(finding, units);
    case FindingKind::undecided:
      return undecided_sentence(finding);
    case FindingKind::build:
      return finding.note;
  }
  return "";
}

}  // namespace stowpath
