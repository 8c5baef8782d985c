"""Marks in the front view of the place where the drag link's frame end wants to be."""

from collections.abc import Iterator

from core.fix.plan import Plan
from core.kinematics.ball_path import BallPath
from core.kinematics.linkage import Linkage
from core.text.quantity import LengthUnit
from core.verdict.verdict import READINGS, Value, Verdict
from wizard.phrases.ball_path import way_to_square
from wizard.views.picture_data import LINK_ENDS, Aim, Point

HIGHER, LOWER, AXIS = "△", "▽", "×"
"""Marks of a place above and below the frame end, and of the axis."""

MOST_SLANT = 0.5
"""Least share of the axis that runs lengthwise, so that it has a place in the front view."""


def aims_of(verdict: Verdict, unit: LengthUnit) -> tuple[Aim, ...]:
    """The places that the drag link's frame end of a measured vehicle aims at.

    () where the readings were proved wrong.
    """
    if READINGS in verdict.held_back_by:
        return ()
    linkage = verdict.measured.linkage
    return tuple(_aims(linkage, verdict.rise_to_square, verdict.ball_path, unit))


def aims_of_plan(verdict: Verdict, plan: Plan, unit: LengthUnit) -> tuple[Aim, ...]:
    """The places that the drag link's frame end aims at after a plan.

    () where the readings were proved wrong.
    """
    if READINGS in verdict.held_back_by:
        return ()
    after = plan.after
    return tuple(_aims(after.linkage, after.rise_to_square, after.ball_path, unit))


def _aims(linkage: Linkage, rise: Value, path: BallPath, unit: LengthUnit) -> Iterator[Aim]:
    """The height at which the drag link is square to its ball's path, and the path's axis.

    The height is left out where the frame end is there already, within its doubt. Both are left out
    where they lie below the floor.
    """
    ahead, across, up = (float(part) for part in linkage.pivot(LINK_ENDS["drag_link"][0]))
    words = way_to_square(rise, unit)
    if words and up + rise.value > 0:
        mark = HIGHER if rise.value > 0 else LOWER
        yield Aim((across, up + rise.value), mark, (f"wants to be {words}",), needed=True)
    axis = axis_at(path, ahead)
    if axis and axis[1] > 0:
        yield Aim(axis, AXIS, ("axis of its ball's path", "axis of its path", "axis"))


def axis_at(path: BallPath, station: float) -> Point | None:
    """Place of the axis of a ball's path at a station, mm.

    None where the path is straight, and where the axis runs across the vehicle, as it does where
    the drag link runs fore and aft.
    """
    ahead, across, up = (float(part) for part in path.axis)
    if not abs(ahead) >= MOST_SLANT:  # nan where the path is straight
        return None
    x, y, z = (float(part) for part in path.centre)
    share = (station - x) / ahead
    return y + share * across, z + share * up
