#pragma once

#include <string>
#include <string_view>

#include "sim/clearance/dry_fit.h"
#include "sim/trade/length.h"

namespace stowpath {

// How results are said, in the report and on the sheet alike.

/// "3 findings", "1 finding".
std::string counted(long long count, std::string_view one, std::string_view many);

/// How a scene's lengths are shown unless the user says otherwise: as its bare numbers read.
DisplayUnits units_of(const Scene& scene);

/// Words one after the other, with the same between them.
std::string joined(const std::vector<std::string>& words, const char* between);

/// "roll", "standing", "parked": the name of a move or state.
std::string_view move_name(MoveKind kind);

/// "CLEAR", "INTERFERENCE" or "UNDECIDED".
std::string_view verdict_word(Verdict verdict);

/// "3 findings (2 meet, 1 too close)"; the kinds are left out where all meet.
std::string verdict_counts(const DryFit& fit);

/// "INTERFERENCE: 3 findings (2 meet, 1 too close). Wheel loft"
std::string verdict_line(const Model& model, const DryFit& fit);

/// "0.300 m to 2.400 m, 5.100 m to 7.300 m", one unit a piece; after `most` pieces "and 5 more". Where something is
/// met: no stretch reads shorter than it is.
std::string stretches_around(const IntervalSet& stations, DisplayUnits units, std::size_t most = 12);

/// Likewise of what is proven: no stretch reads longer than it is, and one that holds no mark of the tape is left out.
std::string stretches_within(const IntervalSet& stations, DisplayUnits units, std::size_t most = 12);

/// A station, height or other length to be measured: metres to the millimetre, or feet and inches.
std::string place_text(Figure metres, DisplayUnits units);

/// A dimension's figures: whole millimetres without their unit, or feet and inches.
std::string dimension_text(Figure metres, DisplayUnits units);

/// "lean 71.2°, fold 176.0°", to the nearest.
std::string pose_text(const Linkage& linkage, const Configuration& pose);

/// "lean 71.2° to 88.0°, fold 176.0°": from the first to the last, no range less wide than it is.
std::string poses_text(const Linkage& linkage, const Configuration& from, const Configuration& to);

/// "when parked", "while rolling and lifting": when a finding happens.
std::string when_text(const Finding& finding);

/// "5 fold, 6 lift"; states by name.
std::string moves_text(const std::vector<int>& moves, const std::vector<MoveKind>& kinds);

/// What a finding has besides: other parts of the stair that meet the same thing, moves in which it stays undecided.
/// Empty if nothing.
std::string besides_text(const Finding& finding);

/// The finding in one sentence, as a builder would say it, without its number:
/// "hook curl meets bracket arm at all 8 brackets while rolling, 9.0 mm deep".
std::string finding_sentence(const Finding& finding, DisplayUnits units);

/// "The stair is proven to stand clear over 5.180 m of the loft's 7.000 m (74 %): 0.600 m to 0.860 m, ..."
std::string reach_sentence(const Reach& reach, DisplayUnits units);

/// Margins, play and unevenness that every proof counts with.
std::string assumed_sentence(const Model& model, DisplayUnits units);

/// One word for the kind: "meets", "too close", "in keep-clear zone", "undecided", "building rule".
std::string_view finding_kind_words(FindingKind kind);

}  // namespace stowpath
