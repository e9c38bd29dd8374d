#pragma once

#include <array>
#include <string>
#include <vector>

#include "sim/mechanism/model.h"

namespace stowpath {

/// Two kinds of part that a contact rule lets touch, over all moves in which it does.
struct MeantContact {
  int rule = 0;                       ///< in Model::contacts
  std::array<std::string, 2> parts;   ///< as reports call them
  std::vector<int> moves;             ///< indices of the procedure's steps, ascending
  double deepest = 0.0;               ///< how far one reaches into the other as drawn, to 0.1 mm; negative: never [m]
  int move = 0;                       ///< in which, beside `moves`
};

/// Everything that the proof lets touch, with how deep it does: by rule and by name, in the table's order.
std::vector<MeantContact> meant_contacts(const Model& model);

/// How many there are, without looking how deep.
std::size_t count_meant_contacts(const Model& model);

}  // namespace stowpath
