"""Closure of lengths, braces and slopes with the positions of the pivots.

The bound is that of the adjustment's suspects, 3.29 standard uncertainties of the difference
(Baarda, A testing procedure for use in geodetic networks, 1968; 0.1 %).
"""

from collections.abc import Iterator
from functools import partial
from math import hypot, sqrt

from core.adjustment.prior import ALIKE_WITHIN
from core.documents.document import value_at
from core.entry_checks.known import KnownAnswers, Separation
from core.entry_checks.outcome import Objection
from core.entry_checks.reading_names import PLACES, reading_name
from core.entry_checks.rule import ENDS, Rule, coordinates, format_tape, rule
from core.readings.reading import CRITICAL
from core.readings.survey import BRACES
from core.text.quantity import INCH, format_angle

BRACE_AHEAD = 24 * INCH
"""mm; a brace across the vehicle does not run further along it (common practice, no source)."""

LINK_AHEAD = CRITICAL * ALIKE_WITHIN / sqrt(3)
"""mm; the ends of a link across the vehicle are alike within the prior of the adjustment."""

FAR_OFF = 4 * INCH
"""mm; a length shorter than the front view by more than this is refused (common practice, no
source)."""


def length_not_closing(
    name: str, ends: tuple[str, str], known: KnownAnswers
) -> Iterator[Objection]:
    """Object to a length that disagrees with the positions of its two ends.

    Without stations the length lies between the front-view distance and that of ends that are not
    alike, less and plus the bound.
    """
    length, separation = known.value(name), known.separation(*ends)
    if length is None or separation is None or _runs_unseen(ends, separation, known):
        return
    distance = separation.distance
    bound = CRITICAL * hypot(known.u(name), separation.u_distance)
    short = distance - length
    has_stations = separation.ahead is not None
    most_ahead = BRACE_AHEAD if name in BRACES else LINK_AHEAD
    what = (
        f"This does not close: the {reading_name(name)} is {format_tape(length, known)}. "
        f"The entered pivots are {format_tape(distance, known)} apart"
    )
    if short > bound:
        kinds = "heights, offsets and stations" if has_stations else "heights and offsets"
        yield Objection(
            f"{what}. A tape cannot be shorter than that by more than {format_tape(bound, known)}. "
            f"Look again at this length, and at the {kinds} of both ends.",
            impossible=short > max(2 * bound, FAR_OFF),
        )
    elif has_stations and -short > bound:
        yield Objection(
            f"{what}. The two should agree within {format_tape(bound, known)}. "
            "Look again at this length, and at the heights, offsets and stations of both ends."
        )
    elif not has_stations and length > hypot(distance, most_ahead) + bound:
        ahead = sqrt(length**2 - distance**2)
        yield Objection(
            f"{what} in the front view. "
            f"One end would have to be {format_tape(ahead, known)} ahead of the other. "
            "Look again at this length and at both offsets, or take both stations."
        )


def _runs_unseen(ends: tuple[str, str], separation: Separation, known: KnownAnswers) -> bool:
    """True for a drag link that runs fore and aft, while one of its stations is missing."""
    is_unseen = known.runs_fore_aft("drag_link") and separation.ahead is None
    return is_unseen and ends == ENDS["drag_link"]


def slope_not_closing(link: str, known: KnownAnswers) -> Iterator[Objection]:
    """Object to a slope that disagrees with the positions of the link's two ends."""
    slope, separation = known.value(f"{link}.slope"), known.separation(*ENDS[link])
    is_bent = value_at(known.document, f"readings.{link}.bent") is True
    if slope is None or separation is None or is_bent:
        return
    if _runs_unseen(ENDS[link], separation, known):
        return
    bound = CRITICAL * hypot(known.u(f"{link}.slope"), separation.u_slope)
    if abs(slope - separation.slope) <= bound:
        return
    hint = "Look again at the angle finder's zero and at both heights."
    if abs(slope + separation.slope) <= bound:
        hint = "Is the sign right? Frame end higher counts plus."
    yield Objection(
        f"This does not close: the angle finder reads {format_angle(slope)} on the {PLACES[link]}. "
        f"Its two ends give {format_angle(separation.slope)}. "
        f"The two should agree within {format_angle(bound)}. {hint}"
    )


def _rules() -> Iterator[Rule]:
    lengths = {f"{link}.length": ends for link, ends in ENDS.items()} | BRACES
    for name, ends in lengths.items():
        yield rule(partial(length_not_closing, name, ends), name, *coordinates(*ends))
    for link, ends in ENDS.items():
        yield rule(partial(slope_not_closing, link), f"{link}.slope", *coordinates(*ends))


RULES: tuple[Rule, ...] = tuple(_rules())
