"""The command `evenarc`: its arguments, and the function that runs each command.

A command imports its own modules when it runs, so that `evenarc check --json` loads neither
Rich nor Textual.
"""

import os
import sys
from argparse import SUPPRESS, ArgumentParser, ArgumentTypeError, Namespace
from collections.abc import Callable, Sequence
from contextlib import suppress
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from core.documents.entries import units_of
from core.documents.record import RecordError
from core.kinematics.pivots import GuideKind, Layout
from core.profiles.profile import Profile, ProfileError, load_profile
from core.text.plain_text import plain
from wizard import __version__
from wizard.crash_log import log_fault
from wizard.exit_codes import CANNOT_READ, DONE, EXIT_CODES
from wizard.flow.filed_records import LONGEST_PATH, Unreadable, read_and_judge
from wizard.locations import (
    DEMO_SESSIONS,
    UnknownHome,
    files_folder,
    parts_shelf,
    profile_folders,
    shop_file,
)
from wizard.phrases.cautions import CAUTION_IN_SHORT

if TYPE_CHECKING:  # it would load Textual
    from wizard.tui.app import EvenarcApp

ABOUT = (
    "Measures a solid front axle with tape and angle finder. Says whether the vehicle has bump "
    "steer and how sure that is, and plans the fix. Without a command it opens the wizard."
)

NO_TERMINAL = (
    "evenarc: the wizard needs a terminal; `evenarc list`, `evenarc check`, `evenarc compare` "
    "and `evenarc fix` need none"
)
NO_UTF_8 = "evenarc: the wizard needs a terminal with UTF-8; set LC_ALL=C.UTF-8, for example"
LARGEST_NUMBER = 9
"""Largest number of a plan; a search offers fewer."""

DEMO_NOTICE = "a demonstration: an invented workshop, on a copy that is deleted at the end"


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command that the arguments name, and return its exit code."""
    _open_closed_streams()
    options = parser().parse_args(arguments)
    code = DONE
    try:
        code = int(options.run(options))
        sys.stdout.flush()
    except KeyboardInterrupt:
        return CANNOT_READ
    except UnknownHome as error:
        print(f"evenarc: {error}", file=sys.stderr)
        return CANNOT_READ
    except BrokenPipeError:  # its reader has seen enough
        _write_no_more()
    except OSError as error:
        _write_no_more()
        _report_output_error(error)
        return CANNOT_READ
    return code


def _open_closed_streams() -> None:
    """Open standard output and standard error if the calling program has closed them."""
    for name in ("stdout", "stderr"):
        if getattr(sys, name) is None:
            setattr(sys, name, Path(os.devnull).open("w", encoding="utf-8"))  # noqa: SIM115


def _write_no_more() -> None:
    """Send the rest of the output nowhere: Python flushes it when it exits, and would fail."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _report_output_error(error: OSError) -> None:
    """Say that the output cannot be written."""
    with suppress(OSError):
        output = plain(error.filename, 300) if error.filename else "the output"
        reason = error.strerror or plain(error, 300)
        print(f"evenarc: {output} cannot be written: {reason}", file=sys.stderr)


class Parser(ArgumentParser):
    """An argument parser that prints arguments it refuses as plain text."""

    def error(self, message: str) -> NoReturn:
        """Print what is wrong and exit with code 2."""
        super().error(plain(message, 300))


def parser() -> Parser:
    """Parser of every command with its options."""
    evenarc = Parser(
        "evenarc",
        description=ABOUT,
        epilog=CAUTION_IN_SHORT,
        parents=[_folder_options()],
    )
    evenarc.add_argument("--version", action="version", version=f"evenarc {__version__}")
    evenarc.set_defaults(run=_home, files=None, profiles=[])
    # The commands have folder options of their own: with the same ones, the defaults that were
    # just set would replace options that are given before the command.
    folder_options = _folder_options()
    commands = evenarc.add_subparsers(title="commands", metavar="COMMAND")

    def command(name: str, description: str, run: Callable[[Namespace], int]) -> Parser:
        subparser = commands.add_parser(
            name, help=description, description=description, parents=[folder_options]
        )
        subparser.set_defaults(run=run)
        return subparser

    measure = command("measure", "measure a new vehicle at once", _measure)
    measure.add_argument(
        "--photographs",
        nargs="*",
        metavar="PICTURE",
        help="judge it from photographs; marks and tape readings count together",
    )
    command("demo", "look at invented sessions, on a copy that is deleted at the end", _demo)
    check = command("check", "compute and print the verdict on filed sessions", _check)
    check.add_argument("records", nargs="+", metavar="RECORD")
    check.add_argument(
        "--json", action="store_true", help="print one JSON object for each record, one a line"
    )
    compare = command("compare", "compare a session with an earlier one", _compare)
    compare.add_argument("before", metavar="BEFORE", help="the earlier record")
    compare.add_argument("after", metavar="AFTER", help="the later record")
    compare.add_argument("--json", action="store_true", help="print one JSON object")
    fix = command("fix", "plan the changes that cure a vehicle", _fix)
    fix.add_argument("record", metavar="RECORD")
    fix.add_argument("--json", action="store_true", help="print one JSON object")
    fix.add_argument(
        "--by",
        choices=("parts", "price", "hours"),
        default="parts",
        help="what decides which plans come first (usually the fewest parts)",
    )
    lift = command("lift", "plan a lift, and say how far it works", _lift)
    lift.add_argument(
        "lift", nargs="?", default="", metavar="LIFT", help='such as "4 in", or "100 mm"'
    )
    lift.add_argument(
        "--like",
        action="append",
        default=[],
        metavar="RECORD",
        help="take the geometry of a record, or of a vehicle's newest record by its tag; repeat it",
    )
    lift.add_argument(
        "--typical",
        action="append",
        default=[],
        metavar="PROFILE",
        help="take the typical geometry of a profile (without --like: of every profile)",
    )
    lift.add_argument(
        "--with",
        dest="change",
        default="",
        metavar="NAME",
        help='how far it works with a conversion, or with a correction: "NAME = 2 in"',
    )
    lift.add_argument("--json", action="store_true", help="print one JSON object")
    listing = command("list", "list every filed session with its verdict", _list)
    listing.add_argument(
        "--json", action="store_true", help="print one JSON object for each record, one a line"
    )
    page = command("page", "make a page to print for the owner of the vehicle", _page)
    page.add_argument("record", metavar="RECORD")
    page.add_argument("page", metavar="PAGE", type=_path, help="the HTML file to make")
    order = command("order", "make the work order of a record's plan", _order)
    order.add_argument("record", metavar="RECORD")
    order.add_argument(
        "page",
        nargs="?",
        metavar="PAGE",
        type=_path,
        help="the HTML file to make; without it the order is printed in words",
    )
    order.add_argument(
        "--plan",
        type=_number,
        metavar="NUMBER",
        help="a plan of `evenarc fix` in place of the plan that was filed",
    )
    for printed in (page, order):
        printed.add_argument(
            "--paper",
            choices=("letter", "a4"),
            help="size of the paper (usually Letter for a session in inches, else A4)",
        )
    sheet = command("sheet", "make a page to print and to measure with, with drawings", _sheet)
    sheet.add_argument(
        "--photographs",
        action="store_true",
        help="make the page for an owner instead, which says how to take photographs",
    )
    sheet.add_argument("--profile", metavar="NAME", help="the kind of vehicle it is for")
    sheet.add_argument("--layout", choices=[*Layout], help="where the drag link goes")
    sheet.add_argument("--guide", choices=[*GuideKind], help="what guides the axle lengthwise")
    sheet.add_argument("--units", choices=["in", "mm"], default="in", help="unit of the lengths")
    sheet.add_argument("--paper", choices=["letter", "a4"], default="letter")
    sheet.add_argument("page", metavar="PAGE", type=_path, help="the HTML file to make")
    return evenarc


def _folder_options() -> Parser:
    """Parser of the options for folders, which are taken before and after a command."""
    options = Parser(add_help=False, argument_default=SUPPRESS)
    options.add_argument(
        "--files",
        metavar="FOLDER",
        help="the folder of records and drafts (or set the variable EVENARC_FILES)",
    )
    options.add_argument(
        "--profiles",
        type=_path,
        metavar="FOLDER",
        action="append",
        help="a folder of profiles that comes before FILES/shop/profiles",
    )
    return options


def _path(name: str) -> Path:
    """Path of an argument, which must not be blank."""
    if not name.strip():
        raise ArgumentTypeError("is empty; it should be a path")
    return Path(name)


def _home(options: Namespace) -> int:
    return _open_wizard(options)


def _measure(options: Namespace) -> int:
    return _open_wizard(options, measures_at_once=True, photographs=options.photographs)


def _demo(options: Namespace) -> int:
    from shutil import copytree, ignore_patterns
    from tempfile import TemporaryDirectory

    logs = files_folder(options.files)  # the copy is deleted, and a log in it would be too
    with TemporaryDirectory(prefix="evenarc-demo-") as folder:
        options.files = Path(folder) / "demo"
        copytree(DEMO_SESSIONS, options.files, ignore=ignore_patterns("*.py", "__pycache__"))
        return _open_wizard(options, notice=DEMO_NOTICE, logs=logs)


def _open_wizard(
    options: Namespace,
    measures_at_once: bool = False,
    notice: str = "",
    logs: Path | None = None,
    photographs: Sequence[str] | None = None,
) -> int:
    """Run the application until it is left, and return the exit code.

    Faults are logged in the folder `logs`; None for the files folder.
    """
    if "utf" not in (sys.stdout.encoding or "").casefold():
        print(NO_UTF_8, file=sys.stderr)
        return CANNOT_READ
    if not (sys.stdin and sys.stdin.isatty() and sys.stdout.isatty()):
        print(NO_TERMINAL, file=sys.stderr)
        return CANNOT_READ
    files = files_folder(options.files)
    try:
        folders = _profile_folders(options, files)
        app = application(files, folders, measures_at_once, notice, logs, photographs)
        app.run()
    except Exception as error:  # outside the screens, which have their own handler
        print(log_fault(error, logs or files), file=sys.stderr)
        return CANNOT_READ
    return CANNOT_READ if app.return_code else DONE


def application(
    files: Path,
    profile_folders: Sequence[Path],
    measures_at_once: bool = False,
    notice: str = "",
    logs: Path | None = None,
    photographs: Sequence[str] | None = None,
) -> "EvenarcApp":
    """Application over a files folder.

    Parameters
    ----------
    files : Path
        The folder of records and drafts.
    profile_folders : sequence of Path
        Folders of profiles, the shop's own first.
    measures_at_once : bool
        Begin a new session instead of showing home.
    notice : str
        A line for home.
    logs : Path or None
        Folder of the crash log; None for the files folder.
    photographs : sequence of str or None
        Pictures of a new session from photographs; None for no such session.
    """
    from wizard.printed.page_file import write_order_beside, write_page_beside
    from wizard.printed.sheet_file import write_sheet_for
    from wizard.printed.sources import ShopFiles
    from wizard.tui.app import EvenarcApp
    from wizard.tui.host import Surroundings

    def surroundings_in(folder: Path) -> Surroundings:
        folders = _moved_profile_folders(profile_folders, files, folder)
        shop_files = ShopFiles(folders, parts_shelf(folder), shop_file(folder))
        return Surroundings(
            folder,
            folders,
            parts_shelf(folder),
            write_page=partial(write_page_beside, files=shop_files),
            write_order=partial(write_order_beside, files=shop_files),
            write_sheet=partial(write_sheet_for, files=folder, profile_folders=folders),
            log_fault=partial(log_fault, files=logs or folder),
            in_folder=surroundings_in,
        )

    return EvenarcApp(surroundings_in(files), measures_at_once, notice, photographs)


def _check(options: Namespace) -> int:
    from wizard.reports.check import check_records

    return EXIT_CODES[check_records(options.records, _profile_loader(options), options.json)]


def _compare(options: Namespace) -> int:
    from wizard.reports.compare import compare_records

    ending = compare_records(options.before, options.after, _profile_loader(options), options.json)
    return EXIT_CODES[ending]


def _fix(options: Namespace) -> int:
    from wizard.reports.fix import fix_record

    shelf = parts_shelf(files_folder(options.files))
    ending = fix_record(options.record, _profile_folders(options), shelf, options.json, options.by)
    return EXIT_CODES[ending]


def _lift(options: Namespace) -> int:
    from wizard.flow.lifting import LiftRequest
    from wizard.reports.lift import print_lifts

    files = files_folder(options.files)
    shelf = parts_shelf(files)
    request = LiftRequest(None, options.like, options.typical, options.change)
    folders = _profile_folders(options)
    return EXIT_CODES[print_lifts(options.lift, request, folders, files, shelf, options.json)]


def _order(options: Namespace) -> int:
    from wizard.reports.order import order_record

    files, folders = files_folder(options.files), _profile_folders(options)
    shop_files = parts_shelf(files), shop_file(files)
    ending = order_record(
        options.record, options.page, options.plan, folders, shop_files, options.paper
    )
    return EXIT_CODES[ending]


def _number(text: str) -> int:
    """Number of a plan, which counts from 1."""
    if not text.isdecimal() or not 1 <= int(text) <= LARGEST_NUMBER:
        raise ArgumentTypeError(f"should be the number of a plan, 1 to {LARGEST_NUMBER}")
    return int(text)


def _list(options: Namespace) -> int:
    from wizard.reports.list import list_sessions

    files = files_folder(options.files)
    return EXIT_CODES[list_sessions(files, _profile_loader(options), options.json)]


def _page(options: Namespace) -> int:
    from wizard.printed.page_file import write_owners_page
    from wizard.printed.sources import ShopFiles

    files = files_folder(options.files)
    shop_files = ShopFiles(_profile_folders(options), parts_shelf(files), shop_file(files))
    try:
        document, verdict = read_and_judge(options.record, _profile_loader(options))
        record, unit = Path(options.record), units_of(document)
        write_owners_page(options.page, record, document, verdict, unit, shop_files, options.paper)
    except (Unreadable, RecordError, ProfileError) as error:
        print(f"evenarc: {error}", file=sys.stderr)
        return CANNOT_READ
    print(f"{plain(options.page, LONGEST_PATH)}: made; open it in a browser and print it")
    return DONE


def _sheet(options: Namespace) -> int:
    from wizard.flow.profile_choices import nearest_profile
    from wizard.printed.page_file import write_page
    from wizard.printed.photograph_sheet import photograph_sheet_html
    from wizard.printed.sheet import Paper, sheet_document, sheet_html

    steering = Layout(options.layout) if options.layout else None
    guide = GuideKind(options.guide) if options.guide else None
    folders = _profile_folders(options)
    try:
        if options.photographs:
            html = photograph_sheet_html(options.paper)
        else:
            if options.profile:
                profile = load_profile(options.profile, folders)
            else:
                profile = nearest_profile(folders, steering, guide)
            document = sheet_document(profile, steering, guide, options.units)
            html = sheet_html(document, profile, Paper(options.paper), bool(options.profile))
        write_page(options.page, html)
    except (ProfileError, RecordError) as error:
        print(f"evenarc: {error}", file=sys.stderr)
        return CANNOT_READ
    print(
        f"{plain(options.page, LONGEST_PATH)}: made, one page on {options.paper} paper; "
        "open it in a browser and print it"
    )
    return DONE


def _profile_loader(options: Namespace) -> Callable[[str], Profile]:
    """Function that loads a profile by its name from the folders of the command line."""
    return lambda name: load_profile(name, _profile_folders(options))


def _moved_profile_folders(
    folders: Sequence[Path], files: Path, new_files: Path
) -> tuple[Path, ...]:
    """Folders of profiles after a change of the files folder, which holds the shop's own."""
    moved = dict(zip(profile_folders(files), profile_folders(new_files), strict=True))
    return tuple(moved.get(folder, folder) for folder in folders)


def _profile_folders(options: Namespace, files: Path | None = None) -> tuple[Path, ...]:
    """Folders of profiles: those of the command line first, then the shop's and the program's."""
    return (*options.profiles, *profile_folders(files or files_folder(options.files)))


if __name__ == "__main__":
    sys.exit(main())
