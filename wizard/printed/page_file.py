"""Files of pages to print. A page never replaces another file."""

from itertools import count
from pathlib import Path

from core.documents import atomic_write
from core.documents.document import Document
from core.documents.record import as_record_errors
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.printed.owners_page import page_html

ALREADY_EXISTS = "exists already and stays as it is; choose another name"


def write_owners_page(path: Path, document: Document, verdict: Verdict, unit: LengthUnit) -> None:
    """Write the owner's page of a record.

    Parameters
    ----------
    path : Path
        The file to make.
    document : mapping
        The record.
    verdict : Verdict
        The verdict on the record.
    unit : str
        Unit of length on the page, "in" or "mm".

    Raises
    ------
    core.documents.record.RecordError
        The file exists already or cannot be written.
    """
    write_page(path, page_html(document, verdict, unit))


def write_page(path: Path, html: str) -> None:
    """Write a page. Raises core.documents.record.RecordError as `write_owners_page` does."""
    with as_record_errors(path, "cannot be made", if_exists=ALREADY_EXISTS):
        atomic_write.create_file(path, html.encode("utf-8", "replace"))


def write_page_beside(record: Path, document: Document, verdict: Verdict, unit: LengthUnit) -> Path:
    """Write the owner's page beside its record and return the page's file. Raises RecordError."""
    path = unused_page_path(record)
    write_owners_page(path, document, verdict, unit)
    return path


def unused_page_path(record: Path) -> Path:
    """Path beside a record that no file has yet: "ID.html", "ID-2.html"."""
    names = (f"{record.stem}{'' if number == 1 else f'-{number}'}.html" for number in count(1))
    return next(path for path in map(record.with_name, names) if not path.exists())
