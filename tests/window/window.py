"""The real window under a virtual display, driven by keys and mouse, and what it writes out."""

import os
import re
import subprocess
import time
import xml.etree.ElementTree as ElementTree

SVG = "{http://www.w3.org/2000/svg}"
DOTS = 96.0 / 25.4  # pixels for a millimetre of paper
PATIENCE = 20.0  # [s]
SETTLING = 0.8   # until a field takes what is typed, on a slow machine [s]


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


def one_line(words):
    return " ".join(words.split())


class Window:
    def __init__(self, viewer, scene, folder, write=None):
        self.written = write or os.path.join(folder, "side.svg")
        self.recorded = "run.txt" if write else os.path.join(folder, "run.txt")
        files = ["--write", self.written, "--record", self.recorded]
        state = dict(os.environ, XDG_STATE_HOME=os.path.join(folder, "state"))
        self.process = subprocess.Popen([os.path.abspath(viewer), os.path.abspath(scene), *files, "--width", "1280", "--height", "800"],
                                        env=state, cwd=folder, stderr=subprocess.PIPE, text=True)
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

    def type(self, words):
        xdotool("type", "--delay", "40", words)
        time.sleep(0.2)

    def drag(self, start, end):
        self.point(*start)
        time.sleep(0.1)
        xdotool("mousedown", 1)
        for k in range(1, 9):
            self.point(start[0] + (end[0] - start[0]) * k / 8, start[1] + (end[1] - start[1]) * k / 8)
            time.sleep(0.06)
        xdotool("mouseup", 1)
        time.sleep(0.1)

    def click(self, x, y):
        self.point(x, y)
        time.sleep(0.1)
        xdotool("click", 1)
        time.sleep(0.15)

    def page(self, *key):
        """What the notes say in one line, after a key that turns to another page."""
        self.key(*key)
        words = self.written.replace(".svg", ".txt")
        if os.path.exists(words):
            os.remove(words)
        self.key("E")
        wait_for("the notes to be written", lambda: os.path.exists(words))
        with open(words, encoding="utf-8") as text:
            return one_line(text.read())

    def picture(self):
        if os.path.exists(self.written):
            os.remove(self.written)
        self.key("e")
        wait_for("the side view to be written", lambda: os.path.exists(self.written))
        return Picture(ElementTree.parse(self.written).getroot())


class Picture:
    def __init__(self, root):
        self.title = root.find(SVG + "title").text
        self.said = " ".join(root.itertext())
        self.pose = root.find(SVG + "desc").text
        self.size = float(root.get("width")[:-2]), float(root.get("height")[:-2])  # [mm]
        self.layers = {group.get("id"): group for group in root.iter(SVG + "g") if group.get("id")}

    def lean(self):
        return float(re.search(r"lean (-?[\d.]+)", self.pose).group(1))

    def words(self, layer):
        return " ".join(self.layers[layer].itertext())

    def foot_of_stair(self):
        paths = [path.get("d") for path in self.layers["stair"].iter(SVG + "path")]
        numbers = [[float(n) for n in re.findall(r"-?[\d.]+", path)] for path in paths]
        x, y = max((corner for path in numbers for corner in zip(path[0::2], path[1::2])), key=lambda corner: corner[1])
        return DOTS * x, DOTS * y

    def drawn(self, layer):
        return ElementTree.tostring(self.layers[layer])

    def corners(self, layer):
        """Of the layer's first outline, across and down [mm]."""
        numbers = [float(n) for n in re.findall(r"-?[\d.]+", self.layers[layer].find(SVG + "path").get("d"))]
        return numbers[0::2], numbers[1::2]

    def width_of(self, layer):
        return max(self.corners(layer)[0]) - min(self.corners(layer)[0])

    def middle_of_stair(self):
        xs, ys = self.corners("stair")
        return DOTS * sum(xs) / len(xs), DOTS * sum(ys) / len(ys)


def expect(truth, what):
    if not truth:
        raise AssertionError(what)
