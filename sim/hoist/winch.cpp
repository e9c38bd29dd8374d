#include "sim/hoist/winch.h"

#include <cmath>
#include <numbers>
#include <stdexcept>

#include "sim/hoist/worm.h"

namespace stowpath {
namespace {

constexpr Interval kGearedEfficiency{0.60, 0.80};
constexpr Source kGearedSource{"S-WINCH-supplier", "garlway.com, hand winches: 60 to 80 %, the lower end",
                               SourceStatus::verified};
constexpr Source kGivenSource{"given", "the user's own figure", SourceStatus::derived};

void check_wind(double drum, std::optional<double> drum_length, double rope_diameter, double rope_length) {
  if (!(drum > 0.0 && rope_diameter > 0.0)) throw std::invalid_argument("a drum or a rope without thickness");
  if (!(rope_length >= 0.0 && std::isfinite(rope_length))) throw std::invalid_argument("no length of rope to wind");
  if (drum_length && !(*drum_length >= rope_diameter)) throw std::invalid_argument("the drum takes not one turn");
}

double turns_in_a_layer(double drum_length, double rope_diameter) {
  constexpr double kRounding = 1e-9;  // a length that is a whole number of turns, but for rounding
  return std::floor(drum_length / rope_diameter + kRounding);
}

double pulled_torque(const Winch& winch, double diameter, double line_pull, double efficiency) {
  return line_pull * 0.5 * diameter / (winch.ratio * efficiency);
}

}  // namespace

double drum_layer_diameter(double drum, double rope_diameter, int layer) {
  return drum + (2 * layer - 1) * rope_diameter;
}

DrumWind wind_drum(double drum, std::optional<double> drum_length, double rope_diameter, double rope_length) {
  check_wind(drum, drum_length, rope_diameter, rope_length);
  DrumWind wind;
  wind.layers_known = drum_length.has_value();
  double left = rope_length;
  for (;; ++wind.layers) {
    wind.outer_diameter = drum_layer_diameter(drum, rope_diameter, wind.layers);
    const double around = std::numbers::pi * wind.outer_diameter;
    const double capacity = drum_length ? turns_in_a_layer(*drum_length, rope_diameter) * around : left;
    if (left <= capacity) {
      wind.turns += left / around;
      return wind;
    }
    wind.turns += capacity / around;
    left -= capacity;
  }
}

double line_speed(const Winch& winch, double rope_diameter, int layer, double input_speed) {
  return std::numbers::pi * drum_layer_diameter(winch.drum, rope_diameter, layer) * input_speed / winch.ratio;
}

std::string_view winch_hold_text(WinchHold hold) {
  if (hold == WinchHold::friction) {
    return "friction only: the worm holds while its friction is what was stated; grease, wear or shaking can let it "
           "run, and it is not a brake";
  }
  return "nothing: let go, and the load runs the winch back; a ratchet, a brake or a cleat has to hold it";
}

WinchEfficiency winch_efficiency(const Winch& winch) {
  if (winch.efficiency) return {*winch.efficiency, kGivenSource};
  if (winch.worm_lead) return {worm_efficiency(*winch.worm_lead, winch.worm_friction), kWormEfficiency};
  return {kGearedEfficiency.lo, kGearedSource};
}

WinchEfficiency best_winch_efficiency(const Winch& winch) {
  constexpr Source kBest{"S-WINCH-supplier", "garlway.com, hand winches: 60 to 80 %, the upper end",
                         SourceStatus::verified};
  if (winch.efficiency || winch.worm_lead) return winch_efficiency(winch);
  return {kGearedEfficiency.hi, kBest};
}

double pull_of_torque(const Winch& winch, double rope_diameter, double torque, double efficiency) {
  const double diameter = drum_layer_diameter(winch.drum, rope_diameter, 1);
  if (!(winch.ratio > 0.0 && diameter > 0.0)) throw std::invalid_argument("a winch that does not turn");
  return torque * winch.ratio * efficiency / (0.5 * diameter);
}

WinchRun winch_run(const Winch& winch, double rope_diameter, double haul_length, double line_pull, double input_speed) {
  if (!(input_speed > 0.0 && winch.ratio > 0.0)) throw std::invalid_argument("a winch that does not turn");
  if (!(line_pull >= 0.0)) throw std::invalid_argument("a line cannot push");
  const DrumWind wind = wind_drum(winch.drum, winch.drum_length, rope_diameter, haul_length);
  WinchRun run;
  run.drum_turns = wind.turns;
  run.turns = wind.turns * winch.ratio;
  run.minutes = run.turns / input_speed;
  run.line_speed = line_speed(winch, rope_diameter, 1, input_speed);
  run.efficiency = winch_efficiency(winch);
  run.torque = pulled_torque(winch, wind.outer_diameter, line_pull, run.efficiency.share);
  run.torque_given = winch.torque;
  if (winch.crank) run.handle_force = run.torque / *winch.crank;
  run.layers = wind.layers;
  run.layers_known = wind.layers_known;
  if (winch.worm_lead) {
    run.back_efficiency = worm_back_efficiency(*winch.worm_lead, winch.worm_friction);
    run.self_locking = worm_holds(*winch.worm_lead, winch.worm_friction);
  }
  run.hold = run.self_locking ? WinchHold::friction : WinchHold::nothing;
  run.hold_text = winch_hold_text(run.hold);
  return run;
}

}  // namespace stowpath
