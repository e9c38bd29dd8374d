#include "sim/scene/key_table.h"

#include <array>

namespace stowpath {
namespace {

// clang-format off: one row a setting, as short as can be
const std::array kKeys{
    KeyRow{"rail", kMap, {}, "", kRequired,
           "{pipe: NPS 1, at: {out: 975, up: 2900}, stations: [200, 7300], brackets: ...}",
           "The pipe that the stair hangs on and rolls along."},
    KeyRow{"rail.pipe", kText | kMap, {}, "", kRequired, "NPS 1",
           "A standard pipe by its nominal size, schedule 40, or its measurements."},
    KeyRow{"rail.pipe.diameter", kLength, {0.005, 0.3}, "", kRequired, "33.4", "Outside diameter."},
    KeyRow{"rail.pipe.wall", kLength, {0.0005, 0.05}, "", kRequired, "3.4", "Wall thickness."},
    KeyRow{"rail.pipe.steel", kText, {}, "", "A", "A", "Grade of ASTM A53 steel."},
    KeyRow{"rail.at", kMap, {}, "", kRequired, "{out: 975, up: 2900}", "Where the pipe's centre runs."},
    KeyRow{"rail.at.out", kLength, {0, 50}, "", kRequired, "975", "Out from the back wall."},
    KeyRow{"rail.at.up", kLength, {0, 20}, "", kRequired, "2900", "Height."},
    KeyRow{"rail.stations", kInterval, {0, 100}, "", kRequired, "[200, 7300]", "The pipe's two ends."},
    KeyRow{"rail.stops", kWord | kMap, {}, "both ends|left|right|none", "both ends", "both ends",
           "Collars that keep the hooks on the pipe."},
    KeyRow{"rail.stops.ends", kWord, {}, "both ends|left|right|none", "both ends", "both ends", "Which ends have one."},
    KeyRow{"rail.stops.diameter", kLength, {0.005, 0.5}, "", "(20 mm more than the pipe, a judgement)", "54",
           "Outside diameter of a collar."},
    KeyRow{"rail.stops.width", kLength, {0.001, 0.5}, "", "20 mm", "20", "Of a collar, along the rail; a judgement."},
    KeyRow{"rail.joints", kWord | kLengths | kMap | kMaps, {0, 100, 0, 100}, "none", "none", "[3750]",
           "The pipe's joints, each under a coupling: a list of stations and of entries with keys of their own, or "
           "keys that go for all."},
    KeyRow{"rail.joints[].at", kLength, {0, 100}, "", kRequired, "3750", "Station of this joint."},
    KeyRow{"rail.joints[].diameter", kLength, {0.005, 0.5}, "", "(8 mm more than the pipe, a judgement)", "41.4",
           "Outside diameter of this coupling; the pipe's own for a flush joint."},
    KeyRow{"rail.joints[].length", kLength, {0.001, 0.5}, "", "50 mm", "50",
           "Of this coupling, along the rail; a judgement."},
    KeyRow{"rail.joints.at", kLengths, {0, 100, 1, 100}, "", kRequired, "[3750]", "Stations of the joints."},
    KeyRow{"rail.joints.diameter", kLength, {0.005, 0.5}, "", "(8 mm more than the pipe, a judgement)", "41.4",
           "Outside diameter of a coupling; the pipe's own for a flush joint."},
    KeyRow{"rail.joints.length", kLength, {0.001, 0.5}, "", "50 mm", "50",
           "Of a coupling, along the rail; a judgement."},

    KeyRow{"rail.brackets", kMap, {}, "", kRequired,
           "{first: 300, every: 860, shape: wall-saddle, projection: 75, drop: 55, arm: 12, saddle: [40, 5], plate: "
           "[60, 90, 6]}", "What carries the pipe."},
    KeyRow{"rail.brackets.first", kLength, {0, 100}, "", "(at instead)", "300",
           "Station of the first one from the left."},
    KeyRow{"rail.brackets.every", kLength, {0.05, 20}, "", "(at instead)", "860",
           "Spacing, centre to centre, repeated as far as a whole bracket fits on the pipe."},
    KeyRow{"rail.brackets.at", kLengths, {0, 100, 1, 500}, "", "(first and every instead)", "[300, 1200, 2050]",
           "Stations of the brackets, one by one, ascending."},
    KeyRow{"rail.brackets.shape", kWord, {}, "wall-saddle|strap|post-mounted|outline", "wall-saddle",
           "wall-saddle",
           "A plate on the mounting face, an arm and a saddle under the pipe; a band round the pipe with a tab to the "
           "mounting face; an upright post with a saddle on top or at the end of an arm; or parts by their outlines."},
    KeyRow{"rail.brackets.projection", kLength, {0.01, 2}, "", "(required for wall-saddle and strap)", "75",
           "Mounting face to the pipe's centre: level, or plumb for a strap whose tab goes up. For post-mounted, the "
           "post's near face to the pipe's centre; left out, the post stands right under the pipe."},
    KeyRow{"rail.brackets.drop", kLength, {0.005, 1}, "", "(required for an arm)", "55",
           "The pipe's centre down to the arm's centre line."},
    KeyRow{"rail.brackets.arm", kLength, {0.002, 0.2}, "", "(required for an arm)", "12",
           "Diameter of the rod of a wall-saddle's arm, or of a post's."},
    KeyRow{"rail.brackets.bend", kLength, {0, 0.5}, "", "0 mm", "15",
           "Inside radius of the arm's elbow; 0 for a sharp one."},
    KeyRow{"rail.brackets.saddle", kLengths, {0.001, 0.5, 2, 2}, "", "(required for wall-saddle and post-mounted)",
           "[40, 5]", "The saddle under the pipe: length along the rail, thickness."},
    KeyRow{"rail.brackets.flat", kLength, {0, 0.05}, "", "0 mm", "1.5",
           "Depth to which the pipe's underside is filed flat where it lies on the saddle, which sits that much higher."},
    KeyRow{"rail.brackets.saddle heads", kMap, {}, "", "(none)", "{diameter: 10, height: 3, apart: 25}",
           "Screw heads under the saddle, of screws up into the pipe."},
    KeyRow{"rail.brackets.saddle heads.diameter", kLength, {0.002, 0.1}, "", kRequired, "10", "Of a head."},
    KeyRow{"rail.brackets.saddle heads.height", kLength, {0.0002, 0.05}, "", kRequired, "3",
           "How far it stands below the saddle."},
    KeyRow{"rail.brackets.saddle heads.apart", kLength, {0, 0.5}, "", "0 mm", "25",
           "Two heads this far apart along the rail; 0 for one in the middle."},
    KeyRow{"rail.brackets.plate", kLengths, {0.001, 1, 3, 3}, "", "(required for wall-saddle)", "[60, 90, 6]",
           "The plate on the mounting face: width along the rail, height, thickness. A strap may have one too; up "
           "against a ceiling its height is measured out."},
    KeyRow{"rail.brackets.plate heads", kMap, {}, "", "(none)", "{diameter: 14, height: 5, apart: 30, at: [-30, 30]}",
           "Screw heads that stand proud of the plate."},
    KeyRow{"rail.brackets.plate heads.diameter", kLength, {0.002, 0.1}, "", kRequired, "14", "Of a head."},
    KeyRow{"rail.brackets.plate heads.height", kLength, {0.0002, 0.05}, "", kRequired, "5",
           "How far it stands proud of the plate."},
    KeyRow{"rail.brackets.plate heads.apart", kLength, {0, 1}, "", "0 mm", "30",
           "Two heads in a row this far apart along the rail; 0 for one in the middle."},
    KeyRow{"rail.brackets.plate heads.at", kLengths, {-0.5, 0.5, 1, 20}, "", kRequired, "[-30, 30]",
           "Each row's height over the plate's middle."},
    KeyRow{"rail.brackets.strap", kLengths, {0.0005, 0.3, 2, 2}, "", "(required for strap)", "[25, 3]",
           "The band round the pipe: width along the rail, thickness. Its tab is twice as thick where the band goes all "
           "round."},
    KeyRow{"rail.brackets.tab", kWord, {}, "up|wall", "up", "up",
           "Where the strap's tab goes: plumb up to a joist or ceiling, or level back to the wall."},
    KeyRow{"rail.brackets.arc", kAngle, degrees(30, 360), "", "360", "180",
           "Arc of the pipe that the band covers, from the tab over the wall side and the underside."},
    KeyRow{"rail.brackets.post", kMap, {}, "", "(required for post-mounted)", "{size: [45, 70], above: 40}",
           "The upright post."},
    KeyRow{"rail.brackets.post.size", kLengths, {0.005, 1, 2, 2}, "", kRequired, "[45, 70]",
           "Out to in, and width along the rail."},
    KeyRow{"rail.brackets.post.above", kLength, {0, 3}, "", "40 mm", "40",
           "How far it runs above its arm's centre line; a judgement."},
    KeyRow{"rail.brackets.post.foot", kLength, {-5, 20}, "", "(the floor)", "900", "Height at which it stands."},

    KeyRow{"rail.brackets.screws", kMap, {}, "", "(not known)",
           "{count: 2, diameter: 8, thread: 60, kind: lag, species: SPF}",
           "The screws that hold each bracket to the wall or beam."},
    KeyRow{"rail.brackets.screws.count", kCount, {1, 50}, "", kRequired, "2", "For each bracket."},
    KeyRow{"rail.brackets.screws.diameter", kLength, {0.002, 0.05}, "", kRequired, "8",
           "Of the shank; of a lag screw, its nominal size."},
    KeyRow{"rail.brackets.screws.thread", kLength, {0.003, 0.5}, "", kRequired, "60",
           "Length of thread in the wood that holds."},
    KeyRow{"rail.brackets.screws.kind", kWord, {}, "wood|lag", "wood", "lag", "A wood screw or a lag screw."},
    KeyRow{"rail.brackets.screws.species", kText, {}, "", "(that of the side rails)", "SPF",
           "Species group of the wood that holds."},
    KeyRow{"rail.brackets.parts", kMaps, list_of(1, 50), "", "(required for outline)",
           "[{name: arm, outline: [[-75, -55], [0, -55]], radius: 6, width: 12}]", "The pieces of one bracket."},
    KeyRow{"rail.brackets.parts[].name", kText, {}, "", kRequired, "arm", "What reports call it."},
    KeyRow{"rail.brackets.parts[].outline", kPoints, {-2, 2, 1, 64}, "", kRequired, "[[-75, -55], [0, -55]]",
           "Corners [out, up] from the pipe's centre of a convex outline in order; one or two corners with a radius "
           "give a disc or a rounded bar."},
    KeyRow{"rail.brackets.parts[].radius", kLength, {0, 1}, "", "0 mm", "6",
           "Grows the outline on all sides, rounding it."},
    KeyRow{"rail.brackets.parts[].width", kLength, {0.001, 1}, "", kRequired, "12", "Along the rail."},
};
// clang-format on

}  // namespace

std::span<const KeyRow> rail_keys() { return kKeys; }

}  // namespace stowpath
