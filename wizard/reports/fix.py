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
from core.fix.ranking import By
from core.fix.search import search
from core.profiles.adjuster import adjusters_of
from core.profiles.conversions import fitting
from core.profiles.parts_shelf import load_shelf, with_shelf
from core.profiles.profile import ProfileError, load_profile
from core.text.plain_text import plain
from wizard.flow.filed_records import LONGEST_PATH, Unreadable, read_and_judge
from wizard.phrases.search_result import progress_words
from wizard.reports.ending import Ending

PATIENCE = 1.0
"""s; a search that takes longer prints its progress."""


def fix_record(
    path: str, profile_folders: Sequence[Path], shelf: Path, as_json: bool, by: By = "parts"
) -> Ending:
    """Print the plans for one record.

    Parameters
    ----------
    path : str
        File of the record, as typed.
    profile_folders : sequence of Path
        Folders of profiles, the shop's own first.
    shelf : Path
        File of the shop's own corrections, which need not exist.
    as_json : bool
        Print one JSON object.
    by : "parts", "price" or "hours"
        What decides which plans come first.
    """
    try:
        document, verdict = read_and_judge(path, partial(load_profile, folders=profile_folders))
        profile = load_profile(verdict.session.profile, profile_folders)
        offered = with_shelf(profile, load_shelf(shelf, profile_folders)).changes
        corrections = fitting(offered, document)
        result = search(verdict, corrections, progress_on(sys.stderr), by)
        adjusters = adjusters_of(document, profile.adjusters)
    except (Unreadable, ProfileError) as error:
        print(f"evenarc: {error}", file=sys.stderr)
        return Ending.UNREADABLE
    except EntryError as error:
        print(f"evenarc: {plain(path, LONGEST_PATH)}: {error}", file=sys.stderr)
        return Ending.UNREADABLE
    if as_json:
        print(json.dumps(search_as_json(verdict, result), allow_nan=False))
    else:
        from wizard.reports.fix_in_words import print_fix  # loads Rich

        print_fix(document, verdict, result, adjusters, profile.clearance, by)
    return Ending.GOOD if any(plan.steers_true for plan in result.plans) else Ending.NOT_GOOD


def progress_on(stream: TextIO) -> Callable[[float], None] | None:
    """Function that prints the progress of a long search; None if the stream is no terminal."""
    if not stream.isatty():
        return None
    begun = monotonic()

    def print_progress(share: float) -> None:
        if monotonic() - begun > PATIENCE:
            clear_line = "\r\x1b[K" if share == 1 else ""
            print(f"\r{progress_words(share)}{clear_line}", end="", file=stream, flush=True)

    return print_progress
