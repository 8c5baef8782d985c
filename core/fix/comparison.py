"""Comparison of two sessions: the changes, the control points, and whether the fix is shown."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from enum import StrEnum
from itertools import combinations
from math import hypot
from typing import Any

import numpy as np

from core.documents.document import value_at
from core.fix.plan_record import filed_plan
from core.kinematics.linkage import Array
from core.verdict.verdict import Overall, Verdict


class FixOutcome(StrEnum):
    """Outcome of a comparison: the numbers show that the fix cured the vehicle, or not."""

    SHOWN = "shown"
    NOT_SHOWN = "not shown"
    NOT_SETTLED = "not settled"


CHANGED = 2.0
"""Standard uncertainties beyond which a value has changed."""

MOVED = 3.0
"""Standard uncertainties beyond which a pivot that nobody moved has moved."""


@dataclass(frozen=True)
class Change:
    """One value before and after; mm, rad, or a plain number for the length ratio.

    Attributes
    ----------
    name : str
        "parallel", "track_bar_slope", "drag_link_slope", "length_ratio", "peak_steer",
        "peak_toe_change" or "gradient".
    before, after, u : float
        `u` is the standard uncertainty of the difference.
    """

    name: str
    before: float
    after: float
    u: float

    @property
    def change(self) -> float:
        """After less before."""
        return self.after - self.before

    @property
    def changed(self) -> bool:
        """True if the difference exceeds its uncertainty."""
        return abs(self.change) > CHANGED * self.u


@dataclass(frozen=True)
class Control:
    """A pair of pivots that nobody moved.

    Attributes
    ----------
    pivots : (str, str)
    across, up : float
        Change of the second pivot relative to the first, mm.
    u_across, u_up : float
        Standard uncertainties of the changes, mm.
    """

    pivots: tuple[str, str]
    across: float
    up: float
    u_across: float
    u_up: float

    @property
    def unchanged(self) -> bool:
        """False where another part moved, or the datum line lies elsewhere."""
        return abs(self.across) <= MOVED * self.u_across and abs(self.up) <= MOVED * self.u_up


@dataclass(frozen=True)
class Comparison:
    """Two sessions of a vehicle compared.

    Attributes
    ----------
    outcome : FixOutcome
    changes : tuple of Change
    controls : tuple of Control
    """

    outcome: FixOutcome
    changes: tuple[Change, ...]
    controls: tuple[Control, ...]

    def change(self, name: str) -> Change:
        """The change of this name."""
        return next(change for change in self.changes if change.name == name)


def compare(before: Verdict, after: Verdict, moved: Collection[str] | None) -> Comparison:
    """Compare two sessions of a vehicle.

    Parameters
    ----------
    before, after : Verdict
    moved : collection of str or None
        Pivots that were moved, with "ride_height" where the vehicle was raised or lowered. None
        where the moves are unknown: then no pivot can serve as a control point.
    """
    changes = tuple(
        Change(name, before_value, after_value, hypot(before_u, after_u))
        for (name, before_value, before_u), (_, after_value, after_u) in zip(
            _values(before), _values(after), strict=True
        )
    )
    outcome = _outcome(after.overall, changes)
    return Comparison(outcome, changes, () if moved is None else _controls(before, after, moved))


def altered_pivots(before: Mapping[str, Any], after: Mapping[str, Any]) -> frozenset[str] | None:
    """The pivots that were moved between two records, from the later record.

    Where the later record does not say, the plan of the earlier one; None without either.
    """
    said = value_at(after, "session.altered")
    if isinstance(said, list):
        return frozenset(str(part) for part in said)
    planned = filed_plan(before)
    return None if planned is None else planned.moved


def _outcome(after: Overall, changes: tuple[Change, ...]) -> FixOutcome:
    if after == Overall.BUMP_STEER:
        return FixOutcome.NOT_SHOWN
    fixed = any(c.changed for c in changes if c.name in ("parallel", "peak_steer"))
    return FixOutcome.SHOWN if after == Overall.STEERS_TRUE and fixed else FixOutcome.NOT_SETTLED


def _values(verdict: Verdict) -> list[tuple[str, float, float]]:
    rules = verdict.rules
    rulings = {
        "parallel": rules.parallel,
        "track_bar_slope": rules.flat_track_bar,
        "drag_link_slope": rules.flat_drag_link,
        "length_ratio": rules.length,
        "peak_steer": verdict.steer.ruling,
        "peak_toe_change": verdict.toe.ruling,
    }
    return [
        *((name, ruling.value, ruling.u) for name, ruling in rulings.items()),
        ("gradient", float(verdict.derivatives.gradient), verdict.u_gradient),
    ]


def _controls(before: Verdict, after: Verdict, moved: Collection[str]) -> tuple[Control, ...]:
    """Pairs of frame ends and pairs of axle ends: the ride height does not change them."""
    both = [p for p in before.adjustment.pivots if p in after.adjustment.pivots and p not in moved]
    frame_ends = [pivot for pivot in both if pivot.endswith(".frame")]
    axle_ends = [pivot for pivot in both if not pivot.endswith(".frame")]
    pairs = [*combinations(frame_ends, 2), *combinations(axle_ends, 2)]
    return tuple(_control(before, after, pair) for pair in pairs)


def _control(before: Verdict, after: Verdict, pair: tuple[str, str]) -> Control:
    (first, first_u), (second, second_u) = _seen_from(before, pair), _seen_from(after, pair)
    difference, u = second - first, np.hypot(first_u, second_u)
    return Control(pair, float(difference[1]), float(difference[2]), float(u[1]), float(u[2]))


def _seen_from(verdict: Verdict, pair: tuple[str, str]) -> tuple[Array, Array]:
    """Second pivot less first, and its standard uncertainty; arrays (3,), mm."""
    adjustment = verdict.adjustment
    first, second = (adjustment.pivots.index(pivot) for pivot in pair)
    pick = np.zeros((3, adjustment.points.size))
    for axis in range(3):
        pick[axis, 3 * second + axis], pick[axis, 3 * first + axis] = 1.0, -1.0
    apart = pick @ adjustment.points.ravel()
    return apart, np.sqrt(np.diag(pick @ adjustment.covariance @ pick.T))
