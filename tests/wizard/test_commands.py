"""The command line: what it takes, what it says, and what it does not load."""

import subprocess
import sys
from pathlib import Path

import pytest

from wizard import __version__
from wizard.commands import main, parser
from wizard.exit_codes import CANNOT_READ
from wizard.locations import files_folder


def run(*arguments):
    """`evenarc` in a process of its own, without a terminal."""
    return subprocess.run(
        [sys.executable, "-m", "wizard.commands", *arguments],
        capture_output=True,
        text=True,
        check=False,
        stdin=subprocess.DEVNULL,
    )


def test_version():
    ran = run("--version")
    assert (ran.returncode, ran.stdout.strip()) == (0, f"evenarc {__version__}")


@pytest.mark.parametrize("command", ["measure", "demo", "check", "compare", "fix", "page"])
def test_help_names_every_command_and_explains_it(command, capsys):
    with pytest.raises(SystemExit) as whole:
        main(["--help"])
    assert command in capsys.readouterr().out
    with pytest.raises(SystemExit) as one:
        main([command, "--help"])
    assert "--files" in capsys.readouterr().out
    assert whole.value.code == one.value.code == 0


@pytest.mark.parametrize(
    "arguments",
    [
        ["--files", "a", "--profiles", "b", "check", "r.toml"],
        ["check", "--files", "a", "--profiles", "b", "r.toml"],
        ["check", "r.toml", "--files", "a", "--profiles", "b"],
    ],
)
def test_places_may_stand_before_and_after_a_command(arguments):
    given = parser().parse_args(arguments)
    assert (given.files, given.profiles) == ("a", [Path("b")])


def test_files_that_are_blank_count_as_not_said(monkeypatch, tmp_path):
    monkeypatch.setenv("EVENARC_FILES", str(tmp_path))
    assert files_folder(parser().parse_args(["--files", " "]).files) == tmp_path


@pytest.mark.parametrize("arguments", [["swim"], ["check"], ["compare", "one.toml"], ["--fils"]])
def test_what_is_no_command_is_refused_with_exit_2(arguments, capsys):
    with pytest.raises(SystemExit) as refusal:
        main(arguments)
    assert refusal.value.code == CANNOT_READ
    assert "usage: evenarc" in capsys.readouterr().err


@pytest.mark.parametrize("arguments", [[], ["measure"], ["demo"]])
def test_without_a_terminal_the_wizard_says_so_in_one_line(arguments):
    ran = run(*arguments)
    assert ran.returncode == CANNOT_READ
    assert ran.stderr.count("\n") == 1
    assert "needs a terminal" in ran.stderr


@pytest.mark.parametrize(
    "arguments",
    [
        ["check", "none.toml"],
        ["compare", "none.toml", "none.toml"],
        ["fix", "none.toml"],
        ["page", "none.toml", "none.html"],
    ],
)
def test_a_record_that_is_not_there_is_one_line_and_exit_2(arguments):
    ran = run(*arguments)
    assert ran.returncode == CANNOT_READ
    assert ran.stderr.count("\n") == 1
    assert "none.toml" in ran.stderr
    assert "Traceback" not in ran.stderr


def test_check_loads_neither_screens_nor_pint():
    looks = (
        "import sys; from wizard.commands import main; main(['check', 'none.toml']); "
        "print([name for name in ('textual', 'pint', 'rich') if name in sys.modules])"
    )
    ran = subprocess.run([sys.executable, "-c", looks], capture_output=True, text=True, check=False)
    assert ran.stdout.strip() == "[]"
