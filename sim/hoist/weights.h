#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sim/mechanism/model.h"
#include "sim/trade/source.h"

namespace stowpath {

/// One line of the bill of masses.
struct BillRow {
  std::string what;                    ///< "side rail", "hook", or the extra's name
  int section = 0;                     ///< from 0; -1: hangs on the line
  int count = 1;                       ///< pieces
  double each = 0.0;                   ///< [kg]
  double total = 0.0;                  ///< [kg]
  std::string basis;                   ///< "SPF at 454 kg/m3 (12 % moisture)"
  std::optional<SourceStatus> status;  ///< of the basis; none: the scene gives the mass itself
};

/// A section as it goes into the pull and the loads.
struct SectionWeight {
  SectionMass used;
  double computed = 0.0;  ///< from sizes and densities [kg]
  bool weighed = false;   ///< the scene gives its mass; the bill's rows are scaled to it
};

/// What everything weighs. The rows of a section add up to its mass.
struct Weights {
  std::vector<BillRow> rows;  ///< by section, heaviest first
  std::vector<SectionWeight> sections;
  double stair = 0.0;     ///< all sections [kg]
  double left_out = 0.0;  ///< lock pins, hinges and the screws that the scene gives: not among the rows [kg]
  double on_line = 0.0;   ///< a spreader [kg]
};

/// The bill of masses. Lock pins, hinges and screws are not in it, nor in any pull or load: what they weigh is computed
/// beside it, steel by their sizes, as far as the scene gives those.
Weights weigh(const Scene& scene, const Model& model);

}  // namespace stowpath
