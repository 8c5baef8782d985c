"""`evenarc check`: what one or more records say, in words or as JSON."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from core.as_json.verdict import verdict_as_json
from core.verdict.verdict import Overall
from wizard.exit_codes import ALL_TRUE, AT_LEAST_ONE_NOT, CANNOT_READ
from wizard.flow.filed_records import Unreadable, read_and_judge

if TYPE_CHECKING:
    from core.profiles.profile import Profile


def check(paths: Sequence[str], profile_of: Callable[[str], Profile], as_json: bool) -> int:
    """Print what each record says and return the exit code.

    A record that cannot be read is named on standard error; the others are still judged.
    """
    code = ALL_TRUE
    for path in paths:
        try:
            document, verdict = read_and_judge(path, profile_of)
        except Unreadable as error:
            print(f"evenarc: {error}", file=sys.stderr)
            code = CANNOT_READ
            continue
        if as_json:
            print(json.dumps(verdict_as_json(verdict, path), allow_nan=False))
        else:
            from wizard.reports.verdict_in_words import print_verdict

            print_verdict(document, verdict, path)
        if verdict.overall != Overall.STEERS_TRUE:
            code = max(code, AT_LEAST_ONE_NOT)
    return code
