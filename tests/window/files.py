"""The scene's file under the window's hands."""

import time

from window import expect, wait_for


def follows_the_file(window, scene):
    text = open(scene, encoding="utf-8").read()
    with open(scene, "w", encoding="utf-8") as out:
        out.write(text.replace("name: Mould loft", "name: Plaster loft"))
    wait_for("the changed file to be read", lambda: "Plaster loft" in window.picture().title)
    with open(scene, "w", encoding="utf-8") as out:
        out.write("stowpath: 1\nname: \"half")
    time.sleep(1.2)
    expect("Plaster loft" in window.picture().title, "a broken file leaves the scene that is shown")


def reads_the_mended_file(window):
    wait_for("the mended file to be read", lambda: "Mould loft" in window.picture().title)
