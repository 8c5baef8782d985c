"""Priors: what is known of the pivots without a reading, as observations of their coordinates.

A half-width w is rectangular: u = w / sqrt(3) (GUM, JCGM 100:2008, 4.3.7). All half-widths are
common practice, no source.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import sqrt

from core.text.quantity import INCH

TRACK_BAR_WITHIN = 5 * INCH
"""Half-width of the track bar's mean station about the axle's middle, mm."""

ALIKE_WITHIN = 2 * INCH
"""Half-width of the difference of a link's two stations, mm."""

BALL_WITHIN = 1.5 * INCH
"""Half-width of the steering-arm ball's station about the end of its arm, mm."""

NEAR_BALL_WITHIN = 1 * INCH
"""Half-width of the near ball's station about that of the far ball, mm."""


@dataclass(frozen=True)
class Prior:
    """A weighted sum of coordinates that is about a value.

    Attributes
    ----------
    name : str
        Name of the reading that would take its place, "track_bar.frame.station".
    coefficients : mapping of float
        By the name of the coordinate, {"track_bar.frame.x": 1.0, "track_bar.axle.x": -1.0}.
    value, u : float
        Value and standard uncertainty of the sum, mm.
    """

    name: str
    coefficients: Mapping[str, float]
    value: float
    u: float


def station_priors(
    taken: set[str], has_track_bar: bool, ball: float | None, has_near_ball: bool, fore_aft: bool
) -> tuple[Prior, ...]:
    """Priors in place of the stations that were not taken.

    Parameters
    ----------
    taken : set of str
        Names of the readings that were taken.
    has_track_bar : bool
    ball : float or None
        Usual station of the steering-arm ball, mm: the arm's length in the direction in which the
        arm points. None where the arm does not point ahead or behind.
    has_near_ball : bool
        The layout is an inverted-Y.
    fore_aft : bool
        The drag link runs fore and aft: its stations have no priors.
    """
    track_bar = _of_track_bar(taken) if has_track_bar else ()
    return (*track_bar, *_of_drag_link(taken, ball, has_near_ball, fore_aft))


def _of_track_bar(taken: set[str]) -> Iterator[Prior]:
    frame, axle = "track_bar.frame", "track_bar.axle"
    missing = [end for end in (frame, axle) if f"{end}.station" not in taken]
    if len(missing) == 2:
        mean = {f"{frame}.x": 0.5, f"{axle}.x": 0.5}
        yield Prior(f"{frame}.station", mean, 0.0, TRACK_BAR_WITHIN / sqrt(3))
    if missing:
        yield _alike(missing[-1], frame if missing[-1] == axle else axle, ALIKE_WITHIN)


def _of_drag_link(
    taken: set[str], ball: float | None, has_near_ball: bool, fore_aft: bool
) -> Iterator[Prior]:
    far_ball = "drag_link.axle"
    if ball is not None and f"{far_ball}.station" not in taken:
        place = {f"{far_ball}.x": 1.0}
        yield Prior(f"{far_ball}.station", place, ball, BALL_WITHIN / sqrt(3))
    if not fore_aft and "drag_link.frame.station" not in taken:
        yield _alike("drag_link.frame", far_ball, ALIKE_WITHIN)
    if has_near_ball and "tie_rod.near.station" not in taken:
        yield _alike("tie_rod.near", far_ball, NEAR_BALL_WITHIN)


def _alike(pivot: str, other: str, within: float) -> Prior:
    """Prior of a pivot that is as far ahead as another."""
    return Prior(f"{pivot}.station", {f"{pivot}.x": 1.0, f"{other}.x": -1.0}, 0.0, within / sqrt(3))
