#include "sim/scene/key_table.h"

#include <array>

namespace stowpath {
namespace {

constexpr KeyRange kAcrossRoom{-10.0, 50.0};  // out and up [m]
constexpr KeyRange kAlongRoom{-10.0, 110.0};  // stations [m]
constexpr KeyRange kAlong{-2.0, 15.0};        // along a section [m]
constexpr KeyRange kAcross{-2.0, 2.0};        // across a section [m]

// clang-format off: one row a setting, as short as can be
const std::array kKeys{
    KeyRow{"hoist", kMap, {}, "", "(no hoist)",
           "{ceiling point: {out: 2550, up: 4080, station: 4000}, home: 4000, ...}",
           "The line that lifts the stair, and what pulls it."},
    KeyRow{"hoist.ceiling point", kMap, {}, "", "(none)", "{out: 2550, up: 4080, station: 4000}",
           "Where the line hangs from."},
    KeyRow{"hoist.ceiling point.out", kLength, kAcrossRoom, "", kRequired, "2550", "Out from the back wall."},
    KeyRow{"hoist.ceiling point.up", kLength, kAcrossRoom, "", kRequired, "4080", "Height."},
    KeyRow{"hoist.ceiling point.station", kLength, kAlongRoom, "", kRequired, "4000", "Station."},
    KeyRow{"hoist.ceiling point.members", kCount, {1, 10}, "", "1", "2",
           "Framing members that share its load: joists, or the two ends of a beam across them."},

    KeyRow{"hoist.ceiling point.eye", kMap, {}, "", "(not known)",
           "{count: 1, diameter: 10, thread: 60, kind: lag, species: SPF}",
           "The eye that holds the line by its thread in wood."},
    KeyRow{"hoist.ceiling point.eye.count", kCount, {1, 50}, "", "1", "1", "Eyes that share the load."},
    KeyRow{"hoist.ceiling point.eye.diameter", kLength, {0.002, 0.05}, "", kRequired, "10",
           "Of the shank; of a lag screw, its nominal size."},
    KeyRow{"hoist.ceiling point.eye.thread", kLength, {0.003, 0.5}, "", kRequired, "60",
           "Length of thread in the wood that holds."},
    KeyRow{"hoist.ceiling point.eye.kind", kWord, {}, "wood|lag", "wood", "lag", "A wood screw or a lag screw."},
    KeyRow{"hoist.ceiling point.eye.species", kText, {}, "", "(that of the side rails)", "SPF",
           "Species group of the wood that holds."},

    KeyRow{"hoist.home", kLength, {0, 100}, "", "(none)", "4000",
           "Home station: where the stair stands to be folded and lifted."},
    KeyRow{"hoist.rolls", kFlag, {}, "", "no", "no", "Whether the ceiling point rolls along with the stair."},
    KeyRow{"hoist.pick", kMap, {}, "", kRequired, "{section: 1, along: 1700, across: 0, spread: 520}",
           "Where the line takes hold of the stair."},
    KeyRow{"hoist.pick.section", kCount, {1, 3}, "", "1", "1", "Section, from the top."},
    KeyRow{"hoist.pick.along", kLength, kAlong, "", kRequired, "1700", "Along that section."},
    KeyRow{"hoist.pick.across", kLength, kAcross, "", "0 mm", "0", "Across it."},
    KeyRow{"hoist.pick.spread", kLength, {0, 3}, "", "0 mm", "520", "Between two picks, along the rail; 0 for one."},
    KeyRow{"hoist.line", kMap, {}, "", kRequired, "{parts: 4, sheaves: plain, diameter: 8, strength: 8 kN}",
           "The line and its blocks."},
    KeyRow{"hoist.line.parts", kCount, {1, 12}, "", "1", "4", "Parts of line that share the load."},
    KeyRow{"hoist.line.sheaves", kWord, {}, "plain|roller|ball", "plain", "plain", "Bearings of the sheaves."},
    KeyRow{"hoist.line.diameter", kLength, {0.001, 0.05}, "", kRequired, "8", "Of the line."},
    KeyRow{"hoist.line.strength", kForce, {100, 1e6}, "", "(not known)", "8 kN", "Breaking strength of the line."},
    KeyRow{"hoist.line.lead", kMap, {}, "", "(straight down from the ceiling point)",
           "{out: 60, up: 1200, station: 6900}", "Where the fall is led to."},
    KeyRow{"hoist.line.lead.out", kLength, kAcrossRoom, "", kRequired, "60", "Out from the back wall."},
    KeyRow{"hoist.line.lead.up", kLength, kAcrossRoom, "", kRequired, "1200", "Height."},
    KeyRow{"hoist.line.lead.station", kLength, kAlongRoom, "", kRequired, "6900", "Station."},
    KeyRow{"hoist.line.leads", kMaps, list_of(1, 10), "", "(lead, or straight down from the ceiling point)",
           "[{out: 60, up: 4000, station: 4000}, {out: 60, up: 1200, station: 6900}]",
           "Lead sheaves from the ceiling point to the hand or winch, in order."},
    KeyRow{"hoist.line.leads[].out", kLength, kAcrossRoom, "", kRequired, "60", "Out from the back wall."},
    KeyRow{"hoist.line.leads[].up", kLength, kAcrossRoom, "", kRequired, "1200", "Height."},
    KeyRow{"hoist.line.leads[].station", kLength, kAlongRoom, "", kRequired, "6900", "Station."},
    KeyRow{"hoist.line.friction", kWord, {}, "geometric|additive|ideal", "geometric", "geometric",
           "How friction at the sheaves is reckoned: each sheave multiplies the pull, each adds a tenth of the load, "
           "or none."},
    KeyRow{"hoist.line.tail", kLength, {0, 20}, "", "1000 mm or 40 in", "1000",
           "Spare line at the hand with everything down."},
    KeyRow{"hoist.line.knot", kWord, {}, "bowline|figure eight|clove hitch|two half hitches|splice|none", "bowline",
           "bowline", "How the line is made fast at its dead end."},
    KeyRow{"hoist.spreader", kMap, {}, "", "(none)", "{length: 520, drop: 250, mass: 1.2 kg}",
           "A bar that parts the line to two picks."},
    KeyRow{"hoist.spreader.length", kLength, {0.05, 3}, "", kRequired, "520", "Between its two ends."},
    KeyRow{"hoist.spreader.drop", kLength, {0.01, 3}, "", kRequired, "250",
           "Height of the bar's middle over the picks."},
    KeyRow{"hoist.spreader.mass", kMass, {0, 50}, "", "0 kg", "1.2 kg", "Its mass, with what hangs on it."},
    KeyRow{"hoist.hand limit", kForce, {10, 2000}, "", "(the published limits)", "200 N",
           "The pull that whoever hauls will not go beyond."},
    KeyRow{"hoist.cleat", kFlag, {}, "", "no", "yes", "Whether the fall can be made fast on a cleat."},
    KeyRow{"hoist.pulled by", kWord | kMap, {}, "hand", "hand", "hand", "A hand, or a winch with its measurements."},
    KeyRow{"hoist.pulled by.crank winch", kMap, {}, "", "(powered winch instead)", "{drum: 60, ratio: 5, crank: 250}",
           "A winch turned by hand."},
    KeyRow{"hoist.pulled by.crank winch.drum", kLength, {0.01, 1}, "", kRequired, "60", "Diameter of the drum."},
    KeyRow{"hoist.pulled by.crank winch.ratio", kNumber, {0.1, 1000}, "", "1", "5",
           "Turns of the crank for one of the drum."},
    KeyRow{"hoist.pulled by.crank winch.crank", kLength, {0.02, 1}, "", kRequired, "250", "Radius of the crank."},
    KeyRow{"hoist.pulled by.crank winch.efficiency", kNumber, {0.01, 1}, "", "(by the winch's kind)", "0.7",
           "Share of the work that reaches the line."},
    KeyRow{"hoist.pulled by.crank winch.speed", kNumber, {1, 5000}, "", "(a person's usual speed)", "30",
           "Turns of the crank a minute."},
    KeyRow{"hoist.pulled by.crank winch.drum length", kLength, {0.01, 2}, "", "(long enough for one layer)", "120",
           "Of the drum between its flanges: the line climbs in layers."},
    KeyRow{"hoist.pulled by.crank winch.worm", kMap, {}, "", "(no worm)", "{lead angle: 4, friction: 0.1}",
           "A worm drive, which may hold the load by itself."},
    KeyRow{"hoist.pulled by.crank winch.worm.lead angle", kAngle, degrees(0.5, 45), "", kRequired, "4",
           "Lead angle of the worm."},
    KeyRow{"hoist.pulled by.crank winch.worm.friction", kNumber, {0.01, 0.5}, "", "0.1", "0.1",
           "Friction between worm and wheel."},
    KeyRow{"hoist.pulled by.powered winch", kMap, {}, "", "(crank winch instead)", "{drum: 60, ratio: 40, speed: 300}",
           "A winch turned by a motor or a drill."},
    KeyRow{"hoist.pulled by.powered winch.drum", kLength, {0.01, 1}, "", kRequired, "60", "Diameter of the drum."},
    KeyRow{"hoist.pulled by.powered winch.ratio", kNumber, {0.1, 1000}, "", "1", "40",
           "Turns of the motor for one of the drum."},
    KeyRow{"hoist.pulled by.powered winch.crank", kLength, {0.02, 1}, "", "(none)", "250",
           "Radius of its crank for emergencies."},
    KeyRow{"hoist.pulled by.powered winch.efficiency", kNumber, {0.01, 1}, "", "(by the winch's kind)", "0.4",
           "Share of the work that reaches the line."},
    KeyRow{"hoist.pulled by.powered winch.speed", kNumber, {1, 50000}, "", "(not known)", "300",
           "Turns of the motor a minute."},

    KeyRow{"hoist.pulled by.powered winch.drum length", kLength, {0.01, 2}, "", "(long enough for one layer)", "120",
           "Of the drum between its flanges: the line climbs in layers."},
    KeyRow{"hoist.pulled by.powered winch.worm", kMap, {}, "", "(no worm)", "{lead angle: 4, friction: 0.1}",
           "A worm drive, which may hold the load by itself."},
    KeyRow{"hoist.pulled by.powered winch.worm.lead angle", kAngle, degrees(0.5, 45), "", kRequired, "4",
           "Lead angle of the worm."},
    KeyRow{"hoist.pulled by.powered winch.worm.friction", kNumber, {0.01, 0.5}, "", "0.1", "0.1",
           "Friction between worm and wheel."},
    KeyRow{"hoist.pulled by.powered winch.torque", kTorque, {0.05, 1000}, "", "(not known)", "12 Nm",
           "Torque that the motor or drill gives at that speed."},

    KeyRow{"fold line", kMap, {}, "", "(none)",
           "{from: {section: 1, along: 200, across: -60}, through: [{section: 2, along: 1300, across: -60}], diameter: "
           "8}", "The line that draws the sections together."},
    KeyRow{"fold line.from", kMap, {}, "", kRequired, "{section: 1, along: 200, across: -60}",
           "Where it is made fast."},
    KeyRow{"fold line.from.section", kCount, {1, 3}, "", kRequired, "1", "Section, from the top."},
    KeyRow{"fold line.from.along", kLength, kAlong, "", kRequired, "200", "Along that section."},
    KeyRow{"fold line.from.across", kLength, kAcross, "", kRequired, "-60", "Across it."},
    KeyRow{"fold line.through", kMaps, list_of(1, 10), "", kRequired, "[{section: 2, along: 1300, across: -60}]",
           "The pulleys it runs through, in order; it is pulled at the last."},
    KeyRow{"fold line.through[].section", kCount, {1, 3}, "", kRequired, "2", "Section, from the top."},
    KeyRow{"fold line.through[].along", kLength, kAlong, "", kRequired, "1300", "Along that section."},
    KeyRow{"fold line.through[].across", kLength, kAcross, "", kRequired, "-60", "Across it."},
    KeyRow{"fold line.diameter", kLength, {0.001, 0.05}, "", kRequired, "8", "Of the line."},
    KeyRow{"fold line.station", kLength, {-3, 3}, "", "0 mm", "0", "From the middle of the stair's width."},
};
// clang-format on

}  // namespace

std::span<const KeyRow> hoist_keys() { return kKeys; }

}  // namespace stowpath
