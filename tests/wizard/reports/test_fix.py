"""`evenarc fix` in words and as JSON: work orders, or the reason why there is none."""

import json
import math
from io import StringIO

import pytest

from tests.wizard.reports.conftest import DEMO, demo
from tests.wizard.tui.looking import flowing
from wizard.phrases.cautions import CAUTION_IN_SHORT
from wizard.reports.fix import progress_on

TO_FIX = ("lifted", "re-mounted", "toe", "leaf springs")


@pytest.mark.parametrize("name", DEMO)
def test_the_exit_code_is_0_only_if_a_plan_steers_true(run, name):
    code, out, err = run("fix", "--json", demo(name))
    plans = json.loads(out)["plans"]
    assert code == (0 if any(plan["after"]["p_true"] >= 0.95 for plan in plans) else 1)
    assert bool(plans) == (name in TO_FIX)
    assert not err


@pytest.mark.parametrize("name", TO_FIX)
def test_the_json_has_the_specified_keys(run, name):
    result = json.loads(run("fix", "--json", demo(name))[1])
    assert set(result) == {"id", "before", "searched", "plans"}
    assert result["before"]["overall"] == "bump steer"
    assert result["searched"] > (30_000 if name != "leaf springs" else 2_000)
    for plan in result["plans"]:
        assert {"moves", "after", "set_length_mm", "length_change_mm"} <= set(plan)
        assert 1 <= len(plan["moves"]) <= 3
        for move in plan["moves"]:
            assert set(move) == {"correction", "pivot", "rise_mm"}
        assert set(plan["after"]) == {
            *("overall", "parallel_deg", "peak_steer_deg", "peak_toe_change_deg"),
            *("track_bar_slope_deg", "drag_link_slope_deg", "length_ratio", "p_true"),
            *("roll_centre_rise_mm", "effective_deg", "castor_deg"),
            *("roll_steer_deg_per_deg", "clearance_mm"),
        }
        after = plan["after"]
        if name == "leaf springs":  # it has no track bar
            of_both = ("parallel_deg", "track_bar_slope_deg", "length_ratio", "clearance_mm")
            assert {after[key] for key in of_both} == {None}
            continue
        between = after["drag_link_slope_deg"] - after["track_bar_slope_deg"]
        assert math.isclose(after["parallel_deg"], between, abs_tol=1e-9)


@pytest.mark.parametrize("name", DEMO)
def test_the_text_is_plain_and_fits_80_columns_without_a_terminal(run, name):
    lines = run("fix", demo(name))[1].splitlines()
    assert max(map(len, lines)) <= 80
    assert all(line.isprintable() for line in lines)


@pytest.mark.parametrize("name", DEMO)
def test_the_caution_is_at_the_end(run, name):
    assert flowing(run("fix", demo(name))[1]).endswith(CAUTION_IN_SHORT)


def test_the_report_is_a_work_order(run):
    text = flowing(run("fix", demo("re-mounted"))[1])
    for part in (
        "✗ bump steer: five plans cure it, of 45,319 combinations",
        "Plan 1: track bar bracket raised at the axle, up 2 1/4 in",
        "the track bar's axle end from 15 1/4 in to 17 1/2 in above the floor",
        "32 7/8 in from centre to centre, 1/4 in shorter than now: about 4 turns",
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
def test_a_vehicle_without_plans_has_the_reason(run, name, answer):
    text = flowing(run("fix", demo(name))[1])
    assert answer in text
    assert "Plan 1" not in text


def test_the_adjusters_of_the_record_are_used(run, altered):
    sleeve = {"adjusters.track_bar": {"kind": "sleeve", "pitch": "1 mm"}}
    text = flowing(run("fix", altered("re-mounted", sleeve))[1])
    assert "turns of its sleeve with two threads, 25.4 per in" in text


def test_a_faulty_adjuster_is_refused_with_its_path(run, altered):
    glued = {"adjusters.track_bar": {"kind": "glue", "pitch": "1 mm"}}
    code, out, err = run("fix", altered("re-mounted", glued))
    assert (code, out) == (2, "")
    assert "[adjusters.track_bar] kind" in err


def test_text_of_a_record_is_not_read_as_markup(run, altered):
    out = run("fix", altered("as built", {"vehicle.tag": "[red]X[/red]"}))[1]
    assert "[red]X[/red]" in out


def test_the_parts_shelf_is_searched_and_a_faulty_shelf_is_refused(run, tmp_path):
    shelf = tmp_path / "files" / "shop" / "parts_shelf.toml"
    shelf.parent.mkdir(parents=True)
    shelf.write_text(
        '[[corrections]]\nname = "our own bracket"\npivot = "track_bar.axle"\n'
        'rises = ["2 1/8 in"]\ncaution = "Made here."\n',
        encoding="utf-8",
    )
    record = demo("re-mounted")
    assert "our own bracket" in run("fix", "--files", str(tmp_path / "files"), record)[1]
    shelf.write_text('[[corrections]]\nname = "x"\n', encoding="utf-8")
    code, out, err = run("fix", "--files", str(tmp_path / "files"), record)
    assert (code, out) == (2, "")
    assert "parts_shelf.toml" in err
    assert len(err.splitlines()) == 1


class Terminal(StringIO):
    """A stream that reports to be a terminal."""

    def isatty(self):
        return True


def test_a_long_search_prints_its_progress_on_a_terminal_and_clears_it(monkeypatch):
    monkeypatch.setattr("wizard.reports.fix.PATIENCE", -1.0)
    terminal = Terminal()
    print_progress = progress_on(terminal)
    print_progress(0.5)
    assert "50%" in terminal.getvalue()
    print_progress(1.0)
    assert terminal.getvalue().endswith("\r\x1b[K")
    assert progress_on(StringIO()) is None
