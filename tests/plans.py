"""Vehicles to plan a fix for, and a short list of corrections."""

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from core.kinematics.guide import guide_values
from core.kinematics.linkage import Linkage
from core.kinematics.pivots import Layout
from core.profiles.corrections import Correction
from core.verdict.verdict import Verdict, evaluate
from tests.geometries import (
    INCH,
    LIMITS,
    document_of,
    random_linkage,
    session_of,
    true_readings,
)

COARSE = (
    Correction(
        "less drop",
        "drag_link.frame",
        (1 * INCH, 2 * INCH, 3 * INCH, 4 * INCH),
        not_with=("more drop",),
    ),
    Correction("more drop", "drag_link.frame", (-1 * INCH, -2 * INCH, -3 * INCH, -4 * INCH)),
    Correction("bar up at the axle", "track_bar.axle", (1 * INCH, 2 * INCH, 3 * INCH, 4 * INCH)),
    Correction("bar down at the frame", "track_bar.frame", (-1 * INCH, -2 * INCH, -3 * INCH)),
    Correction("drag link re-mounted above the arm", "drag_link.axle", (2.25 * INCH,)),
    Correction("ride height", "ride_height", (-2 * INCH, -1 * INCH, 1 * INCH)),
)
"""Every kind of correction, with few rises; "less drop" and "more drop" exclude each other."""


def verdict_on(
    linkage: Linkage,
    *,
    limits: Mapping[str, Any] = LIMITS,
    instruments: Mapping[str, str] | None = None,
    leave_out: Sequence[str] = (),
    draws: int = 2_000,
) -> Verdict:
    """Verdict on a linkage that was read without errors.

    Parameters
    ----------
    linkage : Linkage
    limits : mapping
        The [limits] of the record.
    instruments : mapping, optional
        Resolutions that replace the usual ones.
    leave_out : sequence of str
        Names of the readings that are not taken.
    draws : int
        Monte Carlo draws.
    """
    readings = true_readings(linkage) | _pivots_of_arms(linkage)
    taken = {name: value for name, value in readings.items() if name not in leave_out}
    document = document_of(linkage, taken, limits)
    document["layout"]["guide"] = linkage.guide.kind
    document["instruments"] |= dict(instruments or {})
    return evaluate(session_of(document), draws)


def _pivots_of_arms(linkage: Linkage) -> dict[str, float]:
    """True places of the pivots of the arms that guide the axle, mm."""
    places = guide_values(linkage.guide).items()
    return {name: value for name, value in places if name.endswith(("height", "station"))}


def vehicle(seed: int, layout: Layout) -> Linkage:
    """A vehicle with both frame ends on one side, drawn at random."""
    return random_linkage(np.random.default_rng(seed), layout, same_side=True)


def done(moves: Any) -> tuple[tuple[str, float], ...]:
    """Moves of a plan as plain values: name of the correction, and rise in mm."""
    return tuple((move.correction.name, round(move.rise, 6)) for move in moves)
