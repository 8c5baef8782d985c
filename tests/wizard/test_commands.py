"""The command line: its arguments, its help, its refusals, and the libraries it loads."""

import subprocess
import sys
from pathlib import Path

import pytest

from wizard import __version__
from wizard.commands import application, main, parser
from wizard.exit_codes import CANNOT_READ
from wizard.locations import crash_log_file, files_folder


def run(*arguments):
    """Run `evenarc` in its own process, without a terminal."""
    return subprocess.run(
        [sys.executable, "-m", "wizard.commands", *arguments],
        capture_output=True,
        text=True,
        check=False,
        stdin=subprocess.DEVNULL,
    )


def test_the_version_is_printed():
    ran = run("--version")
    assert (ran.returncode, ran.stdout.strip()) == (0, f"evenarc {__version__}")


@pytest.mark.parametrize("command", ["measure", "demo", "check", "compare", "fix", "page", "sheet"])
def test_help_names_every_command_and_explains_it(command, capsys):
    with pytest.raises(SystemExit) as whole:
        main(["--help"])
    assert command in capsys.readouterr().out
    with pytest.raises(SystemExit) as of_command:
        main([command, "--help"])
    assert "--files" in capsys.readouterr().out
    assert whole.value.code == of_command.value.code == 0


@pytest.mark.parametrize(
    "arguments",
    [
        ["--files", "a", "--profiles", "b", "check", "r.toml"],
        ["check", "--files", "a", "--profiles", "b", "r.toml"],
        ["check", "r.toml", "--files", "a", "--profiles", "b"],
    ],
)
def test_folder_options_are_taken_before_and_after_a_command(arguments):
    options = parser().parse_args(arguments)
    assert (options.files, options.profiles) == ("a", [Path("b")])


def test_a_blank_files_option_counts_as_missing(monkeypatch, tmp_path):
    monkeypatch.setenv("EVENARC_FILES", str(tmp_path))
    assert files_folder(parser().parse_args(["--files", " "]).files) == tmp_path


@pytest.mark.parametrize("option", [["--files", "~nobodyatall/x"], []])
def test_the_home_of_nobody_is_one_line(monkeypatch, capsys, option):
    monkeypatch.setenv("EVENARC_FILES", "~nobodyatall")
    assert main(["fix", "r.toml", *option]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    named = "--files" if option else "the variable EVENARC_FILES"
    assert err.startswith(f"evenarc: {named}: “~nobodyatall” is the home folder of nobody here")
    assert err.count("\n") == 1


def test_a_fault_in_the_demo_is_logged_where_it_stays(tmp_path):
    copy, kept = tmp_path / "copy", tmp_path / "kept"
    surroundings = application(copy, [], logs=kept).surroundings
    line = surroundings.in_folder(tmp_path / "other").log_fault(ValueError("x"))
    assert str(crash_log_file(kept)) in line
    assert crash_log_file(kept).exists()
    assert not copy.exists()


@pytest.mark.parametrize("arguments", [["swim"], ["check"], ["compare", "one.toml"], ["--fils"]])
def test_a_wrong_command_is_refused_with_exit_code_2(arguments, capsys):
    with pytest.raises(SystemExit) as refusal:
        main(arguments)
    assert refusal.value.code == CANNOT_READ
    assert "usage: evenarc" in capsys.readouterr().err


@pytest.mark.parametrize("arguments", [[], ["measure"], ["demo"]])
def test_the_wizard_is_refused_in_one_line_without_a_terminal(arguments):
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
def test_a_missing_record_is_refused_in_one_line_with_exit_code_2(arguments):
    ran = run(*arguments)
    assert ran.returncode == CANNOT_READ
    assert ran.stderr.count("\n") == 1
    assert "none.toml" in ran.stderr
    assert "Traceback" not in ran.stderr


def test_a_refused_check_loads_neither_textual_nor_pint_nor_rich():
    program = (
        "import sys; from wizard.commands import main; main(['check', 'none.toml']); "
        "print([name for name in ('textual', 'pint', 'rich') if name in sys.modules])"
    )
    ran = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=False
    )
    assert ran.stdout.strip() == "[]"
