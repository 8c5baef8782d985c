"""Explanations of a set of readings that does not close: the readings as they may be without it."""

from collections.abc import Sequence
from dataclasses import replace

from core.adjustment.outliers import SuspectGroup
from core.adjustment.slips import Slip
from core.readings.reading import Reading


def leading_explanations(
    readings: Sequence[Reading],
    suspect_groups: Sequence[SuspectGroup],
    slips: Sequence[Slip],
) -> tuple[tuple[Reading, ...], ...]:
    """Sets of readings without the mistake, one set for each leading explanation.

    Each reading of the first suspect group is set aside in turn, and each slip is undone.

    Parameters
    ----------
    readings : sequence of Reading
        The set that does not close.
    suspect_groups : sequence of SuspectGroup
        Its suspects, the worst first.
    slips : sequence of Slip
        The slips that explain it, as from `core.adjustment.slips.slips_of`.

    Returns
    -------
    tuple
        Sets that differ from each other; () where nothing explains the set.
    """
    suspects = suspect_groups[0].readings if suspect_groups else ()
    without_a_suspect = (
        tuple(replace(reading, counts=reading.name != name) for reading in readings)
        for name in suspects
    )
    return tuple(dict.fromkeys((*without_a_suspect, *(slip.readings_after for slip in slips))))
