"""`evenarc check`: the verdict on one or more records, in words or as JSON."""

import json
import sys
from collections.abc import Callable, Sequence

from core.as_json.verdict import verdict_as_json
from core.documents.signature import filed_state
from core.profiles.profile import Profile
from core.verdict.verdict import Overall
from wizard.flow.filed_records import Unreadable, read_and_judge
from wizard.reports.ending import Ending


def check_records(
    paths: Sequence[str], profile_of: Callable[[str], Profile], as_json: bool
) -> Ending:
    """Print the verdict on each record.

    A faulty record is named on standard error, and the other records are still judged.

    Parameters
    ----------
    paths : sequence of str
        Files of the records, as typed.
    profile_of : callable
        Loads a profile by its name.
    as_json : bool
        Print JSON, one object a line.
    """
    ending = Ending.GOOD
    for path in paths:
        try:
            document, verdict = read_and_judge(path, profile_of)
        except Unreadable as error:
            print(f"evenarc: {error}", file=sys.stderr)
            ending = Ending.UNREADABLE
            continue
        if as_json:
            changed = {"changed": filed_state(document).is_changed}
            print(json.dumps(verdict_as_json(verdict, path) | changed, allow_nan=False))
        else:
            from wizard.reports.verdict_in_words import print_verdict  # loads Rich

            print_verdict(document, verdict, path)
        if verdict.overall != Overall.STEERS_TRUE and ending == Ending.GOOD:
            ending = Ending.NOT_GOOD
    return ending
