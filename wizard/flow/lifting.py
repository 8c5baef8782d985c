"""Lifts that are planned on vehicles, filed or typical, and what has to go with them."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from core.documents.document import Document
from core.fix.lift_plan import LiftPlan, lift_plan
from core.fix.moves import Move
from core.profiles.conversions import Change, Conversion, fitting
from core.profiles.parts_shelf import load_shelf, with_shelf
from core.profiles.profile import Profile, load_profile, profile_names
from core.profiles.typical import typical_document
from core.text.plain_text import plain
from core.text.quantity import LengthUnit, QuantityError, parse_length
from core.verdict.assess import assess
from core.verdict.direct_check import DecidedBy
from core.verdict.verdict import Verdict, decided_by
from wizard.flow.filed_records import LONGEST_PATH, Unreadable, read_and_judge

SMALLEST_LIFT, LARGEST_LIFT = parse_length("-2 in"), parse_length("8 in")
"""Lifts that are planned, mm; the curve goes no further."""


@dataclass(frozen=True)
class LiftRequest:
    """Request for lifts.

    Attributes
    ----------
    lift : float or None
        mm; None where none was given.
    like : sequence of str
        Records, or tags of vehicles, whose geometry is taken.
    typical : sequence of str
        Profiles whose typical geometry is taken; every profile's where `like` is empty too.
    change : str
        Name of a change, with its rise after "=" where it has several; "" for none.
    """

    lift: float | None
    like: Sequence[str]
    typical: Sequence[str]
    change: str


@dataclass(frozen=True, eq=False)
class Lifted:
    """One vehicle of the report."""

    document: Document
    profile: Profile
    plan: LiftPlan


def lifts_of(
    request: LiftRequest,
    profile_folders: Sequence[Path],
    files: Path,
    shelf: Path,
    progress: Callable[[float], None] | None = None,
) -> list[Lifted]:
    """Plan a lift on each vehicle of a request.

    Parameters
    ----------
    request : LiftRequest
    profile_folders : sequence of Path
        Folders of profiles, the shop's own first.
    files : Path
        Folder of the records that a tag is looked up in.
    shelf : Path
        File of the shop's own changes, which need not exist.
    progress : callable, optional
        Called with the share of the combinations of one vehicle that is computed, 0 to 1.

    Raises
    ------
    Unreadable, core.profiles.profile.ProfileError, core.documents.entries.EntryError
    """
    vehicles = [*_vehicles(request, profile_folders, files)]
    shelf_changes = load_shelf(shelf, profile_folders)
    with_profiles = [
        (document, verdict, with_shelf(profile, shelf_changes))
        for document, verdict, profile in vehicles
    ]
    offered = [change for _, _, profile in with_profiles for change in profile.changes]
    asked = asked_move(request.change, offered) if request.change else None
    return [
        Lifted(
            document,
            profile,
            lift_plan(verdict, fitting(profile.changes, document), request.lift, asked, progress),
        )
        for document, verdict, profile in with_profiles
    ]


def parsed_lift(text: str, unit: LengthUnit = "in") -> float | None:
    """Lift in mm; None where none was typed. Raises core.text.quantity.QuantityError."""
    if not text.strip():
        return None
    lift = parse_length(text, unit)
    if not SMALLEST_LIFT <= lift <= LARGEST_LIFT:
        raise QuantityError(f"“{plain(text)}” should lie between -2 in and 8 in")
    return lift


def asked_move(text: str, offered: Sequence[Change]) -> Move:
    """Move that --with names: "NAME", or "NAME = 2 in" of a correction. Raises Unreadable."""
    name, _, rise = (part.strip() for part in text.partition("="))
    for change in offered:
        if change.name.casefold() != name.casefold():
            continue
        if isinstance(change, Conversion):
            return Move(change)
        if not rise and len(change.rises) == 1:
            return Move(change, change.rises[0])
        try:
            return Move(change, parse_length(rise))
        except QuantityError:
            wanted = f'--with "{plain(change.name)} = 2 in"'
            raise Unreadable(f"--with: this correction needs its rise: {wanted}") from None
    names = ", ".join(
        dict.fromkeys(f"“{plain(each.name)}”" for each in offered if isinstance(each, Conversion))
    )
    raise Unreadable(f"--with: no change is named “{plain(name)}”; conversions are {names}")


def _vehicles(
    request: LiftRequest, folders: Sequence[Path], files: Path
) -> Iterator[tuple[Document, Verdict, Profile]]:
    """The vehicles of a request: filed ones first, then typical ones."""
    load = partial(load_profile, folders=folders)
    for like in request.like:
        yield _filed(record_of(like, files), load)
    names = request.typical or (() if request.like else profile_names(folders))
    for name in names:
        profile = load(name)
        document = typical_document(profile.as_written)
        if document is not None:
            yield document, assess(document, lambda _: profile), profile  # noqa: B023
        elif request.typical:
            raise Unreadable(f"profile “{plain(name)}” has no [typical] geometry")


def _filed(path: str, load: Callable[[str], Profile]) -> tuple[Document, Verdict, Profile]:
    document, verdict = read_and_judge(path, load)
    if verdict.held_back_by:
        raise Unreadable(
            f"{plain(path, LONGEST_PATH)}: is held back, so that no lift is planned on it; "
            "`evenarc check` says why"
        )
    if decided_by(verdict) == DecidedBy.DIRECT:
        raise Unreadable(
            f"{plain(path, LONGEST_PATH)}: its measured steer contradicts its pivots, so that no "
            "lift is planned on them; `evenarc check` says where to look"
        )
    return document, verdict, load(verdict.session.profile)


def record_of(like: str, files: Path) -> str:
    """File of a record: the path itself, or the newest record of the vehicle with this tag.

    Raises
    ------
    Unreadable
        There is neither a file nor a filed vehicle of this name.
    """
    is_tag = like not in ("", ".", "..") and not any(mark in like for mark in "/\\\0")
    if is_tag and not Path(like).is_file():
        # The name of a record begins with its tag and the time at which it was opened.
        records = sorted((files / like).glob("[!.]*.toml"))
        if not records:
            raise Unreadable(f"{plain(like)}: no vehicle is filed under this tag, and no such file")
        return str(records[-1])
    return like
