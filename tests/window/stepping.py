"""Stepping, findings and free handling."""

import math
import time

from window import expect


def steps_as_the_command_says(window, told):
    start = window.picture()
    expect({"stair", "dimensions", "stair-dimensions", "least-distance"} <= set(start.layers), "layers of the side view")
    expect("sweep" not in start.layers, "a roll sweeps nothing in the side view")
    working = start.lean()
    window.key("n", "n")
    expect({"ghosts", "sweep"} <= set(window.picture().layers), "a drag has ghosts, and the outline of what it sweeps")
    window.key("End")
    parked = window.picture()
    last = told["moves"][-1]["closest"]
    expect(f"lean {last['lean_deg']:.1f}" in parked.pose, f"parked at {parked.pose}, not at {last['lean_deg']:.1f}")
    window.key("Home")
    expect(window.picture().lean() == working, "Home goes back to the working lean")


def shows_each_finding(window, told):
    for finding in told["findings"]:
        window.key("f")
        picture = window.picture()
        expect("finding-" + finding["id"] in picture.layers, finding["id"] + " is marked")
        expect(f"lean {finding['worst']['lean_deg']:.1f}" in picture.pose, finding["id"] + " is shown at its worst pose")
    deepest = told["findings"][0]
    window.key("Home", "f")
    figures = f"{math.ceil(1000 * deepest['depth_m'] - 1e-4)} mm deep"  # a depth is never told as less
    expect(figures in window.picture().words("least-distance"), "the least distance says " + figures)


def runs_over_again(window):
    window.key("End")
    end = window.picture()
    window.key("space")
    time.sleep(0.5)
    window.key("space")
    begun = window.picture()
    expect(begun.lean() < end.lean() - 10, f"at the end space begins again: {end.pose}, {begun.pose}")


def drags_and_holds(window):
    window.key("Home")
    before = window.picture()
    x, y = before.middle_of_stair()
    window.drag((x, y), (x + 60, y - 20))
    lifted = window.picture()
    expect(lifted.lean() > before.lean() + 3, f"dragged from {before.pose} to {lifted.pose}")
    window.key("End", "h")
    expect("Held at touch: " in window.page(), "h says what it does: " + window.page())
    parked = window.picture()
    x, y = parked.middle_of_stair()
    window.drag((x, y), (x, y + 500))
    held = window.picture()
    expect(held.pose != parked.pose, "held at touch, the stair still goes where it is free")
    expect("held: " in window.page("1"), "what holds it is said: " + window.page())
    near = held.words("least-distance")
    met_before = "hook curl" in near  # parked at this home the curl is in the bracket's arm, which holds nothing up
    expect("deep" not in near or met_before, "and nothing else meets: " + near)
    window.key("h")
    x, y = held.middle_of_stair()
    window.drag((x, y), (x, y + 10))
    through = window.picture()
    expect("deep" in through.words("least-distance"), "not held it goes through: " + through.words("least-distance"))
