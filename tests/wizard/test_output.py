"""Output that cannot be written or is not read to its end."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.wizard.tui.looking import DEMO
from wizard.exit_codes import CANNOT_READ
from wizard.locations import DEMO_SESSIONS

RECORD = str(DEMO["as built"].path_in(DEMO_SESSIONS))
COMMANDS = (
    ["check", RECORD],
    ["check", "--json", RECORD],
    ["compare", RECORD, RECORD],
    ["fix", RECORD],
)


def evenarc(arguments, **options):
    """Run `evenarc` in its own process."""
    return subprocess.run(
        [sys.executable, "-m", "wizard.commands", *arguments],
        stderr=subprocess.PIPE,
        text=True,
        check=False,
        **options,
    )


@pytest.mark.parametrize("arguments", COMMANDS, ids=lambda arguments: " ".join(arguments[:2]))
def test_a_reader_that_stops_early_causes_no_message(arguments):
    reading, writing = os.pipe()
    os.close(reading)
    ran = evenarc(arguments, stdout=writing)
    os.close(writing)
    assert ran.stderr == ""
    assert ran.returncode in (0, 1)


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
@pytest.mark.parametrize("arguments", COMMANDS, ids=lambda arguments: " ".join(arguments[:2]))
def test_a_full_disk_is_reported_in_one_line(arguments):
    with Path("/dev/full").open("w") as full:
        ran = evenarc(arguments, stdout=full)
    assert ran.returncode == CANNOT_READ
    assert ran.stderr.startswith("evenarc: the output cannot be written: ")
    assert ran.stderr.count("\n") == 1


@pytest.mark.parametrize("columns", ["0", "1", "-5", "x"])
def test_an_impossible_width_is_ignored(columns):
    ran = evenarc(["check", RECORD], stdout=subprocess.PIPE, env=os.environ | {"COLUMNS": columns})
    assert "✓ STEERS TRUE  FG-1" in ran.stdout


def test_a_wrong_option_is_printed_as_plain_text():
    ran = evenarc(["--x\x1b[31m\a"], stdout=subprocess.PIPE)
    assert ran.returncode == CANNOT_READ
    assert "\x1b" not in ran.stderr
    assert "--x\\x1b[31m\\x07" in ran.stderr
