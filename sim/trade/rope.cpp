#include "sim/trade/rope.h"

#include <array>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr SourceStatus kVerified = SourceStatus::verified;
constexpr double kSameSize = 0.2e-3;  // sizes listed lie at least 1.5 mm apart [m]

constexpr RopeStrength row(RopeMake make, double inches, double pounds, std::optional<double> working,
                           const Source& source) {
  const auto newtons = working ? std::optional(*working * kPoundForce) : std::nullopt;
  return {make, inches * kInch, pounds * kPoundForce, newtons, source};
}

constexpr RopeMake kThreeStrand = RopeMake::nylon_three_strand;
constexpr Source kIndustrial{"S-ROPE-N3", "industrialrope.com, nylon three-strand, minimum tensile", kVerified};
constexpr Source kToolbox{"S-ROPE-N3b", "engineeringtoolbox.com, nylon rope strength, minimum breaking", kVerified};
constexpr Source kManila{"S-ROPE-man", "CI 1308-96 on abacarope.com", kVerified};
constexpr Source kPolypropylene{"S-ROPE-pp", "industrialrope.com, polypropylene three-strand", kVerified};
// "About 15 % above three-strand", of the 5,800 lb that the same page gives three-strand.
constexpr Source kBraid{"S-ROPE-NDB", "flipbuilder.com/pcbd/dqwe p. 14, 15 % above 5,800 lb", SourceStatus::derived};

constexpr std::array kStrengths{row(kThreeStrand, 0.25, 1490, 124, kIndustrial),
                                row(kThreeStrand, 0.3125, 2300, std::nullopt, kIndustrial),
                                row(kThreeStrand, 0.375, 3340, 278, kIndustrial),
                                row(kThreeStrand, 0.4375, 4500, std::nullopt, kIndustrial),
                                row(kThreeStrand, 0.5, 5750, 525, kIndustrial),
                                row(kThreeStrand, 0.625, 9350, std::nullopt, kIndustrial),
                                row(kThreeStrand, 0.25, 1486, std::nullopt, kToolbox),
                                row(kThreeStrand, 0.375, 3240, std::nullopt, kToolbox),
                                row(kThreeStrand, 0.5, 5670, std::nullopt, kToolbox),
                                row(RopeMake::nylon_double_braid, 0.5, 1.15 * 5800, std::nullopt, kBraid),
                                row(RopeMake::manila, 0.25, 540, std::nullopt, kManila),
                                row(RopeMake::manila, 0.375, 1215, std::nullopt, kManila),
                                row(RopeMake::manila, 0.5, 2385, std::nullopt, kManila),
                                row(RopeMake::polypropylene, 0.25, 1130, std::nullopt, kPolypropylene),
                                row(RopeMake::polypropylene, 0.375, 2440, std::nullopt, kPolypropylene),
                                row(RopeMake::polypropylene, 0.5, 3780, std::nullopt, kPolypropylene)};

constexpr Source kDay{"S-ROPE-knots", "Day 1970, Dent (USDA) 1964 and Plymouth 1946, as listed on flipbuilder.com",
                      kVerified};
constexpr double kWorstKnot = 0.50;  // CI 1401-06 (S-ROPE-knot50): a knot may cut the strength by as much as half

constexpr Knot knot(std::string_view name, double share) {
  return {name, share, {share < kWorstKnot ? share : kWorstKnot, share}, kDay};
}

// A climbing book says that a bowline loses only 10 to 20 % (glacierist.blogspot.com, 2018-05). A splice is no knot.
constexpr std::array kKnots{Knot{"bowline", 0.60, {kWorstKnot, 0.90}, kDay},
                            knot("two half hitches", 0.75),
                            knot("clove hitch", 0.75),
                            knot("anchor bend", 0.70),
                            knot("timber hitch", 0.70),
                            knot("figure-eight", 0.48),
                            knot("reef knot", 0.45),
                            knot("overhand", 0.45),
                            knot("sheepshank", 0.45),
                            Knot{"eye splice", 0.95, {0.95, 0.95}, kDay},
                            Knot{"short splice", 0.90, {0.90, 0.90}, kDay}};

constexpr std::string_view kAxiom = "axiomcordages.com, utility";
constexpr std::array kBends{BendRule{"twisted rope on a turning sheave", 10.0, {"S-ROPE-Dd", kAxiom, kVerified}},
                            BendRule{"braided rope on a turning sheave", 8.0, {"S-ROPE-Dd", kAxiom, kVerified}},
                            BendRule{"any rope round a fixed pin", 3.0, {"S-ROPE-Dd", kAxiom, kVerified}},
                            BendRule{"block for fibre rope, smallest",
                                     9.0,
                                     {"S-ROPE-block", "US Army watercraft and engineer manuals, on blocks", kVerified}},
                            BendRule{"cheek of a block for fibre rope, three times the rope's circumference",
                                     3.0 * std::numbers::pi,
                                     {"S-ROPE-block", "US Army watercraft manual, ch. 20", kVerified}}};

}  // namespace

std::string_view rope_make_text(RopeMake make) {
  switch (make) {
    case RopeMake::nylon_three_strand:
      return "nylon three-strand";
    case RopeMake::nylon_double_braid:
      return "nylon double braid";
    case RopeMake::nylon_diamond_braid:
      return "nylon diamond braid";
    case RopeMake::manila:
      return "manila";
    case RopeMake::polypropylene:
      break;
  }
  return "polypropylene three-strand";
}

std::vector<RopeStrength> rope_strengths(RopeMake make, double diameter) {
  std::vector<RopeStrength> found;
  for (const RopeStrength& strength : kStrengths) {
    if (strength.make == make && std::abs(strength.diameter - diameter) < kSameSize) found.push_back(strength);
  }
  return found;
}

std::optional<double> exam_rule_strength(RopeMake make, double diameter) {
  const double around = std::numbers::pi * diameter / kInch;
  const double manila = 900.0 * around * around * kPoundForce;
  if (make == RopeMake::manila) return manila;
  if (make == RopeMake::nylon_three_strand) return 2.5 * manila;
  if (make == RopeMake::polypropylene) return 1.4 * manila;
  return std::nullopt;
}

std::span<const Knot> knots() { return kKnots; }

const Knot* find_knot(std::string_view name) {
  for (const Knot& candidate : kKnots) {
    if (candidate.name == name) return &candidate;
  }
  return nullptr;
}

double rope_working_load(double breaking, double knot_share, double design_factor) {
  if (!(design_factor > 0.0)) throw std::invalid_argument("rope_working_load: the design factor is not above 0");
  return breaking * knot_share / design_factor;
}

double double_braid_stretch(double length, double share_of_breaking) {
  constexpr double kAtBreak = 33.6 / 118.9;  // both in kip
  return length * share_of_breaking * kAtBreak;
}

std::span<const BendRule> bend_rules() { return kBends; }

}  // namespace stowpath
