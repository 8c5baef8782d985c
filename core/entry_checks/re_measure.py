"""Rule for a re-measure: a pivot that nobody altered reads as it did in the session before."""

from collections.abc import Iterator, Sequence
from math import hypot

from core.documents.document import value_at
from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection
from core.entry_checks.reading_names import PLACES, reading_name
from core.entry_checks.rule import ROUNDING, format_tape
from core.kinematics.pivots import NEAR_BALL, PIVOTS, RIDE_HEIGHT
from core.readings.survey import COORDINATES

ALTERED = "session.altered"
"""Path of the parts that were altered since the session before."""

COVERAGE = 3.0
"""Standard uncertainties of a difference beyond which two sessions disagree."""

MOVES_THE_AXLE = frozenset(("track_bar.frame", "track_bar.axle", "lengths", RIDE_HEIGHT))
"""Parts that move the axle to a side when they are altered."""

HINTS = {
    "height": "Look for a soft tyre, another load, or another floor",
    "offset": "Look whether the datum line lies where it lay",
    "station": "Look whether the line under the axle lies where it lay",
}


def differences_from_before(
    name: str, known: KnownAnswers, before: KnownAnswers
) -> Iterator[Objection]:
    """Objection to a reading of an unaltered pivot that differs from the session before.

    A difference that another unaltered pivot shows too is none of the pivot: the floor or the
    datum line lies elsewhere.

    Parameters
    ----------
    name : str
        Name of the reading, "track_bar.frame.height".
    known : KnownAnswers
        The answers of the re-measure, with this reading.
    before : KnownAnswers
        The answers of the session before.
    """
    altered = value_at(known.document, ALTERED)
    pivot, _, kind = name.rpartition(".")
    if not isinstance(altered, list) or not stays(pivot, kind, altered):
        return
    change = _change(name, known, before)
    if change is None:
        return
    bound = COVERAGE * hypot(known.u(name), before.u(name)) + ROUNDING
    others = (
        _change(f"{other}.{kind}", known, before)
        for other in (*PIVOTS, NEAR_BALL)
        if other != pivot and stays(other, kind, altered)
    )
    shared = [other for other in others if other is not None]
    if all(abs(change - other) > bound for other in (0.0, *shared)):
        now, then = (answers.value(name) or 0.0 for answers in (known, before))
        yield Objection(
            f"The {reading_name(name)} is {format_tape(now, known)}. In the session before it was "
            f"{format_tape(then, known)}, and nobody altered the {PLACES[pivot]}. The two should "
            f"agree within {format_tape(bound, known)}. {HINTS[kind]}."
        )


def stays(pivot: str, kind: str, altered: Sequence[str]) -> bool:
    """True if a reading of a pivot stays as it was, for all that was altered."""
    if pivot not in (*PIVOTS, NEAR_BALL) or kind not in COORDINATES or pivot in altered:
        return False
    if pivot.endswith(".frame"):
        return not (kind == "height" and RIDE_HEIGHT in altered)
    if RIDE_HEIGHT in altered:  # the axle turns as its arms move
        return False
    return not (kind == "offset" and MOVES_THE_AXLE & set(altered))


def _change(name: str, known: KnownAnswers, before: KnownAnswers) -> float | None:
    """Change of a reading since the session before, mm; None where one of them is missing."""
    now, then = known.value(name), before.value(name)
    return None if now is None or then is None else now - then
