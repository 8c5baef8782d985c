"""The command line. Nothing of the screens is loaded for a command that needs none."""

from __future__ import annotations

import gc
import os
import sys
from argparse import SUPPRESS, ArgumentParser, ArgumentTypeError, HelpFormatter, Namespace
from collections.abc import Callable, Sequence
from contextlib import suppress
from functools import partial
from typing import TYPE_CHECKING, NoReturn

from core.text.plain_text import plain
from wizard import __version__
from wizard.exit_codes import ALL_TRUE, CANNOT_READ
from wizard.phrases.cautions import CAUTION_IN_SHORT

if TYPE_CHECKING:
    from pathlib import Path

    from core.profiles.profile import Profile

IN_80_COLUMNS = partial(HelpFormatter, width=80)
"""Help as wide as the smallest terminal: to ask for its width costs a check a tenth of its time."""

ABOUT = (
    "Measures a solid front axle with tape and angle finder, says whether the vehicle has bump "
    "steer and how sure that is, and plans the fix. Without a command it opens the first page."
)

NO_TERMINAL = (
    "evenarc: the wizard needs a terminal; `evenarc check`, `evenarc compare` and `evenarc fix` "
    "do without one"
)
NO_UTF_8 = "evenarc: the wizard needs a terminal that takes UTF-8; set LC_ALL=C.UTF-8 or the like"
DEMO = "a demonstration: an invented workshop, on a copy thrown away at the end"


def main(arguments: Sequence[str] | None = None) -> int:
    """What `evenarc` does with its arguments; gives the exit code."""
    for name in ("stdout", "stderr"):
        if getattr(sys, name) is None:  # closed by whoever called: what is said goes nowhere
            setattr(sys, name, open(os.devnull, "w", encoding="utf-8"))  # noqa: PTH123, SIM115
    given = parser().parse_args(arguments)
    try:
        code = int(given.run(given))
        sys.stdout.flush()
    except KeyboardInterrupt:
        return CANNOT_READ
    except OSError as error:
        # A reader that has seen enough, or a disk that is full: nothing more goes there.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        if not isinstance(error, BrokenPipeError):
            with suppress(OSError):
                where = plain(error.filename, 300) if error.filename else "the output"
                what = error.strerror or plain(error, 300)
                print(f"evenarc: {where} cannot be written: {what}", file=sys.stderr)
        return CANNOT_READ
    return code


class Parser(ArgumentParser):
    """Shows what was typed as text when it refuses it."""

    def error(self, message: str) -> NoReturn:
        """Say what is wrong, and leave with the code for it."""
        super().error(plain(message, 300))


def parser() -> Parser:
    """Every command with its options."""
    whole = Parser(
        "evenarc",
        description=ABOUT,
        epilog=CAUTION_IN_SHORT,
        parents=[_places()],
        formatter_class=IN_80_COLUMNS,
    )
    whole.add_argument("--version", action="version", version=f"evenarc {__version__}")
    whole.set_defaults(run=_home, files=None, profiles=[])
    places = _places()  # of their own: the defaults above would overrule what stood before
    commands = whole.add_subparsers(title="commands", metavar="COMMAND")

    def command(name: str, says: str, run: object) -> Parser:
        made = commands.add_parser(
            name,
            help=says,
            description=says,
            parents=[places],
            formatter_class=IN_80_COLUMNS,
        )
        made.set_defaults(run=run)
        return made

    command("measure", "measure a new vehicle at once", _measure)
    command("demo", "look at invented sessions, on a copy that is thrown away", _demo)
    check = command("check", "say what filed sessions show, computed afresh", _check)
    check.add_argument("records", nargs="+", metavar="RECORD")
    check.add_argument("--json", action="store_true", help="one JSON object a record and line")
    compare = command("compare", "lay one session beside an earlier one", _compare)
    compare.add_argument("before", metavar="BEFORE")
    compare.add_argument("after", metavar="AFTER")
    compare.add_argument("--json", action="store_true", help="one JSON object")
    fix = command("fix", "plan what would put a vehicle right", _fix)
    fix.add_argument("record", metavar="RECORD")
    fix.add_argument("--json", action="store_true", help="one JSON object")
    page = command("page", "make one page to print for whoever owns the vehicle", _page)
    page.add_argument("record", metavar="RECORD")
    page.add_argument("page", metavar="PAGE", type=_path, help="the HTML file to make")
    return whole


def _places() -> Parser:
    """Where files are looked for; may stand before a command or after it."""
    places = Parser(add_help=False, argument_default=SUPPRESS, formatter_class=IN_80_COLUMNS)
    places.add_argument(
        "--files",
        metavar="FOLDER",
        help="where records and drafts are kept (or the variable EVENARC_FILES)",
    )
    places.add_argument(
        "--profiles",
        type=_path,
        metavar="FOLDER",
        action="append",
        help="a folder of the shop's own profiles, before those in FILES/shop/profiles",
    )
    return places


def _path(name: str) -> Path:
    from pathlib import Path  # a check of records can do without

    if not name.strip():
        raise ArgumentTypeError("is empty; it should be a path")
    return Path(name)


def _home(given: Namespace) -> int:
    return _open(given)


def _measure(given: Namespace) -> int:
    return _open(given, measures_at_once=True)


def _open(given: Namespace, measures_at_once: bool = False, notice: str = "") -> int:
    if "utf" not in (sys.stdout.encoding or "").casefold():
        print(NO_UTF_8, file=sys.stderr)
        return CANNOT_READ
    if not (sys.stdin and sys.stdin.isatty() and sys.stdout.isatty()):
        print(NO_TERMINAL, file=sys.stderr)
        return CANNOT_READ
    from wizard.crash_log import write_down
    from wizard.locations import files_folder
    from wizard.tui.app import EvenarcApp

    files = files_folder(given.files)
    try:
        app = EvenarcApp(files, _profile_folders(given, files), measures_at_once, notice)
        app.run()
    except Exception as error:  # before or after the screens: never a traceback
        print(write_down(error, files), file=sys.stderr)
        return CANNOT_READ
    return CANNOT_READ if app.return_code else ALL_TRUE


def _demo(given: Namespace) -> int:
    from pathlib import Path
    from shutil import copytree, ignore_patterns
    from tempfile import TemporaryDirectory

    from wizard.locations import DEMO_SESSIONS

    with TemporaryDirectory(prefix="evenarc-demo-") as folder:
        given.files = Path(folder) / "demo"
        copytree(DEMO_SESSIONS, given.files, ignore=ignore_patterns("*.py", "__pycache__"))
        return _open(given, notice=DEMO)


def _check(given: Namespace) -> int:
    # Nothing here goes round in circles: to look for such while loading takes a check's twentieth.
    gc.disable()
    from wizard.reports.check import check

    return check(given.records, _profile_of(given), given.json)


def _compare(given: Namespace) -> int:
    from wizard.reports.compare import compare_records

    return compare_records(given.before, given.after, _profile_of(given), given.json)


def _fix(given: Namespace) -> int:
    from wizard.locations import files_folder, parts_shelf
    from wizard.reports.fix import fix

    shelf = parts_shelf(files_folder(given.files))
    return fix(given.record, _profile_folders(given), shelf, given.json)


def _page(given: Namespace) -> int:
    from wizard.printed.page_command import page

    return page(given.record, given.page, _profile_of(given))


def _profile_of(given: Namespace) -> Callable[[str], Profile]:
    def find(name: str) -> Profile:
        from core.profiles.profile import load_profile  # a record that is complete needs no profile

        return load_profile(name, _profile_folders(given))

    return find


def _profile_folders(given: Namespace, files: Path | None = None) -> tuple[Path, ...]:
    from wizard.locations import files_folder, profile_folders

    return (*given.profiles, *profile_folders(files or files_folder(given.files)))


if __name__ == "__main__":
    sys.exit(main())
