"""Putting a page on the disk, without ever taking the place of another file."""

from itertools import count
from pathlib import Path

from core.documents import atomic_write
from core.documents.document import Document
from core.documents.record import as_record_errors
from core.text.quantity import LengthUnit
from core.verdict.verdict import Verdict
from wizard.printed.owners_page import page_html

THERE = "is there already and stays as it is; choose another name"


def write_owners_page(path: Path, document: Document, verdict: Verdict, unit: LengthUnit) -> None:
    """Make the page of a record. Raises RecordError where that cannot be done."""
    content = page_html(document, verdict, unit).encode("utf-8", "replace")
    with as_record_errors(path, "cannot be made", exists=THERE):
        atomic_write.create_file(path, content)


def write_beside(record: Path, document: Document, verdict: Verdict, unit: LengthUnit) -> Path:
    """Write the page of a record beside it and return the page's file. Raises RecordError."""
    path = free_beside(record)
    write_owners_page(path, document, verdict, unit)
    return path


def free_beside(record: Path) -> Path:
    """A name for the page beside its record that no file has yet: "ID.html", "ID-2.html"."""
    names = (f"{record.stem}{'' if number == 1 else f'-{number}'}.html" for number in count(1))
    return next(path for path in map(record.with_name, names) if not path.exists())
