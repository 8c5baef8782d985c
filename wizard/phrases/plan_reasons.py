"""Reasons for the figure of each rule under a plan, one fact a rule."""

from math import degrees, isfinite

from core.fix.plan import Plan
from core.statistics.conformity import Conformity, decide
from core.text.quantity import LengthUnit, format_length
from core.verdict.rules import length_ratio, slopes
from core.verdict.verdict import Verdict
from wizard.phrases.amounts import angle_words, listed, travel_words
from wizard.phrases.fact import LOOK, Fact
from wizard.phrases.plan_outcomes import angle_in_degrees, degrees_figure
from wizard.phrases.verdict_reasons import share_words
from wizard.phrases.verdict_words import chance_words, mark_of


def plan_reason_facts(verdict: Verdict, plan: Plan, unit: LengthUnit) -> tuple[Fact, ...]:
    """Reasons for the outcome of each rule."""
    compared = verdict.rules.length is not None
    return (
        parallel_fact(verdict, plan),
        steer_fact(verdict, plan, unit),
        toe_fact(verdict, plan),
        *((flat_fact(verdict, plan), length_fact(verdict, plan, unit)) if compared else ()),
    )


def parallel_fact(verdict: Verdict, plan: Plan) -> Fact:
    """The slopes, and the angle that is left as the axle moves."""
    rules, after, limit = verdict.rules, plan.after, verdict.session.limits.parallel
    changes = [
        f"The {slope_change_words(link, now, then)}."
        for link, now, then in zip(
            ("track bar", "drag link"),
            slopes(verdict.measured.linkage).tolist(),
            after.slopes,
            strict=True,
        )
        if isfinite(now)
    ]
    left, now = (
        degrees_figure(abs(angle), limit) for angle in (after.effective, rules.effective.value)
    )
    text = (
        f"{' '.join(changes)} As the axle moves that leaves {left} deg out of square; now it is "
        f"{now}. At most {degrees(limit):g} deg is allowed."
    )
    return Fact(
        "parallel" if after.parallel is not None else "square",
        text,
        mark_of(decide(after.chances.effective)),
    )


def slope_change_words(link: str, before: float, after: float) -> str:
    """A slope that changes, or stays."""
    old, new = f"{degrees(before):.1f}", f"{degrees(after):.1f}"
    if old == new:
        return f"{link} stays at {old} deg"
    return f"{link} goes from {old} to {new} deg"


def steer_fact(verdict: Verdict, plan: Plan, unit: LengthUnit) -> Fact:
    """The steer that is left, and its causes at the worse end of the travel."""
    after, limit = plan.after, verdict.session.limits.steer
    mark = mark_of(decide(after.chances.steer))
    if not isfinite(after.peak_steer):
        return Fact("steer", "A link cannot reach over the whole working travel.", mark)
    worst = max(after.splits, key=lambda split: abs(split.not_parallel + split.slope_and_length))
    whole = worst.not_parallel + worst.slope_and_length
    peak, now = (
        degrees_figure(rad, limit) for rad in (after.peak_steer, verdict.steer.ruling.value)
    )
    text = (
        f"The peak goes from {now} to {peak} deg; at most {degrees(limit):g} is allowed. At "
        f"{travel_words(worst.heave, unit)} it is {angle_words(whole)}: not parallel "
        f"{share_words(worst.not_parallel)}, "
        f"slope and length {share_words(worst.slope_and_length)}."
    )
    return Fact("steer", text, mark)


def toe_fact(verdict: Verdict, plan: Plan) -> Fact:
    """The toe change after a plan."""
    after, limit = plan.after, verdict.session.limits.toe_change
    mark = mark_of(decide(after.chances.toe))
    if verdict.measured.linkage.near_ball is None:
        return Fact("toe", "This layout cannot change the toe with travel.", mark)
    now, then = (
        angle_in_degrees(verdict.toe.ruling.value, limit),
        angle_in_degrees(after.peak_toe_change, limit),
    )
    text = (
        f"The tie rod hangs on the drag link and follows its slope. The peak change goes from "
        f"{now} to {then}. At most {degrees(limit):g} deg is allowed."
    )
    return Fact("toe", text, mark)


def flat_fact(verdict: Verdict, plan: Plan) -> Fact:
    """The slope of the steeper link."""
    limit = verdict.session.limits.flat
    before = max(map(abs, slopes(verdict.measured.linkage).tolist()))
    after = max(map(abs, plan.after.slopes))
    over = after > limit
    text = (
        f"The steeper of the two links lies at {degrees(after):.1f} deg, at {degrees(before):.1f} "
        f"now; at most {degrees(limit):g} is advised."
    )
    return Fact("flat", text, LOOK if over else "")


def length_fact(verdict: Verdict, plan: Plan, unit: LengthUnit) -> Fact:
    """The two lengths and their ratio."""
    limit, ratio = verdict.session.limits.length_ratio, plan.after.length_ratio
    bar, link = (format_length(length, unit) for length in plan.after.lengths)
    text = (
        f"{bar} and {link}: the shorter link is {ratio:.2f} of the longer one, "
        f"{float(length_ratio(verdict.measured.linkage)):.2f} now; at least {limit:g} is advised."
    )
    return Fact("near in length", text, LOOK if ratio < limit else "")


def failing_rules_words(plan: Plan) -> str:
    """Rules that keep a plan from steering true, the worst first."""
    chances = plan.after.chances
    rules = {"parallel": chances.effective, "peak steer": chances.steer, "toe": chances.toe}
    failing = sorted(
        (chance, name) for name, chance in rules.items() if decide(chance) != Conformity.WITHIN
    )
    if not failing:
        return f"all three rules together (chance: {chance_words(plan.after.p_true)})"
    return listed(
        [f"{name} (chance of being within: {chance_words(chance)})" for chance, name in failing]
    )
