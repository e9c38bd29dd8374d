"""The pages of the notes."""

from window import expect, wait_for


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
