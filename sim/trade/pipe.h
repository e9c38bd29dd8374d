#pragma once

#include <optional>
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

/// The taper thread (NPT) on pipe of one size.
/// Source: ASME B1.20.1: threads an inch as listed at unifiedalloys.com/p/pipe-threads; depth at most 0.8 of the pitch,
/// from section 2.4 as copied at freestandardsintroduction.com.
struct PipeThread {
  double pitch = 0.0;  ///< [m]
  double depth = 0.0;  ///< 0.8 of the pitch [m]
  Source source;
};

/// The thread of the standard size (1/8 to 12) whose outside diameter is nearest; outside diameters are B36.10M's. [m]
PipeThread pipe_thread(double outside_diameter);

/// What the thread leaves of a pipe: a tube from its inside to the thread's root, `depth` below its outside. None where
/// the wall is no thicker than the thread is deep: such a pipe cannot be threaded.
///
/// The root of the taper thread itself lies between 1.8 pitches (hand-tight) and 1.475 (last full thread) below the
/// outside, in diameter; this takes 1.6. No allowance is made for the notch, as steel pipe yields there before it
/// cracks under a load that stands still.
/// @param wall  as bought, or 0.93 of it for strength. In metres.
std::optional<Section> threaded_section(double outside_diameter, double wall);

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
