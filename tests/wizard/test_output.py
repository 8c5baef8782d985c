"""Where what a command says cannot be written, or is not read to its end."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.wizard.tui.looking import DEMO
from wizard.exit_codes import CANNOT_READ
from wizard.locations import DEMO_SESSIONS

TRUE = str(DEMO["as built"].path_in(DEMO_SESSIONS))
COMMANDS = (["check", TRUE], ["check", "--json", TRUE], ["compare", TRUE, TRUE], ["fix", TRUE])


def evenarc(arguments, **others):
    return subprocess.run(
        [sys.executable, "-m", "wizard.commands", *arguments],
        stderr=subprocess.PIPE,
        text=True,
        check=False,
        **others,
    )


@pytest.mark.parametrize("arguments", COMMANDS, ids=lambda one: " ".join(one[:2]))
def test_a_reader_that_has_seen_enough(arguments):
    reading, writing = os.pipe()
    os.close(reading)
    ran = evenarc(arguments, stdout=writing)
    os.close(writing)
    assert (ran.returncode, ran.stderr) == (CANNOT_READ, "")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")
@pytest.mark.parametrize("arguments", COMMANDS, ids=lambda one: " ".join(one[:2]))
def test_a_disk_that_is_full(arguments):
    with Path("/dev/full").open("w") as full:
        ran = evenarc(arguments, stdout=full)
    assert ran.returncode == CANNOT_READ
    assert ran.stderr.startswith("evenarc: the output cannot be written: ")
    assert ran.stderr.count("\n") == 1


@pytest.mark.parametrize("columns", ["0", "1", "-5", "x"])
def test_a_width_that_cannot_be(columns):
    ran = evenarc(["check", TRUE], stdout=subprocess.PIPE, env=os.environ | {"COLUMNS": columns})
    assert "✓ STEERS TRUE  FG-1" in ran.stdout


def test_what_is_no_option_is_shown_as_text():
    ran = evenarc(["--x\x1b[31m\a"], stdout=subprocess.PIPE)
    assert ran.returncode == CANNOT_READ
    assert "\x1b" not in ran.stderr
    assert "--x\\x1b[31m\\x07" in ran.stderr
