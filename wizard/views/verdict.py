"""A verdict as pictures: the core's radians become the degrees that people read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import degrees
from typing import Any

import numpy as np
from numpy.typing import ArrayLike

from core.kinematics.linkage import Array, Linkage
from core.kinematics.motion import motion_at
from core.kinematics.pivots import pivots_of
from core.kinematics.pose import JOINT, axle_points
from core.text.quantity import LengthUnit
from core.uncertainty.measured_linkage import has_centre_plane, hub_centres
from core.verdict.verdict import Verdict
from wizard.views.picture_data import (
    ArticulationPicture,
    CurvePicture,
    FrontPicture,
    Point,
    Pose,
    RuleRow,
    Trace,
    Wheels,
    seen_from_front,
)


def front_of(verdict: Verdict) -> FrontPicture:
    """The front view of a measured vehicle, with the paths of both axle ends."""
    linkage = verdict.measured.linkage
    pivots = pivots_at_rest(linkage)
    slopes = (verdict.rules.flat_track_bar.value, verdict.rules.flat_drag_link.value)
    notes = {
        link: f"{abs(degrees(slope)):.1f} deg"
        for link, slope in zip(("track_bar", "drag_link"), slopes, strict=True)
    }
    return FrontPicture(
        pivots=pivots,
        joint=joint_of(linkage),
        wheels=wheels_of(_seen(hub_centres(verdict.session, linkage))),
        arcs=arcs_of(verdict),
        notes=notes,
    )


def front_of_both(before: Verdict, after: Verdict) -> FrontPicture:
    """Two geometries on one picture, both from the centre plane, or both from the datum line."""
    if has_centre_plane(before.session) and has_centre_plane(after.session):
        old, new = before.measured.linkage, after.measured.linkage
        return FrontPicture(
            pivots=pivots_at_rest(new),
            joint=joint_of(new),
            wheels=wheels_of(_seen(hub_centres(after.session, new))),
            before=pivots_at_rest(old),
            before_joint=joint_of(old),
        )
    return FrontPicture(pivots=_from_datum(after), before=_from_datum(before))


def _from_datum(verdict: Verdict) -> dict[str, Point]:
    adjustment = verdict.adjustment
    return _seen(dict(zip(adjustment.pivots, adjustment.points, strict=True)))


def pivots_at_rest(linkage: Linkage) -> dict[str, Point]:
    """Every pivot at ride height."""
    return _seen({name: linkage.pivot(name) for name in pivots_of(linkage.layout)})


def joint_of(linkage: Linkage) -> Point | None:
    """The tie rod's joint on the drag link at ride height."""
    points = axle_points(linkage, 0.0)
    return _seen({JOINT: points[JOINT]})[JOINT] if JOINT in points else None


def wheels_of(points: dict[str, Point]) -> Wheels:
    """The hubs of a mapping of points, where they are in it."""
    return Wheels(points.get("wheels.left"), points.get("wheels.right"))


def arcs_of(verdict: Verdict) -> dict[str, list[Point]]:
    """Paths of what rides on the axle from full droop to full bump, as far as it reaches."""
    points = axle_points(verdict.measured.linkage, verdict.sweep.heave)
    return {
        pivot: [(float(y), float(z)) for _, y, z in points[pivot] if np.isfinite(y)]
        for pivot in points
        if pivot != JOINT
    }


def pose_of(points: Mapping[str, Array]) -> Pose:
    """The axle where it has been moved to."""
    seen = _seen(points)
    pivots = {name: point for name, point in seen.items() if not name.startswith("wheels")}
    joint = pivots.pop(JOINT, None)
    return Pose(pivots=pivots, wheels=wheels_of(seen), joint=joint)


def curve_of(verdict: Verdict, unit: LengthUnit) -> CurvePicture:
    """Steer against travel, with the limit over the working travel and the doubt."""
    limits = verdict.session.limits
    return CurvePicture(
        trace=trace_of(verdict, "steer", with_doubt=True),
        limit=degrees(limits.steer),
        working=(limits.working_droop, limits.working_bump),
        unit=unit,
    )


def curves_of(before: Verdict, after: Verdict, unit: LengthUnit) -> CurvePicture:
    """Two curves on one plot, held to the later session's limit."""
    return replace(
        curve_of(after, unit),
        trace=trace_of(after, "after", with_doubt=True),
        other=trace_of(before, "before"),
    )


def travel_curve(
    verdict: Verdict, heave: float, roll: float | None, unit: LengthUnit, farthest: float
) -> CurvePicture:
    """The curve at some roll with the heave marked on it; the level axle's dashed beside it.

    Parameters
    ----------
    verdict : Verdict
    heave : float
    roll : float or None
        rad; None for an axle that stays level.
    unit : str
    farthest : float
        Roll to either side that the frame has room for, rad.
    """
    level = replace(curve_of(verdict, unit), heave=heave)
    if roll is None:
        return level
    linkage, heaves = verdict.measured.linkage, verdict.sweep.heave
    rolls = np.array([[roll], [-farthest], [farthest]])
    steer, *ends = _deg(motion_at(linkage, heaves, rolls).steer)
    return replace(
        level,
        trace=Trace("rolled", heaves.tolist(), steer),
        other=replace(level.trace, name="level", give=None),
        spans=(float(np.nanmin(ends)), float(np.nanmax(ends))),
    )


def trace_of(verdict: Verdict, name: str, with_doubt: bool = False) -> Trace:
    """The curve of steer of one verdict."""
    sweep = verdict.sweep
    give = _deg(2 * sweep.steer_u) if with_doubt else None
    return Trace(name, sweep.heave.tolist(), _deg(sweep.steer), give)


def rules_of(verdict: Verdict) -> tuple[RuleRow, ...]:
    """The rules that decide, and those that advise; toe only where the layout can change it."""
    rules = verdict.rules
    angles = [
        ("parallel", rules.parallel, True),
        ("peak steer", verdict.steer.ruling, True),
        ("toe change", verdict.toe.ruling, True),
        ("track bar flat", rules.flat_track_bar, False),
        ("drag link flat", rules.flat_drag_link, False),
    ]
    if verdict.session.layout != "inverted-y":
        del angles[2]
    length = rules.length
    return (
        *(
            RuleRow(
                name,
                abs(degrees(ruling.value)),
                2 * degrees(ruling.u),
                degrees(ruling.limit),
                ruling.verdict,
                ruling.p_within,
                decides=decides,
            )
            for name, ruling, decides in angles
        ),
        RuleRow(
            "equal length", length.value, 2 * length.u, length.limit, length.verdict,
            length.p_within, unit="", at_least=True, decides=False,
        ),
    )  # fmt: skip


def map_of(verdict: Verdict, unit: LengthUnit) -> ArticulationPicture | None:
    """Steer over roll and heave; None where the vehicle's middle is not known."""
    grid = verdict.articulation
    if grid is None:
        return None
    return ArticulationPicture(
        roll=_deg(grid.roll),
        heave=grid.heave.tolist(),
        steer=_deg(grid.steer),
        limit=degrees(verdict.session.limits.steer),
        unit=unit,
    )


def _seen(points: Mapping[str, Array]) -> dict[str, Point]:
    return seen_from_front({name: point.tolist() for name, point in points.items()})


def _deg(values: ArrayLike) -> Any:
    return np.degrees(values).tolist()
