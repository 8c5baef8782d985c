"""A verdict as plain numbers, mm and deg, for `evenarc check --json` and for [results].

A number that does not exist is None. The field names are those of the specification of records.
"""

from math import isfinite
from typing import Any

import numpy as np

from core.adjustment.least_squares import AdjustedReading
from core.adjustment.slips import Slip
from core.kinematics.vectors import Array
from core.readings.survey import LINKS
from core.statistics.conformity import Ruling
from core.uncertainty.next_reading import Viewpoint
from core.verdict.direct_check import DirectResult
from core.verdict.peak import Peak
from core.verdict.rules import slopes
from core.verdict.verdict import Verdict, decided_by


def verdict_as_json(verdict: Verdict, record: str) -> dict[str, Any]:
    """All results of a verdict.

    Parameters
    ----------
    verdict : Verdict
    record : str
        Path of its file, as the user typed it.
    """
    return {
        "record": record,
        "id": verdict.session.id,
        "overall": verdict.overall,
        "held_back_by": list(verdict.held_back_by),
        "assumed": list(verdict.session.assumed),
        "assumed_u": {
            name: _in_units(name, dimension.u)
            for name, dimension in verdict.session.dimensions.items()
            if dimension.is_assumed
        },
        "guide": verdict.session.guide,
        "castor_deg": degrees(verdict.measured.linkage.castor),
        "links": _links(verdict),
        "rules": _rules(verdict),
        "steer": _steer(verdict),
        "toe": _peak(verdict.toe, "peak_change_deg"),
        "sweep": {
            "heave_mm": numbers(verdict.sweep.heave),
            "axle_shift_mm": numbers(verdict.sweep.axle_shift),
            "axle_ahead_mm": numbers(verdict.sweep.axle_ahead),
            "axle_pitch_deg": degrees(verdict.sweep.axle_pitch),
            "steer_deg": degrees(verdict.sweep.steer),
            "toe_in_change_deg": degrees(verdict.sweep.toe_in_change),
            "steering_wheel_deg": degrees(verdict.sweep.steering_wheel),
        },
        "articulation": _articulation(verdict),
        "events": [
            {
                "name": course.name,
                "drift_mm": numbers(course.drift),
                "heading_deg": degrees(course.heading),
            }
            for course in verdict.courses
        ],
        "roll_centre_height_mm": verdict.roll_centre_height,
        "travel_limits": dict(zip(("droop_mm", "bump_mm"), verdict.travel_limits, strict=True)),
        "readings": _readings(verdict),
        "ball_path": _ball_path(verdict),
        "roll_steer": {
            "deg_per_deg": numbers(verdict.roll_steer.value),
            "u": numbers(verdict.roll_steer.u),
        },
        "clearance": None
        if verdict.clearance is None
        else {
            "smallest_mm": verdict.clearance.smallest,
            "at_heave_mm": verdict.clearance.at_heave,
        },
        "budget": [{"reading": share.of, "share": share.share} for share in verdict.budget],
        "advice": None
        if verdict.advice is None
        else {
            "readings": list(verdict.advice.readings),
            "repeats": verdict.advice.repeats,
            "skipped": list(verdict.advice.skipped),
            "settles": verdict.advice.settles,
            "photograph": _viewpoint(verdict.advice.photograph),
            "tape": verdict.advice.tape,
        },
        "photographs": _photographs(verdict),
        "direct": direct_as_json(verdict.direct),
    }


def _viewpoint(view: Viewpoint | None) -> dict[str, Any] | None:
    """Place of one more photograph."""
    if view is None:
        return None
    return {"beside": view.beside, "right_mm": view.right, "up_mm": view.up}


def numbers(values: Array | float) -> Any:
    """Floats, in nested lists for an array; None in place of nan and infinity."""
    array = np.asarray(values, dtype=float)
    listed: Any = array.tolist()
    return listed if np.isfinite(array).all() else _without_nan(listed)


def degrees(values: Array | float) -> Any:
    """Angles in degrees from radians, in the form of `numbers`."""
    return numbers(np.degrees(values))


def _without_nan(listed: Any) -> Any:
    """Nested lists with None in place of nan and infinity."""
    if isinstance(listed, list):
        return [_without_nan(value) for value in listed]
    return listed if isfinite(listed) else None


def _in_units(name: str, u: float) -> float:
    """Standard uncertainty of a dimension: an angle in deg, any other value as it is."""
    is_angle = name.startswith("kingpin.") or name == "guide.pitch_gain"
    return float(np.degrees(u)) if is_angle else u


def _links(verdict: Verdict) -> dict[str, Any]:
    """Length and slope of each link; None for a track bar that is not there."""
    both = slopes(verdict.measured.linkage)
    gradient = verdict.measured.gradient(slopes)
    uncertainties = verdict.measured.standard_uncertainty(gradient)
    return {
        link: {
            "length_mm": float(verdict.lengths[i]),
            "slope_deg": degrees(both[i]),
            "u_slope_deg": degrees(uncertainties[i]),
        }
        if np.isfinite(verdict.lengths[i])
        else None
        for i, link in enumerate(LINKS)
    }


def _rules(verdict: Verdict) -> dict[str, Any]:
    """The rulings on the three rules; None for values that the vehicle does not have."""
    rules, limits = verdict.rules, verdict.session.limits
    effective, parallel = rules.effective, rules.parallel
    return {
        "parallel": {
            "value_deg": None if parallel is None else degrees(parallel.value),
            "u_deg": None if parallel is None else degrees(parallel.u),
            "effective_deg": degrees(effective.value),
            "u_effective_deg": degrees(effective.u),
            "p_within": effective.p_within,
            "verdict": effective.verdict,
            "limit_deg": degrees(effective.limit),
        },
        "flat": {
            "track_bar": _angle(rules.flat_track_bar),
            "drag_link": _angle(rules.flat_drag_link),
            "limit_deg": degrees(limits.flat),
            "verdict": rules.flat,
        },
        "length": None
        if rules.length is None
        else {
            "ratio": rules.length.value,
            "limit": rules.length.limit,
            "u": rules.length.u,
            "p_within": rules.length.p_within,
            "verdict": rules.length.verdict,
        },
    }


def _angle(ruling: Ruling | None) -> dict[str, Any] | None:
    """A ruling on an angle, without its limit."""
    if ruling is None:
        return None
    return {
        "value_deg": degrees(ruling.value),
        "u_deg": degrees(ruling.u),
        "p_within": ruling.p_within,
        "verdict": ruling.verdict,
    }


def _peak(peak: Peak, name: str) -> dict[str, Any]:
    """A peak; `name` is the field of its value."""
    return {
        name: degrees(peak.ruling.value),
        "at_heave_mm": peak.at_heave,
        "limit_deg": degrees(peak.ruling.limit),
        "u_deg": degrees(peak.ruling.u),
        "p_within": peak.ruling.p_within,
        "verdict": peak.ruling.verdict,
        "method": peak.method,
    }


def _steer(verdict: Verdict) -> dict[str, Any]:
    """Gradient, curvature and peak of the steer, with the causes of the steer."""
    return {
        "gradient_deg_per_mm": degrees(verdict.derivatives.gradient),
        "curvature_deg_per_mm2": degrees(verdict.derivatives.curvature),
        **_peak(verdict.steer, "peak_deg"),
        "decided_by": decided_by(verdict),
        "budget": [{"of": share.of, "share": share.share} for share in verdict.steer_budget],
        "split": [
            {
                "heave_mm": split.heave,
                "not_parallel_deg": degrees(split.not_parallel),
                "slope_and_length_deg": degrees(split.slope_and_length),
            }
            for split in verdict.splits
        ],
    }


def direct_as_json(direct: DirectResult | None) -> dict[str, Any] | None:
    """The direct check; None where there is none."""
    if direct is None:
        return None
    return {
        "heave_mm": numbers(direct.heave_mm),
        "steer_deg": numbers(direct.steer_deg),
        "u_deg": numbers(direct.u_deg),
        "computed_deg": numbers(direct.computed_deg),
        "chi_square": numbers(direct.chi_square),
        "p": direct.p,
        "agrees": direct.agrees,
        "peak_deg": numbers(direct.peak_deg),
        "u_peak_deg": numbers(direct.u_peak_deg),
        "lash_deg": direct.lash_deg,
        "look_at": list(direct.look_at),
    }


def _ball_path(verdict: Verdict) -> dict[str, Any]:
    """The path of the steering-arm ball; no centre, axis or radius where it is straight."""
    path = verdict.ball_path
    is_straight = not np.isfinite(path.radius)
    return {
        "centre_mm": None if is_straight else numbers(path.centre),
        "direction": None if is_straight else numbers(path.axis),
        "radius_mm": None if is_straight else numbers(path.radius),
        "rise_mm": numbers(verdict.rise_to_square.value),
        "u_rise_mm": numbers(verdict.rise_to_square.u),
    }


def _articulation(verdict: Verdict) -> dict[str, Any] | None:
    """Steer over roll and heave, or None without both wheel offsets."""
    grid = verdict.articulation
    if grid is None:
        return None
    return {
        "roll_deg": degrees(grid.roll),
        "heave_mm": numbers(grid.heave),
        "steer_deg": degrees(grid.steer),
        "axle_yaw_deg": degrees(grid.yaw),
    }


def _readings(verdict: Verdict) -> dict[str, Any]:
    """The adjustment of the readings, and the suspect readings."""
    adjustment = verdict.adjustment
    return {
        "redundancy": adjustment.redundancy,
        "chi_square": adjustment.chi_square,
        "chi_square_limit": adjustment.chi_square_limit,
        "items": [_item(item) for item in adjustment.items],
        "suspects": [list(group.readings) for group in verdict.suspect_groups],
        "slips": [_slip(slip) for slip in verdict.slips],
    }


def _photographs(verdict: Verdict) -> list[dict[str, Any]]:
    """Photographs with their cameras and marks; null where no mark of a photograph counts."""
    adjustment = verdict.adjustment
    cameras = {camera.photograph.number: camera for camera in adjustment.cameras}
    # From the datum line, where offsets were read, to the centre plane.
    linkage = verdict.measured.linkage
    datum = adjustment.points[0] - linkage.pivot(adjustment.pivots[0])
    return [
        {
            "file": photograph.file,
            "camera_mm": numbers(cameras[photograph.number].place - datum)
            if photograph.number in cameras
            else None,
            "focal_px": cameras[photograph.number].focal if photograph.number in cameras else None,
            "marks": [
                {
                    "mark": mark.point,
                    "residual_px": list(mark.residual),
                    "u_px": mark.u,
                    "redundancy_number": mark.redundancy_number,
                    "w": mark.w,
                }
                for mark in adjustment.marks
                if mark.photograph == photograph.number
            ],
        }
        for photograph in verdict.session.photographs
    ]


def _slip(slip: Slip) -> dict[str, Any]:
    """A slip that explains the readings; values in deg for slopes, all others in mm."""
    return {
        "slip": slip.slip,
        "readings": list(slip.readings),
        "now": [
            degrees(value) if name.endswith(".slope") else numbers(value)
            # A mark has no value of its own.
            for name, value in zip(slip.readings, slip.now, strict=False)
        ],
    }


def _item(item: AdjustedReading) -> dict[str, Any]:
    """An adjusted reading; a slope in deg, all others in mm."""
    converted = degrees if item.reading.kind == "slope" else numbers
    return {
        "reading": item.reading.name,
        "value": converted(item.reading.value),
        "u": converted(item.u),
        "residual": converted(item.residual),
        "redundancy_number": item.redundancy_number,
        "w": item.w,
    }
