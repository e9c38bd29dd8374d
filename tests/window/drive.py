"""Drives the real window by keys and mouse under a virtual display, and reads what it draws from what it writes out.

drive.py VIEWER COMMAND SCENE, run with DISPLAY set. Ends with 1 and says what differs. One file a subject beside this
one; `window` has the driver.
"""

import json
import os
import shutil
import subprocess
import sys
import tempfile

import editing
import files
import pages
import rehearsing
import stepping
from window import PATIENCE, Window, expect


def ends(window):
    window.key("ctrl+q")
    expect(window.process.wait(timeout=PATIENCE) == 0, "ctrl-q ends it with 0")


def says_that_there_is_no_display(viewer):
    without = {name: value for name, value in os.environ.items() if name != "DISPLAY"}
    for display, why in [({}, "DISPLAY is not set"), ({"DISPLAY": ":4077"}, "DISPLAY is :4077, which does not answer")]:
        done = subprocess.run([viewer], env=without | display, capture_output=True, text=True, timeout=PATIENCE)
        expect(done.returncode == 3 and f"no display to open a window on ({why})" in done.stderr,
               f"without a display it says so: {done.returncode} {done.stderr}")


def main():
    viewer, command, source = sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        scene = os.path.join(folder, "scene.yaml")
        shutil.copy(source, scene)
        told = json.loads(subprocess.run([command, "dryfit", scene, "--json"], capture_output=True, text=True).stdout)
        window = Window(viewer, scene, folder)
        try:
            stepping.steps_as_the_command_says(window, told)
            stepping.shows_each_finding(window, told)
            stepping.drags_and_holds(window)
            stepping.runs_over_again(window)
            pages.turn_by_key_and_mouse(window, told)
            pages.views_hang_and_are_written(window)
            pages.lettering_grows(window)
            pages.drawings_are_shifted_and_zoomed(window)
            pages.click_on_the_picture_has_the_keys_back(window)
            pages.is_written_under_a_typed_name(window, folder)
            pages.notes_are_written_over_nothing_unasked(window, folder)
            rehearsing.rehearses(window, command, scene)
            files.follows_the_file(window, scene)
            files.changes_under_the_hand(window, scene, os.path.dirname(source))
            shutil.copy(source, scene)
            files.reads_the_mended_file(window)
            files.many_faults_leave_the_rest_in_sight(window, scene)
            shutil.copy(source, scene)
            files.reads_the_mended_file(window)
            editing.typed_at_once_goes_to_the_search(window)
            editing.measure_is_typed(window, scene)
            editing.wrong_measure_is_refused(window)
            editing.found_by_its_value_it_stays_while_typed_in(window)
            editing.what_was_left_out_and_given_up_stays_left_out(window)
            editing.saved_numbers_are_the_commands(window, command, scene)
            editing.cure_is_applied(window, command, scene)
            window = editing.killed_window_loses_nothing(window, viewer, scene, folder)
            editing.file_changed_under_work(window, scene)
            ends(window)
            window = Window(viewer, scene, folder)
            editing.closing_asks_once(window)
        finally:
            window.process.kill()
        says_that_there_is_no_display(viewer)


if __name__ == "__main__":
    main()
