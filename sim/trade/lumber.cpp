#include "sim/trade/lumber.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <string>

#include "sim/trade/length.h"
#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr double kPsi = 6894.757293168;  // [Pa]

struct Board {
  std::string_view name;
  double nominal_thickness, nominal_width;  // [in]
  double thickness, width;                  // dressed, dry [in]
  SourceStatus status = SourceStatus::verified;
};

constexpr SourceStatus kDerived = SourceStatus::derived;
constexpr SourceStatus kMemory = SourceStatus::memory;

// Verified: the sizes of PS 20 as printed. Derived: a printed thickness with a width by the printed rule, half an inch
// off up to 6 in and three quarters from 8 in. From memory: thicknesses over 2 in, and timbers, half an inch off when
// green.
constexpr std::array kBoards{Board{"1x2", 1, 2, 0.75, 1.5, kDerived},
                             Board{"1x3", 1, 3, 0.75, 2.5, kDerived},
                             Board{"1x4", 1, 4, 0.75, 3.5},
                             Board{"1x6", 1, 6, 0.75, 5.5},
                             Board{"1x8", 1, 8, 0.75, 7.25, kDerived},
                             Board{"1x10", 1, 10, 0.75, 9.25, kDerived},
                             Board{"1x12", 1, 12, 0.75, 11.25, kDerived},
                             Board{"5/4x4", 1.25, 4, 1, 3.5, kDerived},
                             Board{"5/4x6", 1.25, 6, 1, 5.5, kDerived},
                             Board{"5/4x8", 1.25, 8, 1, 7.25, kDerived},
                             Board{"5/4x10", 1.25, 10, 1, 9.25, kDerived},
                             Board{"5/4x12", 1.25, 12, 1, 11.25, kDerived},
                             Board{"2x2", 2, 2, 1.5, 1.5, kDerived},
                             Board{"2x3", 2, 3, 1.5, 2.5, kDerived},
                             Board{"2x4", 2, 4, 1.5, 3.5},
                             Board{"2x6", 2, 6, 1.5, 5.5},
                             Board{"2x8", 2, 8, 1.5, 7.25},
                             Board{"2x10", 2, 10, 1.5, 9.25},
                             Board{"2x12", 2, 12, 1.5, 11.25},
                             Board{"3x4", 3, 4, 2.5, 3.5, kMemory},
                             Board{"3x6", 3, 6, 2.5, 5.5, kMemory},
                             Board{"4x4", 4, 4, 3.5, 3.5, kMemory},
                             Board{"4x6", 4, 6, 3.5, 5.5, kMemory},
                             Board{"4x8", 4, 8, 3.5, 7.25, kMemory},
                             Board{"6x6", 6, 6, 5.5, 5.5, kMemory},
                             Board{"6x8", 6, 8, 5.5, 7.5, kMemory}};

// Read as inches, so that 5/4, 1-1/4 and 1.25 are the same thickness.
std::optional<double> nominal_inches(std::string_view text) {
  const Measure metres = parse_length(text, LengthUnit::inch);
  return metres.value ? std::optional(*metres.value / kInch) : std::nullopt;
}

// A nominal size survives the way through metres to within rounding.
bool same_nominal(double a, double b) { return std::abs(a - b) < 1e-9; }

struct Cross {
  size_t at = std::string_view::npos, size = 1;
};

Cross find_cross(std::string_view text) {
  const size_t letter = text.find_first_of("xX");
  if (letter != std::string_view::npos) return {letter, 1};
  constexpr std::string_view kTimes = "\u00D7";
  return {text.find(kTimes), kTimes.size()};
}

// Letters only, in lower case: "Douglas Fir-Larch" and "douglas fir larch" are one name.
std::string letters_of(std::string_view text) {
  std::string letters;
  for (const char c : text) {
    if (c >= 'a' && c <= 'z') letters += c;
    if (c >= 'A' && c <= 'Z') letters += static_cast<char>(c - 'A' + 'a');
  }
  return letters;
}

// NDS Supplement, section 3.1.3 (from memory); the table's densities are derived with it.
constexpr double density_at(double gravity, double moisture) {
  constexpr double kWater = 62.4 * 0.45359237 / (0.3048 * 0.3048 * 0.3048);  // 62.4 lb/ft3 [kg/m3]
  const double percent = 100.0 * moisture;
  return kWater * gravity / (1.0 + gravity * 0.009 * percent) * (1.0 + moisture);
}

constexpr std::string_view kGravitySource =
    "NDS Table 12.2A (2015/2018): specific gravities by species; density by the NDS Supplement's formula, from memory";
constexpr std::string_view kStrengthSource = "NDS Supplement Table 4A, No. 2, from memory";
constexpr std::string_view kPineSource = "NDS Supplement Table 4B, No. 2, 2013 and later, from memory";

struct Group {
  Species species;
  std::array<std::string_view, 3> spellings;  // as letters_of gives them
};

constexpr Group group(std::string_view name, std::string_view full_name, double gravity,
                      std::array<double, 6> psi,  // F_b, F_v, F_c along, F_c perpendicular, E, E_min
                      bool by_width, std::array<std::string_view, 3> spellings) {
  return {{name, full_name, gravity, density_at(gravity, 0.12), SourceStatus::verified, kGravitySource, psi[0] * kPsi,
           psi[1] * kPsi, psi[2] * kPsi, psi[3] * kPsi, psi[4] * kPsi, psi[5] * kPsi, by_width, SourceStatus::memory,
           by_width ? kPineSource : kStrengthSource},
          spellings};
}

constexpr std::array kGroups{
    group("SPF", "Spruce-Pine-Fir", 0.42, {875, 135, 1150, 425, 1.4e6, 0.51e6}, false, {"spf", "sprucepinefir", "spruce"}),
    group("DF-L", "Douglas Fir-Larch", 0.50, {900, 180, 1350, 625, 1.6e6, 0.58e6}, false,
          {"dfl", "douglasfirlarch", "douglasfir"}),
    group("HF", "Hem-Fir", 0.43, {850, 150, 1300, 405, 1.3e6, 0.47e6}, false, {"hf", "hemfir", "hemlockfir"}),
    group("SP", "Southern Pine", 0.55, {1100, 175, 1250, 565, 1.4e6, 0.51e6}, true, {"sp", "southernpine", "syp"})};

// One row for each width, up to which it holds; dressed widths in inches.
struct WidthRow {
  double widest;       // dressed [in]
  double size_factor;  // C_F on F_b, No. 2, 2 and 3 in thick
  double pine;         // F_b of Southern Pine No. 2 [psi]
};
constexpr std::array kWidths{WidthRow{3.5, 1.5, 1100}, WidthRow{4.5, 1.4, 1000}, WidthRow{5.5, 1.3, 1000},
                             WidthRow{7.25, 1.2, 925}, WidthRow{9.25, 1.1, 800}, WidthRow{11.25, 1.0, 750}};
constexpr double kFactorBeyond = 0.9;  // 14 in and wider; Southern Pine wider than 12 in takes 0.9 of its 12 in value

}  // namespace

std::optional<DressedSize> dressed_size(std::string_view nominal) {
  const Cross cross = find_cross(nominal);
  if (cross.at == std::string_view::npos) return std::nullopt;
  const auto thickness = nominal_inches(nominal.substr(0, cross.at));
  const auto width = nominal_inches(nominal.substr(cross.at + cross.size));
  if (!thickness || !width) return std::nullopt;
  for (const Board& board : kBoards) {
    if (same_nominal(board.nominal_thickness, *thickness) && same_nominal(board.nominal_width, *width)) {
      return DressedSize{board.thickness * kInch, board.width * kInch, board.status};
    }
  }
  return std::nullopt;
}

std::vector<std::string_view> lumber_names() {
  std::vector<std::string_view> names;
  for (const Board& board : kBoards) names.push_back(board.name);
  return names;
}

const Species* find_species(std::string_view name) {
  const std::string letters = letters_of(name);
  for (const Group& candidate : kGroups) {
    const auto& spellings = candidate.spellings;
    if (std::find(spellings.begin(), spellings.end(), letters) != spellings.end()) return &candidate.species;
  }
  return nullptr;
}

std::vector<std::string_view> species_names() {
  std::vector<std::string_view> names;
  for (const Group& known : kGroups) names.push_back(known.species.name);
  return names;
}

double bending_value(const Species& species, double width) {
  constexpr double kSlack = 0.06;  // a board a millimetre and a half over its dressed width is still that board [in]
  for (const WidthRow& row : kWidths) {
    if (width / kInch > row.widest + kSlack) continue;
    return species.bending_by_width ? row.pine * kPsi : species.bending * row.size_factor;
  }
  const double twelve_inch = species.bending_by_width ? kWidths.back().pine * kPsi : species.bending;
  return twelve_inch * kFactorBeyond;
}

double wood_density(double gravity, double moisture) { return density_at(gravity, moisture); }

}  // namespace stowpath
