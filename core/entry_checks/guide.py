"""Arms, springs and castor of the axle's guide, compared with each other.

The figures are common practice in the trade, without a published source.
"""

from collections.abc import Iterator
from functools import partial
from math import hypot, isfinite

import numpy as np

from core.documents.document import value_at
from core.documents.entries import EntryError
from core.entry_checks.known import KnownAnswers
from core.entry_checks.outcome import Objection
from core.entry_checks.reading_names import PLACES
from core.entry_checks.rule import Rule, format_tape, rule
from core.kinematics.guide import guide_of, guide_readings
from core.kinematics.pivots import GUIDE_PIVOTS, GuideKind
from core.readings.guide_survey import CastorReading, castor_readings, pitch_gain_of
from core.readings.reading import CRITICAL
from core.text.quantity import INCH, format_angle_per_length

CASTOR = "guide.castor"
"""Name of the castor at two heights."""

HUB = "wheels.hub_height"

ARMS = {
    "lower arm": ("guide.lower_frame", "guide.lower_axle"),
    "upper arm": ("guide.upper_frame", "guide.upper_axle"),
    "spring": ("guide.eye", "guide.seat"),
}
"""Frame end and axle end of each arm of a guide, and of a spring's front half."""

KIND_OF = {
    "lower arm": GuideKind.TWO_ARMS,
    "upper arm": GuideKind.TWO_ARMS,
    "spring": GuideKind.LEAF,
}

SHORTEST = 4 * INCH
"""mm; a shorter arm could not let an axle travel."""


def arms_run_ahead(known: KnownAnswers) -> Iterator[Objection]:
    """Object to radius arms whose frame pivot is ahead of the axle; usually they run back."""
    station = known.value("guide.frame.station")
    if has_guide(known, GuideKind.RADIUS_ARMS) and station is not None and station > 0:
        yield Objection(
            f"The arms' frame pivot is entered {format_tape(station, known)} ahead of the axle. "
            "Arms that are fixed to the axle usually run back to the frame. "
            "Behind the axle counts minus. Look at the sign, or at the kind of guide."
        )


def arms_run_apart(known: KnownAnswers) -> Iterator[Objection]:
    """Object to a lower and an upper arm that run to opposite sides of the axle."""
    runs = {arm: run_ahead(arm, known) for arm in ("lower arm", "upper arm")}
    lower, upper = runs.values()
    if has_guide(known, GuideKind.TWO_ARMS) and lower and upper and lower * upper < 0:
        words = [
            f"the {arm} runs {format_tape(abs(run), known)} {'ahead' if run > 0 else 'back'}"
            for arm, run in runs.items()
            if run
        ]
        yield Objection(
            f"From the axle {' and '.join(words)}. Usually both run to the same side. "
            "Ahead of the axle counts plus, behind it minus. Look at the signs of the stations."
        )


def run_ahead(arm: str, known: KnownAnswers) -> float | None:
    """Station of an arm's frame end less that of its axle end, mm."""
    frame, axle = (known.value(f"{end}.station") for end in ARMS[arm])
    return None if frame is None or axle is None else frame - axle


def arms_swapped(end: str, known: KnownAnswers) -> Iterator[Objection]:
    """Object to an upper arm that is lower than the lower arm, at their frame or axle ends."""
    lower, upper = (known.value(f"guide.{arm}_{end}.height") for arm in ("lower", "upper"))
    if not has_guide(known, GuideKind.TWO_ARMS) or lower is None or upper is None:
        return
    if upper < lower:
        yield Objection(
            f"The {PLACES[f'guide.upper_{end}']} ({format_tape(upper, known)}) is lower than the "
            f"{PLACES[f'guide.lower_{end}']} ({format_tape(lower, known)}). Were the two swapped?"
        )


def arm_too_short(arm: str, known: KnownAnswers) -> Iterator[Objection]:
    """Object to an arm, or a spring's half, whose two ends are nearly in one place."""
    ahead = run_ahead(arm, known)
    frame, axle = (known.value(f"{end}.height") for end in ARMS[arm])
    if not has_guide(known, KIND_OF[arm]) or ahead is None or frame is None or axle is None:
        return
    if (length := hypot(ahead, frame - axle)) < SHORTEST:
        first, second = (PLACES[end] for end in ARMS[arm])
        yield Objection(
            f"The {first} and the {second} cannot be {format_tape(length, known)} apart: no axle "
            "could travel on that. Was one of them typed twice?",
            impossible=True,
        )


def castor_against_arms(known: KnownAnswers) -> Iterator[Objection]:
    """Object to castor at two heights that disagrees with the pitch that measured arms give.

    The bound is that of the adjustment's suspects, 3.29 standard uncertainties of the difference.
    """
    rows, kind = castor_taken(known), measured_arms(known)
    if kind is None or known.instruments is None:
        return
    read = pitch_gain_of(rows, known.instruments)
    if read is None:
        return
    values = {name: known.value(name) or 0.0 for name in (*guide_readings(kind), HUB)}
    of_arms = gain_of_arms(kind, values, rows)
    moved = [
        gain_of_arms(kind, {**values, name: values[name] + known.u(name)}, rows) for name in values
    ]
    u_arms = hypot(*(gain - of_arms for gain in moved))
    bound = CRITICAL * hypot(read.u, u_arms)
    if isfinite(bound) and abs(read.value - of_arms) > bound:
        by_finder, by_arms, within = (
            format_angle_per_length(gain, known.units) for gain in (read.value, of_arms, bound)
        )
        yield Objection(
            f"Castor at two heights gives a pitch of {by_finder}, but the arms give {by_arms}. "
            f"The two should agree within {within}. "
            "Look at the heights and stations of the arms, and at both castor readings."
        )


def castor_taken(known: KnownAnswers) -> tuple[CastorReading, ...]:
    """Castor readings; () where a row cannot be read."""
    try:
        return castor_readings(known.document)
    except EntryError:
        return ()


def measured_arms(known: KnownAnswers) -> GuideKind | None:
    """Kind of arms that were measured wholly, with the hub height; None otherwise."""
    for kind in (GuideKind.RADIUS_ARMS, GuideKind.TWO_ARMS):
        names = (*guide_readings(kind), HUB)
        if has_guide(known, kind) and all(known.value(name) is not None for name in names):
            return kind
    return None


def gain_of_arms(
    kind: GuideKind, values: dict[str, float], rows: tuple[CastorReading, ...]
) -> float:
    """Pitch for heave of some arms, by the straight line over the heaves of the rows, rad/mm."""
    heaves = np.array([row.heave for row in rows])
    of_guide = {name: value for name, value in values.items() if name != HUB}
    pitch = np.asarray(guide_of(kind, dict(of_guide)).path(values[HUB], heaves).pitch)
    off = heaves - heaves.mean()
    return float(off @ pitch / (off @ off))


def has_guide(known: KnownAnswers, kind: GuideKind) -> bool:
    """True if the axle is known to have this guide."""
    return bool(value_at(known.document, "layout.guide") == kind)


def _rules() -> Iterator[Rule]:
    yield rule(arms_run_ahead, "guide.frame.station", "layout.guide")
    stations = [f"{end}.station" for arm in ("lower arm", "upper arm") for end in ARMS[arm]]
    yield rule(arms_run_apart, *stations, "layout.guide")
    for end in ("frame", "axle"):
        yield rule(
            partial(arms_swapped, end), f"guide.lower_{end}.height", f"guide.upper_{end}.height"
        )
    for arm, ends in ARMS.items():
        places = [f"{end}.{kind}" for end in ends for kind in ("height", "station")]
        yield rule(partial(arm_too_short, arm), *places)
    pivots = (*GUIDE_PIVOTS[GuideKind.RADIUS_ARMS], *GUIDE_PIVOTS[GuideKind.TWO_ARMS])
    readings = [f"{pivot}.{kind}" for pivot in pivots for kind in ("height", "station")]
    yield rule(castor_against_arms, CASTOR, HUB, *readings)


RULES: tuple[Rule, ...] = tuple(_rules())
