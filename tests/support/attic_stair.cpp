#include "tests/support/attic_stair.h"

namespace stowpath::testing {

std::string attic_stair_text() {
  return R"(stowpath: 1
name: Seed loft over the potting shed
units: in
room: {length: 240, depth: 200, ceiling: 196}
loft: {edge: 36, deck: 145, thickness: 10, stations: [10, 230]}
rail:
  pipe: NPS 1-1/4
  at: {out: 40, up: 143}
  stations: [6, 234]
  brackets: {first: 20, every: 40, shape: wall-saddle, projection: 3, drop: 3, arm: 1/2, saddle: [2, 1/8], plate: [2.5, 4, 1/4]}
stair:
  width: 24
  side rails: {lumber: 2x6, species: DF-L, front face: 2.75}
  sections: [86, 82]
  above pivot: -4
  hinges: [{face: back, offset: 1/2, limit: 178}]
  locks: [{scab: 2x6, length: 24, spacer: 0, pin: 3/8}]
  treads: {lumber: 2x6, rise: equal, overhang: 0}
  hooks: {stations: [-11, 11], rod: 1/2, inside: 1-1/8, shank: 8, wrap: 180, tip: 0}
  casters: {diameter: 3, width: 1-1/4, along: 83, across: 0, stations: [-13, 13], plate: 3/8, mass: 2 lb}
  handrails: none
floor: {level: 0}
hoist:
  ceiling point: {out: 110, up: 194, station: 120}
  home: 120
  rolls: no
  pick: {section: 1, along: 82, across: 0, spread: 0}
  line: {parts: 4, sheaves: plain, diameter: 3/8}
  pulled by: hand
fold line: {from: {section: 1, along: 10, across: -2.5}, through: [{section: 2, along: 74, across: -2.5}], diameter: 5/16}
procedure:
  - roll: home
  - hook on: hoist
  - unpin: 1
  - drag: 40
  - hang: 70
  - fold: 176
  - lift: 85
)";
}

}  // namespace stowpath::testing
