#include "render/sheet/notes_column.h"

#include <algorithm>
#include <cmath>

#include "render/report/text.h"
#include "render/report/words.h"

namespace stowpath {
namespace {

constexpr double kLine = 4.1;    // from baseline to baseline of notes [mm]
constexpr double kSlip = 6.6;    // height of a slip [mm]
constexpr double kHead = 7.0;    // a heading with its air [mm]
constexpr double kIndent = 9.0;  // of a note's words, beside its number [mm]

void heading(DisplayList& list, Labels& labels, NotesColumn& column, const std::string& words) {
  labels.fix(list, {{column.box.least.x, column.down + 4.0}, words, 3.0, Anchor::start, Ink::line});
  list.line({column.box.least.x, column.down + 5.4}, {column.box.greatest.x, column.down + 5.4}, {Ink::line, kThin});
  column.down += kHead;
}

Ink verdict_ink(Verdict verdict) { return verdict == Verdict::clear ? Ink::line : Ink::red; }

void verdict_mark(DisplayList& list, Vec2 centre, Verdict verdict, double half, double width) {
  const Pen pen{verdict_ink(verdict), width};
  if (verdict == Verdict::clear) {
    tick_mark(list, centre, half, pen);
  } else {
    cross_mark(list, centre, half, pen);
  }
}

std::vector<std::string> note_lines(const Finding& finding, const Subject& subject, double width) {
  std::vector<std::string> lines = wrap_text(finding_sentence(finding, subject.units), kNotes, width);
  if (finding.kind == FindingKind::build) return lines;
  std::vector<std::string> places;
  if (!finding.stations.empty()) places.push_back("station " + stretches_around(finding.stations, subject.units, 2));
  if (!finding.moves.empty()) places.push_back(poses_text(subject.model.linkage, finding.from, finding.to));
  const std::string where = joined(places, "; ");
  for (std::string& line : wrap_text(where, kNotes, width)) lines.push_back(std::move(line));
  return lines;
}

std::string slip_words(const Subject& subject, const MoveResult& move) {
  if (move.kind == MoveKind::stand) return "standing at every station";
  std::string words(move_name(move.kind));
  const auto found = std::find_if(subject.model.moves.begin(), subject.model.moves.end(), [&](const Move& other) {
    return other.index == move.index && other.kind == move.kind;
  });
  if (found == subject.model.moves.end() || found->segments.empty()) return words;
  const Configuration& end = found->segments.back().to;
  if (move.kind == MoveKind::roll) return words + " to " + place_text(Nominal{end.station}, subject.units);
  return words + (move.kind == MoveKind::park ? " at " : " to ") + pose_text(subject.model.linkage, end);
}

std::string clearance_words(const MoveResult& move, DisplayUnits units) {
  if (move.closest[0].empty() || !std::isfinite(move.at_most)) return "nothing near";
  return move.at_most < 0.0 ? format_small_length(-AtLeast{move.at_least}, units) + " deep"
                            : format_small_length(AtLeast{std::max(0.0, move.at_least)}, units);
}

void slip(DisplayList& list, Labels& labels, const Subject& subject, NotesColumn& column, const MoveResult& move) {
  const double left = column.box.least.x, right = column.box.greatest.x, base = column.down + 4.3;
  list.box({left, column.down}, {right, column.down + kSlip - 0.8}, Pen{Ink::soft, kThin});
  list.line({left + 7.5, column.down}, {left + 7.5, column.down + kSlip - 0.8}, {Ink::soft, kThin});
  const bool state = is_state(move.kind);
  if (!state) labels.fix(list, {{left + 3.75, base}, std::to_string(move.index), kNotes, Anchor::middle});
  labels.fix(list, {{left + 9.0, base}, slip_words(subject, move), kNotes});
  const Ink ink = verdict_ink(move.verdict);
  const Text clearance{{right - 7.0, base}, clearance_words(move, subject.units), kNotes, Anchor::end, ink};
  labels.fix(list, clearance);
  if (move.verdict == Verdict::undecided) {
    labels.fix(list, {{right - 3.5, base}, "?", kNotes, Anchor::middle, Ink::red});
  } else {
    verdict_mark(list, {right - 3.5, column.down + 2.9}, move.verdict, 1.4, kMedium);
  }
  column.down += kSlip;
}

}  // namespace

void write_verdict(DisplayList& list, Labels& labels, const Subject& subject, NotesColumn& column) {
  const Verdict verdict = subject.fit.verdict;
  const double left = column.box.least.x;
  list.open("verdict", std::string(verdict_word(verdict)));
  verdict_mark(list, {left + 3.0, column.down + 4.0}, verdict, 2.6, 0.7);
  labels.fix(
      list,
      {{left + 9.0, column.down + 6.6}, std::string(verdict_word(verdict)), 5.0, Anchor::start, verdict_ink(verdict)});
  column.down += 10.0;
  const std::string rest = verdict_counts(subject.fit) + ".";
  for (const std::string& words : wrap_text(rest, kNotes, column.box.greatest.x - left - 9.0)) {
    labels.fix(list, {{left + 9.0, column.down + kNotes}, words, kNotes, Anchor::start, verdict_ink(verdict)});
    column.down += kLine;
  }
  column.down += 2.5;
  list.close();
}

std::vector<std::optional<Vec2>> write_findings(DisplayList& list, Labels& labels, const Subject& subject,
                                                NotesColumn& column, double last) {
  const std::vector<Finding>& findings = subject.fit.findings;
  std::vector<std::optional<Vec2>> notes(findings.size());
  if (findings.empty()) return notes;
  list.open("findings", "Findings");
  heading(list, labels, column, "Findings");
  const double left = column.box.least.x, width = column.box.greatest.x - left - kIndent;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    const std::vector<std::string> lines = note_lines(findings[i], subject, width);
    const double height = kLine * static_cast<double>(lines.size()) + 1.6;
    const bool more = i + 1 < findings.size();
    if (column.down + height + (more ? kLine : 0.0) > last) {
      const std::string rest = std::to_string(findings.size() - i) + " more: see the written report";
      labels.fix(list, {{left, column.down + kNotes}, rest, kNotes, Anchor::start, Ink::red});
      column.down += kLine + 1.6;
      break;
    }
    notes[i] = Vec2{left - 1.5, column.down + 0.5 * kNotes};
    labels.fix(list, {{left, column.down + kNotes}, findings[i].id, kNotes, Anchor::start, Ink::red});
    for (const std::string& words : lines) {
      labels.fix(list, {{left + kIndent, column.down + kNotes}, words, kNotes});
      column.down += kLine;
    }
    column.down += 1.6;
  }
  column.down += 2.0;
  list.close();
  return notes;
}

double moves_height(const Subject& subject) {
  return kHead + kSlip * static_cast<double>(subject.fit.moves.size()) + 3.0;
}

void write_moves(DisplayList& list, Labels& labels, const Subject& subject, NotesColumn& column, double last) {
  list.open("slips", "The moves in order of work, with the least clearance of each");
  heading(list, labels, column, "Order of work, and the least clearance of each move");
  for (const MoveResult& move : subject.fit.moves) {
    if (column.down + kSlip > last) break;
    slip(list, labels, subject, column, move);
  }
  column.down += 3.0;
  list.close();
}

void write_reach(DisplayList& list, Labels& labels, const Subject& subject, NotesColumn& column, double last) {
  std::vector<std::string> lines;
  const double width = column.box.greatest.x - column.box.least.x;
  for (const std::string& sentence :
       {reach_sentence(subject.fit.reach, subject.units), assumed_sentence(subject.model, subject.units)}) {
    for (std::string& line : wrap_text(sentence, kNotes, width)) lines.push_back(std::move(line));
  }
  if (column.down + kHead + kLine * static_cast<double>(lines.size()) > last) return;
  list.open("reach", "Reach, and what was taken for granted");
  heading(list, labels, column, "Reach, and what was taken for granted");
  for (const std::string& words : lines) {
    labels.fix(list, {{column.box.least.x, column.down + kNotes}, words, kNotes});
    column.down += kLine;
  }
  list.close();
}

double cautions_height(const NotesColumn& column) {
  const auto lines = wrap_text(cautions_text(), kNotes, column.box.greatest.x - column.box.least.x).size();
  return kHead + kLine * static_cast<double>(lines) + 2.0;
}

void write_cautions(DisplayList& list, Labels& labels, NotesColumn& column) {
  list.open("cautions", "Cautions");
  heading(list, labels, column, "Cautions");
  for (const std::string& words : wrap_text(cautions_text(), kNotes, column.box.greatest.x - column.box.least.x)) {
    labels.fix(list, {{column.box.least.x, column.down + kNotes}, words, kNotes, Anchor::start, Ink::soft});
    column.down += kLine;
  }
  list.close();
}

}  // namespace stowpath
