#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "render/report/hoist_report.h"
#include "sim/trade/source.h"

namespace stowpath {

// How forces and the lift's results are said, in reports and on sheets alike.

/// "98 N", or "22 lbf (98 N)"; from 10 kN "12.3 kN".
std::string force_text(Figure newtons, DisplayUnits units);
/// The figures alone, for a column headed by force_unit.
std::string force_figures(Figure newtons, DisplayUnits units);
std::string_view force_unit(DisplayUnits units);

/// "12.3 kg", or "27.1 lb".
std::string mass_text(Figure kilograms, DisplayUnits units);
std::string torque_text(Figure newton_metres, DisplayUnits units);

/// "6.3 min", "40 s".
std::string minutes_text(Figure minutes);

/// "verified: Eastman Kodak 1986, force table".
std::string source_text(const Source& source);
std::string status_text(const std::optional<SourceStatus>& status);

/// "move 4, hang".
std::string move_text(const Model& model, std::size_t move);

/// "lean 41.0°, fold 12.0° in move 4, hang".
std::string sample_text(const Model& model, const PullSample& sample);

std::string_view effort_word(EffortVerdict verdict);

/// Whether every piece of the hoist's hardware with a known resistance bears what it gets.
bool holds_up(const HoistSubject& subject);

/// The answer's first word: "WITHIN" only where the hardware bears its loads too.
std::string hoist_word(const HoistSubject& subject);

/// What one move asks: its greatest pulls and the line it takes in.
struct MovePull {
  std::size_t move = 0;
  double raising = 0.0, holding = 0.0, lowering = 0.0;  ///< greatest [N]
  std::size_t peak = 0;                                 ///< sample of the greatest raising pull
  double hauled = 0.0;                                  ///< line taken in, less what runs out again [m]
  bool slack = false;                                   ///< somewhere in the move
};
std::vector<MovePull> pulls_by_move(const PullReport& report);

/// What holds the load when the hand lets go, in one or two sentences.
std::string holding_sentence(const HoistSubject& subject);

/// How long the line is, and how long hauling takes.
std::string haul_sentence(const HoistSubject& subject);

/// The winch's turns, torque and minutes; empty without one.
std::string winch_sentence(const HoistSubject& subject);

/// What the drive pulls when the stair catches, which pieces that is too much for, and what to put in.
std::string snag_sentence(const HoistSubject& subject);

/// Of which published figures a pull or a crank is not held against, and why; "" where none was left out.
std::string left_out_figures_sentence(const HoistSubject& subject);

/// The line's pull to the side, and where the foot and the load change; "" where there is none.
std::string side_sentence(const HoistSubject& subject);

/// What was left out and who has to be asked.
std::string hoist_cautions();

}  // namespace stowpath
