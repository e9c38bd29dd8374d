#include "tests/support/loose_scenes.h"

#include <map>
#include <stdexcept>

namespace stowpath::testing {

namespace {

const std::map<std::string_view, std::string_view> kScenes{
    {"folding", R"(stowpath: 1
units: mm
margin: {default: 12, hook: 3, self: 3}
room: {length: 7600, depth: 4600, ceiling: 4100}
loft: {edge: 900, deck: 2950, thickness: 240, stations: [300, 7300]}
rail:
  pipe: NPS 1
  at: {out: 975, up: 2900}
  stations: [200, 7400]
  stops: both ends
  joints: none
  brackets: {first: 300, every: 860, shape: wall-saddle, projection: 75, drop: 60, arm: 12, saddle: [40, 2], plate: [60, 90, 6]}
stair:
  width: 560
  side rails: {lumber: 2x6, species: SPF, front face: 70}
  sections: [1780, 1475]
  above pivot: -75
  hinges: [{face: back, offset: 12, limit: 178}]
  locks: [{scab: 2x6, length: 600, spacer: 38, pin: 10}]
  treads: {lumber: 2x6, rise: equal, overhang: 0}
  hooks: {stations: [-261, 261], rod: 12, inside: 24, shank: 150, wrap: 195, tip: 0}
  casters: {diameter: 75, width: 32, along: 1520, across: 0, stations: [-310, 310], plate: 8}
  handrails: none
obstacles:
  - {name: strip light, box: {out: [3150, 3270], up: [2780, 2860]}, stations: [900, 5400]}
  - {name: casting bench, box: {out: [0, 620], up: [0, 900]}, stations: [300, 2300]}
  - {name: drying rack, box: {out: [0, 550], up: [0, 1900]}, stations: [5400, 7200]}
floor: {level: 0, uneven: 3}
keep clear:
  - {name: photo wall, when: parked, box: {out: [0, 3400], up: [0, 2500]}, stations: [2500, 5200]}
hoist:
  ceiling point: {out: 2550, up: 4080, station: 4170}
  home: 4170
  rolls: no
  pick: {section: 1, along: 1700, across: 0, spread: 0}
  line: {parts: 4, sheaves: plain, diameter: 8, strength: 8 kN, lead: {out: 4400, up: 3900, station: 4170}}
  pulled by: hand
fold line: {from: {section: 1, along: 200, across: -60}, through: [{section: 2, along: 1300, across: -60}], diameter: 8}
procedure:
  - roll: home
  - hook on: hoist
  - unpin: 1
  - drag: {lean: 40}
  - hang: {lean: 70}
  - fold: 176
  - lift: 88
tolerances: {default: 3}
)"},
    {"inches", R"(stowpath: 1
units: in
margin: {default: 1/2, hook: 1/8, self: 1/8}
room: {length: 22 ft, depth: 16 ft, ceiling: 13 ft}
loft:
  edge: 30
  deck: 9 ft 2 in
  thickness: 9-1/4
  stations: [6, 21 ft]
  framing: {joist: 2x8, every: 16, species: SPF}
rail:
  pipe: NPS 1-1/4
  at: {out: 33, up: 9 ft}
  stations: [4, 21 ft 2 in]
  stops: both ends
  joints: none
  brackets: {at: [12, 48, 84, 120, 156, 192, 228, 250], shape: wall-saddle, projection: 3, drop: 2-7/8, arm: 7/8, saddle: [1-1/2, 1/16], plate: [2-1/2, 3-1/2, 1/4]}
stair:
  width: 22
  side rails: {lumber: 2x6, species: DF-L, front face: 2-3/4}
  sections: [5 ft 6 in, 4 ft 7-1/2 in]
  above pivot: -3-1/2
  hinges: [{face: back, offset: 1/2, limit: 178}]
  locks: [{scab: 2x6, length: 42, spacer: 0, pin: 3/4}]
  treads: {lumber: 2x6, rise: equal, overhang: 0}
  hooks: {stations: [-10-1/4, 10-1/4], rod: 9/16, inside: 1-1/16, shank: 6, wrap: 185, tip: 0}
  casters: {diameter: 3, width: 1-1/4, along: 4 ft 9-1/2 in, across: 0, stations: [-12, 12], plate: 1/8}
  handrails: none
obstacles:
  - {name: dressing table, box: {out: [0, 20], up: [0, 30]}, stations: [2 ft, 20 ft]}
  - {name: mirror lamps, box: {out: [0, 8], up: [60, 72]}, stations: [2 ft, 20 ft]}
  - {name: hanging rod, post: {out: 130, station: 18, diameter: 1-1/2}, up: [0, 7 ft]}
floor: {level: 0, uneven: 1/8}
keep clear:
  - {name: head room at the mirrors, when: parked, box: {out: [0, 9 ft], up: [0, 7 ft]}, stations: [2 ft, 20 ft]}
hoist:
  ceiling point: {out: 94, up: 12 ft 11 in, station: 102}
  home: 102
  rolls: no
  pick: {section: 1, along: 62, across: 0, spread: 0}
  line: {parts: 2, sheaves: ball, diameter: 3/8, strength: 3340 lbf, lead: {out: 15 ft, up: 12 ft 6 in, station: 102}}
  pulled by: {crank winch: {drum: 3, ratio: 20, crank: 8, efficiency: 0.35}}
hardware:
  - {what: block, rating: 450 lbf}
  - {what: ceiling point, rating: 500 lbf}
  - {what: carabiner, rating: 4 kN}
  - {what: caster, rating: 350 lbf}
  - {what: hinge, rating: 700 lbf}
climber: {mass: 250 lb}
procedure:
  - roll: home
  - hook on: hoist
  - unpin: 1
  - drag: 38
  - hang: 72
  - fold: 177
  - lift: 90
tolerances: {default: 1/8}
)"},
    {"three sections", R"(stowpath: 1
units: mm
margin: {default: 12, hook: 3, self: 3}
room: {length: 9000, depth: 6000, ceiling: 5600}
loft: {edge: 800, deck: 4400, thickness: 260, stations: [200, 8800]}
rail:
  pipe: NPS 1-1/2
  at: {out: 890, up: 4340}
  stations: [100, 8900]
  stops: both ends
  joints: {at: [4500], diameter: 48.26, length: 120}
  brackets: {first: 250, every: 900, shape: wall-saddle, projection: 90, drop: 75, arm: 14, saddle: [45, 2], plate: [70, 110, 8]}
stair:
  width: 600
  side rails: {lumber: 2x6, species: DF-L, front face: 70}
  sections: [1900, 1600, 1400]
  above pivot: -95
  hinges: [{face: back, offset: 14, limit: 178}, {face: front, offset: 14, limit: 178}]
  locks: [{scab: 2x6, length: 560, spacer: 0, pin: 12}, {scab: 2x6, length: 400, spacer: 40, pin: 12}]
  treads: {lumber: 2x6, rise: 230, first: 260, overhang: 0}
  hooks: {stations: [-281, 281], rod: 14, inside: 30, shank: 160, wrap: 180, tip: 0}
  casters: {diameter: 80, width: 32, along: 1445, across: 0, stations: [-330, 330], plate: 8}
  handrails: none
obstacles:
  - {name: stage edge, box: {out: [5200, 6000], up: [0, 600]}, stations: [0, 9000]}
floor: {level: 0, uneven: 3}
hoist:
  ceiling point: {out: 2650, up: 5580, station: 4700}
  home: 4700
  rolls: no
  pick: {section: 1, along: 1800, across: 0, spread: 0}
  line: {parts: 4, sheaves: roller, diameter: 10, strength: 12 kN}
  pulled by: {powered winch: {drum: 60, ratio: 30, efficiency: 0.7, speed: 900}}
procedure:
  - roll: home
  - hook on: hoist
  - unpin: 1
  - drag: 40
  - hang: 75
  - unpin: 2
  - fold: {hinge: 2, to: 176}
  - fold: {hinge: 1, to: 170}
  - lift: 90
)"},
    {"ladder", R"(stowpath: 1
units: mm
margin: {default: 10, hook: 3, self: 3}
room: {length: 5200, depth: 3000, ceiling: 3300}
loft: {edge: 420, deck: 2450, thickness: 60, stations: [100, 5100]}
rail:
  pipe: {diameter: 26.9, wall: 2.6}
  at: {out: 480, up: 2330}
  stations: [60, 5140]
  stops: both ends
  joints: {at: [2600], diameter: 26.9, length: 80}
  brackets: {first: 200, every: 800, shape: wall-saddle, projection: 60, drop: 45, arm: 10, saddle: [30, 1.5], plate: [50, 70, 5]}
stair:
  width: 440
  side rails: {size: [32, 90], species: SPF, front face: 45}
  sections: [2380]
  above pivot: -65
  treads: {lumber: 1x4, rise: 240, first: 240, overhang: 0}
  hooks: {stations: [-204, 204], rod: 10, inside: 18, shank: 120, wrap: 180, tip: 0}
  casters: {diameter: 60, width: 25, along: 2405, across: 0, stations: [-240, 240], plate: 0}
  handrails: none
obstacles:
  - {name: map drawers, box: {out: [0, 400], up: [0, 2100]}, stations: [100, 5100]}
  - {name: plan table, box: {out: [1900, 2800], up: [0, 950]}, stations: [600, 4200]}
floor: {level: 0, uneven: 2}
procedure:
  - roll: 2500
)"},
    {"straps", R"(stowpath: 1
units: mm
margin: {default: 10, hook: 3, self: 3}
room: {length: 4200, depth: 2600, ceiling: 2700}
loft: {edge: 380, deck: 2150, thickness: 60, stations: [200, 4000]}
rail:
  pipe: NPS 1-1/4
  at: {out: 460, up: 2060}
  stations: [120, 4080]
  stops: both ends
  joints: none
  brackets:
    {first: 300, every: 900, shape: strap, strap: [30, 3], tab: wall, arc: 145, projection: 80, plate: [60, 70, 4]}
stair:
  width: 420
  side rails: {size: [32, 95], species: SPF, front face: 55}
  sections: [2080]
  above pivot: -90
  treads: {lumber: 1x4, rise: 215, first: 215, overhang: 0}
  hooks:
    stations: [-194, 194]
    shape: plate
    inside: 22
    wrap: 130
    rim: 12
    thickness: 8
    parts:
      - {name: shank, outline: [[0, 22], [170, 22], [170, 52], [0, 52]]}
      - {name: cheek, outline: [[-34, 6], [-34, 30], [0, 52], [0, 34]]}
    roller: {diameter: 24, width: 10, at: 90}
  casters: {diameter: 60, width: 25, along: 2105, across: 0, stations: [-230, 230], plate: 0}
  handrails: none
obstacles:
  - {name: sail bins, box: {out: [0, 380], up: [0, 1900]}, stations: [200, 4000]}
floor: {level: 0, uneven: 2}
procedure:
  - roll: 2100
tolerances: {default: 2}
)"},
    {"posts", R"(stowpath: 1
units: mm
margin: {default: 10, hook: 3, self: 3}
room: {length: 4800, depth: 3200, ceiling: 3000}
loft: {edge: 420, deck: 2300, thickness: 50, stations: [150, 4650]}
rail:
  pipe: NPS 1
  at: {out: 560, up: 2180}
  stations: [100, 4700]
  stops: both ends
  joints: none
  brackets:
    first: 250
    every: 1075
    shape: post-mounted
    post: {size: [40, 60], above: 30}
    projection: 70
    drop: 70
    arm: 14
    bend: 14
    saddle: [45, 4]
    flat: 1
    saddle heads: {diameter: 8, height: 2, apart: 30}
stair:
  width: 440
  side rails: {size: [32, 90], species: SPF, front face: 50}
  sections: [2200]
  above pivot: -90
  treads: {lumber: 1x4, rise: 230, first: 230, overhang: 0}
  hooks: {stations: [-204, 204], rod: 10, inside: 19, shank: 150, shank offset: 6, wrap: 170, tip: 0, end: pointed}
  casters: {diameter: 60, width: 25, along: 2225, across: 0, stations: [-240, 240], plate: 0}
  handrails: none
obstacles:
  - {name: seed cabinets, box: {out: [0, 420], up: [0, 2000]}, stations: [150, 4650]}
floor: {level: 0, uneven: 2}
procedure:
  - roll: 2400
tolerances: {default: 2}
)"},
    {"one piece in inches", R"(stowpath: 1
units: in
margin: {default: 1/2 in, hook: 1/8 in, self: 1/8 in}
room: {length: 26 ft, depth: 15 ft, ceiling: 15 ft}
loft: {edge: 36, deck: 12' 4", thickness: 11, stations: [12, 25 ft]}
rail:
  pipe: NPS 1
  at: {out: 39, up: 12' 2-1/2"}
  stations: [9, 25' 3"]
  stops: both ends
  joints: none
  brackets: {first: 18, every: 36, shape: wall-saddle, projection: 3, drop: 2-3/8, arm: 1/2, saddle: [1-1/2, 1/16], plate: [2-1/2, 3-1/2, 1/4]}
stair:
  width: 24
  side rails: {lumber: 2x6, species: DF-L, front face: 2-3/4}
  sections: [13' 9-1/2"]
  above pivot: -3
  treads: {lumber: 2x6, rise: equal, overhang: 0}
  hooks: {stations: [-11-1/4, 11-1/4], rod: 1/2, inside: 15/16, shank: 6, wrap: 238, tip: 0}
  casters: {diameter: 3, width: 1-1/4, along: 13' 11-1/4", across: 0, stations: [-12-7/8, 12-7/8], plate: 1/8}
  handrails: none
obstacles:
  - {name: seed counter, box: {out: [0, 24], up: [0, 36]}, stations: [2 ft, 10 ft]}
floor: {level: 0, uneven: 1/8}
procedure:
  - roll: 12 ft
tolerances: {default: 1/8}
)"},
};

}  // namespace

std::string loose_scene(std::string_view name) {
  const auto found = kScenes.find(name);
  if (found == kScenes.end()) throw std::logic_error("no such scene");
  return std::string(found->second);
}

}  // namespace stowpath::testing
