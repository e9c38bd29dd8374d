"""The pages of the notes."""

import os
import time

from window import DOTS, SETTLING, expect, wait_for, xdotool


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
    window.key(*["ctrl+equal"] * 24)
    most = 4 * DOTS * window.picture().size[0]
    expect(most > 0.35 * 1280, f"however large the lettering, {most:.0f} dots are left for the picture")
    window.key(*["ctrl+minus"] * 24)
    expect(window.picture().size == small, "and back again")


def drawings_are_shifted_and_zoomed(window):
    """By keys, and by a wheel that goes sideways."""
    window.key("0", "Home")
    before = window.picture()
    x, y = before.middle_of_stair()
    window.key("ctrl+Right", "ctrl+Down")
    shifted = window.picture()
    to = shifted.middle_of_stair()
    expect(abs(to[0] - x - 10 * DOTS) < 0.5 and abs(to[1] - y - 10 * DOTS) < 0.5, f"ctrl and arrows shift it: {(x, y)}, {to}")
    xdotool("click", 6)
    time.sleep(0.2)
    sideways = window.picture()
    expect(abs(sideways.middle_of_stair()[0] - to[0]) > 10, "the wheel that goes sideways shifts")
    expect(abs(sideways.width_of("stair") - before.width_of("stair")) < 0.01, "and does not zoom")
    span = before.drawn("span-view")
    expect(sideways.drawn("span-view") == span, "the other drawing stays")
    window.key("o")
    expect("Keys zoom and shift the span view" in window.page(), "o turns the keys to the other drawing: " + window.page())
    window.key("plus")
    zoomed = window.picture()
    expect(zoomed.drawn("span-view") != span, "it is zoomed")
    expect(zoomed.drawn("stair") == sideways.drawn("stair"), "and the first is not")
    window.key("o", "0")
    expect(window.picture().drawn("stair") == before.drawn("stair"), "0 fits both")


def click_on_the_picture_has_the_keys_back(window):
    window.key("Home")
    before = window.picture().pose
    window.key("Tab")
    window.click(30, 30)
    window.key("n", "n")
    expect(window.picture().pose != before, "after Tab, a click on the picture gives it the keys again")
    window.key("Home")


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
    long = os.path.join("/".join([folder] + ["."] * 300), "long.svg")
    type_name(window, long)
    wait_for("a picture under a name of 600 letters and more", lambda: os.path.exists(os.path.join(folder, "long.svg")))


def notes_are_written_over_nothing_unasked(window, folder):
    type_name(window, os.path.join(folder, "no", "such", "folder", "side.svg"))
    window.key("E")
    time.sleep(SETTLING)
    expect(window.process.poll() is None, "notes that cannot be written end nothing")
    theirs = os.path.join(folder, "theirs.txt")
    with open(theirs, "w", encoding="utf-8") as out:
        out.write("written by hand")
    type_name(window, os.path.join(folder, "theirs.svg"))
    window.key("E")
    time.sleep(SETTLING)
    with open(theirs, encoding="utf-8") as text:
        expect(text.read() == "written by hand", "what somebody wrote is not written over unasked")
    window.key("E")
    wait_for("the notes, asked once more", lambda: os.path.getsize(theirs) > 100)
    type_name(window, window.written)
    window.point(640, 300)
