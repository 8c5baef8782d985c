"""`evenarc check` in words and as JSON: its text and its exit code."""

import json
import os
import re
import subprocess
import sys

import pexpect
import pytest

from tests.wizard.reports.conftest import DEMO, demo
from tests.wizard.tui.looking import flowing
from wizard.phrases.cautions import CAUTION_IN_SHORT

STEERS_TRUE = ("as built", "fixed", "measured")
OTHERS = tuple(name for name in DEMO if name not in STEERS_TRUE)


@pytest.mark.parametrize(
    ("names", "code"),
    [
        (STEERS_TRUE, 0),
        *(((name,), 1) for name in OTHERS),
        (("as built", "lifted"), 1),
    ],
)
def test_the_exit_code_is_0_only_if_every_record_steers_true(run, names, code):
    assert run("check", *map(demo, names))[0] == code
    assert run("check", "--json", *map(demo, names))[0] == code


@pytest.mark.parametrize("name", DEMO)
def test_the_verdict_is_first_with_its_mark(run, name):
    _, out, err = run("check", demo(name))
    word = json.loads(run("check", "--json", demo(name))[1])["overall"]
    mark = {"steers true": "✓", "bump steer": "✗", "too close to call": "≈", "held back": "■"}[word]
    assert out.startswith(f"{mark} {word.upper()}  FG-")
    assert demo(name) in out.replace("\n", "")
    assert not err


@pytest.mark.parametrize("name", DEMO)
def test_the_text_is_plain_and_fits_80_columns_without_a_terminal(run, name):
    lines = run("check", demo(name))[1].splitlines()
    assert max(len(line) for line in lines if not line.startswith("/")) <= 80
    assert all(line.isprintable() for line in lines)


@pytest.mark.parametrize("name", DEMO)
def test_the_caution_is_at_the_end(run, name):
    assert flowing(run("check", demo(name))[1]).endswith(CAUTION_IN_SHORT)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        (
            "as built",
            "✓ within parallel 0.5 deg, give or take 0.4 at most 1.5 deg; more than 99 in",
        ),
        ("as built", "with the wheel held, 2 in of droop steers the road wheels 0.3 deg to the"),
        ("as built", "They agree with each other"),
        ("as built", "✓ signed by workshop lead (invented), 2026-10-13 11:30"),
        ("lifted", "✗ out peak steer 0.74 deg, give or take 0.22 at most 0.5 deg; about 1 in 100"),
        ("lifted", "≈ too close to call parallel 1.4 deg, give or take 0.4"),
        (
            "lifted",
            "The links look 0.2 deg apart. As the axle moves it is 1.4 deg, because its arms",
        ),
        ("lifted", "The drag link's frame end wants to be 1 in lower, give or take 1/4 in."),
        ("re-mounted", "Not measured, so the profile's values count: steering ratio 16"),
        ("not closing", "One reading does not fit the others: height of the track bar's axle end"),
        ("not closing", "in too high)"),
        ("not closing", "slope of the track bar: laid on three times, same reading each time"),
        ("close", "which nobody took, and it will be settled: castor at two heights."),
        ("not closing", "■ held back: the readings do not agree"),
        ("not closing", "was misread and is 20 1/4 in, everything closes."),
        ("toe", "✗ out toe change 0.78 deg, give or take 0.11 at most 0.25 deg"),
        ("worn joint", "■ held back: the drag link's joint at the axle is loose."),
        ("worn joint", "✓ by its geometry alone, steers true: with the wheel held, 60 mm of bump"),
        ("worn joint", "Drag link at the axle: felt and heard; new ball joint is ordered"),
        ("worn joint", "dip 50 km/h, 50 mm of bump"),
    ],
)
def test_the_report_contains(run, name, words):
    assert words in flowing(run("check", demo(name))[1])


def test_the_toe_is_left_out_if_the_layout_cannot_change_it(run):
    assert "toe change" not in run("check", demo("as built"))[1]


def test_json_is_one_line_for_each_record_in_the_order_given(run):
    names = [demo(name) for name in ("lifted", "as built", "toe")]
    lines = run("check", "--json", *names)[1].splitlines()
    assert [json.loads(line)["record"] for line in lines] == names


def test_a_faulty_record_does_not_stop_the_others(run, tmp_path):
    missing = str(tmp_path / "nothing.toml")
    code, out, err = run("check", "--json", demo("as built"), missing, demo("lifted"))
    assert code == 2
    assert len(out.splitlines()) == 2
    assert err.count("\n") == 1
    assert missing in err


def test_the_profile_is_not_read_if_the_record_is_complete(run, altered):
    path = altered("fixed", {"session.profile": "no longer kept"})
    assert run("check", path)[0] == 0


def test_text_of_a_record_is_not_read_as_markup(run, altered):
    texts = {
        "vehicle.tag": "[red]FG[/red]\x1b[31m",
        "vehicle.description": "[bold]x[/bold] :warning: \x1b]0;title\x07 \u202eleft",
        "session.kind": "[link=file:///]first[/link]",
        "session.technician": "[blink]",
        "kept": [{"reading": "[red]", "reason": "[/red] \x1b[2J"}],
    }
    code, out, _ = run("check", altered("as built", texts))
    assert code == 0
    assert all(line.isprintable() for line in out.splitlines())
    for text in ("[red]FG[/red]\\x1b[31m", "[bold]x[/bold] :warning:", "[red]: [/red] \\x1b[2J"):
        assert text in out


def test_names_of_events_are_not_read_as_markup(run, altered):
    event = {
        "name": "[red]dip[/red]",
        "rise": "0.2 s",
        "hold": "0 s",
        "returns": True,
        "travel": "1 in",
        "speed": "50 km/h",
        "deceleration": "0 m/s2",
    }
    assert "[red]dip[/red]" in run("check", altered("as built", {"events": [event]}))[1]


@pytest.mark.parametrize(
    ("form", "not_loaded"),
    [((), ("textual", "pint")), (("--json",), ("textual", "rich", "pint", "platformdirs"))],
)
def test_unneeded_libraries_are_not_loaded(form, not_loaded):
    program = (
        "import sys; from wizard.commands import main; "
        f"main(['check', {demo('lifted')!r}, *{form!r}]); "
        f"print([name for name in {not_loaded!r} if name in sys.modules])"
    )
    ran = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True, timeout=60
    )
    assert ran.stdout.splitlines()[-1] == "[]"
    assert not ran.stderr


def test_a_reader_that_stops_early_causes_no_message():
    """The pipe is closed before everything was written, as `head` does."""
    command = [sys.executable, "-m", "wizard.commands", "check", "--json", *[demo("toe")] * 40]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
        process.stdout.read(10)
        process.stdout.close()
        assert process.stderr.read() == b""


@pytest.mark.skipif(sys.platform == "win32", reason="this system has no pseudo-terminals")
@pytest.mark.parametrize(("no_colour", "has_colour"), [({}, True), ({"NO_COLOR": "1"}, False)])
def test_a_terminal_has_colours_unless_no_color_is_set(no_colour, has_colour):
    printed = pexpect.run(
        f"{sys.executable} -m wizard.commands check {demo('lifted')}",
        env={**os.environ, "TERM": "xterm-256color", **no_colour},
        timeout=60,
    ).decode()
    assert bool(re.search(r"\x1b\[[0-9;]*3[0-9]m", printed)) == has_colour
    assert "✗ BUMP STEER" in re.sub(r"\x1b\[[0-9;]*m", "", printed)
