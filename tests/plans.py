"""Vehicles to plan a fix for, and a short list of corrections for it."""

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

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
"""Every kind of correction with few rises; "less drop" and "more drop" exclude each other."""


def verdict_on(
    linkage: Linkage,
    *,
    limits: Mapping[str, Any] = LIMITS,
    instruments: Mapping[str, str] | None = None,
    leave_out: Sequence[str] = (),
    draws: int = 2_000,
) -> Verdict:
    """The verdict on a linkage that was read as it truly is."""
    read = true_readings(linkage)
    document = document_of(
        linkage, {name: value for name, value in read.items() if name not in leave_out}, limits
    )
    document["instruments"] |= dict(instruments or {})
    return evaluate(session_of(document), draws)


def vehicle(seed: int, layout: Layout) -> Linkage:
    """A vehicle with both frame ends on one side, drawn at random."""
    return random_linkage(np.random.default_rng(seed), layout, same_side=True)


def done(moves: Any) -> tuple[tuple[str, float], ...]:
    """What a plan does, as plain values."""
    return tuple((move.correction.name, round(move.rise, 6)) for move in moves)
