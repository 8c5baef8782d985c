"""Slips: usual mistakes that explain why a set of readings does not close.

One slip at a time is undone, and the pivots are adjusted afresh. A slip explains the set if the
readings close without it.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import combinations
from math import copysign, sqrt

from core.adjustment.least_squares import Adjustment, NoSolution, adjust
from core.adjustment.observation import NOTHING_REDUNDANT, Observations, predict
from core.adjustment.prior import Prior
from core.kinematics.pivots import NEAR_BALL
from core.readings.photograph import Photograph
from core.readings.reading import CRITICAL, Instruments, Kind, Reading, standard_uncertainty
from core.readings.survey import BRACES, COORDINATES, LINKS
from core.text.quantity import INCH


class SlipKind(StrEnum):
    """A usual mistake. The mistake that needs least comes first."""

    EXCHANGED = "exchanged"
    SIGN = "sign"
    UNIT = "unit"
    WHOLE = "whole"
    EDGE = "edge"
    SET_ASIDE = "set aside"


@dataclass(frozen=True)
class Slip:
    """A slip that explains why a set of readings does not close.

    Attributes
    ----------
    slip : SlipKind
    readings : tuple of str
        Names of the readings that it changed.
    now : tuple of float
        Their values without the slip, mm or rad. A reading that is set aside has the value that
        the others give it. () for a mark that is set aside.
    readings_after : tuple of Reading
        All readings, without the slip.
    is_likely : bool
        True if it explains the set about as well as the best slip. All such slips are named
        together.
    photographs_after : tuple of Photograph
        All photographs, without the slip.
    """

    slip: SlipKind
    readings: tuple[str, ...]
    now: tuple[float, ...]
    readings_after: tuple[Reading, ...]
    is_likely: bool
    photographs_after: tuple[Photograph, ...] = ()


NEIGHBOURS = (
    ("track_bar.frame", "drag_link.frame"),
    ("track_bar.axle", "drag_link.axle"),
    *((f"{link}.frame", f"{link}.axle") for link in LINKS),
    ("drag_link.axle", NEAR_BALL),
)
"""Pivots that are taken for each other."""

PAIRS: tuple[tuple[str, ...], ...] = (
    *(tuple(f"{pivot}.{kind}" for pivot in pair) for pair in NEIGHBOURS for kind in COORDINATES),
    *(tuple(f"{link}.{kind}" for link in LINKS) for kind in ("length", "slope")),
    *combinations(BRACES, 2),
)
"""Readings that are exchanged."""

SIGNED: tuple[Kind, ...] = ("offset", "station", "slope")
"""Kinds of readings whose sign is turned."""

WHOLE_INCHES = tuple(count * INCH for count in (1, 2, 3, 4, 5, 6, 12))
WHOLE_MILLIMETRES = (10.0, 100.0)
"""Distances by which a tape is misread, mm."""

EDGE = tuple(count * INCH / 16 for count in range(4, 11))
"""Distances from a bolt's centre to its edge, 1/4 to 5/8 in, mm (common practice, no source)."""

CENTIMETRES_PER_INCH = 2.54

DENOMINATORS = (2, 4, 8, 16, 32, 64)
"""Denominators of the fractions on a tape."""

AS_LIKELY = 4.0
"""Difference of chi-square between explanations that are about as likely: 7 to 1 (exp(4 / 2))."""

ANY_VALUE = 10.0
"""Chi-square by which a reading set aside has to explain more than a slip of a known amount."""

SLACK = 1.2
"""Factor on the bound of a value that is worth a trial, because that bound is a linear estimate."""


@dataclass(frozen=True)
class Trial:
    """The adjustment with other readings in place of those that a slip may have changed.

    Attributes
    ----------
    slip : SlipKind
    changed : tuple of str
        Names of the readings or marks.
    now : tuple of float
        As in `Slip`.
    readings_after : tuple of Reading
    adjustment : Adjustment
    photographs_after : tuple of Photograph
    """

    slip: SlipKind
    changed: tuple[str, ...]
    now: tuple[float, ...]
    readings_after: tuple[Reading, ...]
    adjustment: Adjustment
    photographs_after: tuple[Photograph, ...] = ()


def slips_of(
    readings: Sequence[Reading],
    instruments: Instruments,
    pivots: tuple[str, ...],
    priors: Sequence[Prior] = (),
) -> tuple[Slip, ...]:
    """Slips that explain why a set does not close, the best first; () where it closes.

    The likely slips come first: those that explain the set about as well as any. Among them the
    slip that needs least comes first. Slips of one kind come in the order of their chi-square.

    Parameters
    ----------
    readings, instruments, pivots, priors
        As for `core.adjustment.least_squares.adjust`.

    Raises
    ------
    core.adjustment.least_squares.MissingReading
        A pivot has no place.
    core.adjustment.least_squares.NoSolution
        The readings do not settle on one set of pivots.
    """

    def readjust(after: Sequence[Reading]) -> Adjustment:
        return adjust(after, instruments, pivots, priors)

    adjustment = readjust(readings)
    if adjustment.closes:
        return ()
    return in_order(trials_of_readings(readings, instruments, adjustment, readjust))


def trials_of_readings(
    readings: Sequence[Reading],
    instruments: Instruments,
    adjustment: Adjustment,
    readjust: Callable[[Sequence[Reading]], Adjustment],
) -> Iterator[Trial]:
    """Trials of every slip of a reading that other readings check.

    Parameters
    ----------
    readings : sequence of Reading
    instruments : Instruments
    adjustment : Adjustment
        Adjustment of these readings.
    readjust : callable
        Adjustment of other readings of the vehicle.
    """

    def trials(slip: SlipKind, *changed: Reading) -> Iterator[Trial]:
        by_name = {reading.name: reading for reading in changed}
        after = tuple(by_name.get(reading.name, reading) for reading in readings)
        try:
            others = readjust(after)
        except NoSolution:
            return
        now = tuple(_value_now(reading, others) for reading in changed)
        yield Trial(slip, tuple(by_name), now, after, others)

    checked = [
        item.reading for item in adjustment.items if item.redundancy_number > NOTHING_REDUNDANT
    ]
    for exchanged in _exchanges(checked):
        yield from trials(SlipKind.EXCHANGED, *exchanged)
    for reading in checked:
        if reading.kind in SIGNED:
            yield from trials(SlipKind.SIGN, _scaled(reading, -1.0))
        for aside in trials(SlipKind.SET_ASIDE, replace(reading, counts=False)):
            yield aside
            for slip, mended in _mendings(reading, aside.adjustment, instruments):
                yield from trials(slip, mended)


def in_order(trials: Iterable[Trial]) -> tuple[Slip, ...]:
    """The slips of trials that close, the best first."""

    def misfit(trial: Trial) -> float:
        free = ANY_VALUE if trial.slip == SlipKind.SET_ASIDE else 0.0
        return trial.adjustment.chi_square + free

    explanations = [trial for trial in trials if trial.adjustment.closes]
    likely = min(map(misfit, explanations), default=0.0) + AS_LIKELY
    kinds = list(SlipKind)
    return tuple(
        Slip(
            trial.slip,
            trial.changed,
            trial.now,
            trial.readings_after,
            misfit(trial) <= likely,
            trial.photographs_after,
        )
        for trial in sorted(
            explanations,
            key=lambda trial: (misfit(trial) > likely, kinds.index(trial.slip), misfit(trial)),
        )
    )


def _exchanges(readings: Sequence[Reading]) -> Iterator[tuple[Reading, Reading]]:
    """Pairs of readings, each with the repeats of the other."""
    taken = {reading.name: reading for reading in readings}
    for names in PAIRS:
        if all(name in taken for name in names):
            first, second = (taken[name] for name in names)
            yield replace(first, repeats=second.repeats), replace(second, repeats=first.repeats)


def _mendings(
    reading: Reading, others: Adjustment, instruments: Instruments
) -> Iterator[tuple[SlipKind, Reading]]:
    """Changes of a tape reading that agree with the other readings: one of each kind.

    Parameters
    ----------
    reading : Reading
    others : Adjustment
        Adjustment without that reading.
    instruments : Instruments
        The steps of their tape come before those of the other unit.
    """
    if reading.kind == "slope":
        return
    value, u = _predicted(reading, others)
    bound = SLACK * CRITICAL * sqrt(u**2 + standard_uncertainty(reading, instruments) ** 2)
    candidates = (
        (SlipKind.UNIT, _in_other_notation(reading)),
        *((SlipKind.WHOLE, _shifted(reading, steps)) for steps in _own_unit_first(instruments)),
        (SlipKind.EDGE, _shifted(reading, EDGE)),
    )
    explained = set()
    for slip, changed in candidates:
        nearest = min(changed, key=lambda reading: abs(reading.value - value))
        if slip not in explained and abs(nearest.value - value) < bound:
            explained.add(slip)
            yield slip, nearest


def _in_other_notation(reading: Reading) -> Iterator[Reading]:
    """A reading as if inches were centimetres, the other way, or its decimals were a fraction."""
    yield _scaled(reading, CENTIMETRES_PER_INCH)
    yield _scaled(reading, 1 / CENTIMETRES_PER_INCH)
    yield replace(reading, repeats=tuple(map(_as_fraction, reading.repeats)))


def _as_fraction(length: float) -> float:
    """Length whose fraction of an inch was typed as decimals, 17.58 for 17 5/8; mm.

    A length that has no such decimals stays as it is.
    """
    whole, _, decimals = f"{abs(length) / INCH:.4f}".rstrip("0").partition(".")
    for denominator in map(str, DENOMINATORS):
        numerator = decimals.removesuffix(denominator)
        if decimals.endswith(denominator) and numerator and int(numerator) < int(denominator):
            inches = int(whole) + int(numerator) / int(denominator)
            return copysign(inches * INCH, length)
    return length


def _own_unit_first(instruments: Instruments) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Whole steps of the tape's own unit, then of the other unit, mm."""
    is_metric = (2 * instruments.tape).is_integer()
    if is_metric:
        return WHOLE_MILLIMETRES, WHOLE_INCHES
    return WHOLE_INCHES, WHOLE_MILLIMETRES


def _shifted(reading: Reading, distances: Iterable[float]) -> Iterator[Reading]:
    """A reading longer or shorter by each of some distances."""
    for distance in distances:
        for shift in (-distance, distance):
            yield replace(reading, repeats=tuple(repeat + shift for repeat in reading.repeats))


def _value_now(reading: Reading, adjustment: Adjustment) -> float:
    """Value of a reading, or what the others give a reading that is set aside; mm or rad."""
    return reading.value if reading.counts else _predicted(reading, adjustment)[0]


def _predicted(reading: Reading, adjustment: Adjustment) -> tuple[float, float]:
    """Value that adjusted pivots give a reading, and its standard uncertainty; mm or rad."""
    value, gradient = predict(Observations.of([reading], adjustment.pivots), adjustment.points)
    return float(value[0]), sqrt(float(gradient[0] @ adjustment.covariance @ gradient[0]))


def _scaled(reading: Reading, factor: float) -> Reading:
    """A reading with each of its repeats times a factor."""
    return replace(reading, repeats=tuple(factor * repeat for repeat in reading.repeats))
