"""The rehearsal in the window: run, let go, pushed, wound back, and written out as the command records it."""

import re
import subprocess
import time

from window import expect, wait_for, xdotool


def runs_by_key(window):
    window.key("r")  # from any page
    wait_for("the crew to hook on", lambda: "hooked on" in window.page())
    expect("The scene was changed since" not in window.page(), "it is the scene's own")
    picture = window.picture()
    expect(picture.title.startswith("Rehearsal"), "r shows the rehearsal: " + picture.title)
    expect({"stair", "meant", "lines", "words"} <= set(picture.layers), "layers of the rehearsal")
    expect("pull-gauge" in picture.layers, "the gauges are written out as well: " + str(set(picture.layers)))
    expect("proves no clearance" in picture.words("words"), "what it is, is always in view")


def hides_what_no_key_changes(window):
    """The moves are not in view: no key does anything to them."""
    window.key("1", "Home", "f")
    wait_for("cures", lambda: "Do F" in window.page("2"))
    chosen = window.picture().pose
    window.key("4", "a", "d", "v", "h", "Up", "shift+Up", "Prior")
    expect(window.picture().title.startswith("Rehearsal"), "the rehearsal is in view")
    said = window.page("1")
    expect("not saved" not in said, "a changes nothing: " + said)
    expect(window.picture().pose == chosen, f"the stair is where it was: {chosen}, {window.picture().pose}")
    window.key("4")


def pauses_and_winds_back(window):
    window.key("r")
    still = window.picture().pose
    time.sleep(0.5)
    expect(window.picture().pose == still, "paused it stands still")
    window.key("Home")
    expect(window.picture().pose.startswith("0.00 s"), "home winds back to the start: " + window.picture().pose)
    expect("Take it up from here" in window.page(), "from where one can take it up")
    window.key("End")
    expect(window.picture().pose == still, "end is the live end again")


def names_are_left_out_where_that_is_asked(window):
    expect("drying rack" in window.picture().said, "things of the room are named")
    window.key("5")
    window.click(1115, 191)  # "Names"
    window.point(640, 300)
    window.key("4")
    expect("drying rack" not in window.picture().said, "the rehearsal's picture leaves names out too")
    window.key("5")
    window.click(1115, 191)
    window.point(640, 300)
    window.key("4")


def is_pushed_by_hand(window):
    x, y = window.picture().middle_of_stair()
    window.drag((x, y), (x + 60, y))
    wait_for("the push to be told", lambda: "pushed with" in window.page())


def time_shown(window):
    return float(re.match(r"([\d.]+) s", window.picture().pose).group(1))


def goes_on_after_a_second_button(window):
    """A push that is aimed holds the time up; another button ends it, and nothing was pushed."""
    pushes = window.page().count("pushed with")
    x, y = window.picture().middle_of_stair()
    window.point(x, y)
    time.sleep(0.1)
    xdotool("mousedown", 1)
    window.point(x + 60, y)
    time.sleep(0.1)
    xdotool("mousedown", 3)
    time.sleep(0.1)
    xdotool("mouseup", 3)
    xdotool("mouseup", 1)
    window.point(640, 20)
    if "Go on" in window.page():
        window.key("r")
    before = time_shown(window)
    wait_for("time to go on", lambda: time_shown(window) > before + 0.2)
    expect(window.page().count("pushed with") == pushes, "nothing was pushed")


def falls_when_let_go(window):
    window.key("bracketright", "bracketright")  # four times as fast
    begins = wait_for("the hang to begin", lambda: re.search(r"([\d.]+) s hang begins", window.page()))
    wait_for("the foot to be well off the floor", lambda: time_shown(window) > float(begins.group(1)) + 4.0)
    window.key("l")
    page = wait_for("it to come to rest", lambda: (lambda words: words if "at rest" in words else None)(window.page()))
    expect("the line let go" in page, "the line is let go: " + page)
    expect(re.search(r" reaches [\d.]+ m/s", page), "how fast it came down: " + page)
    expect(" meets " in page, "what it met: " + page)


def is_written_as_the_command_records_it(window, command, scene):
    window.key("w")
    written = "Written: " + window.recorded  # the notes are written too
    wait_for("the run to be written", lambda: written in window.page())
    with open(window.recorded, encoding="utf-8") as run:
        mine = run.read()
    expect("\nend " in mine and " let-go " in mine, "a whole recording with its events")
    asked = re.search(r'^options "(.*)"$', mine, re.M).group(1).replace('\\"', '"')
    pushed, let_go = re.search(r'--push "([^"]*)" --when "([^"]*)"', asked), re.search(r'--let-go "([^"]*)"', asked)
    theirs = window.recorded + ".command.txt"
    subprocess.run([command, "rehearse", scene, "--push", pushed.group(1), "--when", pushed.group(2), "--let-go",
                    let_go.group(1), "--record", theirs], capture_output=True, check=False)
    with open(theirs, encoding="utf-8") as run:
        same = run.read()
    lines, as_lines = mine.splitlines(), same.splitlines()
    # The window runs on for some steps after the end: frames and events are the command's, to the last digit.
    records = [line for line in as_lines if line.startswith(("frame", "event"))]
    shown = [line for line in lines if line.startswith(("frame", "event"))]
    expect(len(records) > 100 and shown[:len(records)] == records, "the command records the same bits")


def rehearses(window, command, scene):
    runs_by_key(window)
    hides_what_no_key_changes(window)
    pauses_and_winds_back(window)
    names_are_left_out_where_that_is_asked(window)
    is_pushed_by_hand(window)
    goes_on_after_a_second_button(window)
    falls_when_let_go(window)
    is_written_as_the_command_records_it(window, command, scene)
    window.key("1")
    expect(not window.picture().title.startswith("Rehearsal"), "another page shows the moves again")
