#pragma once

#include <optional>
#include <string_view>

#include "sim/geometry/interval.h"
#include "sim/scene/scene.h"
#include "sim/trade/source.h"

namespace stowpath {

/// Diameter at which the line runs in layer `layer` of a drum, counted from 1: D + (2 layer - 1) d. [m]
double drum_layer_diameter(double drum, double rope_diameter, int layer);

/// How a length of line lies on a drum, every layer in the grooves of the last.
struct DrumWind {
  double turns = 0.0;           ///< of the drum
  int layers = 1;               ///< begun; 1 where the drum's length is not known
  bool layers_known = false;    ///< the drum's length is known
  double outer_diameter = 0.0;  ///< at which the last of the line runs [m]
};

/// @param drum_length  between the flanges [m]; none: taken as long enough for one layer, which asks the most turns
/// @param rope_length  [m]
/// @throws std::invalid_argument if a length is not finite, a diameter is not above 0 or the drum is shorter than one
/// turn.
DrumWind wind_drum(double drum, std::optional<double> drum_length, double rope_diameter, double rope_length);

/// Speed of the line in layer `layer`: pi D n / ratio. [m/min]
/// @param input_speed  turns a minute of crank or drive
double line_speed(const Winch& winch, double rope_diameter, int layer, double input_speed);

/// What holds the load when the hand or the drill lets go.
enum class WinchHold { nothing, friction };

/// "nothing: ..." or "friction only: ...", in words for a report.
std::string_view winch_hold_text(WinchHold hold);

/// Share of the work at the input that reaches the line, and where that figure comes from.
struct WinchEfficiency {
  double share = 1.0;
  Source source;
};

/// As the user gave it; else the worm's; else the lower end of what is said of geared hand winches, 60 to 80 %.
WinchEfficiency winch_efficiency(const Winch& winch);

/// The most that the winch may pass on, for what it pulls when the stair catches: as given, the worm's, or the upper
/// end of that range.
WinchEfficiency best_winch_efficiency(const Winch& winch);

/// Pull on the line, in the first layer on the drum, for a torque at the winch's input: S-WINCH-line turned round. [N]
/// @param torque  [N m]
/// @throws std::invalid_argument if the winch's ratio or its drum and line's diameter is not above 0
double pull_of_torque(const Winch& winch, double rope_diameter, double torque, double efficiency);

/// One haul, from an empty drum.
struct WinchRun {
  double turns = 0.0;  ///< of crank or drive
  double drum_turns = 0.0;
  double minutes = 0.0;                ///< without a rest
  double line_speed = 0.0;             ///< in the first layer [m/min]
  double torque = 0.0;                 ///< at the input with the outermost layer on the drum [N m]
  std::optional<double> torque_given;  ///< of the drive, where it is stated [N m]
  std::optional<double> handle_force;  ///< on the crank with the outermost layer on the drum; none: no crank [N]
  int layers = 1;                      ///< begun
  bool layers_known = false;           ///< else reckoned as one layer: more layers go faster and crank harder
  WinchEfficiency efficiency;
  std::optional<double> back_efficiency;  ///< of a worm driven by the load; not above 0 where it holds
  bool self_locking = false;              ///< the load cannot drive it at the friction stated
  WinchHold hold = WinchHold::nothing;
  std::string_view hold_text;  ///< what that means
};

/// @param haul_length  of line to wind on [m]
/// @param line_pull  the greatest on the way [N]
/// @param input_speed  turns a minute of crank or drive
/// @throws std::invalid_argument if input_speed or the winch's ratio is not above 0, the pull is negative, or as in
/// wind_drum.
/// Source: S-WINCH-line, derived: crank force T Dp / (2 R i eta).
WinchRun winch_run(const Winch& winch, double rope_diameter, double haul_length, double line_pull, double input_speed);

/// Turns a minute that a person keeps up at a crank, by our judgement.
inline constexpr Interval kCrankingRate{20.0, 40.0};
inline constexpr double kUsualCrankingRate = 30.0;
inline constexpr Source kCrankingRateSource{"S-WINCH-rate", "our estimate of cranking by hand",
                                            SourceStatus::judgement};

}  // namespace stowpath
