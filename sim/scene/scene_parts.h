#pragma once

#include <string>
#include <vector>

#include "sim/scene/scene.h"
#include "sim/scene/setting.h"

namespace stowpath {

// The scene's parts by subject. Each reads its settings into the scene and adds what does not hold between them; parts
// that look at others come after them, in this order.

void read_room(const Setting& file, Scene& scene);
void read_surroundings(const Setting& file, Scene& scene);
void read_rail(const Setting& rail, Scene& scene);
void read_stair(const Setting& stair, Scene& scene);
void read_hooks(const Setting& hooks, Scene& scene);
void read_hoist(const Setting& file, Scene& scene);
void read_loads(const Setting& file, Scene& scene);
void read_procedure(const Setting& procedure, Scene& scene);

/// The rail's brackets; the rail calls it.
void read_brackets(const Setting& brackets, Scene& scene);

/// Their stations, one by one or repeated along the pipe, once the rest of them is read.
std::vector<double> read_bracket_stations(const Setting& brackets, const Rail& rail);

/// Reads corners in either order round; checks that they are a convex outline, or one or two with a radius.
/// @return the corners counter-clockwise, straight ones left out
std::vector<Vec2> read_outline(const Setting& outline, double radius);

/// The corners of a box given by `out` and `up`, counter-clockwise.
std::vector<Vec2> read_box(const Setting& box);

struct BoardSize {
  double thickness = 0.0;  ///< [m]
  double width = 0.0;      ///< [m]
};

/// Looks a nominal lumber size up; NaN and a fault where it is unknown.
BoardSize read_lumber(const Setting& lumber);

/// A board given by its nominal size under `lumber` or by `size`; a fault where there is neither or both.
/// @param what  "the treads have", for messages
BoardSize read_board(const Setting& of, const char* lumber, const std::string& what);

/// Adds a fault where the stair has no such section.
void check_section(const Setting& section, const Stair& stair);

Screws read_screws(const Setting& screws);

/// The stamped name of a species; a fault where it is unknown.
std::string read_species(const Setting& species);

}  // namespace stowpath
