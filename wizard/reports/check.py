"""`evenarc check`: what one or more records say, in words or as JSON."""

import json
import sys
from collections.abc import Sequence
from pathlib import Path

from core.answer import answer
from core.verdict import STEERS_TRUE
from wizard.exits import ALL_TRUE, AT_LEAST_ONE_NOT, CANNOT_READ
from wizard.reports.records import Unreadable, judged


def check(paths: Sequence[str], folders: Sequence[Path], as_json: bool) -> int:
    """Print what each record says and return the exit code.

    A record that cannot be read is named on standard error; the others are still judged.
    """
    code = ALL_TRUE
    for path in paths:
        try:
            document, verdict = judged(path, folders)
        except Unreadable as error:
            print(f"evenarc: {error}", file=sys.stderr)
            code = CANNOT_READ
            continue
        if as_json:
            print(json.dumps(answer(verdict, path), allow_nan=False))
        else:
            from wizard.reports.verdict_in_words import print_verdict

            print_verdict(document, verdict, path)
        if verdict.overall != STEERS_TRUE:
            code = max(code, AT_LEAST_ONE_NOT)
    return code
