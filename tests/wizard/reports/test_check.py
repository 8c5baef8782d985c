"""`evenarc check` in words and as JSON: what it says, and what it answers with."""

import json
import os
import re
import subprocess
import sys

import pexpect
import pytest

from tests.wizard.reports.conftest import DEMO, demo
from wizard.commands import CAUTION_IN_SHORT

TRUE = ("as built", "fixed")
NOT_TRUE = tuple(name for name in DEMO if name not in TRUE)


def flowing(text):
    """Printed text without its line breaks."""
    return " ".join(text.split())


@pytest.mark.parametrize(
    ("names", "code"),
    [
        (TRUE, 0),
        *(((name,), 1) for name in NOT_TRUE),
        (("as built", "lifted"), 1),
    ],
)
def test_it_answers_with_whether_all_steer_true(run, names, code):
    assert run("check", *map(demo, names))[0] == code
    assert run("check", "--json", *map(demo, names))[0] == code


@pytest.mark.parametrize("name", DEMO)
def test_the_verdict_comes_first_with_its_mark(run, name):
    _, out, err = run("check", demo(name))
    word = json.loads(run("check", "--json", demo(name))[1])["overall"]
    mark = {"steers true": "✓", "bump steer": "✗", "too close to call": "≈", "held back": "■"}[word]
    assert out.startswith(f"{mark} {word.upper()}  FG-")
    assert demo(name) in out.replace("\n", "")
    assert not err


@pytest.mark.parametrize("name", DEMO)
def test_it_is_plain_and_fits_where_there_is_no_terminal(run, name):
    lines = run("check", demo(name))[1].splitlines()
    assert max(len(line) for line in lines if not line.startswith("/")) <= 80
    assert all(line.isprintable() for line in lines)


@pytest.mark.parametrize("name", DEMO)
def test_it_ends_with_the_caution(run, name):
    assert flowing(run("check", demo(name))[1]).endswith(CAUTION_IN_SHORT)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        (
            "as built",
            "✓ within parallel 0.7 deg, give or take 0.3 at most 1.5 deg; more than 99 in",
        ),
        ("as built", "with the wheel held, 2 in of droop steers the road wheels 0.3 deg to the"),
        ("as built", "They agree with each other"),
        ("as built", "✓ signed by workshop lead (invented), 2026-10-13 11:30"),
        ("lifted", "✗ out peak steer 0.70 deg, give or take 0.13 at most 0.5 deg; less than 1 in"),
        ("lifted", "≈ too close to call parallel 1.7 deg"),
        ("over the knuckle", "assumed steering ratio 16, as the profile has it"),
        ("not closing", "One reading does not fit the others: height of the track bar's axle end"),
        ("not closing", "in too high)"),
        ("not closing", "slope of the track bar: laid on three times, the same each time"),
        ("close", "Take each of these once more and it will be settled: height of the track bar's"),
        ("toe", "✗ out toe change 0.75 deg, give or take 0.04 at most 0.25 deg"),
        ("worn joint", "■ held back: the drag link's joint at the axle is loose."),
        ("worn joint", "✓ by its geometry alone, steers true: with the wheel held, 60 mm of bump"),
        ("worn joint", "Drag link at the axle: felt and heard; new ball joint is ordered"),
        ("worn joint", "dip 50 km/h, 50 mm of bump"),
    ],
)
def test_it_says(run, name, words):
    assert words in flowing(run("check", demo(name))[1])


def test_layouts_that_cannot_change_the_toe_do_not_speak_of_it(run):
    assert "toe change" not in run("check", demo("as built"))[1]


def test_json_is_one_object_a_record_and_line_in_the_order_asked(run):
    names = [demo(name) for name in ("lifted", "as built", "toe")]
    lines = run("check", "--json", *names)[1].splitlines()
    assert [json.loads(line)["record"] for line in lines] == names


def test_a_record_that_cannot_be_read_does_not_stop_the_others(run, tmp_path):
    missing = str(tmp_path / "nothing.toml")
    code, out, err = run("check", "--json", demo("as built"), missing, demo("lifted"))
    assert code == 2
    assert len(out.splitlines()) == 2
    assert err.count("\n") == 1
    assert missing in err


def test_what_is_filed_counts_not_the_profile_of_today(run, altered):
    """The record is complete by itself: it needs no profile."""
    path = altered("fixed", {"session.profile": "no longer kept"})
    assert run("check", path)[0] == 0


def test_text_of_a_record_is_only_text(run, altered):
    told = {
        "vehicle.tag": "[red]FG[/red]\x1b[31m",
        "vehicle.description": "[bold]x[/bold] :warning: \x1b]0;title\x07 \u202eleft",
        "session.kind": "[link=file:///]first[/link]",
        "session.technician": "[blink]",
        "kept": [{"reading": "[red]", "reason": "[/red] \x1b[2J"}],
    }
    code, out, _ = run("check", altered("as built", told))
    assert code == 0
    assert all(line.isprintable() for line in out.splitlines())
    for text in ("[red]FG[/red]\\x1b[31m", "[bold]x[/bold] :warning:", "[red]: [/red] \\x1b[2J"):
        assert text in out


def test_events_are_only_text_too(run, altered):
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
    [((), ("textual", "pint")), (("--json",), ("textual", "rich", "pint", "tomli_w"))],
)
def test_it_loads_no_more_than_it_needs(form, not_loaded):
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


def test_a_reader_that_stops_early_is_no_fault():
    """As with head: the pipe is closed before everything was written."""
    command = [sys.executable, "-m", "wizard.commands", "check", "--json", *[demo("toe")] * 40]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
        process.stdout.read(10)
        process.stdout.close()
        assert process.stderr.read() == b""


@pytest.mark.skipif(sys.platform == "win32", reason="this system has no pseudo-terminals")
@pytest.mark.parametrize(("no_colour", "has_colour"), [({}, True), ({"NO_COLOR": "1"}, False)])
def test_in_a_terminal_a_colour_says_the_same_once_more(no_colour, has_colour):
    printed = pexpect.run(
        f"{sys.executable} -m wizard.commands check {demo('lifted')}",
        env={**os.environ, "TERM": "xterm-256color", **no_colour},
        timeout=60,
    ).decode()
    assert bool(re.search(r"\x1b\[[0-9;]*3[0-9]m", printed)) == has_colour
    assert "✗ BUMP STEER" in re.sub(r"\x1b\[[0-9;]*m", "", printed)
