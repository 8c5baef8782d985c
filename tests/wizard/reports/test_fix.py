"""`evenarc fix` in words and as JSON: the work order, and what there is instead of one."""

import json
import math
from io import StringIO

import pytest

from tests.wizard.reports.conftest import DEMO, demo
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.reports.fix import progress_on

TO_FIX = ("lifted", "over the knuckle", "toe", "not closing")
NOTHING_TO_FIX = ("as built", "fixed", "close", "worn joint")


def flowing(text):
    """Printed text without its line breaks."""
    return " ".join(text.split())


@pytest.mark.parametrize("name", DEMO)
def test_it_answers_with_whether_a_plan_steers_true(run, name):
    # corrections: exit 0 with at least one plan that steers true, 1 without
    code, out, err = run("fix", "--json", demo(name))
    plans = json.loads(out)["plans"]
    assert code == (0 if any(plan["after"]["p_true"] >= 0.95 for plan in plans) else 1)
    assert bool(plans) == (name in TO_FIX)
    assert not err


@pytest.mark.parametrize("name", TO_FIX)
def test_the_json_is_as_specified(run, name):
    found = json.loads(run("fix", "--json", demo(name))[1])
    assert set(found) == {"id", "before", "searched", "plans"}
    assert found["before"]["overall"] == "bump steer"
    assert found["searched"] > 60_000
    for plan in found["plans"]:
        assert {"moves", "after", "set_length_mm", "length_change_mm"} <= set(plan)
        assert 1 <= len(plan["moves"]) <= 3
        for move in plan["moves"]:
            assert set(move) == {"correction", "pivot", "rise_mm"}
        assert set(plan["after"]) == {
            *("overall", "parallel_deg", "peak_steer_deg", "peak_toe_change_deg"),
            *("track_bar_slope_deg", "drag_link_slope_deg", "length_ratio", "p_true"),
            "roll_centre_rise_mm",
        }
        after = plan["after"]
        between = after["drag_link_slope_deg"] - after["track_bar_slope_deg"]
        assert math.isclose(after["parallel_deg"], between, abs_tol=1e-9)


@pytest.mark.parametrize("name", DEMO)
def test_it_is_plain_and_fits_where_there_is_no_terminal(run, name):
    lines = run("fix", demo(name))[1].splitlines()
    assert max(map(len, lines)) <= 80
    assert all(line.isprintable() for line in lines)


@pytest.mark.parametrize("name", DEMO)
def test_it_ends_with_the_caution(run, name):
    assert flowing(run("fix", demo(name))[1]).endswith(CAUTION_IN_SHORT)


def test_it_is_a_work_order(run):
    text = flowing(run("fix", demo("over the knuckle"))[1])
    for part in (
        "✗ bump steer: five plans steer true, of 76,646 combinations",
        "Plan 1: track bar bracket raised at the axle, up 1 3/4 in",
        "the track bar's axle end from 15 1/4 in to 17 in above the floor",
        "32 7/8 in from centre to centre, 3/16 in shorter than now: about 3 1/4 turns",
        "Why each rule ends where it does",
        "What gets worse, and what changes besides",
        "Check for clearance",
        "Measure again afterwards",
        "Plan 5: ",
    ):
        assert part in text, part


@pytest.mark.parametrize(
    ("name", "answer"),
    [
        ("as built", "✓ steers true: nothing is to be done."),
        ("close", "≈ too close to call: no plan is made before it is settled."),
        ("worn joint", "■ held back: the drag link's joint at the axle is loose."),
    ],
)
def test_what_it_says_instead(run, name, answer):
    text = flowing(run("fix", demo(name))[1])
    assert answer in text
    assert "Plan 1" not in text


def test_the_adjusters_of_the_record_count(run, altered):
    sleeve = {"adjusters.track_bar": {"kind": "sleeve", "pitch": "1 mm"}}
    text = flowing(run("fix", altered("over the knuckle", sleeve))[1])
    assert "turns of its sleeve with two threads, 25.4 per in" in text


def test_a_faulty_adjuster_is_named_with_its_place(run, altered):
    glued = {"adjusters.track_bar": {"kind": "glue", "pitch": "1 mm"}}
    code, out, err = run("fix", altered("over the knuckle", glued))
    assert (code, out) == (2, "")
    assert "[adjusters.track_bar] kind" in err


def test_text_of_a_record_is_only_text(run, altered):
    out = run("fix", altered("as built", {"vehicle.tag": "[red]X[/red]"}))[1]
    assert "[red]X[/red]" in out


def test_the_shops_own_shelf_is_searched_and_a_faulty_one_is_refused(run, tmp_path):
    shelf = tmp_path / "files" / "shop" / "parts_shelf.toml"
    shelf.parent.mkdir(parents=True)
    shelf.write_text(
        '[[corrections]]\nname = "our own bracket"\npivot = "track_bar.axle"\n'
        'rises = ["1 3/4 in"]\ncaution = "Made here."\n',
        encoding="utf-8",
    )
    record = demo("over the knuckle")
    assert "our own bracket" in run("fix", "--files", str(tmp_path / "files"), record)[1]
    shelf.write_text('[[corrections]]\nname = "x"\n', encoding="utf-8")
    code, out, err = run("fix", "--files", str(tmp_path / "files"), record)
    assert (code, out) == (2, "")
    assert "parts_shelf.toml" in err
    assert len(err.splitlines()) == 1


class Terminal(StringIO):
    """A stream that says it is a terminal."""

    def isatty(self):
        return True


def test_a_search_that_takes_longer_says_so_on_a_terminal_and_takes_it_back(monkeypatch):
    monkeypatch.setattr("wizard.reports.fix.PATIENCE", -1.0)
    terminal = Terminal()
    say = progress_on(terminal)
    say(0.5)
    assert "50%" in terminal.getvalue()
    say(1.0)
    assert terminal.getvalue().endswith("\r\x1b[K")
    assert progress_on(StringIO()) is None
