"""Sources of the owner's page beside its record: shop, plan with its cost, session before.

Each of them may be missing; the page then does without it.
"""

from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from core.documents.document import Document, value_at
from core.documents.entries import EntryError
from core.documents.record import RecordError, read_document
from core.fix.plan import Plan
from core.fix.plan_record import plan_of_document
from core.profiles.conversions import Change
from core.profiles.parts_shelf import load_shelf, with_shelf
from core.profiles.profile import Profile, ProfileError, load_profile
from core.profiles.shop import NO_SHOP, Shop, load_shop
from core.verdict.assess import assess
from core.verdict.verdict import Verdict


@dataclass(frozen=True)
class ShopFiles:
    """Files of a shop, none of which need exist.

    Attributes
    ----------
    profile_folders : sequence of Path
        The shop's own first.
    parts_shelf, shop : Path
    """

    profile_folders: Sequence[Path]
    parts_shelf: Path
    shop: Path

    def load_profile(self, name: str) -> Profile:
        """The profile of this name. Raises ProfileError."""
        return load_profile(name, self.profile_folders)


@dataclass(frozen=True, eq=False)
class Beside:
    """Sources beside the record of a page.

    Attributes
    ----------
    shop : Shop
    plan : Plan or None
        The plan of the session before where there is one, else of the record itself.
    before : Verdict or None
        On the session that the record follows.
    folder : Path or None
        The vehicle's folder with its pictures; None where it is not known.
    """

    shop: Shop = NO_SHOP
    plan: Plan | None = None
    before: Verdict | None = None
    folder: Path | None = None


def beside(record: Path, document: Document, verdict: Verdict, files: ShopFiles) -> Beside:
    """Sources beside a record.

    Raises
    ------
    ProfileError
        A file of the shop is faulty.
    """
    shop = load_shop(files.shop)
    shelf = load_shelf(files.parts_shelf, files.profile_folders)
    earlier = _earlier(record, document)
    before = None if earlier is None else _verdict_on(earlier, files.load_profile)
    if earlier is not None and before is not None:
        return Beside(shop, _plan_in(earlier, before, shelf, files), before, record.parent)
    return Beside(shop, _plan_in(document, verdict, shelf, files), None, record.parent)


def _earlier(record: Path, document: Document) -> Document | None:
    """The record that a session follows, from the folder of its vehicle."""
    follows = value_at(document, "session.follows", "")
    if not isinstance(follows, str) or not follows or Path(follows).name != follows:
        return None
    try:
        return read_document(record.with_name(f"{follows}.toml"))
    except (RecordError, ValueError):
        return None


def _verdict_on(document: Document, profile_of: Callable[[str], Profile]) -> Verdict | None:
    try:
        return assess(document, profile_of)
    except (EntryError, ProfileError):
        return None


def _plan_in(
    document: Document, verdict: Verdict, shelf: Sequence[Change], files: ShopFiles
) -> Plan | None:
    """The plan of a document with the parts of the shelf; None without one that can be read."""
    changes = tuple(shelf)
    with suppress(ProfileError):  # the record has what the plan needs
        changes = with_shelf(files.load_profile(verdict.session.profile), shelf).changes
    try:
        return plan_of_document(document, verdict, changes)
    except EntryError:  # the page says that the plan cannot be read
        return None
