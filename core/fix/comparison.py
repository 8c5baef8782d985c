"""Comparison of two sessions: changed values, evidence of the fix, and unmoved pivots."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from enum import StrEnum
from itertools import combinations
from math import hypot
from typing import Any

import numpy as np

from core.documents.document import value_at
from core.fix.plan_record import filed_plan
from core.kinematics.pivots import RIDE_HEIGHT
from core.kinematics.vectors import Array
from core.statistics.conformity import Conformity
from core.verdict.verdict import Overall, Verdict, rulings_of


class FixOutcome(StrEnum):
    """Outcome of a fix, by the numbers of both sessions."""

    SHOWN = "shown"
    NOT_SHOWN = "not shown"
    NOT_SETTLED = "not settled"


CHANGED = 2.0
"""Standard uncertainties beyond which a value has changed."""

MOVED = 3.0
"""Standard uncertainties beyond which an unaltered pivot has moved."""


@dataclass(frozen=True)
class Change:
    """One value before and after a fix.

    Attributes
    ----------
    name : str
        A RuleKey, or "gradient".
    before, after : float
        rad; rad/mm for the gradient, and a plain number for the length ratio.
    u : float
        Standard uncertainty of the difference, in the same unit.
    """

    name: str
    before: float
    after: float
    u: float

    @property
    def change(self) -> float:
        """Value after less value before."""
        return self.after - self.before

    @property
    def changed(self) -> bool:
        """True if the uncertainty does not explain the difference."""
        return abs(self.change) > CHANGED * self.u


@dataclass(frozen=True)
class Control:
    """Two control points: pivots that nobody moved, and the change of their relative position.

    Attributes
    ----------
    pivots : (str, str)
    across, up : float
        Change of the position of the second relative to the first, mm; left and up positive.
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
        """True if the uncertainty explains the change of position.

        Otherwise one of the pivots has moved, or the datum line was laid elsewhere.
        """
        return abs(self.across) <= MOVED * self.u_across and abs(self.up) <= MOVED * self.u_up


@dataclass(frozen=True)
class Comparison:
    """Two sessions of a vehicle, compared.

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
        """The change with a name."""
        return next(change for change in self.changes if change.name == name)


def compare(before: Verdict, after: Verdict, moved: Collection[str] | None) -> Comparison:
    """Comparison of an earlier session of a vehicle with a later one.

    Parameters
    ----------
    before, after : Verdict
    moved : collection of str or None
        Pivots that were moved, with "ride_height" where the vehicle was raised or lowered. None
        where that is not known: then no pivot can serve as a control point.
    """
    values_before, values_after = _values(before), _values(after)
    changes = tuple(
        Change(name, value, values_after[name][0], hypot(u, values_after[name][1]))
        for name, (value, u) in values_before.items()
        if name in values_after
    )
    outcome = _outcome(after.overall, changes, is_measured_true(before, after))
    return Comparison(outcome, changes, () if moved is None else _controls(before, after, moved))


def altered_pivots(before: Mapping[str, Any], after: Mapping[str, Any]) -> frozenset[str] | None:
    """Names of the pivots that were moved between two records, or None where that is not known.

    The later record names them. Otherwise they are the pivots that the earlier record planned to
    move.

    Raises
    ------
    core.documents.entries.EntryError
        The plan of the earlier record is invalid.
    """
    altered = value_at(after, "session.altered")
    if isinstance(altered, list):
        return frozenset(str(pivot) for pivot in altered)
    planned = filed_plan(before)
    return None if planned is None else planned.moved


def is_measured_true(before: Verdict, after: Verdict) -> bool:
    """True if the steer was measured in both sessions, and is within its limit in the later."""
    return (
        before.direct is not None
        and after.direct is not None
        and after.direct.peak.ruling.verdict == Conformity.WITHIN
    )


def _outcome(after: Overall, changes: tuple[Change, ...], measured_true: bool) -> FixOutcome:
    """Outcome of a fix: shown needs a true-steering vehicle and a significant change.

    Where the steer was measured before and after, the road wheels themselves show the fix: a peak
    that has changed and is within its limit is enough, unless the verdict is otherwise.
    """
    if after == Overall.BUMP_STEER:
        return FixOutcome.NOT_SHOWN
    changed = {change.name for change in changes if change.changed}
    is_changed = bool(changed & {"effective", "peak_steer"})
    if measured_true and "peak_steer" in changed and after == Overall.TOO_CLOSE:
        return FixOutcome.SHOWN
    if after == Overall.STEERS_TRUE and is_changed:
        return FixOutcome.SHOWN
    return FixOutcome.NOT_SETTLED


def _values(verdict: Verdict) -> dict[str, tuple[float, float]]:
    """Value and standard uncertainty of each compared value, by name."""
    values: dict[str, tuple[float, float]] = {
        name: (ruling.value, ruling.u) for name, ruling in rulings_of(verdict).items()
    }
    values["gradient"] = float(verdict.derivatives.gradient), verdict.u_gradient
    return values


def _controls(before: Verdict, after: Verdict, moved: Collection[str]) -> tuple[Control, ...]:
    """Controls of all pairs of unmoved frame ends, and of all pairs of unmoved axle ends.

    A frame end is not paired with an axle end, because the ride height may differ. Where it was
    altered the axle has turned on its arms, so its ends are no control points. Nor is a pivot of
    which the height or the offset was carried over: it agrees by itself.
    """
    carried = {
        name.rpartition(".")[0]
        for name in after.session.carried
        if name.endswith((".height", ".offset"))
    }
    unmoved = [
        pivot
        for pivot in before.adjustment.pivots
        if pivot in after.adjustment.pivots and pivot not in moved and pivot not in carried
    ]
    frame_ends = [pivot for pivot in unmoved if pivot.endswith(".frame")]
    has_turned = RIDE_HEIGHT in moved
    axle_ends = [] if has_turned else [each for each in unmoved if not each.endswith(".frame")]
    pairs = [*combinations(frame_ends, 2), *combinations(axle_ends, 2)]
    return tuple(_control(before, after, pair) for pair in pairs)


def _control(before: Verdict, after: Verdict, pair: tuple[str, str]) -> Control:
    """Control of a pair of pivots."""
    position_before, u_before = _relative_position(before, pair)
    position_after, u_after = _relative_position(after, pair)
    _, across, up = (position_after - position_before).tolist()
    _, u_across, u_up = np.hypot(u_before, u_after).tolist()
    return Control(pair, across, up, u_across, u_up)


def _relative_position(verdict: Verdict, pair: tuple[str, str]) -> tuple[Array, Array]:
    """Position of the second pivot relative to the first, and its standard uncertainties.

    Both are arrays (3,), mm.
    """
    adjustment = verdict.adjustment
    first, second = (adjustment.pivots.index(pivot) for pivot in pair)
    difference = np.zeros((3, adjustment.points.size))
    for axis in range(3):
        difference[axis, 3 * second + axis], difference[axis, 3 * first + axis] = 1.0, -1.0
    position = difference @ adjustment.points.ravel()
    return position, np.sqrt(np.diag(difference @ adjustment.covariance @ difference.T))
