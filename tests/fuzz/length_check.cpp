#include <cmath>
#include <stdexcept>
#include <string>

#include "sim/trade/length.h"
#include "sim/trade/lumber.h"
#include "sim/trade/pipe.h"
#include "tests/fuzz/checks.h"

namespace stowpath::testing {
namespace {

void require(bool holds, const char* promise) {
  if (!holds) throw std::logic_error(promise);
}

void check_measure(const Measure& measure) {
  require(measure.value.has_value() == measure.problem.empty(), "either a value or a problem");
  require(measure.value.has_value() == measure.hint.empty(), "a hint with every problem and no other");
  if (measure.value) require(std::isfinite(*measure.value), "a finite value");
}

void check_reads_back(const std::string& text, double metres, double within) {
  const Measure back = parse_length(text, LengthUnit::none);
  require(back.value.has_value(), "what is printed can be read");
  // Besides the step of the format: its millionth of a step for halves, and the rounding of a double.
  require(std::abs(*back.value - metres) <= within * (1 + 1e-5) + 1e-12 * std::abs(metres),
          "what is printed reads back");
}

void check_formats(double metres) {
  for (const DisplayUnits units : {DisplayUnits::imperial, DisplayUnits::metric}) {
    require(!format_length(Nominal{metres}, units).empty() && !format_small_length(Nominal{metres}, units).empty(),
            "some text");
  }
  if (std::abs(metres) > 1e9) return;  // prints as unbounded
  check_reads_back(format_feet_inches(Nominal{metres}), metres, 0.0254 / 32);
  check_reads_back(format_feet_inches(Nominal{metres}, 64), metres, 0.0254 / 128);
  check_reads_back(format_length(Nominal{metres}, DisplayUnits::metric), metres, 0.0005);
  check_reads_back(format_metres(Nominal{metres}, 6), metres, 0.5e-6);
}

}  // namespace

void check_length(std::string_view text) {
  const Measure unmarked = parse_length(text, LengthUnit::none);
  check_measure(unmarked);
  for (const LengthUnit bare : {LengthUnit::inch, LengthUnit::millimetre}) {
    const Measure measure = parse_length(text, bare);
    check_measure(measure);
    if (unmarked.value) require(measure.value == unmarked.value, "a written unit outweighs the unit of bare numbers");
    if (measure.value) check_formats(*measure.value);
  }
  for (const auto parse : {parse_mass, parse_force, parse_angle, parse_number}) check_measure(parse(text));
  const auto board = dressed_size(text);
  if (board) require(board->thickness > 0 && board->width >= board->thickness, "a board is no thicker than wide");
  if (const Species* species = find_species(text)) require(species->density > 0, "a species has a density");
  if (const PipeSize* pipe = find_pipe(text)) require(pipe_section(*pipe).area > 0, "a pipe has a wall");
  find_pipe_grade(text);
}

}  // namespace stowpath::testing
