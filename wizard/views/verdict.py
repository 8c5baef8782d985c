"""Pictures of a verdict, in the degrees that people read instead of the core's radians."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from itertools import starmap
from math import degrees
from typing import Any

import numpy as np
from numpy.typing import ArrayLike

from core.kinematics.linkage import Linkage
from core.kinematics.motion import motion_at
from core.kinematics.pivots import Layout
from core.kinematics.places import JOINT, axle_points
from core.kinematics.vectors import Array
from core.readings.survey import LINKS
from core.statistics.conformity import Ruling
from core.text.quantity import LengthUnit
from core.uncertainty.measured_linkage import has_centre_plane, hub_centres
from core.verdict.rules import slopes
from core.verdict.verdict import READINGS, RuleKey, Verdict, rulings_of
from wizard.phrases.verdict_words import VALUE_NAMES
from wizard.views.aims import aims_of
from wizard.views.picture_data import (
    HUBS,
    LEFT_HUB,
    RIGHT_HUB,
    ArticulationPicture,
    CurvePicture,
    FrontPicture,
    MeasuredPoint,
    Point,
    Pose,
    RuleRow,
    Trace,
    Wheels,
    seen_from_front,
)

RULE_NAMES: dict[RuleKey, str] = VALUE_NAMES | {
    "track_bar_slope": "track bar flat",
    "drag_link_slope": "drag link flat",
}
"""Name of each rule, in the order of the table."""

DECIDING: tuple[RuleKey, ...] = ("effective", "peak_steer", "peak_toe_change")
"""Rules that the overall verdict rests on; the others advise."""


UNDECIDED = "not decided"
"""Verdict of a rule on readings that were proved wrong."""


def front_of(verdict: Verdict) -> FrontPicture:
    """The front view of a measured vehicle, with the paths of both axle ends."""
    linkage = verdict.measured.linkage
    return FrontPicture(
        pivots=pivots_at_rest(linkage),
        joint=joint_of(linkage),
        wheels=wheels_of(_seen(hub_centres(verdict.session, linkage, verdict.adjustment))),
        arcs=arcs_of(verdict),
        notes=slope_notes(slopes(linkage)),
    )


def front_with_aims(verdict: Verdict, unit: LengthUnit) -> FrontPicture:
    """The front view of a measured vehicle, with the places its drag link's frame end aims at."""
    return replace(front_of(verdict), aims=aims_of(verdict, unit))


def slope_notes(slopes: Iterable[float]) -> dict[str, str]:
    """The slope of track bar and drag link, given in rad, as a note beside each link."""
    return {
        link: f"{abs(degrees(slope)):.1f} deg"
        for link, slope in zip(LINKS, slopes, strict=True)
        if np.isfinite(slope)
    }


def front_of_both(before: Verdict, after: Verdict, unit: LengthUnit) -> FrontPicture:
    """Two geometries on one picture, both from the centre plane, or both from the datum line.

    From the centre plane, with the places that the later drag link's frame end aims at.
    """
    if has_centre_plane(before.session) and has_centre_plane(after.session):
        earlier, later = before.measured.linkage, after.measured.linkage
        return FrontPicture(
            pivots=pivots_at_rest(later),
            joint=joint_of(later),
            wheels=wheels_of(_seen(hub_centres(after.session, later, after.adjustment))),
            before=pivots_at_rest(earlier),
            before_joint=joint_of(earlier),
            aims=aims_of(after, unit),
        )
    return FrontPicture(pivots=_from_datum(after), before=_from_datum(before))


def _from_datum(verdict: Verdict) -> dict[str, Point]:
    """Every pivot from the datum line, mm."""
    adjustment = verdict.adjustment
    return _seen(dict(zip(adjustment.pivots, adjustment.points, strict=True)))


def pivots_at_rest(linkage: Linkage) -> dict[str, Point]:
    """Every pivot at ride height, mm."""
    return _seen({name: linkage.pivot(name) for name in linkage.pivots})


def joint_of(linkage: Linkage) -> Point | None:
    """The tie rod's joint on the drag link at ride height, mm; None in other layouts."""
    points = axle_points(linkage, 0.0)
    return _seen({JOINT: points[JOINT]})[JOINT] if JOINT in points else None


def wheels_of(points: Mapping[str, Point]) -> Wheels:
    """The hubs among named points."""
    return Wheels(points.get(LEFT_HUB), points.get(RIGHT_HUB))


def arcs_of(verdict: Verdict) -> dict[str, list[Point]]:
    """Paths of the axle's pivots from full droop to full bump, where the linkage reaches, mm."""
    points = axle_points(verdict.measured.linkage, verdict.sweep.heave)
    return {
        pivot: [(float(y), float(z)) for _, y, z in points[pivot] if np.isfinite(y)]
        for pivot in points
        if pivot != JOINT
    }


def pose_of(points: Mapping[str, Array]) -> Pose:
    """The axle at some heave and roll, from its points (x, y, z), mm."""
    seen = _seen(points)
    pivots = {name: point for name, point in seen.items() if name not in (*HUBS, JOINT)}
    return Pose(pivots=pivots, wheels=wheels_of(seen), joint=seen.get(JOINT))


def curve_of(verdict: Verdict, unit: LengthUnit) -> CurvePicture:
    """Steer against travel, with the limit over the working travel and the uncertainty."""
    limits = verdict.session.limits
    return CurvePicture(
        trace=trace_of(verdict, "steer", with_uncertainty=True),
        limit=degrees(limits.steer),
        working=(limits.working_droop, limits.working_bump),
        unit=unit,
        points=measured_points(verdict),
    )


def measured_points(verdict: Verdict) -> tuple[MeasuredPoint, ...]:
    """Points of the direct check; empty without one."""
    direct = verdict.direct
    if direct is None:
        return ()
    columns = (direct.heave_mm, direct.steer_deg, 2 * direct.u_deg)
    return tuple(starmap(MeasuredPoint, zip(*(item.tolist() for item in columns), strict=True)))


def curves_of(before: Verdict, after: Verdict, unit: LengthUnit) -> CurvePicture:
    """Two curves on one plot, with the limit of the later session."""
    return replace(
        curve_of(after, unit),
        trace=trace_of(after, "after", with_uncertainty=True),
        compared=trace_of(before, "before"),
    )


def travel_curve(
    verdict: Verdict, heave: float, roll: float | None, unit: LengthUnit, largest_roll: float
) -> CurvePicture:
    """The curve at some roll with the heave marked on it, and the level axle's curve dashed.

    Parameters
    ----------
    verdict : Verdict
    heave : float
        mm.
    roll : float or None
        rad; None for an axle that stays level.
    unit : "in" or "mm"
    largest_roll : float
        Roll to either side that the frame has room for, rad.
    """
    level = replace(curve_of(verdict, unit), axle_heave=heave)
    if roll is None:
        return level
    linkage, heaves = verdict.measured.linkage, verdict.sweep.heave
    rolls = np.array([[roll], [-largest_roll], [largest_roll]])
    steer, *ends = _deg(motion_at(linkage, heaves, rolls).steer)
    return replace(
        level,
        trace=Trace("rolled", heaves.tolist(), steer),
        compared=replace(level.trace, name="level", expanded_uncertainty=None),
        least_range=(float(np.nanmin(ends)), float(np.nanmax(ends))),
    )


def trace_of(verdict: Verdict, name: str, with_uncertainty: bool = False) -> Trace:
    """The curve of steer of one verdict."""
    sweep = verdict.sweep
    uncertainty = _deg(2 * sweep.steer_u) if with_uncertainty else None
    return Trace(name, sweep.heave.tolist(), _deg(sweep.steer), uncertainty)


def rules_of(verdict: Verdict) -> tuple[RuleRow, ...]:
    """The deciding and the advising rules in degrees; toe only where the layout can change it.

    Where the readings were proved wrong, no rule has a decision or a chance.
    """
    rulings = rulings_of(verdict)
    if verdict.session.layout != Layout.INVERTED_Y:
        del rulings["peak_toe_change"]
    parallel = rulings.pop("parallel", None)
    rows = [_rule_row(key, ruling) for key, ruling in rulings.items()]
    if parallel is not None:  # both links run across: the effective angle stands for parallel
        rows[0] = replace(rows[0], name=RULE_NAMES["parallel"])
    if READINGS in verdict.held_back_by:
        rows = [replace(row, verdict=UNDECIDED, probability=None) for row in rows]
    return tuple(rows)


def _rule_row(key: RuleKey, ruling: Ruling) -> RuleRow:
    is_ratio = key == "length_ratio"
    scale = 1.0 if is_ratio else degrees(1.0)
    return RuleRow(
        key,
        RULE_NAMES[key],
        abs(scale * ruling.value),
        2 * scale * ruling.u,
        scale * ruling.limit,
        ruling.verdict,
        ruling.p_within,
        unit="" if is_ratio else "deg",
        at_least=is_ratio,
        decides=key in DECIDING,
    )


def map_of(verdict: Verdict, unit: LengthUnit) -> ArticulationPicture | None:
    """Steer over roll and heave; None where the vehicle's centre plane is not known."""
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
    """Points (x, y, z) as the front view has them, mm."""
    return seen_from_front({name: point.tolist() for name, point in points.items()})


def _deg(values: ArrayLike) -> Any:
    """Values in degrees, as a float or as lists of floats."""
    return np.degrees(values).tolist()
