"""`evenarc check`: what one or more records say, in words or as JSON."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from core.as_json.verdict import verdict_as_json
from core.verdict.verdict import Overall
from wizard.flow.filed_records import Unreadable, read_and_judge
from wizard.reports.ending import Ending

if TYPE_CHECKING:
    from core.profiles.profile import Profile


def check(paths: Sequence[str], profile_of: Callable[[str], Profile], as_json: bool) -> Ending:
    """Print what each record says and say how that ended.

    A record that cannot be read is named on standard error; the others are still judged.
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
            print(json.dumps(verdict_as_json(verdict, path), allow_nan=False))
        else:
            from wizard.reports.verdict_in_words import print_verdict

            print_verdict(document, verdict, path)
        if verdict.overall != Overall.STEERS_TRUE:
            ending = Ending.NOT_GOOD if ending == Ending.GOOD else ending
    return ending
