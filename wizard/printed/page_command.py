"""`evenarc page`: one page to print, from a record."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from core.documents.entries import units_of
from core.documents.record import RecordError
from core.text.plain_text import plain
from wizard.exit_codes import ALL_TRUE, CANNOT_READ
from wizard.flow.filed_records import LONGEST_PATH, Unreadable, read_and_judge
from wizard.printed.page_file import write_owners_page

if TYPE_CHECKING:
    from core.profiles.profile import Profile


def page(record: str, into: Path, profile_of: Callable[[str], Profile]) -> int:
    """Make the page and say where it is; returns the exit code."""
    try:
        document, verdict = read_and_judge(record, profile_of)
        write_owners_page(into, document, verdict, units_of(document))
    except (Unreadable, RecordError) as error:
        print(f"evenarc: {error}", file=sys.stderr)
        return CANNOT_READ
    print(f"{plain(into, LONGEST_PATH)}: made; open it with a browser and print it")
    return ALL_TRUE
