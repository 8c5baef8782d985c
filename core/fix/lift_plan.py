"""A lift that is planned on a vehicle, measured or typical, and what has to go with it."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from core.fix.chances import with_setting
from core.fix.lift import HeightCurve, drawn_from, height_curve, lifted
from core.fix.moves import Move, with_moves
from core.fix.plan import Plan
from core.fix.possible import can_convert, conversion_of
from core.fix.ranking import By
from core.fix.search import SearchResult, search
from core.kinematics.linkage import Linkage
from core.kinematics.pivots import RIDE_HEIGHT
from core.profiles.conversions import Change, Conversion
from core.sessions.session import Session
from core.verdict.verdict import Verdict


@dataclass(frozen=True, eq=False)
class LiftPlan:
    """A vehicle before and after a lift.

    Attributes
    ----------
    verdict : Verdict
        On the vehicle as it is.
    lift : float or None
        mm; None where no lift was given.
    lifted : Verdict or None
        On the vehicle after the lift alone.
    result : SearchResult or None
        Plans of what has to go with the lift.
    now : HeightCurve
        Of the vehicle as it is. Every curve counts from its present ride height.
    with_plans : tuple of HeightCurve
        One for each plan.
    with_change : HeightCurve or None
        With a change that was asked for; None where none was, or where it does not fit.
    """

    verdict: Verdict
    lift: float | None
    lifted: Verdict | None
    result: SearchResult | None
    now: HeightCurve
    with_plans: tuple[HeightCurve, ...]
    with_change: HeightCurve | None


def lift_plan(
    verdict: Verdict,
    changes: Sequence[Change],
    lift: float | None,
    asked: Move | None = None,
    progress: Callable[[float], None] | None = None,
    by: By = "parts",
) -> LiftPlan:
    """A lift on a vehicle.

    Parameters
    ----------
    verdict : Verdict
        On the vehicle as it is.
    changes : sequence of Correction and Conversion
        Those made for other lifts, and those of the ride height, are left out.
    lift : float or None
        mm, up positive.
    asked : Move, optional
        A change whose curve is asked for.
    progress : callable
        Called with the share of the combinations that is computed, 0 to 1.
    by : "parts", "price" or "hours"
        What decides which plans come first.
    """
    linkage, limits = verdict.measured.linkage, verdict.session.limits
    drawn = drawn_from(verdict)
    now = height_curve(linkage, limits, drawn=drawn)
    with_change = None if asked is None else curve_with_change(verdict, asked, drawn)
    if lift is None:
        return LiftPlan(verdict, None, None, None, now, (), with_change)
    after = lifted(verdict, lift)
    made_for = [change for change in changes if goes_with_lift(change, lift)]
    result = search(after, made_for, progress, by, unless_true=True)
    drawn = drawn_from(after)
    with_plans = tuple(
        height_curve(
            plan.after.linkage,
            limits,
            lift + ride_height_of(plan),
            with_setting(with_moves(drawn, plan.moves), [move.correction for move in plan.moves]),
        )
        for plan in result.plans
    )
    return LiftPlan(verdict, lift, after, result, now, with_plans, with_change)


def goes_with_lift(change: Change, lift: float) -> bool:
    """True if a change is made for a lift, mm, and is no change of the ride height itself."""
    pivots = {step.pivot for step in change.steps(0.0)}
    return RIDE_HEIGHT not in pivots and change.part.is_made_for(lift)


def ride_height_of(plan: Plan) -> float:
    """Change of the ride height in a plan, mm."""
    return sum(move.raises(RIDE_HEIGHT) for move in plan.moves)


def curve_with_change(verdict: Verdict, move: Move, drawn: Linkage) -> HeightCurve | None:
    """Peak steer with one change; None where the vehicle cannot have it."""
    session = verdict.session
    if not can_have(session, move.correction):
        return None
    if isinstance(move.correction, Conversion):
        move = replace(move, correction=conversion_of(session, move.correction))
    linkage = with_moves(verdict.measured.linkage, [move])
    drawn = with_setting(with_moves(drawn, [move]), [move.correction])
    return height_curve(linkage, session.limits, move.raises(RIDE_HEIGHT), drawn)


def can_have(session: Session, change: Change) -> bool:
    """True if a vehicle has the pivots of a change."""
    if isinstance(change, Conversion):
        return can_convert(session, change)
    return change.applies_to(session.guide, session.has_track_bar, session.layout)
