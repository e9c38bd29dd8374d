#include "render/report/text.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "render/report/contact_words.h"
#include "render/report/page.h"
#include "render/report/remedy_words.h"
#include "render/report/seat_words.h"
#include "render/report/words.h"
#include "render/report/wrap.h"

namespace stowpath {
namespace {

std::string_view verdict_code(Verdict verdict) {
  return verdict == Verdict::clear ? "1;32" : verdict == Verdict::undecided ? "1;33" : "1;31";
}

std::string clearance_text(Figure metres, DisplayUnits units) {
  return std::isfinite(metres.value()) ? format_small_length(metres, units) : "nothing near";
}

class Writer {
 public:
  Writer(const Model& model, const DryFit& fit, const TextOptions& options, const std::vector<Cures>& cures)
      : model_(model), fit_(fit), options_(options), cures_(cures), page_(options.colour) {}

  std::string text() {
    page_.raw(verdict_text(model_, fit_, options_.colour));
    findings();
    moves();
    if (options_.seat) write_seat(page_, model_, *options_.seat, options_.units);
    write_measure_twice(page_, options_.twice, options_.units);
    if (model_.pipe_sag > 0.0)
      page_.section("MEASURE TWICE", "Told for the straight pipe only: leave --sagged out to see what counts most.");
    contacts();
    page_.section("REACH", reach_sentence(fit_.reach, options_.units));
    page_.section("TAKEN FOR GRANTED", assumed_sentence(model_, options_.units));
    page_.section("LIMITS", cautions_text());
    page_.section("WORK", work_sentence());
    return page_.text();
  }

 private:
  void findings() {
    if (fit_.findings.empty()) return;
    page_.heading("FINDINGS, the gravest first");
    for (const Finding& finding : fit_.findings) {
      const std::string number = padded(finding.id, 4);
      std::string sentence = wrapped(finding_sentence(finding, options_.units), kPageWidth, number, "    ");
      sentence.replace(0, finding.id.size(), coloured(finding.id, "1;31", options_.colour));
      page_.raw(sentence);
      if (finding.kind != FindingKind::build) where(finding);
      if (const Cures* of = cures_of(cures_, finding)) cures(*of, finding);
    }
    const bool some = std::any_of(cures_.begin(), cures_.end(), [](const Cures& c) { return !c.remedies.empty(); });
    if (some) page_.paragraph("To write the scene with a cure: --apply ID -o NEW.yaml");
  }

  void cures(const Cures& of, const Finding& finding) {
    page_.paragraph(cures_heading(of), "    ");
    for (const Remedy& remedy : of.remedies) {
      const std::string words = remedy_sentence(remedy, finding, options_.units);
      page_.raw(wrapped(words, kPageWidth, "      " + padded(remedy.id, 6), "            "));
    }
  }

  void where(const Finding& finding) {
    if (!finding.stations.empty())
      page_.paragraph("stations " + stretches_around(finding.stations, options_.units), "    ");
    const bool moves = !finding.moves.empty();  // things fixed to the room meet in no move and in no pose
    if (moves) {
      const char* name = finding.moves.size() == 1 ? "move " : "moves ";
      page_.paragraph(poses_text(model_.linkage, finding.from, finding.to) + "; " + name +
                          moves_text(finding.moves, finding.move_kinds),
                      "    ");
    }
    const Vec2 place = lerp(finding.witness.on_a, finding.witness.on_b, 0.5);
    page_.paragraph("worst at station " + place_text(Nominal{finding.worst.station}, options_.units) +
                        (moves ? ", " + pose_text(model_.linkage, finding.worst) : "") + ": out " +
                        place_text(Nominal{place.x}, options_.units) + ", up " +
                        place_text(Nominal{place.y}, options_.units),
                    "    ");
    const std::string besides = besides_text(finding);
    if (!besides.empty()) page_.paragraph(besides, "    ");
    if (finding.play > 0.0)
      page_.paragraph(
          "play of hook and floor may take another " + format_small_length(AtMost{finding.play}, options_.units),
          "    ");
  }

  void contacts() {
    if (!options_.contacts) return page_.section("MAY TOUCH", contact_count_text(model_));
    page_.heading("MAY TOUCH, and how deep");
    for (const MeantContact& contact : meant_contacts(model_))
      page_.raw(wrapped(contact_text(model_, contact, options_.units), kPageWidth, "  ", "    "));
  }

  void moves() {
    Table table;
    table.row({"no", "move", "verdict", "at least", "at most", "closest parts"});
    for (const MoveResult& move : fit_.moves) table.row(cells(move));
    page_.table("MOVES, in order of work", table);
  }

  std::vector<std::string> cells(const MoveResult& move) const {
    const bool state = is_state(move.kind);
    const bool near = !move.closest[0].empty();
    return {state ? "" : std::to_string(move.index),
            std::string(move_name(move.kind)),
            std::string(verdict_word(move.verdict)),
            near ? clearance_text(AtLeast{move.at_least}, options_.units) : "nothing near",
            near ? clearance_text(AtMost{move.at_most}, options_.units) : "",
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
  const std::vector<Cures>& cures_;
  ReportPage page_;
};

}  // namespace

std::string verdict_text(const Model& model, const DryFit& fit, bool colour) {
  return answer_text(verdict_line(model, fit), verdict_word(fit.verdict), verdict_code(fit.verdict), colour);
}

std::string cautions_text() {
  return "This answers for the geometry as described, to the sizes given; measure on site before cutting. It approves "
         "no "
         "structure: loads hung overhead and wood under load are for a licensed engineer, and stairs, lofts and guards "
         "for the local building authority.";
}

std::string dry_fit_text(const Model& model, const DryFit& fit, const TextOptions& options,
                         const std::vector<Cures>& cures) {
  return Writer(model, fit, options, cures).text();
}

}  // namespace stowpath
