#include "sim/scene/key_table.h"

#include <array>

namespace stowpath {
namespace {

constexpr std::string_view kRated =
    "line|fold line|block|lead block|ceiling point|eye|carabiner|shackle|sling|spreader|pick|cleat|winch|winch screws|"
    "hinge|hook|lock pin|caster|caster plate|bracket|saddle";

// clang-format off: one row a setting, as short as can be
const std::array kKeys{
    KeyRow{"climber", kMap, {}, "", "(the default below)", "{mass: 300 lb}", "Who climbs, for the loads."},
    KeyRow{"climber.mass", kMass, {10, 500}, "", "300 lb", "300 lb",
           "With what is carried; the default is the concentrated load of IRC Table R301.5 for stairs."},
    KeyRow{"climber.usual", kMass, {10, 500}, "", "200 lb", "200 lb",
           "Who climbs on a usual day, with what is carried. Five times that, and 1,000 lb at least, must not break the stair "
           "(29 CFR 1910.25(b)(6))."},
    KeyRow{"climber.footfall", kNumber, {1, 4}, "", "1.5", "1.5",
           "How many times the usual weight a step puts on a tread; a judgement."},
    KeyRow{"climber.aside", kLength, {0, 0.5}, "", "150 mm or 6 in", "150",
           "How far from the stair's middle a foot may stand."},
    KeyRow{"climber.leans out", kLength, {0, 1.5}, "", "300 mm or 12 in", "300",
           "How far the body may be beyond the tread that it stands on, away from the loft; a judgement."},
    KeyRow{"climber.push", kForce, {0, 5000}, "", "60 lbf", "60 lbf",
           "Level, on the stair, when one steps off at the top."},
    KeyRow{"friction", kMap, {}, "", "(the ranges below)", "{hook: [0.15, 0.5], hinge: [0.1, 0.3], floor: [0.3, 0.7]}",
           "Ranges of friction coefficients; results are worked out over the whole of them. The default ones are a "
           "judgement."},
    KeyRow{"friction.hook", kSpan, {0, 2}, "", "(0.15 to 0.5)", "[0.15, 0.5]", "Hook on pipe."},
    KeyRow{"friction.hinge", kSpan, {0, 2}, "", "(0.1 to 0.3)", "[0.1, 0.3]", "Pin in hinge."},
    KeyRow{"friction.floor", kSpan, {0, 2}, "", "(0.3 to 0.7)", "[0.3, 0.7]",
           "A caster that scrubs sideways over the floor."},
    KeyRow{"hardware", kMaps, list_of(0, 50), "", "(no ratings known)",
           "[{what: carabiner, rating: 20 kN, kind: breaking, factor: 5}]", "What the makers of the hardware rate it for."},
    KeyRow{"hardware[].what", kWord, {}, kRated, kRequired, "carabiner", "The piece of hardware."},
    KeyRow{"hardware[].rating", kForce, {1, 1e6}, "", kRequired, "20 kN",
           "What its maker states; a line's own breaking strength stands under hoist.line.strength."},
    KeyRow{"hardware[].kind", kWord, {}, "working|breaking", "working", "breaking",
           "Whether that is a working load limit or the load that breaks it; a carabiner's is what breaks it."},
    KeyRow{"hardware[].factor", kNumber, {1, 20}, "", "(of a breaking rating 5, and 10 over people at rest)", "5",
           "What breaks it over what it may carry: a breaking rating is divided by this; of a working one it says how much "
           "more would break it."},
    KeyRow{"dynamic factor", kNumber, {1, 10}, "", "1.25", "1.25",
           "On the loads of a line while it moves; a judgement."},
};
// clang-format on

}  // namespace

std::span<const KeyRow> load_keys() { return kKeys; }

}  // namespace stowpath
