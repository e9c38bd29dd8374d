#pragma once

#include <string>
#include <vector>

#include "sim/rehearsal/account.h"
#include "sim/trade/length.h"

namespace stowpath {

// What a rehearsal's account says, of a run just made and of one that was recorded alike.

/// "2 pairs of parts touch": one thing that a builder has to look into, unended.
std::string trouble_text(const Trouble& trouble, DisplayUnits units);

/// All of them, in the order they stand in.
std::vector<std::string> trouble_texts(const std::vector<Trouble>& troubles, DisplayUnits units);

/// Step, energy and differences: how good the numbers are, in a few sentences.
std::string bounds_sentences(const RehearsalBounds& bounds, DisplayUnits units);

}  // namespace stowpath
