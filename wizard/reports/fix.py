"""`evenarc fix`: plans that cure a vehicle, in words or as JSON."""

import json
import sys
from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from time import monotonic
from typing import TextIO

from core.as_json.fix import search_as_json
from core.documents.entries import EntryError
from core.fix.search import SearchResult, search
from core.profiles.adjuster import adjusters_of
from core.profiles.parts_shelf import load_shelf, with_shelf
from core.profiles.profile import ProfileError, load_profile
from core.text.plain_text import plain
from wizard.flow.filed_records import LONGEST_PATH, Unreadable, read_and_judge
from wizard.phrases.search_result import progress_words
from wizard.reports.ending import Ending

PATIENCE = 1.0
"""s; a search that takes longer says how far it is."""


def fix(path: str, folders: Sequence[Path], shelf: Path, as_json: bool) -> Ending:
    """Print the plans for one record and say how that ended."""
    try:
        document, verdict = read_and_judge(path, partial(load_profile, folders=folders))
        listed = load_profile(verdict.session.profile, folders)
        corrections = with_shelf(listed, load_shelf(shelf, folders)).corrections
        found = search(verdict, corrections, progress_on(sys.stderr))
        adjusters = adjusters_of(document, listed.adjusters)
    except (Unreadable, ProfileError) as error:
        print(f"evenarc: {error}", file=sys.stderr)
        return Ending.UNREADABLE
    except EntryError as error:
        print(f"evenarc: {plain(path, LONGEST_PATH)}: {error}", file=sys.stderr)
        return Ending.UNREADABLE
    if as_json:
        print(json.dumps(search_as_json(verdict, found), allow_nan=False))
    else:
        from wizard.reports.fix_in_words import print_fix

        print_fix(document, verdict, found, adjusters)
    return ending_of(found)


def progress_on(stream: TextIO) -> Callable[[float], None] | None:
    """Says on a terminal how far a search is that takes longer; None where there is none."""
    if not stream.isatty():
        return None
    begun = monotonic()

    def say(share: float) -> None:
        if monotonic() - begun > PATIENCE:
            end = "\r\x1b[K" if share == 1 else ""
            print(f"\r{progress_words(share)}{end}", end="", file=stream, flush=True)

    return say


def ending_of(found: SearchResult) -> Ending:
    """Good with at least one plan that steers true."""
    return Ending.GOOD if any(plan.steers_true for plan in found.plans) else Ending.NOT_GOOD
