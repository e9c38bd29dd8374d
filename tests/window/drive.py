"""Drives the real window by keys and mouse under a virtual display, and reads what it draws from what it writes out.

drive.py VIEWER COMMAND SCENE, run with DISPLAY set. Ends with 1 and says what differs.
"""

import json
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
import xml.etree.ElementTree as ElementTree

SVG = "{http://www.w3.org/2000/svg}"
DOTS = 96.0 / 25.4  # pixels for a millimetre of paper
PATIENCE = 20.0  # [s]


def wait_for(what, happens):
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        found = happens()
        if found:
            return found
        time.sleep(0.05)
    raise AssertionError("waited in vain for " + what)


def xdotool(*words):
    return subprocess.run(["xdotool", *map(str, words)], check=True, capture_output=True, text=True).stdout


class Window:
    def __init__(self, viewer, scene, folder):
        self.written = os.path.join(folder, "side.svg")
        self.process = subprocess.Popen([viewer, scene, "--write", self.written, "--width", "1280", "--height", "800"],
                                        stderr=subprocess.PIPE, text=True)
        self.id = wait_for("a window", self.find)
        place = dict(line.split("=") for line in xdotool("getwindowgeometry", "--shell", self.id).split() if "=" in line)
        self.left, self.top = int(place["X"]), int(place["Y"])
        self.point(640, 300)

    def find(self):
        found = subprocess.run(["xdotool", "search", "--name", "Stowpath"], capture_output=True, text=True).stdout.split()
        return found[0] if found else None

    def point(self, x, y):
        xdotool("mousemove", self.left + round(x), self.top + round(y))

    def key(self, *names):
        for name in names:
            xdotool("key", name)
            time.sleep(0.12)

    def drag(self, start, end):
        self.point(*start)
        time.sleep(0.1)
        xdotool("mousedown", 1)
        for k in range(1, 9):
            self.point(start[0] + (end[0] - start[0]) * k / 8, start[1] + (end[1] - start[1]) * k / 8)
            time.sleep(0.06)
        xdotool("mouseup", 1)
        time.sleep(0.1)

    def picture(self):
        if os.path.exists(self.written):
            os.remove(self.written)
        self.key("e")
        wait_for("the side view to be written", lambda: os.path.exists(self.written))
        return Picture(ElementTree.parse(self.written).getroot())


class Picture:
    def __init__(self, root):
        self.title = root.find(SVG + "title").text
        self.pose = root.find(SVG + "desc").text
        self.layers = {group.get("id"): group for group in root.iter(SVG + "g") if group.get("id")}

    def lean(self):
        return float(re.search(r"lean (-?[\d.]+)", self.pose).group(1))

    def words(self, layer):
        return " ".join(self.layers[layer].itertext())

    def middle_of_stair(self):
        numbers = [float(n) for n in re.findall(r"-?[\d.]+", self.layers["stair"].find(SVG + "path").get("d"))]
        xs, ys = numbers[0::2], numbers[1::2]
        return DOTS * sum(xs) / len(xs), DOTS * sum(ys) / len(ys)


def expect(truth, what):
    if not truth:
        raise AssertionError(what)


def steps_as_the_command_says(window, told):
    start = window.picture()
    expect({"stair", "ghosts", "sweep", "least-distance"} <= set(start.layers), "layers of the side view")
    working = start.lean()
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
    figures = f"{1000 * deepest['depth_m']:.0f} mm deep"
    expect(figures in window.picture().words("least-distance"), "the least distance says " + figures)


def drags_and_holds(window):
    window.key("Home")
    before = window.picture()
    x, y = before.middle_of_stair()
    window.drag((x, y), (x + 60, y - 20))
    lifted = window.picture()
    expect(lifted.lean() > before.lean() + 3, f"dragged from {before.pose} to {lifted.pose}")
    window.key("End", "h")
    parked = window.picture()
    x, y = parked.middle_of_stair()
    window.drag((x, y), (x, y + 500))
    expect(window.picture().pose != parked.pose, "held at touch, the stair still goes where it is free")
    window.key("h")


def follows_the_file(window, scene):
    text = open(scene, encoding="utf-8").read()
    with open(scene, "w", encoding="utf-8") as out:
        out.write(text.replace("name: Mould loft", "name: Plaster loft"))
    wait_for("the changed file to be read", lambda: "Plaster loft" in window.picture().title)
    with open(scene, "w", encoding="utf-8") as out:
        out.write("stowpath: 1\nname: \"half")
    time.sleep(1.2)
    expect("Plaster loft" in window.picture().title, "a broken file leaves the scene that is shown")


def ends(window):
    window.key("ctrl+q")
    expect(window.process.wait(timeout=PATIENCE) == 0, "ctrl-q ends it with 0")


def says_that_there_is_no_display(viewer):
    without = {name: value for name, value in os.environ.items() if name != "DISPLAY"}
    done = subprocess.run([viewer], env=without, capture_output=True, text=True, timeout=PATIENCE)
    expect(done.returncode == 3 and "no display" in done.stderr, "without a display it says so")


def main():
    viewer, command, source = sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        scene = os.path.join(folder, "scene.yaml")
        shutil.copy(source, scene)
        told = json.loads(subprocess.run([command, "dryfit", scene, "--json"], capture_output=True, text=True).stdout)
        window = Window(viewer, scene, folder)
        try:
            steps_as_the_command_says(window, told)
            shows_each_finding(window, told)
            drags_and_holds(window)
            follows_the_file(window, scene)
            ends(window)
        finally:
            window.process.kill()
        says_that_there_is_no_display(viewer)


if __name__ == "__main__":
    main()
