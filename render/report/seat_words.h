#pragma once

#include <string>
#include <vector>

#include "render/report/page.h"
#include "sim/hoist/seat.h"
#include "sim/trade/length.h"

namespace stowpath {

// How the hooks' seat is said.

/// "The hooks cover 195° of the pipe ... The pipe bears 91° from the curl's end at the least, ..."
std::string seat_sentence(const Model& model, const SeatReport& report, DisplayUnits units);

/// What it takes to get the stair off the pipe in one state, and what stops it before.
std::string hold_sentence(std::string_view state, const SeatHold& hold, DisplayUnits units);

/// The seat range that the scene assumes beside what statics give.
std::string seat_range_sentence(const Model& model, const SeatReport& report, DisplayUnits units);

/// What could not be judged; empty if nothing.
std::string unjudged_sentence(const Model& model, const SeatReport& report);

/// The section of a report: these sentences, and a table by moves.
void write_seat(ReportPage& page, const Model& model, const SeatReport& report, DisplayUnits units);

}  // namespace stowpath
