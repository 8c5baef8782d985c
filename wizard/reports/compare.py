"""`evenarc compare`: the changes from one record to another, in words or as JSON."""

import json
import sys
from collections.abc import Callable

from core.as_json.comparison import comparison_as_json
from core.documents.entries import EntryError
from core.documents.signature import filed_state
from core.fix.comparison import FixOutcome
from core.fix.plan_record import filed_plan
from core.profiles.profile import Profile
from core.text.plain_text import plain
from wizard.flow.filed_records import LONGEST_PATH, Unreadable, read_and_judge
from wizard.phrases.session_names import wrong_order_words
from wizard.reports.ending import Ending
from wizard.views.two_sessions import compare_judged


def compare_records(
    before: str, after: str, profile_of: Callable[[str], Profile], as_json: bool
) -> Ending:
    """Print the changes from one record to another.

    Parameters
    ----------
    before, after : str
        Files of the records, as typed.
    profile_of : callable
        Loads a profile by its name.
    as_json : bool
        Print one JSON object.
    """
    try:
        earlier, before_verdict = read_and_judge(before, profile_of)
        later, after_verdict = read_and_judge(after, profile_of)
        filed_plan(earlier)  # a plan that cannot be read is refused here
    except Unreadable as error:
        print(f"evenarc: {error}", file=sys.stderr)
        return Ending.UNREADABLE
    except EntryError as error:
        print(f"evenarc: {plain(before, LONGEST_PATH)}: {error}", file=sys.stderr)
        return Ending.UNREADABLE
    both = compare_judged(earlier, later, before_verdict, after_verdict)
    if as_json:
        if wrong_order := wrong_order_words(earlier, later):
            print(f"evenarc: {wrong_order}", file=sys.stderr)
        result = comparison_as_json(both.before, both.after, both.comparison, both.moves)
        result["before"]["changed"] = filed_state(earlier).is_changed
        result["after"]["changed"] = filed_state(later).is_changed
        print(json.dumps(result, allow_nan=False))
    else:
        from wizard.reports.compare_in_words import print_comparison  # loads Rich

        print_comparison(both)
    return Ending.GOOD if both.comparison.outcome == FixOutcome.SHOWN else Ending.NOT_GOOD
