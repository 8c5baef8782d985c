"""Explanations of a set of readings that does not close: the readings as they may be without it."""

from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from core.adjustment.outliers import SuspectGroup
from core.adjustment.slips import Slip
from core.readings.photograph import Photograph, is_mark, without_mark
from core.readings.reading import Reading


class Evidence(NamedTuple):
    """Readings of a vehicle and marks in photographs of it, some of them set aside."""

    readings: tuple[Reading, ...]
    photographs: tuple[Photograph, ...] = ()


def leading_explanations(
    readings: Sequence[Reading],
    suspect_groups: Sequence[SuspectGroup],
    slips: Sequence[Slip],
    photographs: tuple[Photograph, ...] = (),
) -> tuple[Evidence, ...]:
    """Sets of readings without the mistake, one set for each leading explanation.

    Each reading or mark of the first suspect group is set aside in turn, and each slip is undone.

    Parameters
    ----------
    readings : sequence of Reading
        The set that does not close.
    suspect_groups : sequence of SuspectGroup
        Its suspects, the worst first.
    slips : sequence of Slip
        The slips that explain it, as from `core.adjustment.slips.slips_of`.
    photographs : tuple of Photograph

    Returns
    -------
    tuple
        Sets that differ from each other; () where nothing explains the set.
    """
    suspects = suspect_groups[0].readings if suspect_groups else ()
    without_a_suspect = (_without(tuple(readings), photographs, name) for name in suspects)
    without_a_slip = (Evidence(slip.readings_after, slip.photographs_after) for slip in slips)
    return tuple(dict.fromkeys((*without_a_suspect, *without_a_slip)))


def _without(
    readings: tuple[Reading, ...], photographs: tuple[Photograph, ...], name: str
) -> Evidence:
    """The evidence with one reading or mark set aside."""
    if is_mark(name):
        return Evidence(readings, without_mark(photographs, name))
    return Evidence(
        tuple(
            replace(reading, counts=reading.counts and reading.name != name) for reading in readings
        ),
        photographs,
    )
