#include "sim/trade/pipe.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "sim/trade/length.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kPsi = 6894.757293168;                 // [Pa]
constexpr double kPoundsPerFoot = 0.45359237 / 0.3048;  // [kg/m]

constexpr PipeSize size(std::string_view name, double nominal, double outside, double wall, double pounds_per_foot) {
  return {name, nominal, outside * kInch, wall * kInch, pounds_per_foot * kPoundsPerFoot, SourceStatus::verified};
}

constexpr std::array kSizes{size("NPS 1/2", 0.5, 0.840, 0.109, 0.851),   size("NPS 3/4", 0.75, 1.050, 0.113, 1.131),
                            size("NPS 1", 1.0, 1.315, 0.133, 1.679),     size("NPS 1-1/4", 1.25, 1.660, 0.140, 2.273),
                            size("NPS 1-1/2", 1.5, 1.900, 0.145, 2.718), size("NPS 2", 2.0, 2.375, 0.154, 3.653)};

constexpr std::array kGrades{PipeGrade{"A", 30e3 * kPsi, 48e3 * kPsi, SourceStatus::verified},
                             PipeGrade{"B", 35e3 * kPsi, 60e3 * kPsi, SourceStatus::verified}};

struct ThreadRow {
  double outside_diameter = 0.0;  // [in]
  double per_inch = 0.0;
};

// Sizes 1/8 to 12.
constexpr std::array kThreads{ThreadRow{0.405, 27},   ThreadRow{0.540, 18},   ThreadRow{0.675, 18},
                              ThreadRow{0.840, 14},   ThreadRow{1.050, 14},   ThreadRow{1.315, 11.5},
                              ThreadRow{1.660, 11.5}, ThreadRow{1.900, 11.5}, ThreadRow{2.375, 11.5},
                              ThreadRow{2.875, 8},    ThreadRow{3.500, 8},    ThreadRow{12.750, 8}};

constexpr Source kThreadSource{"S-thread", "ASME B1.20.1, taper pipe thread", SourceStatus::verified};

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

// Steps over `prefix` in either case, and over the spaces and dashes behind it.
void drop_prefix(std::string_view& text, std::string_view prefix) {
  if (text.size() < prefix.size()) return;
  for (std::string_view::size_type i = 0; i < prefix.size(); ++i) {
    if (lower(text[i]) != prefix[i]) return;
  }
  text.remove_prefix(prefix.size());
  while (!text.empty() && (text.front() == ' ' || text.front() == '-')) text.remove_prefix(1);
}

}  // namespace

const PipeSize* find_pipe(std::string_view name) {
  drop_prefix(name, "nps");
  const Measure nominal = parse_length(name, LengthUnit::inch);
  if (!nominal.value) return nullptr;
  for (const PipeSize& pipe : kSizes) {
    // The nominal size survives the way through metres to within rounding.
    if (std::abs(*nominal.value / kInch - pipe.nominal) < 1e-9) return &pipe;
  }
  return nullptr;
}

std::vector<std::string_view> pipe_names() {
  std::vector<std::string_view> names;
  for (const PipeSize& pipe : kSizes) names.push_back(pipe.name);
  return names;
}

Section pipe_section(const PipeSize& pipe) { return tube_section(pipe.outside_diameter, pipe.wall); }

double steel_tube_mass(double outside_diameter, double wall) {
  return tube_section(outside_diameter, wall).area * kSteelDensity;
}

PipeThread pipe_thread(double outside_diameter) {
  const auto off = [&](const ThreadRow& row) { return std::abs(row.outside_diameter * kInch - outside_diameter); };
  const ThreadRow& nearest = *std::min_element(kThreads.begin(), kThreads.end(),
                                               [&](const auto& a, const auto& b) { return off(a) < off(b); });
  const double pitch = kInch / nearest.per_inch;
  return {pitch, 0.8 * pitch, kThreadSource};
}

std::optional<Section> threaded_section(double outside_diameter, double wall) {
  const double depth = pipe_thread(outside_diameter).depth;
  if (!(wall > depth)) return std::nullopt;
  return tube_section(outside_diameter - 2.0 * depth, wall - depth);
}

const PipeGrade* find_pipe_grade(std::string_view name) {
  drop_prefix(name, "a53");
  drop_prefix(name, "grade");
  if (name.size() != 1) return nullptr;
  for (const PipeGrade& grade : kGrades) {
    if (lower(name.front()) == lower(grade.name.front())) return &grade;
  }
  return nullptr;
}

std::vector<std::string_view> pipe_grade_names() {
  std::vector<std::string_view> names;
  for (const PipeGrade& grade : kGrades) names.push_back(grade.name);
  return names;
}

}  // namespace stowpath
