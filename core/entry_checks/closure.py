"""Rules that compare lengths, braces and slopes with the places of the pivots.

The bound is that of the suspects in the adjustment: 3.29 standard uncertainties of the
difference (Baarda, A testing procedure for use in geodetic networks, 1968; 0.1 %).
"""

from collections.abc import Iterator
from functools import partial
from math import hypot, sqrt

from core.adjustment.outliers import CRITICAL
from core.documents.document import value_at
from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection
from core.entry_checks.reading_names import PLACES, reading_name
from core.entry_checks.rule import ENDS, Rule, coordinates, rule
from core.readings.survey import BRACES
from core.text.quantity import INCH, format_angle

FORE_AND_AFT = 24 * INCH
"""mm; a link across the vehicle runs less far along it (common practice, no source)."""

FAR_OFF = 4 * INCH
"""mm; a length that is shorter than the front view by more is a mistake, not uncertainty."""


def closes(name: str, ends: tuple[str, str], known: KnownAnswers) -> Iterator[Objection]:
    """Objections to a length that does not agree with the places of its two ends.

    Without stations the length only has to reach the front-view distance, less the uncertainty.
    """
    length, separation = known.value(name), known.separation(*ends)
    if length is None or separation is None:
        return
    doubt = CRITICAL * hypot(known.u(name), separation.u_distance)
    short = separation.distance - length
    distance, tolerance = known.tape(separation.distance), known.tape(doubt)
    head = (
        f"This does not close: the {reading_name(name)} is {known.tape(length)}, and the pivots "
        f"were entered {distance} apart"
    )
    if short > doubt:
        missing = (
            "heights and offsets" if separation.along is None else "heights, offsets and stations"
        )
        yield Objection(
            f"{head}. A tape cannot be shorter than that by more than {tolerance}. Look again at "
            f"this length, and at the {missing} of both ends.",
            impossible=short > max(2 * doubt, FAR_OFF),
        )
    elif separation.along is not None and -short > doubt:
        yield Objection(
            f"{head}. They should agree within {tolerance}. Look again at this length, and at the "
            "heights, offsets and stations of both ends."
        )
    elif separation.along is None and length > hypot(separation.distance, FORE_AND_AFT) + doubt:
        along = sqrt(length**2 - separation.distance**2)
        yield Objection(
            f"{head} in the front view. One end would have to be {known.tape(along)} ahead of the "
            "other. Look again at this length and at both offsets."
        )


def slope_agrees(link: str, known: KnownAnswers) -> Iterator[Objection]:
    """Objections to a slope that does not agree with the places of the two ends."""
    slope, separation = known.value(f"{link}.slope"), known.separation(*ENDS[link])
    bent = value_at(known.document, f"readings.{link}.bent") is True
    if slope is None or separation is None or bent:
        return
    doubt = CRITICAL * hypot(known.u(f"{link}.slope"), separation.u_slope)
    if abs(slope - separation.slope) <= doubt:
        return
    hint = "Look again at the angle finder's zero and at both heights."
    if abs(slope + separation.slope) <= doubt:
        hint = "Is the sign right? Frame end higher counts plus."
    yield Objection(
        f"This does not close: the angle finder says {format_angle(slope)} on the {PLACES[link]}. "
        f"Its two ends say {format_angle(separation.slope)}. The two should agree within "
        f"{format_angle(doubt)}. {hint}"
    )


def _rules() -> Iterator[Rule]:
    lengths = {f"{link}.length": ends for link, ends in ENDS.items()} | BRACES
    for name, ends in lengths.items():
        yield rule(partial(closes, name, ends), name, *coordinates(*ends))
    for link, ends in ENDS.items():
        yield rule(partial(slope_agrees, link), f"{link}.slope", *coordinates(*ends))


RULES: tuple[Rule, ...] = tuple(_rules())
