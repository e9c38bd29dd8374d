#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "sim/trade/source.h"

namespace stowpath {

enum class Effort { pull_down, pull_up, pull_across, push_across, push_down, push_up, crank, lever, grip };

/// For whom a figure stands in comparisons of pulls and cranking. Sorting published figures so is our judgement: none
/// of them was measured for a stair on a line.
enum class Person { weak, strong, neither };

/// A published force that people exert. Guidelines, averages and percentiles are different things: the posture and the
/// percentile belong to the number.
struct StrengthFigure {
  Effort effort = Effort::pull_down;
  double force = 0.0;           ///< [N]
  std::string_view posture;     ///< "standing, whole body"
  std::string_view percentile;  ///< of whom: "recommended upper limit", "mean of men 20 to 25"
  Person person = Person::neither;
  Source source;
};

std::span<const StrengthFigure> strength_figures();

/// Figures for a rope pulled down by hand, standing, weakest first.
std::vector<StrengthFigure> hand_pull_figures(Person person);

/// Figures that are quoted for such a pull and do not fit it: of level pulls, and of people who sit.
std::vector<StrengthFigure> unfit_pull_figures();

/// Figures for the handle of a crank, weakest first.
std::vector<StrengthFigure> crank_figures(Person person);

// What we suggest for a rope pulled at home: up to the first most adults manage, past the second few do.
inline constexpr double kEasyPull = 107.0;  ///< 24 lb [N]
inline constexpr double kHardPull = 225.0;  ///< 50 lb [N]
inline constexpr Source kPullSource{"S-HUM-default", "our suggestion for a rope at home, no standard",
                                    SourceStatus::judgement};

}  // namespace stowpath
