"""The scene's file under the window's hands."""

import os
import shutil
import time

from window import expect, wait_for, xdotool


def follows_the_file(window, scene):
    text = open(scene, encoding="utf-8").read()
    with open(scene, "w", encoding="utf-8") as out:
        out.write(text.replace("name: Mould loft", "name: Plaster loft"))
    wait_for("the changed file to be read", lambda: "Plaster loft" in window.picture().title)
    with open(scene, "w", encoding="utf-8") as out:
        out.write("stowpath: 1\nname: \"half")
    time.sleep(1.2)
    expect("Plaster loft" in window.picture().title, "a broken file leaves the scene that is shown")


def changes_under_the_hand(window, scene, gallery):
    """What is held when the file changes may be no part of the stair any more."""
    shutil.copy(os.path.join(gallery, "three-section.yaml"), scene)
    wait_for("three sections", lambda: "Plaster loft" not in window.picture().title)
    window.key("End")
    before = window.picture().pose
    window.key("Next", "Next", "Next", "Next")
    opened = window.picture().pose
    expect(opened != before, f"page down opens the third section's fold: {before}, {opened}")
    window.key("Home")
    x, y = window.picture().foot_of_stair()
    window.point(x, y)
    time.sleep(0.1)
    xdotool("mousedown", 1)
    window.point(x + 5, y - 5)
    time.sleep(0.2)
    held = window.picture()
    expect("by hand" in window.page("1"), "the foot is held")
    shutil.copy(os.path.join(gallery, "rolling-ladder.yaml"), scene)
    wait_for("one section", lambda: window.picture().title != held.title)
    window.point(x + 20, y - 20)
    time.sleep(0.2)
    xdotool("mouseup", 1)
    expect(window.process.poll() is None, "the hand is empty, and the window goes on")
    expect("by hand" not in window.page("1"), "nothing is pulled")
    window.point(640, 300)


def many_faults_leave_the_rest_in_sight(window, scene):
    window.key("1")
    with open(scene, encoding="utf-8") as text:
        good = text.read()
    with open(scene, "w", encoding="utf-8") as out:
        out.write(good + "".join(f"no such key {k}: 1\n" for k in range(40)))
    said = wait_for("the faults", lambda: (lambda words: words if "no such key 39" in words else None)(window.page()))
    expect("40 faults" in said, "how many there are: " + said)
    for y in range(120, 400, 22):  # down the column of the last tab
        window.click(1240, y)
        if "Keys" in window.page():
            break
    else:
        raise AssertionError("under 40 faults the tabs are out of sight")
    window.point(640, 300)
    window.key("1")


def reads_the_mended_file(window):
    wait_for("the mended file to be read", lambda: "Mould loft" in window.picture().title)
