#include "render/report/text.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "render/report/words.h"
#include "render/report/wrap.h"

namespace stowpath {
namespace {

constexpr std::size_t kWidth = 100;

std::string coloured(const std::string& text, std::string_view code, bool colour) {
  return colour ? "\033[" + std::string(code) + "m" + text + "\033[0m" : text;
}

std::string_view verdict_code(Verdict verdict) {
  return verdict == Verdict::clear ? "1;32" : verdict == Verdict::undecided ? "1;33" : "1;31";
}

std::string padded(std::string text, std::size_t width) {
  const std::size_t taken = columns(text);
  if (taken < width) text.append(width - taken, ' ');
  return text;
}

std::string clearance_text(double metres, DisplayUnits units) {
  return std::isfinite(metres) ? format_small_length(metres, units) : "nothing near";
}

// A table whose columns are as wide as their widest cell; the last one may run on.
class Table {
 public:
  void row(std::vector<std::string> cells) {
    widths_.resize(std::max(widths_.size(), cells.size()), 0);
    for (std::size_t i = 0; i < cells.size(); ++i) widths_[i] = std::max(widths_[i], columns(cells[i]));
    rows_.push_back(std::move(cells));
  }

  std::string text() const {
    std::string out;
    for (const std::vector<std::string>& cells : rows_) {
      std::string line;
      for (std::size_t i = 0; i < cells.size(); ++i) line += "  " + padded(cells[i], widths_[i]);
      line.erase(line.find_last_not_of(' ') + 1);
      out += line + "\n";
    }
    return out;
  }

 private:
  std::vector<std::vector<std::string>> rows_;
  std::vector<std::size_t> widths_;
};

class Writer {
 public:
  Writer(const Model& model, const DryFit& fit, const TextOptions& options)
      : model_(model), fit_(fit), options_(options) {}

  std::string text() {
    out_ = verdict_text(model_, fit_, options_.colour);
    findings();
    moves();
    section("REACH", reach_sentence(fit_.reach, options_.units));
    section("TAKEN FOR GRANTED", assumed_sentence(model_, options_.units));
    section("LIMITS", cautions_text());
    section("WORK", work_sentence());
    return out_;
  }

 private:
  void heading(const std::string& words) { out_ += "\n" + coloured(words, "1", options_.colour) + "\n"; }

  void paragraph(const std::string& words, const std::string& indent) {
    out_ += wrapped(words, kWidth, indent, indent);
  }

  void section(const std::string& title, const std::string& words) {
    heading(title);
    paragraph(words, "  ");
  }

  void findings() {
    if (fit_.findings.empty()) return;
    heading("FINDINGS, the gravest first");
    for (const Finding& finding : fit_.findings) {
      const std::string number = padded(finding.id, 4);
      std::string sentence = wrapped(finding_sentence(finding, options_.units), kWidth, number, "    ");
      sentence.replace(0, finding.id.size(), coloured(finding.id, "1;31", options_.colour));
      out_ += sentence;
      if (finding.kind != FindingKind::build) where(finding);
    }
  }

  void where(const Finding& finding) {
    const char* name = finding.moves.size() == 1 ? "move " : "moves ";
    if (!finding.stations.empty()) paragraph("stations " + stretches_text(finding.stations, options_.units), "    ");
    paragraph(poses_text(model_.linkage, finding.from, finding.to) + "; " + name +
                  moves_text(finding.moves, finding.move_kinds),
              "    ");
    const Vec2 place = lerp(finding.witness.on_a, finding.witness.on_b, 0.5);
    paragraph("worst at station " + place_text(finding.worst.station, options_.units) + ", " +
                  poses_text(model_.linkage, finding.worst, finding.worst) + ": out " +
                  place_text(place.x, options_.units) + ", up " + place_text(place.y, options_.units),
              "    ");
    const std::string besides = besides_text(finding);
    if (!besides.empty()) paragraph(besides, "    ");
    if (finding.play > 0.0)
      paragraph("play of hook and floor may take another " + format_small_length(finding.play, options_.units), "    ");
  }

  void moves() {
    heading("MOVES, in order of work");
    Table table;
    table.row({"no", "move", "verdict", "at least", "at most", "closest parts"});
    for (const MoveResult& move : fit_.moves) table.row(cells(move));
    out_ += table.text();
  }

  std::vector<std::string> cells(const MoveResult& move) const {
    const bool state = move.kind == MoveKind::stand || move.kind == MoveKind::park;
    const bool near = !move.closest[0].empty();
    return {state ? "" : std::to_string(move.index),
            std::string(move_name(move.kind)),
            std::string(verdict_word(move.verdict)),
            near ? clearance_text(move.at_least, options_.units) : "nothing near",
            near ? clearance_text(move.at_most, options_.units) : "",
            near ? move.closest[0] + ", " + move.closest[1] : ""};
  }

  std::string work_sentence() const {
    const Work& work = fit_.work;
    const auto tenths = static_cast<long long>(std::llround(std::max(0.0, work.seconds) * 1e4));
    return counted(work.distances, "exact distance", "exact distances") + ", " +
           counted(work.rejects, "pair turned away", "pairs turned away") + ", " + std::to_string(tenths / 10) + "." +
           std::to_string(tenths % 10) + " ms.";
  }

  const Model& model_;
  const DryFit& fit_;
  const TextOptions& options_;
  std::string out_;
};

}  // namespace

std::string verdict_text(const Model& model, const DryFit& fit, bool colour) {
  std::string lines = wrapped(verdict_line(model, fit), kWidth, "", "  ");
  const std::string word(verdict_word(fit.verdict));
  return lines.replace(0, word.size(), coloured(word, verdict_code(fit.verdict), colour));
}

std::string cautions_text() {
  return "This answers for the geometry as described, to the sizes given; measure on site before cutting. It approves "
         "no "
         "structure: loads hung overhead and wood under load are for a licensed engineer, and stairs, lofts and guards "
         "for the local building authority.";
}

std::string dry_fit_text(const Model& model, const DryFit& fit, const TextOptions& options) {
  return Writer(model, fit, options).text();
}

}  // namespace stowpath
