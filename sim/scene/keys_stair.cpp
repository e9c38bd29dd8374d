#include "sim/scene/key_table.h"

#include <array>

namespace stowpath {
namespace {

constexpr KeyRange kBesideMiddle{-5.0, 5.0};  // stations from the stair's middle [m]

// clang-format off: one row a setting, as short as can be
const std::array kKeys{
    KeyRow{"stair", kMap, {}, "", kRequired, "{width: 560, sections: [1790, 1440], ...}",
           "The stair or ladder itself."},
    KeyRow{"stair.width", kLength, {0.1, 3}, "", kRequired, "560", "Over the side rails."},
    KeyRow{"stair.side rails", kMap, {}, "", kRequired, "{lumber: 2x6, species: SPF, front face: 70}",
           "The two boards that carry the treads."},
    KeyRow{"stair.side rails.lumber", kText, {}, "", "(size instead)", "2x6",
           "Nominal lumber size; the dressed size is looked up."},
    KeyRow{"stair.side rails.size", kLengths, {0.005, 1, 2, 2}, "", "(lumber instead)", "[38, 140]",
           "Thickness along the rail and width across."},
    KeyRow{"stair.side rails.species", kText, {}, "", "SPF", "SPF", "Species group, for mass and strength."},
    KeyRow{"stair.side rails.moisture", kNumber, {0, 60}, "", "12", "12",
           "Water in the wood of the whole stair, in per cent of its dry weight: about 12 indoors, 19 as sold dry."},
    KeyRow{"stair.side rails.front face", kLength, {-0.5, 0.5}, "", kRequired, "70",
           "Across, from the datum line through the pivot to the climber's face."},
    KeyRow{"stair.side rails.foot", kWord, {}, "square|level", "square", "level",
           "How the foot is cut: square, or level in the working pose."},
    KeyRow{"stair.sections", kLengths, {0.1, 15, 1, 3}, "", kRequired, "[1790, 1440]",
           "Length of each rigid section along the datum line: pivot to hinge, hinge to foot."},
    KeyRow{"stair.above pivot", kLength, {-1, 2}, "", "0 mm", "60",
           "How far the side rails run past the pivot; negative where they stop short, below the pipe."},

    KeyRow{"stair.hinges", kMaps, list_of(0, 2), "", "(none)", "[{face: back, offset: 12, limit: 178}]",
           "One for each joint between sections, from the top."},
    KeyRow{"stair.hinges[].face", kWord, {}, "back|front", "back", "back",
           "The face it sits on; the stair folds towards it."},
    KeyRow{"stair.hinges[].offset", kLength, {0, 0.5}, "", kRequired, "12", "How far its axis stands off that face."},
    KeyRow{"stair.hinges[].limit", kAngle, degrees(0, 180), "", "180", "178", "Greatest fold."},

    KeyRow{"stair.hinges[].screws", kMap, {}, "", "(not known)",
           "{count: 4, diameter: 5, thread: 30, kind: wood, species: SPF}",
           "The screws that hold each of the hinge's leaves."},
    KeyRow{"stair.hinges[].screws.count", kCount, {1, 50}, "", kRequired, "4", "For each leaf."},
    KeyRow{"stair.hinges[].screws.diameter", kLength, {0.002, 0.05}, "", kRequired, "5",
           "Of the shank; of a lag screw, its nominal size."},
    KeyRow{"stair.hinges[].screws.thread", kLength, {0.003, 0.5}, "", kRequired, "30",
           "Length of thread in the wood that holds."},
    KeyRow{"stair.hinges[].screws.kind", kWord, {}, "wood|lag", "wood", "wood", "A wood screw or a lag screw."},
    KeyRow{"stair.hinges[].screws.species", kText, {}, "", "(that of the side rails)", "SPF",
           "Species group of the wood that holds."},
    KeyRow{"stair.locks", kWord | kMaps, list_of(0, 2), "none", "none",
           "[{scab: 2x6, length: 900, spacer: 38, pin: 10}]",
           "Scab boards that bridge each joint, with the pin that locks it: none, or one for each hinge."},
    KeyRow{"stair.locks[].scab", kText, {}, "", "(size instead)", "2x6", "Nominal lumber size of the scab boards."},
    KeyRow{"stair.locks[].size", kLengths, {0.005, 1, 2, 2}, "", "(scab instead)", "[38, 140]",
           "Of a scab board: thickness along the rail and width across."},
    KeyRow{"stair.locks[].length", kLength, {0.05, 5}, "", kRequired, "900",
           "Of a scab, half on each side of the joint."},
    KeyRow{"stair.locks[].spacer", kLength, {0, 0.5}, "", "0 mm", "38",
           "Block between side rail and scab, along the rail."},
    KeyRow{"stair.locks[].pin", kLength, {0.002, 0.1}, "", kRequired, "10", "Diameter of the lock pin."},

    KeyRow{"stair.treads", kWord | kMap, {}, "none", "none", "{lumber: 2x6, rise: equal, overhang: 0}",
           "Treads, level in the working pose."},
    KeyRow{"stair.treads.lumber", kText, {}, "", "(size instead)", "2x6", "Nominal lumber size."},
    KeyRow{"stair.treads.size", kLengths, {0.005, 1, 2, 2}, "", "(lumber instead)", "[38, 140]",
           "Thickness, and depth from front to back."},
    KeyRow{"stair.treads.rise", kWord | kLength, {0.05, 1}, "equal", "equal", "equal",
           "Tread to tread, plumb; equal shares the height of the deck out."},
    KeyRow{"stair.treads.first", kLength, {0.02, 2}, "", "(one rise)", "246",
           "Top of the lowest tread above the floor."},
    KeyRow{"stair.treads.overhang", kLength, {-0.5, 0.5}, "", "0 mm", "0",
           "Front edge beyond the side rails' front face, square to it; negative where it lies behind."},

    KeyRow{"stair.hooks", kMap, {}, "", kRequired,
           "{stations: [-261, 261], rod: 12, inside: 20, shank: 150, wrap: 200, tip: 0}",
           "Bent rods that hang the stair on the pipe."},
    KeyRow{"stair.hooks.stations", kLengths, {-5, 5, 1, 10}, "", kRequired, "[-261, 261]",
           "Their centres, from the middle of the stair's width."},
    KeyRow{"stair.hooks.rod", kLength, {0.002, 0.1}, "", kRequired, "12", "Diameter of the rod."},
    KeyRow{"stair.hooks.inside", kLength, {0.002, 0.3}, "", kRequired, "20", "Inside radius of the bend."},
    KeyRow{"stair.hooks.shank", kLength, {0, 2}, "", kRequired, "150", "Straight part along the section."},
    KeyRow{"stair.hooks.wrap", kAngle, degrees(30, 340), "", kRequired, "200",
           "Arc covered, from the shank over the pipe's top to the curl's end."},
    KeyRow{"stair.hooks.tip", kLength, {0, 0.5}, "", "0 mm", "0", "Straight part past the arc."},
    KeyRow{"stair.hooks.seat range", kAngle, degrees(0, 180), "", "30", "30",
           "How far the contact may wander each way from the crown; 180 where the hook may hang anyhow."},

    KeyRow{"stair.hooks.screws", kMap, {}, "", "(not known)",
           "{count: 3, diameter: 8, thread: 35, kind: lag, species: SPF}",
           "The screws that hold each hook's shank on its side rail."},
    KeyRow{"stair.hooks.screws.count", kCount, {1, 50}, "", kRequired, "3", "For each hook."},
    KeyRow{"stair.hooks.screws.diameter", kLength, {0.002, 0.05}, "", kRequired, "8",
           "Of the shank; of a lag screw, its nominal size."},
    KeyRow{"stair.hooks.screws.thread", kLength, {0.003, 0.5}, "", kRequired, "35",
           "Length of thread in the wood that holds."},
    KeyRow{"stair.hooks.screws.kind", kWord, {}, "wood|lag", "wood", "lag", "A wood screw or a lag screw."},
    KeyRow{"stair.hooks.screws.species", kText, {}, "", "(that of the side rails)", "SPF",
           "Species group of the wood that holds."},

    KeyRow{"stair.casters", kMap, {}, "", kRequired,
           "{diameter: 75, width: 32, along: 1440, across: 0, stations: [-310, 310], plate: 8}",
           "Wheels at the foot, on the last section."},
    KeyRow{"stair.casters.diameter", kLength, {0.01, 0.5}, "", kRequired, "75", "Of a wheel."},
    KeyRow{"stair.casters.width", kLength, {0.005, 0.3}, "", kRequired, "32", "Of a wheel, along the rail."},
    KeyRow{"stair.casters.along", kLength, {0, 15}, "", kRequired, "1440", "Their axle, along the last section."},
    KeyRow{"stair.casters.across", kLength, {-1, 1}, "", "0 mm", "0", "Their axle, across."},
    KeyRow{"stair.casters.stations", kLengths, {-5, 5, 1, 10}, "", kRequired, "[-310, 310]",
           "Their centres, from the middle of the stair's width."},
    KeyRow{"stair.casters.plate", kLength, {0, 0.1}, "", "0 mm", "8", "Thickness of the plate on the side rail."},
    KeyRow{"stair.casters.block", kLength, {0, 0.3}, "", "0 mm", "20",
           "Thickness of the packing block between side rail and plate."},
    KeyRow{"stair.casters.mass", kMass, {0, 20}, "", "0.6 kg", "0.6 kg", "Of each, with its plate; a judgement."},

    KeyRow{"stair.handrails", kWord | kMap, {}, "none", "none",
           "{height: 850, diameter: 34, sides: both, post every: 1200}", "Bars to hold on to."},
    KeyRow{"stair.handrails.height", kLength, {0.05, 2}, "", kRequired, "850",
           "The bar's axis above the side rails' front face, square to it."},
    KeyRow{"stair.handrails.diameter", kLength, {0.005, 0.2}, "", kRequired, "34", "Of the bar."},
    KeyRow{"stair.handrails.sides", kWord, {}, "both|left|right", "both", "both", "Which sides have one."},
    KeyRow{"stair.handrails.post every", kLength, {0.1, 5}, "", "1200 mm or 48 in", "1200",
           "Spacing of its posts, along."},

    KeyRow{"stair.extras", kMaps, list_of(0, 200), "", "(none)",
           "[{name: gate hinge, section: 1, outline: [[1760, -80], [1820, -80], [1820, -70], [1760, -70]], stations: "
           "[-280, -240], mass: 0.6 kg}]", "Anything else that is fixed to a section."},
    KeyRow{"stair.extras[].name", kText, {}, "", kRequired, "gate hinge", "What reports call it."},
    KeyRow{"stair.extras[].section", kCount, {1, 3}, "", "1", "1", "The section that carries it, from the top."},
    KeyRow{"stair.extras[].outline", kPoints, {-15, 15, 1, 64}, "", kRequired,
           "[[1760, -80], [1820, -80], [1820, -70], [1760, -70]]",
           "Corners [along, across] of a convex outline in order; one or two corners with a radius give a disc or a "
           "rounded bar."},
    KeyRow{"stair.extras[].radius", kLength, {0, 1}, "", "0 mm", "5", "Grows the outline on all sides, rounding it."},
    KeyRow{"stair.extras[].stations", kInterval, kBesideMiddle, "", kRequired, "[-280, -240]",
           "From where to where it runs along the rail, from the middle of the stair's width."},
    KeyRow{"stair.extras[].mass", kMass, {0, 200}, "", "0 kg", "0.6 kg", "Its mass."},
    KeyRow{"stair.weighed", kWord | kMasses, {0.1, 1000, 1, 3}, "none", "none", "[20 kg, 14 kg]",
           "What each section weighs on a scale, from the top, casters and all; none for one that was not weighed. It "
           "scales the computed masses to the total."},
};
// clang-format on

}  // namespace

std::span<const KeyRow> stair_keys() { return kKeys; }

}  // namespace stowpath
