"""`evenarc compare`: before beside after, in words or as JSON."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable
from typing import TYPE_CHECKING

from core.as_json.comparison import comparison_answer
from core.documents.entries import EntryError
from core.fix.comparison import SHOWN, altered, compare
from core.fix.plan_record import planned_in, reached
from core.text.plain_text import plain
from wizard.exit_codes import ALL_TRUE, AT_LEAST_ONE_NOT, CANNOT_READ
from wizard.flow.filed_records import LONGEST_PATH, Unreadable, judged

if TYPE_CHECKING:
    from core.profiles.profile import Profile


def compare_records(
    before: str, after: str, profile_of: Callable[[str], Profile], as_json: bool
) -> int:
    """Print what changed from one record to another and return the exit code."""
    try:
        earlier, before_verdict = judged(before, profile_of)
        later, after_verdict = judged(after, profile_of)
        planned = planned_in(earlier)
    except Unreadable as error:
        print(f"evenarc: {error}", file=sys.stderr)
        return CANNOT_READ
    except EntryError as error:
        print(f"evenarc: {plain(before, LONGEST_PATH)}: {error}", file=sys.stderr)
        return CANNOT_READ
    comparison = compare(before_verdict, after_verdict, altered(earlier, later))
    moves = () if planned is None else reached(planned, before_verdict, after_verdict)
    if as_json:
        found = comparison_answer(before_verdict, after_verdict, comparison, moves)
        print(json.dumps(found, allow_nan=False))
    else:
        from wizard.reports.compare_in_words import print_comparison

        print_comparison(earlier, later, before_verdict, after_verdict, comparison, moves)
    return ALL_TRUE if comparison.outcome == SHOWN else AT_LEAST_ONE_NOT
