"""Corrections: rises of one pivot that a workshop can make."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, ClassVar, Literal, NamedTuple, cast, get_args

from core.documents.document import value_at
from core.documents.entries import choice_at
from core.kinematics.pivots import (
    GUIDE_PIVOTS,
    PIVOTS,
    RIDE_HEIGHT,
    TRACK_BAR_ENDS,
    GuideKind,
    Layout,
)
from core.profiles.part import NO_PART, Part

MOVABLE = (
    *PIVOTS,
    RIDE_HEIGHT,
    *(pivot for pivots in GUIDE_PIVOTS.values() for pivot in pivots),
)
"""Every pivot that a correction can move, and the ride height."""


class PivotStep(NamedTuple):
    """Move of one pivot.

    Attributes
    ----------
    pivot : str
        One of MOVABLE.
    rise : float
        mm, up positive.
    to_station, to_offset : float or None
        Station and offset that the pivot has afterwards, mm; None where they stay.
    """

    pivot: str
    rise: float = 0.0
    to_station: float | None = None
    to_offset: float | None = None


BallPlace = Literal["below", "above"]
"""Place of the drag link's axle-end ball: below or above the arm that it is bolted to."""


@dataclass(frozen=True)
class Correction:
    """A way to move one pivot, with the rises on offer.

    Attributes
    ----------
    name : str
    pivot : str
        One of MOVABLE, such as "track_bar.frame" or "guide.seat"; "ride_height" raises the frame.
    rises : tuple of float
        Rises on offer, from the pivot's present height, up positive, mm.
    caution : str
        Printed with every plan that uses the correction.
    not_with : tuple of str
        Names of the corrections that exclude this one.
    least_rise : float
        Smallest rise that is worth the work, mm; smaller rises are not tried.
    needs_ball : "below", "above" or None
        Place of the ball that the correction changes; None where its place does not matter.
    needs : tuple of str
        Names of the corrections without which this one is not made.
    part : Part
    """

    name: str
    pivot: str
    rises: tuple[float, ...]
    caution: str = ""
    not_with: tuple[str, ...] = ()
    least_rise: float = 0.0
    needs_ball: BallPlace | None = None
    needs: tuple[str, ...] = ()
    part: Part = NO_PART

    table: ClassVar[str] = "corrections"

    def steps(self, rise: float) -> tuple[PivotStep, ...]:
        """Steps of the correction with one of its rises, mm: its one pivot."""
        return (PivotStep(self.pivot, rise),)

    @property
    def rises_tried(self) -> tuple[float, ...]:
        """The rises that are worth the work."""
        return tuple(rise for rise in self.rises if abs(rise) >= self.least_rise)

    def applies_to(self, guide: GuideKind, has_track_bar: bool, layout: Layout) -> bool:
        """True if a vehicle has the pivot, and the pivot's place can decide how it steers.

        A track bar moves a lengthwise drag link across itself, which steers to second order only.
        """
        if self.pivot in TRACK_BAR_ENDS:
            return has_track_bar and layout != Layout.FORE_AFT
        return not self.pivot.startswith("guide.") or self.pivot in GUIDE_PIVOTS[guide]

    def fits_ball(self, place: BallPlace | None) -> bool:
        """True unless the ball is known to be in another place than the correction needs."""
        return None in (place, self.needs_ball) or place == self.needs_ball


def ball_at(tables: Mapping[str, Any], path: str) -> BallPlace | None:
    """Place of a ball at a path of a file; None where the file does not say it.

    Raises
    ------
    core.documents.entries.EntryError
        The entry is another word.
    """
    if value_at(tables, path) is None:
        return None
    return cast(BallPlace, choice_at(tables, path, get_args(BallPlace)))
