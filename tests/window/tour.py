"""Makes the pictures of docs/tour.md, and the page itself, from the real window, so that they never age.

tour.py VIEWER SCENES DOCS: drives the window under DISPLAY through the stops below and writes DOCS/tour/*.png and
DOCS/tour.md. SCENES is the folder of the gallery. With --check in place of DOCS it writes to a folder of its own, and
says whether every stop was reached and whether the words of docs/tour.md beside SCENES are those below.
A further stop is a further line in STOPS. Needs ImageMagick's import.
"""

import os
import subprocess
import sys
import tempfile
import time

from window import Window, expect, wait_for

LARGEST = 150_000  # [bytes] of a picture
SMALLEST = 5_000   # a window with nothing in it is smaller


def nothing(window):
    pass


def keys(*names):
    return lambda window: window.key(*names)


def at(x, y):
    return lambda window: window.point(x, y)


def both(*acts):
    def act(window):
        for one in acts:
            one(window)
    return act


def zoom_in(x, y):
    def act(window):
        window.point(x, y)
        for _ in range(8):
            subprocess.run(["xdotool", "click", "4"], check=True)
            time.sleep(0.05)
    return act


def lean_by_hand(window):
    window.key("0", "Home")
    for _ in range(20):
        window.key("Up")


def rehearse(window):
    window.key("r")
    time.sleep(4.0)
    window.key("space")


# name, what to do, its heading, what is to be seen.
STOPS = [
    ("opened", nothing, "Opened",
     "The side view above, the room from above and the story stick under it. Heights, lengths and the lean are written as on a "
     "shop drawing; the findings stand as notes, each with a leader to where it is worst."),
    ("stepping", keys("n", "n", "n"), "A move",
     "`n` and `b` step through the order of work. In blue: where the move begins and ends, dashed, and the outline of all that it "
     "passes over. The outline is a picture from poses, no proof."),
    ("by-hand", both(lean_by_hand, at(290, 212)), "By hand",
     "Take hold of the stair, or use the arrows: the least distance goes along as a dimension. What lies under the pointer is named "
     "beside it."),
    ("near", both(keys("End"), zoom_in(225, 140)), "From near",
     "The wheel zooms to the pointer, a drag on bare paper shifts, `0` shows all again. Lettering and lines keep their size."),
    ("hook", keys("0", "d"), "The hook at full size",
     "`d` shows the hook on its pipe at the bracket, as it is turned here, with the gap as a dimension. It is full size where the "
     "bar measures what it says."),
    ("span", keys("d", "v", "v"), "The span alone", "`v` turns from one view to the next."),
    ("finding", keys("v", "v", "2", "f"), "A finding",
     "`f` goes from finding to finding, each at its worst pose: what meets is hatched in red, crossed, and told in words."),
    ("measures", keys("3"), "Measures",
     "Every number of the scene, to be changed as it would be written in the file; the proof follows each change."),
    ("rehearsal", rehearse, "A rehearsal",
     "`r` runs the procedure with forces, `l` lets go of the line. A simulation: it proves no clearance."),
    ("out", keys("5"), "Written out",
     "The picture as SVG, PDF or PNG; the moves as an animated picture or as a page with a slider."),
]


def grab(window, file):
    subprocess.run(["import", "-window", window.id, "-colors", "64", "-depth", "8", "PNG8:" + file], check=True,
                   capture_output=True)
    with open(file, "rb") as picture:
        return picture.read()


def shoot(window, file):
    """Once nothing changes any more: proofs end, words settle."""
    seen = [b"", b""]

    def still():
        time.sleep(0.4)
        seen[:] = [seen[1], grab(window, file)]
        return seen[0] == seen[1]

    wait_for("the picture to stand still", still)


def page():
    lines = ["# A tour of the window", "", "Made by `tests/window/tour.py` from the built-in demo: the target `tour` makes it again.", ""]
    for number, (name, _, heading, words) in enumerate(STOPS, 1):
        lines += [f"## {number}. {heading}", "", words, "", f"![{heading}](tour/{number:02}-{name}.png)", ""]
    return "\n".join(lines[:-1]) + "\n"


def walk(viewer, scene, folder):
    os.makedirs(os.path.join(folder, "tour"), exist_ok=True)
    files = []
    with tempfile.TemporaryDirectory() as scratch:
        window = Window(viewer, scene, scratch, "stair.svg")
        try:
            for number, (name, act, _, _) in enumerate(STOPS, 1):
                act(window)
                files.append(os.path.join(folder, "tour", f"{number:02}-{name}.png"))
                shoot(window, files[-1])
        finally:
            window.process.kill()
    return files


def check(files, scenes):
    pictures = []
    for file in files:
        with open(file, "rb") as picture:
            pictures.append(picture.read())
        expect(SMALLEST < len(pictures[-1]) < LARGEST, f"{file}: {len(pictures[-1])} bytes")
    expect(len(set(pictures)) == len(pictures), "each stop looks like no other")
    with open(os.path.join(os.path.dirname(os.path.abspath(scenes)), "docs", "tour.md"), encoding="utf-8") as words:
        expect(words.read() == page(), "docs/tour.md is as tour.py writes it: make it again")


def main():
    viewer, scenes, docs = sys.argv[1:]
    scene = os.path.join(scenes, "demo.yaml")
    if docs == "--check":
        with tempfile.TemporaryDirectory() as folder:
            check(walk(viewer, scene, folder), scenes)
        return
    walk(viewer, scene, docs)
    with open(os.path.join(docs, "tour.md"), "w", encoding="utf-8") as words:
        words.write(page())


if __name__ == "__main__":
    main()
