#include "sim/trade/friction.h"

#include <array>

#include "sim/trade/us_units.h"

namespace stowpath {
namespace {

constexpr SourceStatus kVerified = SourceStatus::verified;
constexpr std::string_view kWiki = "mech.subwiki.org, Table of friction coefficients";
constexpr std::string_view kUniversity = "mechanics.ju.se, Friction";

constexpr Interval one(double value) { return {value, value}; }

constexpr std::array kPairs{
    FrictionPair{"steel on steel, clean and dry", one(0.74), one(0.57), {"S-FR-ss", kWiki, kVerified}},
    FrictionPair{"hard steel on hard steel", one(0.78), one(0.42), {"S-FR-hs", kWiki, kVerified}},
    FrictionPair{"steel on steel, greased",
                 one(0.16),
                 one(0.08),
                 {"S-FR-sg", "misumi-ec.com, Coefficient of friction", kVerified}},
    FrictionPair{
        "steel on steel, not said how clean", {0.1, 0.3}, Interval{0.03, 0.3}, {"S-FR-su", kUniversity, kVerified}},
    FrictionPair{"wood on metal, dry", {0.2, 0.6}, std::nullopt, {"S-FR-wm", kWiki, kVerified}},
    FrictionPair{"wood on metal, wet", one(0.2), std::nullopt, {"S-FR-wm", kWiki, kVerified}},
    FrictionPair{"steel on wood", {0.5, 0.7}, Interval{0.2, 0.5}, {"S-FR-wm", kUniversity, kVerified}},
    FrictionPair{"wood on wood, dry", {0.25, 0.5}, std::nullopt, {"S-FR-ww", kWiki, kVerified}},
    FrictionPair{"wood on wood, wet", one(0.2), std::nullopt, {"S-FR-ww", kWiki, kVerified}},
    FrictionPair{"hemp rope on steel", one(0.3), one(0.2), {"S-FR-rope", kUniversity, kVerified}},
    FrictionPair{
        "nylon rope on steel", {0.15, 0.25}, std::nullopt, {"S-FR-rope", "no page at hand", SourceStatus::memory}},
    FrictionPair{"steel hook on painted pipe",
                 {0.25, 0.5},
                 std::nullopt,
                 {"S-FR-paint", "no table found", SourceStatus::judgement}}};

constexpr Source kShop{"S-ROLL-1", "emachineshop.com, Rolling friction", kVerified};
// The page prints no unit; its arms agree with others' only as inches.
constexpr Source kNord{"S-ROLL-2", "nordengineeringdatabase.com, rolling resistance (read as inches)", kVerified};

constexpr RollingPair rolling(std::string_view name, double low, double high, const Source& source) {
  return {name, {low * kInch, high * kInch}, source};
}

constexpr std::array kRolling{
    rolling("iron on iron", 0.02, 0.02, kShop),         rolling("wood on wood", 0.06, 0.06, kShop),
    rolling("iron on wood", 0.22, 0.22, kShop),         rolling("steel on steel", 0.02, 0.02, kNord),
    rolling("wood on steel", 0.05, 0.05, kNord),        rolling("polymer on steel", 0.08, 0.08, kNord),
    rolling("hard rubber on steel", 0.28, 0.28, kNord), rolling("polymer on concrete", 0.2, 0.2, kNord),
    rolling("hard rubber on concrete", 0.4, 0.8, kNord)};

}  // namespace

std::span<const FrictionPair> friction_pairs() { return kPairs; }

std::span<const RollingPair> rolling_pairs() { return kRolling; }

double rolling_force(double load, double radius, double arm) { return load * arm / radius; }

}  // namespace stowpath
