"""Measures edited in the real window: typed, taken back, cured, saved, and kept when the window is killed."""

import json
import subprocess
import time

from window import PATIENCE, SVG, SETTLING, Window, expect, one_line, wait_for, xdotool


def told_by(command, scene):
    return json.loads(subprocess.run([command, "dryfit", scene, "--json"], capture_output=True, text=True).stdout)


def text_of(scene):
    with open(scene, encoding="utf-8") as file:
        return file.read()


def find(window, search):
    window.key("ctrl+f")
    time.sleep(SETTLING)
    window.type(search)


def find_and_type(window, search, value, done=("Return", "Escape")):
    """Leaves one line on the page of measures, and types into its field."""
    find(window, search)
    window.key("Tab")
    time.sleep(SETTLING)
    window.type(value)
    window.key(*done)


def wait_for_proof(window):
    def proven():
        said = window.page("2")
        return said if "Of the scene before" not in said else None

    return wait_for("the proof", proven)


def typed_at_once_goes_to_the_search(window):
    """The field opens some frames after ctrl-f: r, a and 4 are commands elsewhere."""
    xdotool("key", "ctrl+f", "type", "--delay", "0", "ra4")
    window.key("Return", "Escape")
    said = window.page()
    expect("Nothing of that name." in said and "Find { ra4 }" in said, "all that was typed is searched for: " + said)
    expect(window.process.poll() is None and "not saved" not in said, "and nothing else is done: " + said)
    for _ in range(5):  # between two frames or not, ctrl-a selects and backspaces are counted
        xdotool("key", "--delay", "0", "ctrl+f", "ctrl+a", "type", "--delay", "0", "widthxyz")
        xdotool("key", "--delay", "6", "BackSpace", "BackSpace", "BackSpace")  # closer, SFML takes them for one held down
        window.key("Return", "Escape")
        said = window.page()
        expect("Find { width }" in said, "keys without a pause between them: " + said)


def measure_is_typed(window, scene):
    before = text_of(scene)
    find_and_type(window, "stair.width", "610")
    measures = window.page("3")
    expect("was 560, not saved" in measures, "what differs from the file is said: " + measures)
    expect("Over the side rails" in measures, "with the setting's help: " + measures)
    expect(text_of(scene) == before, "nothing is written before it is asked for")
    window.key("ctrl+z")
    expect("not saved" not in window.page("3"), "ctrl-z takes it back")
    window.key("ctrl+y")
    expect("was 560" in window.page("3"), "ctrl-y does it again")
    expect("The scene was changed since" in window.page("4"), "a rehearsal of the scene before says so")
    window.key("R")  # over again
    expect("The scene was changed since" not in window.page(), "over again it is the scene's own")


def wrong_measure_is_refused(window):
    find_and_type(window, "hoist.home", "far left")
    measures = window.page("3")
    expect("Not taken" in measures and "4340 stands" in measures, "what is no length is refused: " + measures)
    find_and_type(window, "hoist.home", "4340")
    expect("Not taken" not in window.page("3"), "mended, the refusal goes")


def found_by_its_value_it_stays_while_typed_in(window):
    find_and_type(window, "stair width 610", "600.5")  # 600 is taken, and no longer what was searched for
    find(window, "stair.width")
    window.key("Return", "Escape")
    said = window.page()
    expect("{ 600.5 }" in said, "all of it goes into the field: " + said)
    window.key("ctrl+z")
    expect("{ 610 }" in window.page(), "as one step")


def what_was_left_out_and_given_up_stays_left_out(window):
    find_and_type(window, "seat range", "25", done=("Escape", "Escape"))
    said = window.page()
    expect("was left out" not in said and "seat range (left out)" in said, "escape takes back what it added: " + said)
    find_and_type(window, "seat range", "25")
    expect("was left out" in window.page(), "entered it stays")
    window.key("ctrl+z")


def says_what_the_command_says(window, told):
    said = wait_for_proof(window)
    expect(told["verdict"].upper() in said, f"the verdict is {told['verdict']}: {said}")
    for finding in told["findings"]:
        expect(f"{finding['id']} {one_line(finding['text'])}" in said, f"{finding['text']} is said: {said}")


def saved_numbers_are_the_commands(window, command, scene):
    before = text_of(scene)
    window.key("ctrl+s")
    wait_for("the file to be saved", lambda: text_of(scene) != before)
    expect(text_of(scene) == before.replace("  width: 560\n", "  width: 610\n"), "one value and no byte besides is written")
    told = told_by(command, scene)
    says_what_the_command_says(window, told)


def choose(window, wanted, findings):
    """Every finding is marked; the one that is chosen is drawn besides."""
    layer = "finding-" + wanted["id"]
    drawn = []
    for _ in range(len(findings)):
        window.key("f")
        drawn.append(len(window.picture().layers[layer].findall(".//" + SVG + "path")))
    expect(drawn.count(max(drawn)) == 1, f"{layer} is drawn once in {len(findings)}: {drawn}")
    for _ in range(1 + drawn.index(max(drawn))):
        window.key("f")


def cure_is_applied(window, command, scene):
    told = told_by(command, scene)
    cured = next(finding for finding in told["findings"] if finding["remedies"])
    text = one_line(cured["remedies"][0]["text"])
    wait_for("cures", lambda: "Do " + cured["remedies"][0]["id"] in window.page("2"))
    said = window.page()
    expect(text in said, f"the cure in the report's words: {text}: {said}")
    window.key("Home")
    choose(window, cured, told["findings"])
    window.key("a")
    wait_for_proof(window)
    window.key("ctrl+s")
    wait_for("the cured scene to be saved", lambda: told_by(command, scene)["findings"] != told["findings"])
    after = told_by(command, scene)
    expect(cured["parts"] not in [finding["parts"] for finding in after["findings"]], "the cure cures")
    says_what_the_command_says(window, after)


def killed_window_loses_nothing(window, viewer, scene, folder):
    saved = text_of(scene)
    find_and_type(window, "stair.width", "590")
    wait_for("590 in the page", lambda: "not saved" in window.page("3"))
    window.process.kill()
    window.process.wait()
    expect(text_of(scene) == saved, "the file is as it was")
    again = Window(viewer, scene, folder)
    try:
        asked = "Unsaved work on this scene is there"
        expect(asked in again.page("3"), "it is offered")
        again.key("ctrl+f")
        time.sleep(SETTLING)
        again.type("stair.width")
        again.key("ctrl+Delete", "ctrl+Return", "Escape")
        expect(asked in again.page(), "no key within a field answers what is asked: " + again.page())
        again.key("ctrl+Return")
        wait_for("the work to be taken up", lambda: "was 610, not saved" in again.page("3"))
        again.key("ctrl+s")
        wait_for("it to be saved", lambda: text_of(scene) == saved.replace("  width: 610\n", "  width: 590\n"))
    except AssertionError:
        again.process.kill()
        raise
    return again


def file_changed_under_work(window, scene):
    find_and_type(window, "stair.width", "585")
    text = text_of(scene)
    theirs = text.replace("depth: 4600", "depth: 4610")
    with open(scene, "w", encoding="utf-8") as out:
        out.write(theirs)
    time.sleep(1.2)
    window.key("ctrl+s")
    expect(text_of(scene) == theirs, "what changed on disk is not written over")
    window.key("ctrl+Delete")  # takes the file's
    wait_for("the file's text", lambda: "{ 590 }" in window.page("3") and "not saved" not in window.page())
    window.key("ctrl+z")
    expect("{ 585 }" in window.page("3"), "and undo has mine again")
    window.key("ctrl+y")


def closing_asks_once(window):
    wait_for("a page", lambda: window.page("3"))
    find_and_type(window, "stair.width", "575")
    wait_for("575 in the page", lambda: "not saved" in window.page("3"))
    xdotool("keydown", "ctrl", "keydown", "q")
    time.sleep(1.5)  # the key repeats
    xdotool("keyup", "q", "keyup", "ctrl")
    expect(window.process.poll() is None, "a key held down asks once")
    wait_for("ctrl-q to ask", lambda: "There is unsaved work" in window.page())  # by a key in between
    window.key("ctrl+q")
    time.sleep(0.5)
    expect(window.process.poll() is None, "with another key in between it asks anew")
    window.key("ctrl+q")
    expect(window.process.wait(timeout=PATIENCE) == 0, "asked again it closes")
    said = window.process.stderr.read()
    expect("is kept" in said, "and says that the work is kept: " + said)
