"""The pages of the notes."""

import os
import time

from window import SETTLING, expect, wait_for


def turn_by_key_and_mouse(window, told):
    work = window.page("1")
    expect("Order of work" in work and "through the move" in work, "the moves on their page: " + work)
    findings = window.page("2")
    for finding in told["findings"]:
        expect(finding["id"] in findings, finding["id"] + " on the page of findings: " + findings)
    expect("through the move" not in findings, "one page at a time")
    window.click(1240, 60)  # the last tab
    wait_for("a click on its tab to turn to a page", lambda: "Keys" in window.page())
    window.point(640, 300)
    expect("Order of work" in window.page("alt+1"), "with alt a digit turns too")


def views_hang_and_are_written(window):
    """Each view is written out as it hangs, and under the name that is typed."""
    both = window.picture()
    expect({"stair", "span-view", "story-stick"} <= set(both.layers), "side and span: " + str(set(both.layers)))
    window.key("v")
    side = window.picture()
    expect("stair" in side.layers and "span-view" not in side.layers, "v: the side view alone")
    expect(side.size == both.size, "on a sheet as large")
    window.key("v")
    expect(window.picture().title.startswith("Span view"), "v again: the span view")
    window.key("d")
    expect(window.picture().title.startswith("Hook"), "d: the hook")
    window.key("d")
    expect(window.picture().layers.keys() == both.layers.keys(), "d again: side and span")


def lettering_grows(window):
    small = window.picture().size
    window.key("ctrl+equal")
    large = window.picture().size
    expect(large[0] < small[0] and large[1] < small[1], f"less paper in the same window: {small}, {large}")
    window.key("ctrl+minus")
    expect(window.picture().size == small, "and back")


def type_name(window, name):
    window.click(1100, 272)  # the field's middle
    time.sleep(SETTLING)
    window.key("ctrl+a")
    window.type(name)
    window.key("Return", "Escape")


def is_written_under_a_typed_name(window, folder):
    window.key("5")
    type_name(window, "board.png")
    file = os.path.join(folder, "board.png")
    wait_for("a picture of that name", lambda: os.path.exists(file))
    with open(file, "rb") as picture:
        expect(picture.read(8) == b"\x89PNG\r\n\x1a\n", "as its ending says")
    type_name(window, window.written)
    window.point(640, 300)
