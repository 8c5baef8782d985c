"""Files of pages to print. A page never replaces another file."""

from collections.abc import Mapping
from itertools import count
from pathlib import Path

from core.documents import atomic_write
from core.documents.document import Document
from core.documents.record import as_record_errors
from core.fix.plan import Plan
from core.profiles.adjuster import Adjuster
from core.profiles.shop import load_shop
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.printed.owners_page import page_html
from wizard.printed.paper import Paper, usual_paper
from wizard.printed.sources import ShopFiles, beside
from wizard.printed.work_order import order_html
from wizard.views.work_order import work_order_of

ALREADY_EXISTS = "exists already and stays as it is; choose another name"


def write_owners_page(
    path: Path,
    record: Path,
    document: Document,
    verdict: Verdict,
    unit: LengthUnit,
    files: ShopFiles,
    paper: Paper | None = None,
) -> None:
    """Write the owner's page of a record.

    Parameters
    ----------
    path : Path
        The file to make.
    record : Path
        File of the record.
    document : mapping
        The record.
    verdict : Verdict
        The verdict on the record.
    unit : str
        Unit of length on the page, "in" or "mm".
    files : ShopFiles
    paper : "letter", "a4" or None
        None for the usual paper of the unit.

    Raises
    ------
    core.documents.record.RecordError
        The file exists already or cannot be written.
    core.profiles.profile.ProfileError
        A file of the shop is faulty.
    """
    found = beside(record, document, verdict, files)
    write_page(path, page_html(document, verdict, unit, found, paper))


def write_page(path: Path, html: str) -> None:
    """Write a page. Raises core.documents.record.RecordError as `write_owners_page` does."""
    with as_record_errors(path, "cannot be made", if_exists=ALREADY_EXISTS):
        atomic_write.create_file(path, html.encode("utf-8", "replace"))


def write_page_beside(
    record: Path, document: Document, verdict: Verdict, unit: LengthUnit, files: ShopFiles
) -> Path:
    """Write the owner's page beside its record, and return the page's file.

    Raises RecordError and ProfileError.
    """
    path = unused_page_path(record)
    write_owners_page(path, record, document, verdict, unit, files)
    return path


def write_order_beside(
    record: Path,
    document: Document,
    verdict: Verdict,
    plan: Plan,
    adjusters: Mapping[str, Adjuster],
    clearance: float,
    unit: LengthUnit,
    files: ShopFiles,
) -> Path:
    """Write the work order of a plan beside its record, and return the page's file.

    The clearance is the distance of both links that the profile asks for, mm. Raises RecordError
    and ProfileError.
    """
    order = work_order_of(document, verdict, plan, adjusters, clearance, unit)
    shop = load_shop(files.shop)
    path = unused_page_path(record, "-order")
    write_page(path, order_html(document, verdict, plan, order, unit, shop, usual_paper(unit)))
    return path


def unused_page_path(record: Path, kind: str = "") -> Path:
    """Path beside a record that no file has yet: "ID.html", "ID-2.html"."""
    names = (
        f"{record.stem}{kind}{'' if number == 1 else f'-{number}'}.html" for number in count(1)
    )
    return next(path for path in map(record.with_name, names) if not path.exists())
