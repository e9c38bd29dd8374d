#include "sim/scene/key_table.h"

#include <array>

namespace stowpath {
namespace {

constexpr KeyRange kAcrossRoom{-10.0, 50.0};  // out and up [m]
constexpr KeyRange kAlongRoom{-10.0, 110.0};  // stations [m]
constexpr KeyRange kOutline{-10.0, 50.0, 1, 64};
constexpr std::string_view kStates = "always|standing|moving|parked";

// clang-format off: one row a setting, as short as can be
const std::array kKeys{
    KeyRow{"stowpath", kCount, {1, 1}, "", kRequired, "1", "Version of this file format; heads the file."},
    KeyRow{"name", kText, {}, "", "(the file's name)", "Wheel loft", "Title on every sheet and report."},
    KeyRow{"units", kWord, {}, "mm|in", kRequired, "mm",
           "Unit of every length written without one. Lengths with their own unit may stand beside them: 9' 10-1/2\", "
           "3/8 in, 2.5 m."},

    KeyRow{"margin", kMap, {}, "", "(the defaults below)", "{default: 12, hook: 3, self: 3}",
           "Clearance wanted between parts."},
    KeyRow{"margin.default", kLength, {0, 0.2}, "", "12 mm or 1/2 in", "12", "Between the stair and everything else."},
    KeyRow{"margin.hook", kLength, {0, 0.1}, "", "3 mm or 1/8 in", "3", "Between the hooks and the rail's brackets."},
    KeyRow{"margin.self", kLength, {0, 0.1}, "", "3 mm or 1/8 in", "3",
           "Between one section of the stair and another."},

    KeyRow{"room", kMap, {}, "", kRequired, "{length: 7600, depth: 4600, ceiling: 4100}",
           "The room: stations count from its left side wall, facing the back wall; out counts from the back wall."},
    KeyRow{"room.length", kLength, {0.5, 100}, "", kRequired, "7600", "Along the rail, side wall to side wall."},
    KeyRow{"room.depth", kLength, {0.5, 50}, "", kRequired, "4600", "Back wall to front wall."},
    KeyRow{"room.ceiling", kLength, {1.5, 20}, "", kRequired, "4100", "Height of the ceiling."},
    KeyRow{"room.framing", kMap, {}, "", "(not known)",
           "{member: truss, every: 600, species: SPF, direction: out, first: 400}",
           "Joists or trusses over the ceiling: the loads say what each gets of the ceiling point."},
    KeyRow{"room.framing.member", kText, {}, "", kRequired, "truss", "Nominal lumber size of the joists, or truss."},
    KeyRow{"room.framing.every", kLength, {0.05, 3}, "", "(not known)", "600", "Spacing, centre to centre."},
    KeyRow{"room.framing.species", kText, {}, "", "SPF", "SPF", "Species group of the members."},
    KeyRow{"room.framing.direction", kWord, {}, "out|along the rail", "out", "out",
           "Which way they run: from the back wall out, or along the rail."},
    KeyRow{"room.framing.first", kLength, {-10, 110}, "", "(not known)", "400",
           "Middle of one of them: its station, or how far out it is where they run along the rail."},

    KeyRow{"loft", kMap, {}, "", kRequired, "{edge: 900, deck: 2950, thickness: 240, stations: [300, 7300]}",
           "What the stair leads up to."},
    KeyRow{"loft.edge", kLength, {0.001, 20}, "", kRequired, "900", "Its front edge, out from the back wall."},
    KeyRow{"loft.deck", kLength, {0.5, 15}, "", kRequired, "2950", "Height of the surface walked on."},
    KeyRow{"loft.thickness", kLength, {0.01, 2}, "", kRequired, "240", "Deck and framing together."},
    KeyRow{"loft.stations", kInterval, {0, 100}, "", kRequired, "[300, 7300]",
           "From where to where it runs along the rail: the span to be served."},
    KeyRow{"loft.guard", kMap, {}, "", "(no guard)", "{height: 1070, thickness: 40, openings: [[1500, 2300]]}",
           "Guard along the loft's edge."},
    KeyRow{"loft.guard.height", kLength, {0.1, 3}, "", "1070 mm or 42 in", "1070", "Its top above the deck."},
    KeyRow{"loft.guard.thickness", kLength, {0.001, 1}, "", "40 mm or 1 1/2 in", "40", "Out to in."},
    KeyRow{"loft.guard.out", kLength, {-1, 20}, "", "(at the loft's edge)", "900",
           "Its outer face, out from the back wall."},
    KeyRow{"loft.guard.openings", kIntervals, {0, 100, 0, 100}, "", "(none)", "[[1500, 2300]]",
           "Stations where there is no guard."},
    KeyRow{"loft.framing", kMap, {}, "", "(not known)",
           "{joist: 2x10, every: 400, species: SPF, direction: out, first: 500}",
           "Joists that carry the deck: the loads say what each gets of the brackets that are on the loft."},
    KeyRow{"loft.framing.joist", kText, {}, "", kRequired, "2x10", "Nominal lumber size."},
    KeyRow{"loft.framing.every", kLength, {0.05, 3}, "", "(not known)", "400", "Joist spacing, centre to centre."},
    KeyRow{"loft.framing.species", kText, {}, "", "SPF", "SPF", "Species group of the joists."},
    KeyRow{"loft.framing.direction", kWord, {}, "out|along the rail", "out", "out",
           "Which way the joists run: from the back wall out, or along the rail."},
    KeyRow{"loft.framing.first", kLength, {-10, 110}, "", "(not known)", "500",
           "Middle of one joist: its station, or how far out it is where they run along the rail."},

    KeyRow{"obstacles", kMaps, list_of(0, 5000), "", "(none)",
           "[{name: bench, box: {out: [0, 620], up: [0, 900]}, stations: [300, 2300]}]",
           "Things in the room that the stair must not touch, each a box, an outline or a post."},
    KeyRow{"obstacles[].name", kText, {}, "", kRequired, "truing bench", "What reports call it."},
    KeyRow{"obstacles[].box", kMap, {}, "", "(an outline or a post instead)", "{out: [0, 620], up: [0, 900]}",
           "An upright box in the side view."},
    KeyRow{"obstacles[].box.out", kInterval, kAcrossRoom, "", kRequired, "[0, 620]", "From where to where, out."},
    KeyRow{"obstacles[].box.up", kInterval, kAcrossRoom, "", kRequired, "[0, 900]", "From where to where, up."},
    KeyRow{"obstacles[].outline", kPoints, kOutline, "", "(a box or a post instead)",
           "[[0, 2100], [500, 2600], [500, 2640], [0, 2140]]",
           "Corners [out, up] of a convex outline in order; one or two corners with a radius give a disc or a rounded "
           "bar."},
    KeyRow{"obstacles[].radius", kLength, {0, 5}, "", "0 mm", "50", "Grows the outline on all sides, rounding it."},
    KeyRow{"obstacles[].stations", kInterval, kAlongRoom, "", "(required unless it is a post)", "[300, 2300]",
           "From where to where it runs along the rail."},
    KeyRow{"obstacles[].post", kMap, {}, "", "(a box or an outline instead)",
           "{out: 1800, station: 3600, diameter: 90}", "An upright post."},
    KeyRow{"obstacles[].post.out", kLength, kAcrossRoom, "", kRequired, "1800", "Its centre, out."},
    KeyRow{"obstacles[].post.station", kLength, kAlongRoom, "", kRequired, "3600", "Its centre, along the rail."},
    KeyRow{"obstacles[].post.diameter", kLength, {0.001, 5}, "", "(size instead)", "90", "Of a round post."},
    KeyRow{"obstacles[].post.size", kLengths, {0.001, 5, 2, 2}, "", "(diameter instead)", "[90, 140]",
           "Of a square post: out, along the rail."},
    KeyRow{"obstacles[].up", kInterval, kAcrossRoom, "", "(floor to ceiling)", "[0, 2400]",
           "Where a post starts and ends."},

    KeyRow{"floor", kMap, {}, "", "(level, at height 0)", "{level: 0, uneven: 5}", "The floor the casters run on."},
    KeyRow{"floor.level", kLength, {-5, 5}, "", "0 mm", "0", "Its height."},
    KeyRow{"floor.uneven", kLength, {0, 0.2}, "", "0 mm", "5", "How far it may be up or down under any caster."},

    KeyRow{"keep clear", kMaps, list_of(0, 1000), "", "(none)",
           "[{name: photo wall, when: parked, box: {out: [0, 3400], up: [0, 2500]}, stations: [2500, 5200]}]",
           "Volumes that must be empty in the states they name."},
    KeyRow{"keep clear[].name", kText, {}, "", kRequired, "photo wall", "What reports call it."},
    KeyRow{"keep clear[].when", kWord | kWords, list_of(1, 4), kStates, "always", "parked",
           "State or list of states in which it must be empty."},
    KeyRow{"keep clear[].box", kMap, {}, "", "(an outline instead)", "{out: [0, 3400], up: [0, 2500]}",
           "An upright box in the side view."},
    KeyRow{"keep clear[].box.out", kInterval, kAcrossRoom, "", kRequired, "[0, 3400]", "From where to where, out."},
    KeyRow{"keep clear[].box.up", kInterval, kAcrossRoom, "", kRequired, "[0, 2500]", "From where to where, up."},
    KeyRow{"keep clear[].outline", kPoints, {-10, 50, 3, 64}, "", "(a box instead)", "[[0, 0], [3400, 0], [0, 2500]]",
           "Corners [out, up] of a convex outline in order."},
    KeyRow{"keep clear[].stations", kInterval, kAlongRoom, "", kRequired, "[2500, 5200]",
           "From where to where it runs along the rail."},

    KeyRow{"tolerances", kMap, {}, "", "(the default below)", "{default: 3}",
           "How far measurements may be off; MEASURE TWICE in a dry fit says what that takes of the tightest clearances."},
    KeyRow{"tolerances.default", kLength, {0, 0.2}, "", "3 mm or 1/8 in", "3", "Plus or minus, for any measurement."},
};
// clang-format on

}  // namespace

std::span<const KeyRow> site_keys() { return kKeys; }

}  // namespace stowpath
