#pragma once

#include <cstddef>

#include "sim/mechanism/model.h"

namespace stowpath {

/// Where on the procedure a picture stands.
struct Place {
  std::size_t move = 0;   ///< in Model::moves
  double progress = 0.0;  ///< of that move, 0 to 1, its segments given equal shares
};

/// The pose there. A roll goes from where the stair stood before to the station it is told; a state stands still.
Configuration pose_at(const Model& model, const Place& place);

/// The end of the move, or of the next one from there; the procedure's end stays.
Place step_forward(const Model& model, const Place& place);

/// The beginning of the move, or of the one before from there; the procedure's beginning stays.
Place step_back(const Model& model, const Place& place);

/// How long the picture takes over a move at speed 1: slow enough to be followed, whatever the move [s].
double showing_time(const Model& model, std::size_t move);

/// The place after showing it for so long, backwards where `seconds` is negative; stops at either end.
Place run_on(const Model& model, Place place, double seconds);

/// The place to show on from: from where there is nothing more to show that way, the other end.
Place begin_run(const Model& model, const Place& place, bool forward);

/// Whether there is nothing more to show that way.
bool at_end(const Model& model, const Place& place, bool forward);

}  // namespace stowpath
