#include "tests/support/full_scene.h"

#include <stdexcept>

namespace stowpath::testing {

std::string_view plain_scene() {
  return R"(stowpath: 1
units: mm
room: {length: 5000, depth: 4000, ceiling: 3000}
loft: {edge: 900, deck: 2200, thickness: 200, stations: [200, 4800]}
rail:
  pipe: NPS 1
  at: {out: 975, up: 2150}
  stations: [100, 4900]
  brackets: {first: 300, every: 800, projection: 75, drop: 55, arm: 12, saddle: [40, 5], plate: [60, 90, 6]}
stair:
  width: 560
  side rails: {lumber: 2x6, front face: 70}
  sections: [2400]
  hooks: {stations: [-261, 261], rod: 12, inside: 20, shank: 150, wrap: 170}
  casters: {diameter: 75, width: 32, along: 2400, stations: [-240, 240]}
)";
}

std::string_view full_scene() {
  return R"(stowpath: 1
name: Wheel loft over the truing benches
units: mm
margin: {default: 12, hook: 3, self: 3}
room:
  length: 7600
  depth: 4600
  ceiling: 4100
  framing: {member: truss, every: 600, species: SPF, direction: out, first: 400}
loft:
  edge: 900
  deck: 2950
  thickness: 240
  stations: [300, 7300]
  guard: {height: 1070, thickness: 40, out: 900, openings: [[600, 1400], [5200, 6000]]}
  framing: {joist: 2x10, every: 400, species: SPF, direction: out, first: 500}
rail:
  pipe: {diameter: 33.4, wall: 3.4, steel: A}
  at: {out: 975, up: 2900}
  stations: [200, 7300]
  stops: {ends: both ends, diameter: 54, width: 20}
  joints: {at: [3750], diameter: 41.4, length: 50}
  brackets:
    first: 300
    every: 860
    shape: wall-saddle
    projection: 75
    drop: 55
    arm: 12
    bend: 10
    saddle: [40, 5]
    flat: 1.5
    saddle heads: {diameter: 8, height: 2, apart: 25}
    plate: [60, 90, 6]
    plate heads: {diameter: 14, height: 5, apart: 30, at: [-32, 32]}
    screws: {count: 2, diameter: 8, thread: 60, kind: lag, species: SPF}
stair:
  width: 560
  side rails: {lumber: 2x6, species: SPF, moisture: 12, front face: 70, foot: level}
  sections: [1790, 1440]
  above pivot: 60
  hinges:
    - face: back
      offset: 12
      limit: 178
      leaf: [75, 3]
      screws: {count: 4, diameter: 5, thread: 30, kind: wood, species: SPF}
  locks: [{scab: 2x6, length: 900, spacer: 38, pin: 10, pin head: [18, 6], hole: slotted, screws: {count: 8, diameter: 5, thread: 38, kind: wood, species: SPF}}]
  treads: {lumber: 2x6, rise: equal, first: 246, overhang: 0, held by: cleats, screws: {count: 4, diameter: 6, thread: 60, kind: wood, species: SPF}}
  hooks:
    stations: [-261, 261]
    shape: rod
    rod: 12
    inside: 20
    shank: 150
    shank offset: 6
    wrap: 200
    tip: 0
    end: pointed
    roller: {diameter: 30, width: 12, at: 90}
    seat range: 30
    screws: {count: 3, diameter: 8, thread: 35, kind: lag, species: SPF}
  casters:
    diameter: 75
    width: 32
    along: 1440
    across: 0
    stations: [-310, 310]
    plate: 8
    block: 20
    kind: swivel
    trail: 30
    mass: 0.6 kg
  handrails: {height: 850, diameter: 34, sides: both, post every: 1200}
  extras:
    - name: gate hinge
      section: 1
      outline: [[1760, -80], [1820, -80], [1820, -70], [1760, -70]]
      radius: 2
      stations: [-280, -240]
      mass: 0.6 kg
  weighed: [20 kg, none]
obstacles:
  - {name: strip light, box: {out: [2350, 2470], up: [2980, 3080]}, stations: [900, 5400]}
  - name: sloped brace
    outline: [[0, 2100], [500, 2600], [500, 2640], [0, 2140]]
    radius: 4
    stations: [3000, 3040]
  - {name: round post, post: {out: 3900, station: 6800, diameter: 90}, up: [0, 2400]}
  - {name: square post, post: {out: 3900, station: 500, size: [90, 140]}}
floor: {level: 0, uneven: 5}
keep clear:
  - {name: photo wall, when: parked, box: {out: [0, 3400], up: [0, 2500]}, stations: [2500, 5200]}
  - {name: walk, when: [standing, parked], outline: [[3600, 0], [4600, 0], [4600, 2000]], stations: [0, 7600]}
hoist:
  ceiling point:
    out: 2550
    up: 4080
    station: 4000
    members: 2
    kind: shoulder eye
    axis: plumb
    eye: {count: 1, diameter: 10, thread: 60, kind: lag, species: SPF}
  home: 4000
  home within: 10
  rolls: no
  pick: {section: 1, along: 1700, across: 0, spread: 520, kind: swivel}
  line:
    parts: 4
    sheaves: plain
    diameter: 8
    strength: 8 kN
    lead: {out: 60, up: 1200, station: 6900}
    friction: geometric
    tail: 1000
    knot: bowline
    blocks: {length: 120, width: 56}
    hand: {out: 60, up: 1200, station: 6900}
    hangs to: 2100
  spreader: {length: 520, drop: 250, mass: 1.2 kg, thickness: 40}
  overload: 600 N
  hand limit: 200 N
  cleat: yes
  pulled by: {crank winch: {drum: 60, ratio: 5, crank: 250, efficiency: 0.7, speed: 30, drum length: 120}}
fold line:
  from: {section: 1, along: 200, across: -60}
  through: [{section: 2, along: 1300, across: -60}, {section: 1, along: 200, across: -60}]
  diameter: 8
  station: 0
  strength: 8 kN
procedure:
  - roll: home
  - hook on: hoist
  - unpin: 1
  - drag: {lean: 40}
  - hang: {lean: 70}
  - fold: 176
  - together: {station: 4000, lean: 86, fold: [176]}
  - lift: 88
  - pin: 1
  - hook off: hoist
tolerances: {default: 3}
climber: {mass: 300 lb, usual: 200 lb, footfall: 1.5, aside: 150, leans out: 300, push: 60 lbf}
friction: {hook: [0.15, 0.5], hinge: [0.1, 0.3], floor: [0.3, 0.7]}
hardware:
  - {what: carabiner, rating: 20 kN, kind: breaking, factor: 5}
  - {what: block, rating: 450 lbf}
dynamic factor: 1.25
)";
}

std::string replaced(std::string_view text, std::string_view from, std::string_view to) {
  const auto at = text.find(from);
  if (at == std::string_view::npos) throw std::invalid_argument("the text has no " + std::string(from));
  return std::string(text.substr(0, at)) + std::string(to) + std::string(text.substr(at + from.size()));
}

std::vector<std::string> full_scenes() {
  std::string size = replaced(full_scene(), "{lumber: 2x6, species: SPF,", "{size: [38, 140], species: SPF,");
  size = replaced(size, "{scab: 2x6,", "{size: [38, 140],");
  size = replaced(size, "{lumber: 2x6, rise:", "{size: [38, 140], rise:");
  const std::string joints = replaced(full_scene(), "joints: {at: [3750], diameter: 41.4, length: 50}",
                                      "joints: [2000, {at: 3750, diameter: 41.4, length: 50}]");
  std::string brackets = replaced(full_scene(), "    first: 300\n    every: 860\n    shape: wall-saddle\n",
                                  "    at: [300, 2000, 5000]\n    shape: outline\n    parts: [{name: arm, outline: "
                                  "[[-75, -40], [0, -40]], radius: 6, width: 12}]\n");
  const auto from = brackets.find("    projection:"), to = brackets.find("stair:");
  brackets.erase(from, to - from);
  std::string strap = brackets, post = brackets;
  const std::string parts = brackets.substr(brackets.find("    shape: outline"));
  const std::string outlined = parts.substr(0, parts.find("stair:"));
  strap = replaced(strap, outlined,
                   "    shape: strap\n    strap: [25, 3]\n    projection: 150\n    tab: wall\n    arc: 180\n");
  post = replaced(post, outlined,
                  "    shape: post-mounted\n    saddle: [40, 5]\n    post: {size: [45, 70], above: 40, foot: 900}\n");
  const std::string plate =
      replaced(replaced(replaced(full_scene(), "    shape: rod\n    rod: 12\n",
                                 "    shape: plate\n    rim: 14\n    thickness: 8\n    parts: [{name: shank, outline: "
                                 "[[0, 22], [150, 22], [150, 60], [0, 60]], radius: 2}]\n"),
                        "    shank: 150\n    shank offset: 6\n", ""),
               "    tip: 0\n    end: pointed\n", "");
  const std::string winch = replaced(full_scene(), "crank winch: {", "powered winch: {torque: 12 Nm, stall: 2 kN, ");
  const std::string worm = replaced(full_scene(), "efficiency: 0.7", "worm: {lead angle: 4, friction: 0.1}");
  const std::string powered_worm = replaced(worm, "crank winch: {", "powered winch: {");
  const std::string leads =
      replaced(full_scene(), "lead: {out: 60, up: 1200, station: 6900}", "leads: [{out: 60, up: 4000, station: 4000}]");
  const std::string fold = replaced(full_scene(), "fold: 176\n", "fold: {hinge: 1, to: 176}\n");
  return {
      std::string(full_scene()), size, joints, brackets, strap, post, plate, winch, worm, powered_worm, leads, fold};
}

}  // namespace stowpath::testing
