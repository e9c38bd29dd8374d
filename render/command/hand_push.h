#pragma once

#include <optional>
#include <string>

namespace stowpath {

/// Which way a hand pushes the stair.
enum class PushWay {
  along,   ///< the rail, towards higher stations
  outward  ///< from the back wall
};

/// A hand's push as it is written.
struct HandPush {
  double force = 0.0;   ///< negative: the other way [N]
  double height = 0.0;  ///< of the hand above the floor [m]
  PushWay way = PushWay::along;
  double offset = 0.0;              ///< of the hand from the stair's middle, along its width; 0 outward [m]
  std::optional<double> seconds{};  ///< how long it lasts; none along the rail
};

/// What a written push turned out to be: a push, or what is wrong with it and what to write instead.
struct HandPushRead {
  std::optional<HandPush> push;
  std::string problem, hint;  ///< empty when there is a push
};

/// Reads "120N at 1.1m", along the rail where nothing else is said; "-27 lbf at 3ft 7in along offset 8in"; "120N at 1.1m
/// outward for 2s". The words after the height stand in any order, each once.
HandPushRead read_hand_push(const std::string& text);

/// "12s", "1.5 min" in seconds; none where it is no time, or a negative one.
std::optional<double> read_seconds(const std::string& text);

}  // namespace stowpath
