"""`evenarc compare` in words and as JSON: whether the fix is shown."""

import json

import pytest

from tests.wizard.reports.conftest import demo
from tests.wizard.tui.looking import flowing


@pytest.mark.parametrize(
    ("before", "after", "code", "outcome"),
    [
        ("lifted", "fixed", 0, "shown"),
        ("as built", "lifted", 1, "not shown"),
        ("as built", "as built", 1, "not settled"),
        ("lifted", "close", 1, "not settled"),
        ("lifted", "worn joint", 1, "not settled"),
    ],
)
def test_the_exit_code_is_0_only_if_the_fix_is_shown(run, before, after, code, outcome):
    exit_code, out, err = run("compare", demo(before), demo(after))
    assert exit_code == code
    assert not err
    mark = {"shown": "✓", "not shown": "✗", "not settled": "≈"}[outcome]
    headline = next(line for line in out.splitlines() if line.startswith(mark))
    assert headline.startswith(f"{mark} {outcome.upper()}  FG-")
    exit_code, out, _ = run("compare", "--json", demo(before), demo(after))
    assert exit_code == code
    assert json.loads(out)["outcome"] == outcome


@pytest.mark.parametrize(
    "words",
    [
        "before: ✗ bump steer, 2026-11-03 09:30 after: ✓ steers true, 2026-11-10 14:15",
        "square to its path, deg ≈ 1.4 ✓ 0.0 -1.4 0.6 changed",
        "track bar slope, deg ✗ 16.6 ✗ 16.6 0.0 0.4 no change shown",
        "planned 1 in down, reached 1 in down, give or take 3/16",
        "The track bar's axle end and the drag link's axle end stand to each other as they did",
    ],
)
def test_the_report_contains(run, words):
    assert words in flowing(run("compare", demo("lifted"), demo("fixed"))[1])


def test_records_of_two_vehicles_have_a_warning(run):
    out = flowing(run("compare", demo("re-mounted"), demo("fixed"))[1])
    assert "The earlier record is of FG-2." in out


def test_sessions_that_do_not_follow_each_other_have_a_warning(run):
    out = flowing(run("compare", demo("fixed"), demo("as built"))[1])
    assert "was not taken as a re-measure of the earlier one" in out


def test_a_pivot_that_moved_unreported_is_named(run, altered):
    """The drag link's axle end is an inch higher, but not among the altered parts."""
    heights = {"readings.drag_link.axle.height": ["18 5/8 in", "18 5/8 in"]}
    heights |= {"readings.drag_link.slope": ["13.5 deg"]}
    out = flowing(run("compare", demo("lifted"), altered("fixed", heights))[1])
    assert "! control points The track bar's axle end and the drag link's axle end, which" in out


def test_a_move_that_is_too_small_is_named(run, altered):
    """The new arm has 1/2 in more drop; 1 in was planned."""
    heights = {"readings.drag_link.frame.height": ["28 1/8 in", "28 1/8 in"]}
    heights |= {"readings.drag_link.slope": ["15.5 deg"]}
    out = flowing(run("compare", demo("lifted"), altered("fixed", heights))[1])
    assert "it fell short by" in out


def test_the_text_is_plain_and_fits_80_columns_without_a_terminal(run):
    lines = run("compare", demo("lifted"), demo("fixed"))[1].splitlines()
    assert max(map(len, lines)) <= 80
    assert all(line.isprintable() for line in lines)


def test_text_of_a_record_is_not_read_as_markup(run, altered):
    texts = {"vehicle.tag": "[red]FG[/red]\x1b[31m"}
    out = run("compare", demo("lifted"), altered("fixed", texts))[1]
    assert "[red]FG[/red]\\x1b[31m" in out
    assert "\x1b" not in out


def test_records_in_the_wrong_order_are_said_first(run):
    _, out, err = run("compare", demo("fixed"), demo("as built"))
    assert out.startswith("! The session before is the later one (2026-")
    assert err == ""
    _, out, err = run("compare", "--json", demo("fixed"), demo("as built"))
    assert err.startswith("evenarc: The session before is the later one")
    assert out.startswith("{")
    assert "later one" not in run("compare", demo("as built"), demo("fixed"))[1]
