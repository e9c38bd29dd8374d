#pragma once

#include <string_view>
#include <vector>

#include "sim/trade/section.h"
#include "sim/trade/source.h"

namespace stowpath {

/// Steel pipe, schedule 40, which is standard weight in these sizes.
/// Source: ASME B36.10M walls and weights as listed at scribd.com/document/321368395/Pipe.
struct PipeSize {
  std::string_view name;          ///< "NPS 1-1/4"
  double nominal = 0.0;           ///< nominal size, a name and not a length of anything [in]
  double outside_diameter = 0.0;  ///< [m]
  double wall = 0.0;              ///< [m]
  double listed_mass = 0.0;       ///< plain ends, as the table prints it [kg/m]
  SourceStatus status = SourceStatus::verified;
};

/// "NPS 1-1/4", "1-1/4", "1 1/4 in", "1.25" or "nps 1¼"; null if the table does not have it (1/2 to 2).
const PipeSize* find_pipe(std::string_view name);

/// The names that find_pipe knows, smallest first: for hints.
std::vector<std::string_view> pipe_names();

/// At the full listed wall.
Section pipe_section(const PipeSize& pipe);

/// Mass of a steel tube [kg/m], from its section and kSteelDensity.
double steel_tube_mass(double outside_diameter, double wall);

inline constexpr double kSteelElasticity = 29e6 * 6894.757293168;  ///< E, 29,000 ksi, from memory [Pa]
inline constexpr double kSteelDensity = 7850.0;                    ///< from memory [kg/m3]
inline constexpr double kDesignWallFactor = 0.93;  ///< of the listed wall, the AISC practice for strength, from memory

/// A grade of ASTM A53. Furnace butt-welded pipe (type F), the common kind, exists only as grade A.
/// Source: lfpco.com/astm-a53.html and retaigroup.com/astm-a53-pipe, which agree.
struct PipeGrade {
  std::string_view name;  ///< "A" or "B"
  double yield = 0.0;     ///< [Pa]
  double ultimate = 0.0;  ///< [Pa]
  SourceStatus status = SourceStatus::verified;
};

/// "A", "grade a", "A53 B"; null if unknown.
const PipeGrade* find_pipe_grade(std::string_view name);

/// The names that find_pipe_grade knows: for hints.
std::vector<std::string_view> pipe_grade_names();

}  // namespace stowpath
