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

/// With one hand or with both, as far as the page says it.
enum class Hands { not_said, one, both };

/// For how long, as far as the page says it.
enum class Lasting {
  not_said,
  moment,    ///< to start, now and then, best effort
  sustained  ///< for minutes on end
};

std::string_view hands_text(Hands hands);        ///< "one hand", "both hands", "not said"
std::string_view lasting_text(Lasting lasting);  ///< "a moment", "minutes", "not said"

/// A published force that people exert. Guidelines, averages and percentiles are different things: the posture and the
/// percentile belong to the number.
struct StrengthFigure {
  Effort effort = Effort::pull_down;
  double force = 0.0;           ///< [N]
  std::string_view posture;     ///< "standing, whole body"
  std::string_view percentile;  ///< of whom: "recommended upper limit", "mean of men 20 to 25"
  Person person = Person::neither;
  Source source;
  Hands hands = Hands::not_said;
  Lasting lasting = Lasting::not_said;
  bool seated = false;  ///< or kneeling
};

std::span<const StrengthFigure> strength_figures();

/// Figures that fit a task done standing, weakest first: a pull on a rope down or level, or the handle of a crank.
std::vector<StrengthFigure> fitting_figures(Effort task, Person person);

/// A figure that was left out of a comparison, and why.
struct UnfitFigure {
  StrengthFigure figure;
  std::string_view why;  ///< "for a level pull", "seated"
};

/// Published pulls, or turns of a handle, that do not fit the task, weakest first.
std::vector<UnfitFigure> unfit_figures(Effort task);

/// The greatest published force that fits the task, of anyone: what the stair must bear should it catch [N].
double greatest_figure(Effort task);

// What we suggest for a rope pulled at home: up to the first most adults manage, past the second few do.
inline constexpr double kEasyPull = 107.0;  ///< 24 lb [N]
inline constexpr double kHardPull = 225.0;  ///< 50 lb [N]
inline constexpr Source kPullSource{"S-HUM-default", "our suggestion for a rope at home, no standard",
                                    SourceStatus::judgement};

}  // namespace stowpath
