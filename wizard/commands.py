"""The command line: what each command needs is loaded when it runs, so a check loads no screens."""

import os
import sys
from argparse import SUPPRESS, ArgumentParser, ArgumentTypeError, Namespace
from collections.abc import Callable, Sequence
from contextlib import suppress
from functools import partial
from pathlib import Path
from shutil import copytree, ignore_patterns
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, NoReturn

from core.documents.entries import units_of
from core.documents.record import RecordError
from core.profiles.profile import Profile, load_profile
from core.text.plain_text import plain
from wizard import __version__
from wizard.crash_log import log_fault
from wizard.exit_codes import CANNOT_READ, DONE, EXIT_CODES
from wizard.flow.filed_records import LONGEST_PATH, Unreadable, read_and_judge
from wizard.locations import DEMO_SESSIONS, files_folder, parts_shelf, profile_folders
from wizard.phrases.cautions import CAUTION_IN_SHORT

if TYPE_CHECKING:
    from wizard.tui.app import EvenarcApp

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
            setattr(sys, name, Path(os.devnull).open("w", encoding="utf-8"))  # noqa: SIM115
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
    places = Parser(add_help=False, argument_default=SUPPRESS)
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
    if not name.strip():
        raise ArgumentTypeError("is empty; it should be a path")
    return Path(name)


def _home(given: Namespace) -> int:
    return _open(given)


def _measure(given: Namespace) -> int:
    return _open(given, measures_at_once=True)


def _demo(given: Namespace) -> int:
    with TemporaryDirectory(prefix="evenarc-demo-") as folder:
        given.files = Path(folder) / "demo"
        copytree(DEMO_SESSIONS, given.files, ignore=ignore_patterns("*.py", "__pycache__"))
        return _open(given, notice=DEMO)


def _open(given: Namespace, measures_at_once: bool = False, notice: str = "") -> int:
    """Open the application; returns the exit code."""
    if "utf" not in (sys.stdout.encoding or "").casefold():
        print(NO_UTF_8, file=sys.stderr)
        return CANNOT_READ
    if not (sys.stdin and sys.stdin.isatty() and sys.stdout.isatty()):
        print(NO_TERMINAL, file=sys.stderr)
        return CANNOT_READ
    files = files_folder(given.files)
    try:
        app = application(files, _profile_folders(given, files), measures_at_once, notice)
        app.run()
    except Exception as error:  # before or after the screens: never a traceback
        print(log_fault(error, files), file=sys.stderr)
        return CANNOT_READ
    return CANNOT_READ if app.return_code else DONE


def application(
    files: Path,
    profile_folders: Sequence[Path],
    measures_at_once: bool = False,
    notice: str = "",
) -> "EvenarcApp":
    """The application over a files folder, with everything it needs from outside."""
    from wizard.printed.page_file import write_beside
    from wizard.tui.app import EvenarcApp
    from wizard.tui.host import Surroundings

    surroundings = Surroundings(
        files,
        tuple(profile_folders),
        parts_shelf(files),
        write_page=write_beside,
        log_fault=partial(log_fault, files=files),
    )
    return EvenarcApp(surroundings, measures_at_once, notice)


def _check(given: Namespace) -> int:
    from wizard.reports.check import check

    return EXIT_CODES[check(given.records, _profile_of(given), given.json)]


def _compare(given: Namespace) -> int:
    from wizard.reports.compare import compare_records

    ending = compare_records(given.before, given.after, _profile_of(given), given.json)
    return EXIT_CODES[ending]


def _fix(given: Namespace) -> int:
    from wizard.reports.fix import fix

    shelf = parts_shelf(files_folder(given.files))
    return EXIT_CODES[fix(given.record, _profile_folders(given), shelf, given.json)]


def _page(given: Namespace) -> int:
    from wizard.printed.page_file import write_owners_page

    try:
        document, verdict = read_and_judge(given.record, _profile_of(given))
        write_owners_page(given.page, document, verdict, units_of(document))
    except (Unreadable, RecordError) as error:
        print(f"evenarc: {error}", file=sys.stderr)
        return CANNOT_READ
    print(f"{plain(given.page, LONGEST_PATH)}: made; open it with a browser and print it")
    return DONE


def _profile_of(given: Namespace) -> Callable[[str], Profile]:
    """Loads a profile by its name from the folders of the command line."""
    return lambda name: load_profile(name, _profile_folders(given))


def _profile_folders(given: Namespace, files: Path | None = None) -> tuple[Path, ...]:
    return (*given.profiles, *profile_folders(files or files_folder(given.files)))


if __name__ == "__main__":
    sys.exit(main())
