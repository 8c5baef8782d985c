"""Marks in the front view of the place where the drag link's frame end wants to be."""

from collections.abc import Iterator
from dataclasses import replace

from core.text.quantity import LengthUnit
from core.verdict.verdict import READINGS, Verdict
from wizard.phrases.ball_path import rise_words
from wizard.views.picture_data import LINK_ENDS, Aim, FrontPicture, Point
from wizard.views.verdict import front_of

HIGHER, LOWER, AXIS = "△", "▽", "×"
"""Marks of a place above and below the frame end, and of the axis."""

MOST_SLANT = 0.5
"""Least share of the axis that runs lengthwise, so that it has a place in the front view."""


def front_with_aims(verdict: Verdict, unit: LengthUnit) -> FrontPicture:
    """The front view of a measured vehicle, with the places its drag link's frame end aims at."""
    return replace(front_of(verdict), aims=tuple(aims_of(verdict, unit)))


def aims_of(verdict: Verdict, unit: LengthUnit) -> Iterator[Aim]:
    """The height at which the drag link is square to its ball's path, and the path's axis.

    The height is left out where the frame end is there already, within its doubt. Both are left out
    where the readings were proved wrong, and where they lie below the floor.
    """
    if READINGS in verdict.held_back_by:
        return
    frame, rise = verdict.measured.linkage.pivot(LINK_ENDS["drag_link"][0]), verdict.rise_to_square
    height = float(frame[2]) + rise.value
    words = rise_words(verdict, unit)
    if words and height > 0:
        mark = HIGHER if rise.value > 0 else LOWER
        yield Aim((float(frame[1]), height), mark, (f"wants to be {words}",), needed=True)
    axis = axis_at(verdict, float(frame[0]))
    if axis and axis[1] > 0:
        yield Aim(axis, AXIS, ("axis of its ball's path", "axis of its path", "axis"))


def axis_at(verdict: Verdict, station: float) -> Point | None:
    """Place of the axis of the ball's path at a station, mm.

    None where the path is straight, and where the axis runs across the vehicle, as it does where
    the drag link runs fore and aft.
    """
    path = verdict.ball_path
    ahead, across, up = (float(part) for part in path.axis)
    if not abs(ahead) >= MOST_SLANT:  # nan where the path is straight
        return None
    x, y, z = (float(part) for part in path.centre)
    share = (station - x) / ahead
    return y + share * across, z + share * up
