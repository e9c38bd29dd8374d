#include <algorithm>
#include <cmath>
#include <string>

#include "sim/scene/scene_parts.h"

namespace stowpath {
namespace {

double bracket_width(const Brackets& brackets) {
  double widest = std::max({brackets.saddle_length, brackets.plate_width, brackets.arm, brackets.strap_width});
  for (const BracketPiece& piece : brackets.pieces) widest = std::max(widest, piece.width);
  for (const auto& heads : {brackets.plate_heads, brackets.saddle_heads})
    if (heads) widest = std::max(widest, heads->apart + heads->diameter);
  return brackets.post ? std::max(widest, brackets.post->width) : widest;
}

// What lies under the pipe and so has to end with it.
double width_on_pipe(const Brackets& brackets) {
  switch (brackets.shape) {
    case BracketShape::wall_saddle:
    case BracketShape::post_mounted:
      return brackets.saddle_length;
    case BracketShape::strap:
      return brackets.strap_width;
    default:
      return bracket_width(brackets);
  }
}

void check_on_pipe(const Setting& key, double station, double half, Interval pipe) {
  const double past_left = pipe.lo - (station - half), past_right = station + half - pipe.hi;
  if (!(past_left > 1e-9) && !(past_right > 1e-9)) return;
  const bool left = past_left > past_right;
  const double limit = left ? pipe.lo + half : pipe.hi - half;
  key.fault("the bracket at " + length_text(station, key.bare()) + " ends " +
                length_text(left ? past_left : past_right, key.bare()) + " past the pipe's " +
                (left ? "left" : "right") + " end",
            "move it to " + length_text(limit, key.bare()) + (left ? " or more" : " or less"));
}

std::vector<double> read_repeated(const Setting& brackets, const Rail& rail) {
  const Setting first = brackets.at("first"), every = brackets.at("every");
  const double half = width_on_pipe(rail.brackets) / 2, start = first.number(), step = every.number();
  check_on_pipe(first, start, half, rail.stations);
  std::vector<double> stations;
  if (!std::isfinite(start) || !std::isfinite(step) || !std::isfinite(rail.stations.hi)) return stations;
  // Multiples of the step rather than sums of it, so that the last station is as exact as the first.
  for (int i = 0; start + i * step + half <= rail.stations.hi + 1e-9; ++i) stations.push_back(start + i * step);
  if (step < bracket_width(rail.brackets)) {
    every.fault("brackets this close together overlap",
                "each is " + length_text(bracket_width(rail.brackets), every.bare()) + " wide along the rail");
  }
  return stations;
}

std::vector<double> read_listed(const Setting& at, const Rail& rail) {
  const std::vector<double> stations = at.numbers();
  const std::vector<Setting> items = at.items();
  const double width = bracket_width(rail.brackets);
  for (std::size_t i = 0; i < stations.size(); ++i) {
    check_on_pipe(items[i], stations[i], width_on_pipe(rail.brackets) / 2, rail.stations);
    if (i > 0 && stations[i] - stations[i - 1] < width) {
      items[i].fault(stations[i] > stations[i - 1] ? "this bracket overlaps the one before it"
                                                   : "this bracket does not lie to the right of the one before it",
                     "list them from left to right, at least " + length_text(width, at.bare()) + " apart");
    }
  }
  return stations;
}

}  // namespace

std::vector<double> read_bracket_stations(const Setting& brackets, const Rail& rail) {
  const Setting at = brackets.at("at"), first = brackets.at("first"), every = brackets.at("every");
  const bool listed = at.given(), repeated = first.given() && every.given();
  if (brackets.is_map() && listed && (first.given() || every.given())) {
    at.fault("the brackets' stations are given twice", "give first and every, or at, not both");
  } else if (brackets.is_map() && !listed && !repeated) {
    brackets.fault("the brackets have no stations", "give first and every, or at: [300, 1200, 2050]");
  }
  if (listed) return read_listed(at, rail);
  return repeated ? read_repeated(brackets, rail) : std::vector<double>{};
}

}  // namespace stowpath
