"""Readings that a re-measure carries over from the session before, on the short way.

What was altered is measured again, and two pivots that were not, as control points. The rest is
carried over and named in `session.carried`. Ride height moves everything: nothing is carried then.
"""

from collections.abc import Iterator, Sequence
from itertools import combinations
from math import hypot
from typing import Any

from core.documents.document import Document, value_at, with_value, without
from core.entry_checks.known import KnownAnswers
from core.entry_checks.re_measure import ALTERED, COVERAGE, MOVES_THE_AXLE, stays
from core.entry_checks.rule import ROUNDING
from core.kinematics.pivots import NEAR_BALL, PIVOTS, RIDE_HEIGHT
from core.profiles.profile import Profile
from core.readings.reading import Kind
from core.readings.survey import COORDINATES, SURVEY, ends_of
from core.text.quantity import INCH

CARRIED = "session.carried"
"""Path of the names of the readings that were carried over."""

LENGTHS = "lengths"
"""Altered part: a bar was re-set in length or replaced."""


def control_points(earlier: Document, altered: Sequence[str]) -> tuple[str, ...]:
    """Two pivots that nobody moved, whose readings check both sessions best.

    Two frame ends, or two axle ends, keep their places to each other. The pair with most readings
    that stay comes first, axle ends before frame ends.
    """
    unmoved = [
        pivot
        for pivot in (*PIVOTS, NEAR_BALL)
        if pivot not in altered and value_at(earlier, f"readings.{pivot}.height") is not None
    ]
    pairs = [
        pair
        for pair in combinations(unmoved, 2)
        if pair[0].endswith(".frame") == pair[1].endswith(".frame")
    ]

    def staying(pair: tuple[str, str]) -> tuple[int, bool]:
        count = sum(stays(pivot, kind, altered) for pivot in pair for kind in COORDINATES)
        return count, not pair[0].endswith(".frame")

    return max(pairs, key=staying, default=tuple(unmoved[:2]))


def carried_over(document: Document, earlier: Document) -> Document:
    """The re-measure with the readings that its answer on what was altered leaves as they were."""
    for name in value_at(document, CARRIED, ()):
        document = without(document, f"readings.{name}")
    document = without(document, CARRIED)
    altered = value_at(document, ALTERED, ())
    if RIDE_HEIGHT in altered:
        return document
    carried = []
    for name in _that_stay(earlier, altered):
        value = value_at(earlier, f"readings.{name}")
        if value is not None and value_at(document, f"readings.{name}") is None:
            document = with_value(document, f"readings.{name}", value)
            carried.append(name)
    return with_value(document, CARRIED, carried) if carried else document


def _that_stay(earlier: Document, altered: Sequence[str]) -> Iterator[str]:
    """Names of the readings that are as they were and are not taken as a control."""
    controls = control_points(earlier, altered)
    has_datum = any(stays(pivot, "offset", altered) for pivot in controls)
    for name, kind in SURVEY.items():
        ends = ends_of(name)
        if kind not in COORDINATES:
            is_same = _is_same_between(kind, ends, altered)
        else:
            is_free = kind == "station" or ends[0] not in controls
            is_same = is_free and stays(ends[0], kind, altered) and (kind != "offset" or has_datum)
        if is_same:
            yield name
    yield "wheels.hub_height"
    if has_datum and not MOVES_THE_AXLE & set(altered):
        yield from ("wheels.left_offset", "wheels.right_offset")


def _is_same_between(kind: Kind, ends: Sequence[str], altered: Sequence[str]) -> bool:
    """True if a length, a slope or a brace between two pivots is as it was."""
    if LENGTHS in altered or set(ends) & set(altered):
        return False
    return kind == "length" or all(
        stays(end, coordinate, altered) for end in ends for coordinate in COORDINATES
    )


def checked_against(document: Document, path: str) -> Document:
    """The answers that an answer is checked against.

    An offset is not checked against carried ones: they follow the datum line only after it.
    """
    if path.endswith(".offset"):
        for name in value_at(document, CARRIED, ()):
            if name.endswith("offset"):
                document = without(document, f"readings.{name}")
    return document


def with_offsets_shifted(
    document: Document, earlier: Document, profile: Profile | None
) -> Document:
    """The re-measure with its carried offsets taken from the datum line of this session.

    Where every unaltered pivot that was measured again has moved across, the line lies elsewhere,
    by the mean of what they show.
    """
    carried = value_at(document, CARRIED, ())
    offsets = [name for name in carried if name.endswith("offset")]
    shift = _shift_of_datum(document, earlier, profile)
    for name in offsets:
        texts = value_at(earlier, f"readings.{name}")
        document = with_value(document, f"readings.{name}", _shifted(texts, name, earlier, shift))
    return document


def _shift_of_datum(document: Document, earlier: Document, profile: Profile | None) -> float:
    """Change of the offsets that nobody altered, mm; 0 where one of them is as before."""
    now, then = KnownAnswers(document, profile), KnownAnswers(earlier, profile)
    altered, carried = value_at(document, ALTERED, ()), value_at(document, CARRIED, ())
    changes = []
    for pivot in (*PIVOTS, NEAR_BALL):
        name = f"{pivot}.offset"
        value, before = now.value(name), then.value(name)
        if name in carried or value is None or before is None:
            continue
        if not stays(pivot, "offset", altered):
            continue
        if abs(value - before) <= COVERAGE * hypot(now.u(name), then.u(name)) + ROUNDING:
            return 0.0
        changes.append(value - before)
    return sum(changes) / len(changes) if changes else 0.0


def _shifted(texts: Any, name: str, earlier: Document, shift: float) -> Any:
    """Texts of an offset, moved by a shift in mm."""
    value = KnownAnswers(earlier, None).value(name)
    if not shift or value is None:
        return texts
    return [f"{(value + shift) / INCH:.3f} in"] * len(texts)
