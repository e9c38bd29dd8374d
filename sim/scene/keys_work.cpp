#include "sim/scene/key_table.h"

#include <array>

namespace stowpath {
namespace {

constexpr KeyRange kLean = degrees(-45, 180);
constexpr KeyRange kFold = degrees(0, 180);

// clang-format off: one row a setting, as short as can be
const std::array kKeys{
    KeyRow{"procedure", kMaps, list_of(0, 100), "", "(none)",
           "[{unpin: 1}, {drag: {lean: 40}}, {hang: {lean: 70}}, {fold: 176}, {lift: 88}]",
           "The moves from the working pose to the parked pose, in order; each entry has one key. Targets are "
           "absolute."},
    KeyRow{"procedure[].roll", kWord | kLength, {0, 100}, "home", "(another move)", "home",
           "Rolls the stair to a station."},
    KeyRow{"procedure[].lift", kAngle, kLean, "", "(another move)", "88", "Turns the stair about the rail to a lean."},
    KeyRow{"procedure[].fold", kAngle | kAngles | kMap, {kFold.low, kFold.high, 1, 2}, "", "(another move)", "176",
           "Turns the hinge to a fold; with two hinges a list of folds, or one hinge and its fold."},
    KeyRow{"procedure[].fold.hinge", kCount, {1, 2}, "", "1", "2", "Hinge, from the top."},
    KeyRow{"procedure[].fold.to", kAngle, kFold, "", kRequired, "176", "Fold to reach."},
    KeyRow{"procedure[].together", kMap, {}, "", "(another move)", "{station: 4000, lean: 60, fold: 90}",
           "Several at once, each in step with the others."},
    KeyRow{"procedure[].together.station", kLength, {0, 100}, "", "(stays)", "4000", "Station to reach."},
    KeyRow{"procedure[].together.lean", kAngle, kLean, "", "(stays)", "60", "Lean to reach."},
    KeyRow{"procedure[].together.fold", kAngle | kAngles, {kFold.low, kFold.high, 1, 2}, "", "(stays)", "90",
           "Fold to reach, or one for each hinge."},
    KeyRow{"procedure[].drag", kAngle | kMap, kLean, "", "(another move)", "{lean: 40}",
           "Turns section 1 to a lean while the joint is unpinned and the casters stay on the floor."},
    KeyRow{"procedure[].drag.lean", kAngle, kLean, "", kRequired, "40", "Lean to reach."},
    KeyRow{"procedure[].hang", kAngle | kMap, kLean, "", "(another move)", "{lean: 70}",
           "Turns section 1 to a lean while the unpinned lower section hangs plumb."},
    KeyRow{"procedure[].hang.lean", kAngle, kLean, "", kRequired, "70", "Lean to reach."},
    KeyRow{"procedure[].pin", kCount, {1, 2}, "", "(another move)", "1", "Puts the lock pin of this hinge in."},
    KeyRow{"procedure[].unpin", kCount, {1, 2}, "", "(another move)", "1", "Draws the lock pin of this hinge."},
    KeyRow{"procedure[].hook on", kWord, {}, "hoist", "(another move)", "hoist", "Hooks the hoist's line on."},
    KeyRow{"procedure[].hook off", kWord, {}, "hoist", "(another move)", "hoist", "Takes the hoist's line off."},
};
// clang-format on

}  // namespace

std::span<const KeyRow> work_keys() { return kKeys; }

}  // namespace stowpath
